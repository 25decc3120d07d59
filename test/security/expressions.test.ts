import { spawnSync } from 'node:child_process';
import { rmSync } from 'node:fs';
import path from 'node:path';
import { build } from 'esbuild';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { expressionsIn, expressionsOfSource, madeExpressions, root } from './expressions.js';

const program = path.join(root, 'dist', 'tools', `time-expressions-${process.pid}.mjs`);
beforeAll(() => build({ entryPoints: [path.join(import.meta.dirname, 'time-expressions.ts')], outfile: program, bundle: true, platform: 'node', format: 'esm', packages: 'external', logLevel: 'error' }), 60_000);
afterAll(() => rmSync(program, { force: true }));

function timed(...sources: readonly string[]): { readonly tried: number; readonly slow: readonly string[] } {
  const { stdout, stderr, error } = spawnSync(process.execPath, [program, ...sources], { encoding: 'utf8', timeout: 240_000, env: { ...process.env, STEELYARD_ROOT: root } });
  if (error !== undefined || stdout === '') throw new Error(`An expression hangs. ${String(error)} ${stderr}`);
  return JSON.parse(stdout) as ReturnType<typeof timed>;
}

describe('regular expressions', () => {
  test('are all found', () => {
    expect(expressionsOfSource().length).toBeGreaterThan(80);
    expect(expressionsIn('a.ts', 'const a = 4 / 2 / 1; // /no/\nconst b = "/no/" + `${/yes+/gi.source} /no/`;\nif (/[/\\]]x/.test(b)) f(/z/u);').map(({ where, expression }) => `${where} ${String(expression)}`)).toEqual(['a.ts:2 /yes+/gi', 'a.ts:3 /[/\\]]x/', 'a.ts:3 /z/u']);
  });

  test('that are put together when the program runs are these, of words of the product alone', () => {
    // The classes of characters that can't be seen; and the word of a kind.
    expect(madeExpressions()).toEqual(['report/json-text.ts', 'report/plain.ts', 'service/complete/starter.ts']);
  });

  test('that are bad are noticed, and those that aren’t are not', { timeout: 250_000 }, () => {
    const bad = ['^(a+)+$', '(x|x)*y', '^(?:[\\r\\n]+)*z', '(.*),(.*),(.*)!$', '\\s+$', 'a*b'];
    expect(timed(...bad).slow).toHaveLength(bad.length);
    expect(timed('^[a-z]+(-[a-z]+)*$', '[&<>]').slow).toEqual([]);
  });

  test('none takes long, whatever it is given', { timeout: 250_000 }, () => {
    const { tried, slow } = timed();
    expect(tried).toBeGreaterThan(80);
    expect(slow).toEqual([]);
  });
});
