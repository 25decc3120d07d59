import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { LanguageService } from '../../../src/service/index.js';
import { anyText } from '../../language/noise.js';
import { serviceOver, uriOf } from '../../support/fixture.js';
import { runs } from '../../support/random-runs.js';

const uri = uriOf('e.yard');
const over = (text: string, more: Readonly<Record<string, string>> = {}): LanguageService => serviceOver({ 'e.yard': text, ...more }).service;

const TEXT = `steelyard 1
shop "Corner Bay"
  rate bench "Bench" 100.00
  markup 50%
  fee supplies "Supplies" 10% of labour
access out "Engine out"
  remove 2 h
  refit 3 h
access tray "Tray off"
  remove 1 h
labour pump "Pump: replace"
  takes 9 h
  takes 2 / 3 / 4 h with out
  uses pump
labour seal "Rear seal" 1 h with out
labour chain "Chain: replace" 4 h
finding leaks "Leaks"
part pump "Coolant pump" cost 20.00 new   # with seal
part hose "Hose" 9.00 new
part mat "Mat" 3.00 customer-supplied
option in-place "Engine in its place"
  do pump
  way in-car
option lifted-out "Engine out"
  do pump, seal
  fit hose, mat
  part "Clips" 3 at 2.00 new
option leave "Leave it"
  fee "Disposal" 14.50
`;

const lineAt = (text: string, offset: number) => text.slice(text.lastIndexOf('\n', offset - 1) + 1, offset).trim();

describe('amounts at the ends of lines', () => {
  const hints = (text: string, service = over(text)) => service.inlayHints(uri, { start: 0, end: text.length }).map(({ offset, label }) => `${lineAt(text, offset)} → ${label}`);

  test('stand where an option uses the line and the amount is not on it already', () => {
    expect(hints(TEXT)).toEqual([
      'fee supplies "Supplies" 10% of labour → 90.00',
      'remove 2 h → 200.00',
      'refit 3 h → 300.00',
      'labour pump "Pump: replace" → 300.00 to 900.00',
      'labour seal "Rear seal" 1 h with out → 100.00',
      'part pump "Coolant pump" cost 20.00 new   # with seal → 30.00',
      'part "Clips" 3 at 2.00 new → 6.00',
    ]);
  });

  test('say option by option how they came about', () => {
    const service = over(TEXT);
    const says = service.inlayHints(uri, { start: 0, end: TEXT.length }).find(({ label }) => label === '300.00 to 900.00')?.says;
    expect(says).toBe('900.00 = 9.0 h × 100.00 in in-place; 300.00 (200.00 to 400.00) = 3.0 h (2.0 h to 4.0 h) × 100.00 in lifted-out');
  });

  test('are told for the lines asked for, and for none in a shared file alone', () => {
    const at = TEXT.indexOf('labour seal');
    expect(over(TEXT).inlayHints(uri, { start: at, end: at + 40 }).map(({ label }) => label)).toEqual(['100.00']);
    expect(hints(TEXT.slice(0, TEXT.indexOf('option in-place')))).toEqual([]);
    expect(over(TEXT).inlayHints(uriOf('gone.yard'), { start: 0, end: 9 })).toEqual([]);
  });

  test('follow a change of rate', () => {
    const { service, host } = serviceOver({ 'e.yard': TEXT });
    hints(TEXT, service);
    const dearer = TEXT.replace('"Bench" 100.00', '"Bench" 200.00');
    host.set('e.yard', dearer);
    expect(hints(dearer, service)).toEqual(hints(dearer));
    expect(hints(dearer, service)).toContain('labour seal "Rear seal" 1 h with out → 200.00');
  });
});

describe('lines above options and ways in', () => {
  const lenses = (text: string) => over(text).lenses(uri).map(({ range, label, figure }) => `${text.slice(range.start, range.end).split(' "')[0] ?? ''}: ${label} [${figure ?? ''}]`);

  test('tell totals, who is cheapest, and who shares a way in', () => {
    expect(lenses(TEXT)).toEqual([
      'access out: paid once, shared by 2 jobs in lifted-out [lifted-out.access]',
      'option in-place: 1,020.00 · +1,005.50 [in-place.total]',
      'option lifted-out: 1,035.00 · +1,020.50 [lifted-out.total]',
      'option leave: 14.50 · cheapest [leave.total]',
    ]);
  });

  test('count jobs option by option, also those that an included way in serves', () => {
    const text = TEXT.replace('access tray', 'access more "All out"\n  includes out\n  remove 6 h\naccess tray').replace('way in-car', 'way more');
    expect(lenses(text).slice(0, 2)).toEqual(['access out: paid once, shared by 2 jobs in lifted-out [lifted-out.access]', 'access more: paid once, for 1 job in in-place [in-place.access]']);
  });

  test('add the cost in all where options are compared by that, and nothing to compare with where there is one', () => {
    const worth = TEXT.replace('access out', 'vehicle "Van"\n  worth 5000.00\naccess out').replace('option leave "Leave it"\n', 'option leave "Leave it"\n  worth 1000.00\n');
    expect(lenses(worth).slice(1)).toEqual([
      'option in-place: 1,020.00 · cheapest [in-place.total]',
      'option lifted-out: 1,035.00 · +15.00 [lifted-out.total]',
      'option leave: 14.50 · 4,014.50 in all · +2,994.50 [leave.total]',
    ]);
    expect(lenses('steelyard 1\noption one "One"\n  fee "F" 2.00\n')).toEqual(['option one: 2.00 [one.total]']);
    expect(lenses('steelyard 1\noption one "One"\n  fee "F" 2.00\noption two "Two"\n  fee "F" 2.00\n')).toEqual(['option one: 2.00 · cheapest [one.total]', 'option two: 2.00 · the same as one [two.total]']);
  });

  test('say where an option is not weighed', () => {
    expect(lenses(TEXT.replace('14.50', '1,4.50'))[3]).toBe('option leave: Not weighed: a line that it rests on can’t be read or reached [leave.total]');
  });
});

