import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { beforeAll, describe, expect, test } from 'vitest';
import { failures } from './fixture.js';
import { loadTokenizer, type Tokenize } from './tokenize.js';

const folder = path.join(import.meta.dirname, 'fixtures');
let tokenize: Tokenize;

beforeAll(async () => {
  tokenize = await loadTokenizer();
});

describe('marked fixtures', () => {
  test.each(readdirSync(folder))('%s', (file) => {
    expect(failures(readFileSync(path.join(folder, file), 'utf8'), tokenize)).toEqual([]);
  });

  test('a wrong mark is noticed, and so is a wrong exclusion', () => {
    expect(failures('note "x"\n^^^^ string\n', tokenize)).toHaveLength(1);
    expect(failures('note "x"\n^^^^ !keyword.control\n', tokenize)).toHaveLength(1);
  });
});
