import { readFileSync } from 'node:fs';
import path from 'node:path';
import { expect, test } from 'vitest';
import { run } from '../../src/cli/run.js';
import { serviceOver, uriOf } from '../support/fixture.js';

// Words that every object of the language this is written in has: looked up in a list that is such an object, they
// would be found though nobody put them there.
const WORDS = [...new Set([...Object.getOwnPropertyNames(Object.prototype), ...Object.getOwnPropertyNames(Function.prototype)])];
/** A word of no meaning, in the same shape. */
const NONE = 'zzqqxxwwvv';

const root = path.resolve(import.meta.dirname, '../..');
const text = readFileSync(path.join(root, 'samples/pilgrim-v6.yard'), 'utf8');
const shop = readFileSync(path.join(root, 'samples/shop.yard'), 'utf8');

/** What is wrong in the sample with a word of it replaced, without the word. */
function codesWith(at: number, length: number, word: string): string {
  const { service } = serviceOver({ 'estimate.yard': text.slice(0, at) + word + text.slice(at + length), 'shop.yard': shop });
  const uri = uriOf('estimate.yard');
  const problems = service.diagnostics(uri).map(({ code }) => code);
  service.hover(uri, at);
  service.completions(uri, at + word.length);
  service.definition(uri, at);
  return problems.join(' ');
}

test('a word that every object has is a word like any other, wherever it stands', { timeout: 120_000 }, () => {
  const words = [...text.replace(/#.*|"[^"]*"/g, (found) => ' '.repeat(found.length)).matchAll(/(?<![^\s,])[a-z][a-z-]*(?![^\s,])/g)];
  expect(words.length).toBeGreaterThan(150);
  for (const [i, { 0: word, index }] of words.entries()) {
    if (i % 7 !== 0) continue;
    const own = WORDS[i % WORDS.length] as string;
    expect(codesWith(index, word.length, own), `${own} for ${word} at ${index}`).toBe(codesWith(index, word.length, /^[a-z]+$/.test(own) ? NONE : own.replace(/[a-z]{3}/, 'qxz')));
  }
});

test('as names they are given, used and priced', () => {
  for (const word of ['constructor', 'valueof', 'prototype', 'caller', 'name', 'length', 'apply', 'bind', 'call']) {
    const { service } = serviceOver({ 'estimate.yard': `steelyard 1\nshop "S"\n  rate ${word} "R" 100.00\nlabour ${word} "W" 2 h\n  uses ${word}\npart ${word} "P" 50.00 new\noption ${word} "O"\n  do ${word}\n` });
    const uri = uriOf('estimate.yard');
    expect(service.diagnostics(uri).filter(({ severity }) => severity === 'error').map(({ text }) => text), word).toEqual([]);
    expect(service.weighing(uri).comparison.options[0]?.totals.total.likely.toFixed(2), word).toBe('250.00');
  }
});

test('on the command line they are no command, option, form, figure or switch', { timeout: 30_000 }, () => {
  const steelyard = (...args: readonly string[]) => {
    let out = '';
    let err = '';
    const code = run(args, '1.2.3', { cwd: path.join(root, 'test/security'), styled: false, stdin: () => 'steelyard 1\noption one "One"\n', out: (text) => void (out += text), err: (text) => void (err += text) });
    return { code, out, err };
  };
  for (const word of WORDS) {
    for (const args of [[word], [word, '-'], ['export', '-', '--as', word], ['quote', '-', '--as', word], ['quote', '-', '--option', word], ['weigh', '-', '--explain', word], ['check', '-', '--as', word], ['git', word], ['git', word, 'name'], ['git', 'totals', word], ['git', 'check', word], [`--${word}`]]) {
      const { code, out, err } = steelyard(...args);
      expect({ code, out }, `${args.join(' ')}: ${err}`).toEqual({ code: 2, out: '' });
    }
  }
});
