import { describe, expect, test } from 'vitest';
import { limits } from '../../src/language/index.js';
import { resolved, told } from './estimated.js';

const spoiled = (one: ReturnType<typeof resolved>) => [...one.spoiled].map((block) => block.text.split('\n')[0]);
const codes = (one: ReturnType<typeof resolved>) => told(one).map(([code]) => code);

describe('one fault, one message', () => {
  test('names and rates that a missing file may hold', () => {
    const one = resolved('steelyard 1\nuse "shop.yard"\nlabour p "P" 1 h\n  uses seal\npart q "Q" cost 5.00 new\noption o "O"\n  do p\n  fit q\n');
    expect(told(one)).toEqual([['use-missing', '"shop.yard"']]);
    expect(spoiled(one)).toEqual(['labour p "P" 1 h', 'part q "Q" cost 5.00 new', 'option o "O"']);
  });

  test('names that a file outside of the workspace may hold', () => {
    expect(told(resolved('steelyard 1\nuse "../shop.yard"\nlabour p "P" 1 h\n  uses seal\n'))).toEqual([['use-outside', '"../shop.yard"']]);
  });

  test('a name on a line that can’t be read', () => {
    const one = resolved('steelyard 1\nshop "S"\n  rate r 1.00\nprat seal "Seal" 5.00 new\nlabour p "P" 1 h\n  uses seal\nlabour q "Q" 1 h\n  uses other\n');
    expect(told(one)).toEqual([['unknown-kind', 'prat'], ['unknown-name', 'other']]);
    expect(spoiled(one)).toEqual(['labour p "P" 1 h']);
  });

  test('a name that looks like one, but for a letter of another alphabet; what stands in quotes is no name', () => {
    expect(codes(resolved('steelyard 1\nshop "S"\n  rate r 1.00\npart sеal "Seal" 5.00 new\nlabour p "P" 1 h\n  uses seal\n'))).toEqual(['strange-character']);
    expect(codes(resolved('steelyard 1\nshop "S"\n  rate r 1.00\nprat q "seal"\nlabour p "P" 1 h\n  uses seal\n'))).toEqual(['unknown-kind', 'unknown-name']);
    // A line without its name: what stands in its place may be the name.
    expect(codes(resolved('steelyard 1\nshop "S"\n  rate r 1.00\npart seal_2 "Seal" 5.00 new\nlabour p "P" 1 h\n  uses seal_2\n'))).toHaveLength(2);
  });

  test('work without a rate, where the rate’s own line can’t be read', () => {
    for (const rate of ['rate bench 1OO.00', 'rate bench', 'rte bench 100.00']) {
      const one = resolved(`steelyard 1\nshop "S"\n  ${rate}\nlabour p "P" 1 h\n`);
      expect(told(one)).toHaveLength(1);
      expect(spoiled(one)).toEqual(['labour p "P" 1 h']);
    }
    // Another line of the shop is no reason.
    expect(codes(resolved('steelyard 1\nshop "S"\n  tax t 5%\nlabour p "P" 1 h\n'))).toEqual(['tax-unclear', 'no-rate']);
  });

  test('a rate to choose, where one of them can’t be read', () => {
    expect(codes(resolved('steelyard 1\nshop "S"\n  rate a 1.00\n  rate b 2.00\n  rate c 3.00 usaul\nlabour p "P" 1 h\n'))).toEqual(['unknown-word']);
    expect(codes(resolved('steelyard 1\nshop "S"\n  rate a 1.00\n  rate b 2.00\nlabour p "P" 1 h\n'))).toEqual(['which-rate']);
  });

  test('a markup, where its line can’t be read', () => {
    expect(codes(resolved('steelyard 1\nshop "S"\n  rate a 1.00\n  markup 5O%\npart p "P" cost 5.00 new\n'))).toHaveLength(1);
    expect(codes(resolved('steelyard 1\nshop "S"\n  rate a 1.00\n  markup to 5.00\npart p "P" cost 5.00 new\n'))).toEqual(['amount-missing']);
    expect(codes(resolved('steelyard 1\nshop "S"\n  rate a 1.00\npart p "P" cost 5.00 new\n'))).toEqual(['no-markup']);
  });

  test('work without a rate is told once, however much there is; all of it is spoiled', () => {
    const one = resolved('steelyard 1\nlabour a "A" 1 h\nlabour b "B" 1 h\nlabour c "C" 1 h\n');
    expect(told(one)).toEqual([['no-rate', '1 h']]);
    expect(spoiled(one)).toEqual(['labour b "B" 1 h', 'labour c "C" 1 h']);
  });

  test('a shop that can’t be told from its first word spoils every option', () => {
    const one = resolved('steelyard 1\nshpo "S"\n  rate r 1.00\noption o "O"\n');
    expect([codes(one), spoiled(one)]).toEqual([['unknown-kind'], ['option o "O"']]);
    const nothing = resolved('steelyard 1\nprat q "Q"\noption o "O"\n');
    expect([codes(nothing), spoiled(nothing)]).toEqual([['unknown-kind'], []]);
  });
});

