import { describe, expect, test } from 'vitest';
import { sentence } from '../../src/language/index.js';
import { unreadableIn } from '../../src/tools/all-rules.js';
import { exampleAt, placesOf } from '../../src/tools/places.js';
import { allKinds } from '../../src/vocabulary/index.js';
import { samples } from './samples.js';

describe('every kind’s example is read without problems where it may stand', () => {
  const cases = allKinds.flatMap((kind) => placesOf(kind).map((place) => ({ where: [...place, kind].map(({ word }) => word).join(' > '), text: exampleAt(kind, place) })));
  test.each(cases)('$where', ({ text }) => {
    expect(unreadableIn(text).map((problem) => `${problem.code}: ${sentence(problem.message)}`)).toEqual([]);
  });

  test.each(samples)('$file too', ({ text }) => {
    expect(unreadableIn(text).map((problem) => `${problem.code}: ${sentence(problem.message)}`)).toEqual([]);
  });

  test('every kind has a place', () => {
    expect(allKinds.filter((kind) => placesOf(kind).length === 0)).toEqual([]);
  });

  test('no word is both a lead word of a kind and a line below it', () => {
    expect(allKinds.flatMap((kind) => [...kind.leads.keys()].filter((lead) => kind.childByWord.has(lead)).map((lead) => `${kind.word}: ${lead}`))).toEqual([]);
  });

  test('no record has a key for both a fact and a line below it', () => {
    expect(allKinds.flatMap((kind) => ['kind', 'name', 'title', ...kind.childByWord.keys()].filter((key) => key in kind.fields).map((key) => `${kind.word}: ${key}`))).toEqual([]);
  });
});
