import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Symbol } from '../../../src/service/index.js';
import { anyText } from '../../language/noise.js';
import { serviceOver, uriOf } from '../../support/fixture.js';
import { runs } from '../../support/random-runs.js';
import { atCursor, said } from './cursor.js';

const uri = uriOf('estimate.yard');
const over = (text: string) => serviceOver({ 'estimate.yard': text }).service;

const TEXT = `steelyard 1
# What this is about,
# in two lines.
shop "Corner Bay"
  rate bench "Bench" 100.00
  # Rounded by the clerk
  # at the counter.
  tax sales 10% on parts
access out "Engine out"
  remove 2 h
  refit 3 h
labour pump "Pump: replace" 2 h  # in the car
  takes 1 h with out
  uses pump
part pump "Coolant pump" 2 at 30.00 new
  core 10.00 due 30 d
    keeps "Cover" less 1.00

option repair "Replace the pump"
  do pump
  labour "Road test" 0.5 h
  way out
  fee "Disposal" 14.50
`;

describe('folding', () => {
  test('takes lines with lines below them, and runs of comments', () => {
    const lines = TEXT.split('\n');
    expect(over(TEXT).folding(uri).map(({ startLine, endLine, kind }) => `${kind}: ${lines[startLine]?.trim() ?? ''} … ${lines[endLine]?.trim() ?? ''}`)).toEqual([
      'comment: # What this is about, … # in two lines.',
      'lines: shop "Corner Bay" … tax sales 10% on parts',
      'comment: # Rounded by the clerk … # at the counter.',
      'lines: access out "Engine out" … refit 3 h',
      'lines: labour pump "Pump: replace" 2 h  # in the car … uses pump',
      'lines: part pump "Coolant pump" 2 at 30.00 new … keeps "Cover" less 1.00',
      'lines: core 10.00 due 30 d … keeps "Cover" less 1.00',
      'lines: option repair "Replace the pump" … fee "Disposal" 14.50',
    ]);
  });

  test('nests, and stays within the file, for any text', () => {
    fc.assert(fc.property(anyText, (text) => {
      const ranges = over(text).folding(uri);
      const lines = text.split('\n').length;
      for (const { startLine, endLine } of ranges) {
        expect(startLine).toBeLessThan(endLine);
        expect(endLine).toBeLessThan(lines);
      }
      ranges.forEach((a, i) => {
        for (const b of ranges.slice(i + 1)) {
          const apart = b.startLine > a.endLine || a.startLine > b.endLine;
          const within = b.startLine >= a.startLine && b.endLine <= a.endLine;
          expect(apart || within).toBe(true);
        }
      });
    }), runs(21, 40));
  });
});

describe('selection', () => {
  const grown = (fixture: string) => {
    const at = atCursor(fixture);
    const text = at.texts['estimate.yard'] as string;
    return at.service.selectionRanges(at.uri, at.offset).map(({ start, end }) => text.slice(start, end).replace(/\n[^]*\n/, ' … '));
  };

  test('grows from word over slot and line to block and file', () => {
    expect(grown(TEXT.replace('with out', 'with o$0ut'))).toEqual([
      'out', 'with out', 'takes 1 h with out',
      'labour pump "Pump: replace" 2 h  # in the car …   uses pump',
      'steelyard 1 … ',
    ]);
    expect(grown(TEXT.replace('30.00', '30$0.00'))).toEqual([
      '30.00', '2 at 30.00 new', 'part pump "Coolant pump" 2 at 30.00 new',
      'part pump "Coolant pump" 2 at 30.00 new …     keeps "Cover" less 1.00', 'steelyard 1 … ',
    ]);
  });

  test('takes the words of a title before its quotes, and a line before its comment', () => {
    expect(grown(TEXT.replace('"Pump: ', '"Pump: $0')).slice(0, 4)).toEqual(['Pump: replace', '"Pump: replace"', 'labour pump "Pump: replace" 2 h', 'labour pump "Pump: replace" 2 h  # in the car']);
    expect(grown(TEXT.replace('in the car', 'in $0the car')).slice(0, 2)).toEqual(['# in the car', 'labour pump "Pump: replace" 2 h  # in the car']);
    expect(grown(TEXT.replace('less 1.00', 'less 1.0$00')).slice(0, 4)).toEqual(['1.00', 'less 1.00', 'keeps "Cover" less 1.00', 'core 10.00 due 30 d\n    keeps "Cover" less 1.00']);
  });

  test('grows, holds the place, and ends with the file, for any text', () => {
    fc.assert(fc.property(anyText, fc.double({ min: 0, max: 1, noNaN: true }), (text, share) => {
      const offset = Math.floor(share * text.length);
      const ranges = over(text).selectionRanges(uri, offset);
      expect(ranges[ranges.length - 1]).toEqual({ start: 0, end: text.length });
      ranges.forEach(({ start, end }, i) => {
        expect(start <= offset && offset <= end).toBe(true);
        const wider = ranges[i + 1];
        if (wider !== undefined) expect(wider.start <= start && wider.end >= end && wider.end - wider.start > end - start).toBe(true);
      });
    }), runs(22, 100));
  });
});

