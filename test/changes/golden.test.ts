import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, test } from 'vitest';
import { changesText } from '../../src/report/changes/index.js';
import { changed } from './both.js';

const folder = path.join(import.meta.dirname, 'pairs');
const names = readdirSync(folder).flatMap((file) => (file.endsWith('.before.yard') && !file.endsWith('.shop.before.yard') ? [file.slice(0, -'.before.yard'.length)] : []));

function filesOf(name: string, side: 'before' | 'after'): Record<string, string> {
  const shop = path.join(folder, `${name}.shop.${side}.yard`);
  return {
    'job.yard': readFileSync(path.join(folder, `${name}.${side}.yard`), 'utf8'),
    ...(existsSync(shop) ? { 'shop.yard': readFileSync(shop, 'utf8') } : {}),
  };
}

/** Texts to read aloud; UPDATE_GOLDEN=1 writes them anew. */
describe('what changed, as it is read', () => {
  test.each(names)('%s', (name) => {
    const text = changesText(changed(filesOf(name, 'before'), filesOf(name, 'after')));
    const golden = path.join(folder, `${name}.txt`);
    if (process.env['UPDATE_GOLDEN'] === '1') writeFileSync(golden, text);
    expect(text).toBe(readFileSync(golden, 'utf8'));
  });
});