describe('files', () => {
  test('a file that doesn’t say its form is told at its first line', () => {
    expect(told(resolved('part p "P" 1.00 new\n'))).toEqual([['format-missing', 'part']]);
    expect(told(resolved('# an estimate\n\npart p "P" 1.00 new\n'))).toEqual([['format-missing', 'part']]);
    expect(told(resolved('\ufeffpart p "P" 1.00 new\n'))).toEqual([['format-missing', 'part']]);
    expect(codes(resolved(''))).toEqual(['format-missing']);
    expect(codes(resolved('prat p\npart p "P" 1.00 new\n'))).toEqual(['unknown-kind']); // the first line can't be read
  });

  test('the form stands first, once, and is a number', () => {
    expect(told(resolved('part p "P" 1.00 new\nsteelyard 1\n'))).toEqual([['format-not-first', 'steelyard 1']]);
    expect(told(resolved('steelyard 1\nsteelyard 1\n'))).toEqual([['only-once', 'steelyard 1', 'steelyard 1']]);
    expect(told(resolved('steelyard\n'))).toEqual([['something-missing', 'steelyard']]);
    expect(codes(resolved('steelyard 1O\n'))).toHaveLength(1);
  });

  test('nothing of a newer form is read', () => {
    const newer = resolved('steelyard 2\npart p "P" 1.00 nwe\n');
    expect(told(newer)).toEqual([['format-newer', '2']]);
    expect(newer.estimate.parts).toEqual([]);
    expect(told(resolved('steelyard 1\nuse "new.yard"\nlabour l "L" 1 h uses seal\n', { 'new.yard': 'steelyard 2\npart seal "S" 1.00 new\n' }))).toEqual([['format-newer', '2']]);
  });

  test('a shared file may be empty, and is told of where it is', () => {
    expect(told(resolved('steelyard 1\nuse "empty.yard"\n', { 'empty.yard': '' }))).toEqual([]);
    expect(told(resolved('steelyard 1\nuse "blank.yard"\n', { 'blank.yard': ' \n' }))).toEqual([]);
    expect(told(resolved('steelyard 1\nuse "../out.yard"\n'))).toEqual([['use-outside', '"../out.yard"']]);
    expect(told(resolved('steelyard 1\nuse "a.yard"\n', { 'a.yard': 'steelyard 1\nuse "e.yard"\n' }))).toEqual([['use-circular', '"e.yard"']]);
    expect(told(resolved('steelyard 1\nuse "a.yard"\nlabour l "L" 1 h uses seal\n', { 'a.yard': 'steelyard 1\nuse "e.yard"\n' })).map(([code]) => code)).toEqual(['use-circular', 'unknown-name', 'no-rate']);
  });

  test('is not read on where it has too many problems, and what it may hold is not missed', () => {
    const junk = (count: number) => Array.from({ length: count }, (_, i) => `junk${i}\n`).join('');
    const text = (count: number) => `steelyard 1\n${junk(count)}part late "Late" 1.00 new\noption o "O"\n  fit late\n`;
    const most = limits.problems;
    expect([codes(resolved(text(most))).length, codes(resolved(text(most))).includes('too-many-problems')]).toEqual([most, false]);
    expect(resolved(text(most)).estimate.parts).toHaveLength(1);
    const over = resolved(text(most + 1));
    expect(told(over).filter(([code]) => code !== 'unknown-kind')).toEqual([['too-many-problems', 'part late "Late" 1.00 new']]);
    expect([over.estimate.parts, over.estimate.options]).toEqual([[], []]);
  });

  test('there may be 24 files', () => {
    const files = (count: number) => Object.fromEntries(Array.from({ length: count }, (_, i) => [`f${i}.yard`, 'steelyard 1\n']));
    const using = (count: number) => resolved(`steelyard 1\n${Array.from({ length: count }, (_, i) => `use "f${i}.yard"\n`).join('')}`, files(count));
    expect(told(using(23))).toEqual([]);
    expect(told(using(25))).toEqual([['use-too-many', '"f23.yard"'], ['use-too-many', '"f24.yard"']]);
    expect(using(23).uses).toHaveLength(23);
  });
});

describe('what there is one of', () => {
  test.each(['shop "S"\n  rate r 1.00', 'estimate "E"', 'vehicle "V"', 'started on 2026-11-30', 'closed on 2026-12-09'])('%s', (line) => {
    const head = line.split('\n')[0] as string;
    const twice = resolved(`steelyard 1\n${line}\n${line}\n`);
    expect(told(twice)).toEqual([['only-once', head, head]]);
  });

  test('what an estimate says of itself', () => {
    const { header, notes, vehicle } = resolved('steelyard 1\nestimate "E-1"\n  written 2026-11-24\n  start 2026-11-30\n  valid 14 d\n  answer 1 d\n  technicians 2\n  interest 6%\nvehicle "V"\n  built 2012-11\n  model year 2013\n  worth 7900\nnote "One"\nnote "Two"\n').estimate;
    expect(header).toMatchObject({ title: 'E-1', written: '2026-11-24', start: '2026-11-30', technicians: 2 });
    expect(header?.interest?.likely.toFixed()).toBe('6');
    expect(vehicle).toMatchObject({ title: 'V', built: '2012-11', modelYear: 2013, vin: undefined });
    expect(notes).toEqual(['One', 'Two']);
    expect(resolved('steelyard 1\nestimate "E"\n').estimate.header?.technicians).toBeUndefined();
  });

  test('interest of more than the money itself can hardly be meant', () => {
    expect(told(resolved('steelyard 1\nestimate "E"\n  interest 100%\n'))).toEqual([]);
    expect(told(resolved('steelyard 1\nestimate "E"\n  interest 100.5%\n'))).toEqual([['interest-too-high', '100.5%']]);
  });

  test('what to consider is named', () => {
    expect(told(resolved('steelyard 1\nshop "S"\n  rate r 1.00\nlabour a "A" 1 h\nconsider\n'))).toEqual([['something-missing', 'consider']]);
    expect(told(resolved('steelyard 1\nconsider 5\n'))).toHaveLength(1);
    const one = resolved('steelyard 1\nshop "S"\n  rate r 1.00\nlabour a "A" 1 h\nlabour b "B" 1 h\nconsider a\nconsider b, a\n');
    expect([told(one), one.estimate.consider.map(({ name }) => name)]).toEqual([[], ['a', 'b', 'a']]);
  });
});