describe('symbols', () => {
  const outline = (symbols: readonly Symbol[], depth = 0): string[] => symbols.flatMap((one) => [`${'  '.repeat(depth)}${one.kind}: ${one.name}${one.detail === '' ? '' : ` | ${one.detail}`}`, ...outline(one.children, depth + 1)]);

  test('are the lines of the file, options with what they do below them', () => {
    expect(outline(over(TEXT).symbols(uri))).toEqual([
      'shop: Corner Bay',
      '  other: Bench | 100.00',
      '  other: sales',
      'access: Engine out | 500.00',
      'labour: Pump: replace | 100.00',
      'part: Coolant pump | 60.00',
      'option: Replace the pump | 750.50',
      '  labour: Pump: replace | 100.00',
      '  labour: Road test | 50.00',
      '  fee: Disposal | 14.50',
    ]);
  });

  test('have words, and lie within their parents, for any text', () => {
    fc.assert(fc.property(anyText, (text) => {
      const visit = (symbols: readonly Symbol[], start: number, end: number): void => {
        for (const one of symbols) {
          expect(one.name).not.toBe('');
          expect(start <= one.range.start && one.range.end <= end && one.range.start <= one.nameRange.start && one.nameRange.end <= one.range.end).toBe(true);
          visit(one.children, one.range.start, one.range.end);
        }
      };
      visit(over(text).symbols(uri), 0, text.length);
    }), runs(23, 40));
  });

  test('of a workspace are found by name and title', () => {
    const texts = { 'a.yard': TEXT, 'b.yard': 'steelyard 1\npart hose "Pump hose" 3.00 new\n' };
    const { service } = serviceOver(texts);
    const found = (query: string) => service.workspaceSymbols(query, [uriOf('a.yard'), uriOf('b.yard'), uriOf('gone.yard')]).map(({ name, kind, place }) => `${kind} ${name} at ${said(texts, place)}`);
    expect(found('PUMP')).toEqual(['labour pump, Pump: replace at a.yard:12: pump', 'part pump, Coolant pump at a.yard:15: pump', 'option repair, Replace the pump at a.yard:19: repair', 'part hose, Pump hose at b.yard:2: hose']);
    expect(found('pump hose')).toEqual(['part hose, Pump hose at b.yard:2: hose']);
    expect(found('').length).toBe(6);
  });
});

describe('totals using a line', () => {
  const using = (fixture: string) => {
    const { service, uri: at, offset } = atCursor(fixture);
    return service.totalsUsing(at, offset).map(({ option, figure, amount }) => `${option}: ${figure} ${amount}`);
  };
  const two = `${TEXT}option leave "Leave it"\n  fee "Disposal" 14.50\n`;

  test('name its own line in the options that have it', () => {
    expect(using(two.replace('labour pump', 'lab$0our pump'))).toEqual(['repair: repair.line.3 100.00']);
    expect(using(two.replace('takes 1', 'ta$0kes 1'))).toEqual(['repair: repair.line.3 100.00']);
    expect(using(two.replace('access out', 'acc$0ess out'))).toEqual(['repair: repair.line.1 200.00', 'repair: repair.line.2 300.00']);
    expect(using(two.replace('refit 3', 'refit $03'))).toEqual(['repair: repair.line.2 300.00']);
    expect(using(two.replace('core 10', 'core $010'))).toEqual(['repair: repair.line.6 20.00']);
  });

  test('name the sums that it comes into otherwise', () => {
    expect(using(two.replace('rate bench', 'ra$0te bench'))).toEqual(['repair: repair.total 750.50']);
    expect(using(two.replace('tax sales', 'tax $0sales'))).toEqual(['repair: repair.tax 6.00', 'leave: leave.tax 0.00']);
    expect(using(two.replace('option repair', 'opt$0ion repair'))).toEqual(['repair: repair.total 750.50']);
    expect(using(two.replace('keeps "', 'ke$0eps "'))).toEqual(['repair: repair.comes-back 19.00']);
  });

  test('are none for a way of doing it that no option takes, or where nothing is said', () => {
    expect(using(two.replace('  takes 1 h with out', '  takes 1 h with out\n  takes 8$0 h with out, in-between'))).toEqual([]);
    expect(using(`${two}\n$0\n`)).toEqual([]);
    expect(using(two.replace('# What', '# $0What'))).toEqual([]);
  });

  test('have the names that figures have', async () => {
    const { namedFigures } = await import('../../../src/report/index.js');
    const service = over(two);
    const names = namedFigures(service.weighing(uri).comparison);
    for (let offset = 0; offset < two.length; offset += 3) for (const { figure } of service.totalsUsing(uri, offset)) expect(names.has(figure)).toBe(true);
  });
});
