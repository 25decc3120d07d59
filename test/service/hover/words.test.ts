import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, test } from 'vitest';
import { createLanguageService, resolveWithin } from '../../../src/service/index.js';
import { allKinds, units, type Field } from '../../../src/vocabulary/index.js';
import { serviceOver, uriOf } from '../../support/fixture.js';

const root = path.resolve(import.meta.dirname, '../../..');
const read = (uri: string): { readonly text: string } | 'missing' => {
  try {
    return { text: readFileSync(uri, 'utf8') };
  } catch {
    return 'missing';
  }
};
const service = createLanguageService({ read, resolvePath: (from, written) => resolveWithin(root, from, written) });

/** Each paragraph that is said anywhere in a file, once. */
function allSaid(file: string): string[] {
  const found = read(file);
  const text = found === 'missing' ? '' : found.text;
  // The first letter of whatever stands between two spaces or commas.
  const starts = [...text.matchAll(/(?<=^|[\s,])[^\s,]/g)].map(({ index }) => index);
  return [...new Set(starts.flatMap((at) => service.hover(file, at)?.paragraphs ?? []))];
}

const folders = ['samples', 'test/corpus/ok'].map((folder) => path.join(root, folder));
const files = folders.flatMap((folder) => readdirSync(folder).filter((name) => name.endsWith('.yard')).map((name) => path.join(folder, name)));

describe('what is said under the pointer, in all samples', () => {
  const said = [...new Set(files.flatMap(allSaid))];

  test('says something, and not the same word twice', () => {
    expect(said.length).toBeGreaterThan(1000);
    expect(said.filter((one) => one.trim() === '' || /undefined|NaN|Infinity|\.\.$|, ,/.test(one))).toEqual([]);
    expect(said.filter((one) => saysOnlyItself(one))).toEqual([]);
  });

  test('counts one as one', () => {
    expect(said.filter((one) => /\b1 (?:lines|jobs|days|months|hours|options|cases)\b/.test(one))).toEqual([]);
    expect(said.filter((one) => /\b(?:[02-9]|[1-9]\d+) (?:line|job|month|working day)\b/.test(one))).toEqual([]);
  });

  test('nothing of which nothing is', () => {
    expect(said.filter((one) => /of which 0(?:\.0+)? /.test(one))).toEqual([]);
    expect(said.some((one) => /of which 2,172\.99 .*access penalty/.test(one))).toBe(true);
  });
});

/** Such as `refrigerant: Refrigerant.` or `saturday: Saturdays`. */
function saysOnlyItself(paragraph: string): boolean {
  const [word = '', says = ''] = paragraph.split(': ', 2);
  const bare = (text: string) => text.toLowerCase().replace(/[^a-z]/g, '').replace(/s$/, '');
  return says !== '' && bare(word) === bare(says);
}

test('every word that can be chosen, every slot and every unit says more than itself', () => {
  const fields = allKinds.flatMap((kind) => Object.values(kind.fields) as Field[]);
  expect(fields.filter(({ lead, says }) => saysOnlyItself(`${lead ?? ''}: ${says}`)).map(({ lead }) => lead)).toEqual([]);
  const words = fields.flatMap(({ value }) => Object.entries({ ...value.words, ...value.builtIn }));
  expect(words.length).toBeGreaterThan(50);
  expect(words.filter(([word, says]) => saysOnlyItself(`${word}: ${says}`))).toEqual([]);
  expect(words.filter(([, says]) => !says.endsWith('.'))).toEqual([]);
  expect(units.filter(({ word, says }) => word === says)).toEqual([]);
});

describe('a name that nobody uses', () => {
  const text = `steelyard 1
shop "S"
  currency USD
  rate bench "Bench" 100.00 usual
  rate other "Other" 90.00
  tool puller "Puller"
access out "Out"
  remove 1 h
labour idle "Idle" 1 h
labour busy "Busy" 1 h
part spare "Spare" 5.00 new
finding odd "Odd noise"
labour seen "Seen" 1 h
stage look "Look"
  do seen
option fix "Fix"
  do busy
  part own "Own" 2.00 new
  chance may "May" 10%
    fee 5.00
option leave "Leave"
  worth 5.00
`;
  const over = serviceOver({ 'estimate.yard': text }).service;
  const says = (line: string, name: string) => over.hover(uriOf('estimate.yard'), text.indexOf(line) + line.indexOf(name))?.paragraphs ?? [];

  test.each([['access out', 'out'], ['labour idle', 'idle'], ['part spare', 'spare'], ['rate other', 'other'], ['tool puller', 'puller']])('%s does nothing, which is said', (line, name) => {
    expect(says(line, name)).toContain('No line uses this name.');
  });

  test.each([['option fix', 'fix'], ['option leave', 'leave'], ['stage look', 'look'], ['part own', 'own'], ['chance may', 'may'], ['finding odd', 'odd'], ['rate bench', 'bench']])('%s needs no other line', (line, name) => {
    expect(says(line, name).length).toBeGreaterThan(0);
    expect(says(line, name).join('\n')).not.toContain('No line uses this name.');
  });

  test('a finding says once that nothing rests on it', () => {
    expect(says('finding odd', 'odd')).toEqual(['Nothing rests on this finding.']);
  });
});

test('a percentage is said to be one once, and what a month costs counts months', () => {
  const text = 'steelyard 1\nshop "S"\n  currency USD\nvehicle "V"\n  worth 100.00\noption fix "Fix"\n  fee "F" 10.00\n  chance may "May" 10%\n    fee 5.00\n  lasts 1 mo\n  resale 50.00\noption leave "Leave"\n  fee "F" 12.00\n';
  const over = serviceOver({ 'estimate.yard': text }).service;
  const says = (line: string, at: string) => over.hover(uriOf('estimate.yard'), text.indexOf(line) + line.indexOf(at))?.paragraphs ?? [];
  expect(says('10%', '%').filter((one) => one.startsWith('Here:'))).toEqual(['Here: How likely it is, in percent.']);
  expect(says('option fix', 'option').filter((one) => one.startsWith('Cost per month:'))).toEqual([expect.stringMatching(/ over 1 month\.$/)]);
});
