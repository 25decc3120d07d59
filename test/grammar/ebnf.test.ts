import { describe, expect, test } from 'vitest';
import { parse, statementsOf, syntaxRules, type Rule } from '../../src/language/index.js';
import { emitEbnf } from '../../src/tools/emit-ebnf.js';
import { readMarks } from '../../src/tools/marked-example.js';
import { exampleAt, placesOf } from '../../src/tools/places.js';
import { allKinds, readRules, valueRules } from '../../src/vocabulary/index.js';
import { derives, namesIn, readEbnf } from './ebnf.js';
import { characters, lines } from './ebnf-inputs.js';
import { samples } from './samples.js';

const grammar = readEbnf(emitEbnf()['schemas/steelyard.ebnf'] as string);
const START = 'estimate file';
const examples = allKinds.flatMap((kind) => placesOf(kind).map((place) => exampleAt(kind, place)));

describe('the written grammar holds together', () => {
  const defined = grammar.map(({ name }) => name);
  const used = new Set(grammar.flatMap(({ body }) => namesIn(body)));

  test('nothing is defined twice', () => {
    expect(defined.filter((name, i) => defined.indexOf(name) !== i)).toEqual([]);
  });
  test('everything used is defined', () => {
    expect([...used].filter((name) => !defined.includes(name))).toEqual([]);
  });
  test('everything defined is used', () => {
    expect(defined.filter((name) => name !== START && !used.has(name))).toEqual([]);
  });
  test('every kind has its production', () => {
    expect(allKinds.filter(({ word }) => !defined.includes(`${word.replace(/-/g, ' ')} line`))).toEqual([]);
  });
});

describe('the written grammar is true', () => {
  test('it derives every sample and every example', () => {
    for (const text of [...samples.map(({ text }) => text), ...examples]) expect(derives(grammar, START, lines(text)), text).toBe(true);
  });

  test('its words, numbers, dates and texts are those of the reader', () => {
    const odd = 'x "a \\" b" "c\\\\" "" rear-head P0301 12 0.5 2026-11 2026-11-24 1M8 7.5h 1.2.3 -4 a- "d\\q" 5. 2026-1\n';
    for (const text of [...samples.map(({ text }) => text), ...examples, odd]) {
      const tree = parse('x.yard', text);
      for (const statement of statementsOf(tree)) {
        for (const token of statement.tokens) {
          const written = statement.block.text.slice(token.start, token.end);
          for (const name of ['word', 'number', 'date', 'text']) expect(derives(grammar, name, characters(written)), `${written} as ${name}`).toBe(token.kind === name);
        }
      }
    }
  });

  test('comments and own names are those of the reader', () => {
    expect(derives(grammar, 'comment', characters('# "any" thing # at all'))).toBe(true);
    for (const [name, fits] of [['pump', true], ['a', true], ['rear-head-2', true], ['pump-', false], ['2nd', false], ['-a', false]] as const) {
      expect(derives(grammar, 'own name', characters(name)), name).toBe(fits);
    }
  });

  /** What the prose of the grammar states and productions can't, and what still leaves a line that can be read. */
  const beyondProductions = new Set(['said-twice', 'extra-figure', 'time-in-two', 'figures-out-of-order', 'not-whole', 'no-such-date', 'number-too-long', 'mixed-indent', 'uneven-indent', 'hidden-character', 'long-line', 'open-text', 'stray-indent', 'glued-comma', 'long-file']);
  const written = [syntaxRules, readRules, valueRules].flatMap((room) => Object.values(room) as unknown[]).filter((rule): rule is Rule<never> => typeof rule === 'object');

  test.each(written.filter(({ code }) => !beyondProductions.has(code)).map(({ code, example }) => [code, example] as const))('it does not derive the example of %s', (_, example) => {
    expect(derives(grammar, START, lines(readMarks(example).text))).toBe(false);
  });
});
