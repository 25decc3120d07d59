import { describe, expect, test } from 'vitest';
import { MOST_IN_ALL, MOST_LINES, MOST_OF_SHOP } from '../../src/estimate/most.js';
import { deskOver, uriOf } from '../../src/tools/fuzz/over.js';

const HEAD = 'steelyard 1\nshop "S"\n  currency USD\n  rate bench "Bench" 100.00 usual\n';
const numbered = (count: number, line: (i: number) => string) => Array.from({ length: count }, (_, i) => line(i + 1)).join('\n');

/** Where the codes of limits stand, as the line that they mark, and which options are whole. */
function saidOf(text: string): { readonly said: readonly string[]; readonly whole: readonly string[] } {
  const { service } = deskOver(new Map([['job.yard', text]]));
  const uri = uriOf('job.yard');
  const said = service.diagnostics(uri).filter(({ code }) => code.startsWith('too-')).map(({ code, range }) => `${code} ${text.slice(range.start, range.end)}`);
  return { said, whole: service.weighing(uri).comparison.options.flatMap(({ option, complete }) => (complete ? [option.name] : [])) };
}

describe('a shop', () => {
  const line: Readonly<{ [word: string]: (i: number) => string }> = {
    tax: (i) => `tax t${i} "T" 0.1% on parts`, fee: (i) => `fee f${i} "F" 1.00`, markup: (i) => `markup 10% to ${i}.00`, rate: (i) => `rate r${i} "R" 100.00`,
  };
  const shopWith = (word: string, count: number) => `${HEAD}${numbered(count, (i) => `  ${line[word]?.(i)}`)}\n  markup 5% on sublets\noption o "O"\n  labour "J" 1 h\n`;
  const room = (word: string) => (MOST_OF_SHOP[word] as number) - (word === 'rate' || word === 'markup' ? 1 : 0);

  test.each(Object.keys(MOST_OF_SHOP))('has so many lines of %s, and no more', (word) => {
    expect(saidOf(shopWith(word, room(word)))).toEqual({ said: [], whole: ['o'] });
    const { said, whole } = saidOf(shopWith(word, room(word) + 1));
    expect(said).toEqual([`too-many-of-shop ${word === 'markup' ? 'markup 5% on sublets' : line[word]?.(room(word) + 1)}`]);
    expect(whole).toEqual([]);
  });
});

describe('one line of an estimate', () => {
  const parts = (count: number, indent = '  ') => numbered(count, (i) => `${indent}part "P ${i}" 1.00 new`);
  const namedParts = (count: number) => `${numbered(count, (i) => `part p${i} "P" 1.00 new`)}\n`;
  const uses = (count: number) => numbered(count / 10, (row) => `  uses ${Array.from({ length: 10 }, (_, i) => `p${10 * row - 9 + i}`).join(', ')}`);
  test.each([
    ['an option', 'option o "O"', (count: number) => `option o "O"\n${parts(count)}\n`],
    ['a chance', 'chance c "C" 5%', (count: number) => `option o "O"\n  chance c "C" 5%\n${parts(count, '    ')}\n`],
    ['a way in', 'access a "A" remove 1 h', (count: number) => `access a "A" remove 1 h\n${parts(count)}\nlabour j "J" 1 h with a\noption o "O" do j\n`],
    ['a job of an option', 'option o "O" do j', (count: number) => `${namedParts(count)}labour j "J" 1 h\n${uses(count)}\noption o "O" do j\n`],
  ])('%s brings so many parts, and no more', (_, marked, text) => {
    expect(saidOf(HEAD + text(MOST_LINES))).toEqual({ said: [], whole: ['o'] });
    expect(saidOf(HEAD + text(MOST_LINES + 10))).toEqual({ said: [`too-many-lines ${marked}`], whole: [] });
  });

  test('of which a stage brings too many, no option is whole', () => {
    const text = (count: number) => `${HEAD}${namedParts(count)}labour j "J" 1 h\n${uses(count)}\nstage s "S"\n  do j\n  put back 1 h\noption o "O"\n  labour "K" 1 h\n`;
    expect(saidOf(text(MOST_LINES))).toEqual({ said: [], whole: ['o'] });
    expect(saidOf(text(MOST_LINES + 10))).toEqual({ said: ['too-many-lines stage s "S"', 'too-many-lines option o "O"'], whole: [] });
  });
});

test('options bring so many lines together, and those behind are left out', () => {
  const jobs = `${HEAD}${numbered(500, (i) => `labour j${i} "J" 1 h`)}\n`;
  const all = numbered(50, (row) => `  do ${Array.from({ length: 10 }, (_, i) => `j${10 * row - 9 + i}`).join(', ')}`);
  const options = (count: number) => `${jobs}${numbered(count, (i) => `option o${i} "O"\n${all}`)}\n`;
  const most = MOST_IN_ALL / 500;
  expect(saidOf(options(most)).said).toEqual([]);
  const { said, whole } = saidOf(options(most + 2));
  expect(said).toEqual([`too-long-in-all option o${most + 1} "O"`]);
  expect(whole).toHaveLength(most);
});
