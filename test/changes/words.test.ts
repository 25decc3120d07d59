import { describe, expect, test } from 'vitest';
import { changesJson, changesText } from '../../src/report/changes/index.js';
import { changed } from './both.js';

// What a writer reads of lines and options that change what they are called. Rules of our own; amounts worked out by hand.

const HEAD = 'steelyard 1\nshop "Bay"\n  currency USD\n  rate bench "Bench" 100.00 usual\nestimate "E-1"\n';
const asOne = (text: string) => text.replace(/\s+/g, ' ');
const told = (before: string, after: string) => asOne(changesText(changed(HEAD + before, HEAD + after)));
const option = (name: string, title: string, ...lines: readonly string[]) => `option ${name} "${title}"\n${lines.map((line) => `  ${line}\n`).join('')}`;

describe('a line that is called otherwise', () => {
  test('stands under what it was called, also where its figure changed or it stands elsewhere', () => {
    const part = (title: string, price: string) => `part hose "${title}" ${price} new\n${option('a', 'A', 'fit hose')}`;
    expect(told(part('Hose', '10.00'), part('Hose with clamps', '12.00'))).toContain(' Hose – 10.00 → 12.00; now called Hose with clamps +2.00');
    const two = (a: readonly string[], b: readonly string[]) => `${option('a', 'A', 'part "P" 1.00 new', ...a)}${option('b', 'B', 'part "Q" 1.00 new', ...b)}`;
    expect(told(two(['labour strip "Strip" 1.0 h'], []), two([], ['labour strip "Strip, all" 1.0 h']))).toContain(' Strip – from A to B; now called Strip, all -100.00 +100.00');
  });

  test('two that swap names say so, and nothing else', () => {
    const jobs = (one: string, other: string) => `labour ${one} "Strip" 1.0 h\nlabour ${other} "Refit" 3.0 h\n${option('a', 'A', `do ${one}`)}${option('b', 'B', `do ${other}`)}`;
    const text = told(jobs('x', 'y'), jobs('y', 'x'));
    expect(text).toContain('USD a b Refit – its name y is now x Strip – its name x is now y Total');
    expect(text).toContain('A still costs least, 200.00 less than B.');
  });
});

describe('which option costs least', () => {
  const same = (first: string, second: string) => `${option('a', 'Mend it', `part "P" ${first} new`)}${option('b', 'Mend it', `part "Q" ${second} new`)}`;

  test('options with one title are told apart by their names', () => {
    expect(told(same('100.00', '200.00'), same('100.00', '250.00'))).toContain('Mend it (a) still costs least, 150.00 less than Mend it (b); before, by 100.00.');
  });

  test('what cost the same before is not told as less by nothing', () => {
    const two = (second: string) => `${option('a', 'A', 'part "P" 100.00 new')}${option('b', 'B', `part "Q" ${second} new`)}`;
    expect(told(two('100.00'), two('150.00'))).toContain('A still costs least, 50.00 less than B; before, to the cent as much as B.');
    expect(told(two('150.00'), two('100.00'))).toContain('A still costs least, to the cent as much as B; before, by 50.00.');
  });
});

test('an option that is gone, whose name another one has now, is never taken for that one', () => {
  const found = changed(`${HEAD}${option('a', 'Mend it', 'part "P" 100.00 new')}${option('b', 'Swap it', 'part "Q" 200.00 new')}`, `${HEAD}${option('a', 'Swap it', 'part "Q" 200.00 new')}`);
  const text = asOne(changesText(found));
  expect(text).toContain('a 200.00 200.00 0.0 0 a, gone 100.00 gone 0.0 0');
  expect(text).toContain('Option Swap it – its name b is now a');
  expect(text).toContain('Swap it now costs least; before, it was Mend it, by 100.00.');
  const json = changesJson(found, { before: () => undefined, after: () => undefined });
  expect(json.options.map(({ name }) => name)).toEqual(['a', 'a, gone']);
  expect(json.changes.map(({ effects }) => effects)).toEqual([[{ option: 'a, gone', total: '-100.00', inAll: '-100.00' }], []]);
});
