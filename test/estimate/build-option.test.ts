import { describe, expect, test } from 'vitest';
import { called, marked, resolved, told, wordsOf } from './estimated.js';

const BASE = `steelyard 1
shop "S"
  rate bench 100.00
access front "Front off"
  remove 1 h
labour strip "Strip" 2 h
  needs drain
  uses seal, wash
labour drain "Drain" 1 h
part seal "Seal" 4.00 new
part belt "Belt" 20.00 new
sublet wash "Wash" 9.00
sublet face "Face" 9.00
fee tow "Tow" 80.00
finding seen "Seen"
`;
const option = (...below: readonly string[]) => resolved(`${BASE}option o "O"\n${below.map((line) => `  ${line}\n`).join('')}`);
const first = (...below: readonly string[]) => option(...below).estimate.options[0];

describe('an option', () => {
  test('has its own lines and those that it names, with what they bring, each once', () => {
    const one = first('do strip, drain', 'fit belt, seal', 'send face, wash', 'charge tow', 'labour "Own" 1 h uses belt', 'part "P" 1.00 new', 'sublet "Q" 1.00', 'fee "F" 1.00', 'harvest "Alternator" 85.00', 'because seen');
    expect([one?.labour, one?.parts, one?.sublets, one?.fees, one?.harvests, one?.because].map((list) => called(list ?? []))).toEqual([['strip', 'drain', 'Own'], ['seal', 'belt', 'P'], ['wash', 'face', 'Q'], ['tow', 'F'], ['Alternator'], ['seen']]);
  });

  test('says more of itself, or nothing', () => {
    const one = first('worth 8000', 'warranty 3 mo', 'lasts 36 mo', 'resale 2600', 'leaves out "Paint", "Glass"', 'note "N"', 'caution fuel, oil', 'way front');
    expect([one?.worth, one?.warranty, one?.lasts, one?.resale].map((amount) => amount?.likely.toFixed())).toEqual(['8000', '3', '36', '2600']);
    expect([one?.leavesOut, one?.notes, one?.cautions, called(one?.way ?? []), one?.wayAt === undefined ? undefined : marked(one.wayAt), one?.written]).toEqual([['Paint', 'Glass'], ['N'], ['fuel', 'oil'], ['front'], 'front', true]);
    expect(first()).toMatchObject({ labour: [], parts: [], sublets: [], fees: [], harvests: [], chances: [], because: [], leavesOut: [], notes: [], cautions: [], way: undefined, wayAt: undefined, worth: undefined, staged: undefined });
  });

  test('names each thing once', () => {
    expect(told(option('do strip, strip', 'fit belt, belt', 'send face, face', 'charge tow, tow')).map(([code, at]) => [code, at])).toEqual([['said-before', 'strip'], ['said-before', 'belt'], ['said-before', 'face'], ['said-before', 'tow']]);
  });

  test('lasts a month at least, short as it may last', () => {
    expect(told(option('lasts 1 mo'))).toEqual([]);
    expect(told(option('lasts 31 d'))).toEqual([]);
    expect(told(option('lasts 30 d'))).toEqual([['service-of-nothing', '30 d']]); // a month has 30.44 days on average
    expect(told(option('lasts 0 / 12 / 24 mo'))).toEqual([['service-of-nothing', '0 / 12 / 24 mo']]);
  });

  test('a piece that is taken off says what it is worth', () => {
    expect(told(option('harvest "Alternator"'))).toEqual([['amount-missing', 'harvest "Alternator"']]);
    expect(told(option('harvest "Alternator" 8,500')).map(([code]) => code)).toEqual(['thousands-comma']);
    expect(told(option('harvest 85.00')).map(([code]) => code)).toEqual(['title-missing']);
    expect(first('harvest 85.00')?.harvests).toEqual([]);
  });
});

describe('how much an option may bring', () => {
  const parts = (count: number) => Array.from({ length: count }, (_, i) => `part "P${i}" 1.00 new`);

  test('up to a thousand lines of a kind', () => {
    expect(told(option(...parts(1000)))).toEqual([]);
    const over = option(...parts(1001));
    expect(told(over)).toEqual([['too-many-lines', 'option o "O"']]);
    expect(wordsOf(over, 'too-many-lines')).toContain('more than 1000 parts');
    expect(over.estimate.options[0]?.parts).toHaveLength(1000);
  });

  test('up to five thousand together; the first whatever it brings', () => {
    const shared = Array.from({ length: 1000 }, (_, i) => `part p${i} "P" 1.00 new\n`).join('');
    const all = Array.from({ length: 10 }, (_, line) => `  fit ${Array.from({ length: 100 }, (__, i) => `p${100 * line + i}`).join(', ')}\n`).join('');
    const many = (options: number, last = '') => resolved(`steelyard 1\nshop "S"\n  rate r 1.00\n${shared}${Array.from({ length: options }, (_, i) => `option o${i} "O"\n${all}`).join('')}${last}`);
    expect(told(many(5))).toEqual([]);
    const over = many(5, 'option last "L"\n  part "One more" 1.00 new\noption none "N"\n');
    expect(told(over)).toEqual([['too-long-in-all', 'option last "L"']]);
    expect(wordsOf(over, 'too-long-in-all')).toContain('up to 5000 lines');
    expect(over.estimate.options).toHaveLength(5);
    const byChance = many(5, 'option last "L"\n  chance "C" 5%\n    part "One more" 1.00 new\n');
    expect(told(byChance).map(([code]) => code)).toEqual(['too-long-in-all']);
  });

  test('there are up to forty options', () => {
    const many = (count: number) => resolved(`${BASE}${Array.from({ length: count }, (_, i) => `option o${i} "O"\n`).join('')}`);
    expect(told(many(40))).toEqual([]);
    expect(told(many(42))).toEqual([['too-many-options', 'option o40 "O"']]);
    expect(many(42).estimate.options).toHaveLength(40);
  });
});