describe('names by their kind', () => {
  const tokens = (text: string, more: Readonly<Record<string, string>> = {}) => over(text, more).semanticTokens(uri).map(({ range, type, gives, unused }) => `${text.slice(range.start, range.end)}: ${type}${gives ? ' given' : ''}${unused ? ' unused' : ''}`);

  test('are told where they are given and used, and where nothing uses them', () => {
    expect(tokens(TEXT)).toEqual([
      'bench: rate given', 'supplies: fee given', 'out: access given', 'tray: access given unused',
      'pump: labour given', 'out: access', 'pump: part', 'seal: labour given', 'out: access', 'chain: labour given unused',
      'leaks: finding given unused', 'pump: part given', 'hose: part given', 'mat: part given',
      'in-place: option given', 'pump: labour', 'lifted-out: option given', 'pump: labour', 'seal: labour', 'hose: part', 'mat: part', 'leave: option given',
    ]);
  });

  test('are unknown where nothing has them, and come from other files too', () => {
    expect(tokens('steelyard 1\nuse "s.yard"\noption a "A"\n  fit hose, pipe\n', { 's.yard': 'steelyard 1\npart hose "Hose" 3.00 new\n' })).toEqual(['a: option given', 'hose: part', 'pipe: unknown']);
  });

  test('of chances have no colour of their own, and what only a chance names is used', () => {
    expect(tokens('steelyard 1\npart head "Head" 3.00 used\nlabour fit "Fit" 1 h\nlabour strip "Strip" 1 h\n  after fit\n  chance cracked "Cracked" 5% do fit\n    fit head\noption a "A"\n  do strip\ninspect look "Look" 5.00\n  finds cracked 90%\ncoverage "C" recall years 2013 covers a\n')).toEqual([
      'head: part given', 'fit: labour given', 'strip: labour given', 'fit: labour', 'fit: labour', 'head: part', 'a: option given', 'strip: labour', 'a: option',
    ]);
  });

  test('of a file without options are never unused', () => {
    expect(tokens('steelyard 1\npart hose "Hose" 3.00 new\n')).toEqual(['hose: part given']);
  });

  test('lie apart from each other and in order, for any text', () => {
    fc.assert(fc.property(anyText, (text) => {
      let last = 0;
      for (const { range } of over(text).semanticTokens(uri)) {
        expect(range.start).toBeGreaterThanOrEqual(last);
        expect(range.end).toBeGreaterThan(range.start);
        last = range.end;
      }
      expect(last).toBeLessThanOrEqual(text.length);
    }), runs(41, 50));
  });

  test('hints and lenses lie in the file, for any text', () => {
    fc.assert(fc.property(anyText, (text) => {
      const service = over(text);
      for (const { offset } of service.inlayHints(uri, { start: 0, end: text.length })) expect(offset).toBeLessThanOrEqual(text.length);
      for (const { range } of service.lenses(uri)) expect(range.start < range.end && range.end <= text.length).toBe(true);
      service.status(uri);
    }), runs(42, 40));
  });
});

describe('status', () => {
  const short = (text: string) => over(text).status(uri)?.short;

  test('is the cheapest option and its margin', () => {
    expect(short(TEXT)).toBe('leave −1,005.50');
    expect(over(TEXT).status(uri)?.full).toContain('Leave it costs 14.50: 1,005.50 less than the next, Engine in its place.');
  });

  test('is the total of a single option, a tie, or that nothing can be weighed', () => {
    expect(short('steelyard 1\noption one "One"\n  fee "F" 2.00\n')).toBe('one 2.00');
    expect(short('steelyard 1\noption one "One"\n  fee "F" 2.00\noption two "Two"\n  fee "F" 2.00\n')).toBe('one = two');
    expect(short('steelyard 1\noption one "One"\n  fee "F" 2,00\n')).toBe('not weighed yet');
  });

  test('is nothing in a file without options', () => {
    expect(short('steelyard 1\npart hose "Hose" 3.00 new\n')).toBeUndefined();
    expect(over(TEXT).status(uriOf('gone.yard'))).toBeUndefined();
  });
});
