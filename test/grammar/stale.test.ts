import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, test } from 'vitest';
import { products } from '../../src/tools/products.js';

const root = path.resolve(import.meta.dirname, '../..');
const made = products();

describe('generated files', () => {
  test.each(Object.entries(made))('%s is what the vocabulary says (else run src/tools/emit.ts)', (file, content) => {
    expect(readFileSync(path.join(root, file), 'utf8') === content, `stale: ${file}`).toBe(true);
  });

  test('schemas holds nothing else', () => {
    expect(readdirSync(path.join(root, 'schemas')).map((file) => `schemas/${file}`).sort()).toEqual(Object.keys(made).sort());
  });

  test('the same vocabulary gives the same files', () => {
    expect(products()).toEqual(made);
  });
});
