import { readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, test } from 'vitest';
import { comparisonText, widthOf } from '../../src/report/index.js';
import { listWithin, optionsWithin } from '../../src/report/narrow-table.js';
import { layOut, type Row } from '../../src/report/table.js';
import { serviceOver, uriOf } from '../support/fixture.js';

const rows: readonly Row[] = [
  { cells: ['USD', 'rebuild', 'used', 'exchange'] },
  'gap',
  { cells: ['Getting in and closing up', '2,168.60', '2,168.60', '2,168.60'] },
  { cells: ['Cost in each month of service', '', '', '165.74'] },
  'rule',
  { cells: ['Total', '6,014.71', '5,858.59', '9,958.35'] },
  { cells: ['  if everything comes in low', '5,618.71', '5,314.09', '9,628.35'] },
];

describe('options within so many columns', () => {
  test('as they are where there is room', () => {
    for (const width of [59, 100, Infinity]) expect(optionsWithin(width, rows)).toEqual(layOut(rows));
  });

  test('words give way first', () => {
    expect(optionsWithin(54, rows)).toEqual([
      'USD                      rebuild      used  exchange',
      '',
      'Getting in and closing  2,168.60  2,168.60  2,168.60',
      '  up',
      'Cost in each month of                         165.74',
      '  service',
      '                        ────────  ────────  ────────',
      'Total                   6,014.71  5,858.59  9,958.35',
      '  if everything comes   5,618.71  5,314.09  9,628.35',
      '    in low',
    ]);
  });

  test('then options stand below each other, without rows that have nothing to say of them', () => {
    expect(optionsWithin(40, rows)).toEqual([
      'USD                rebuild      used',
      '',
      'Getting in and    2,168.60  2,168.60',
      '  closing up',
      '                  ────────  ────────',
      'Total             6,014.71  5,858.59',
      '  if everything   5,618.71  5,314.09',
      '    comes in low',
      '',
      'USD                            exchange',
      '',
      'Getting in and closing up      2,168.60',
      'Cost in each month of service    165.74',
      '                               ────────',
      'Total                          9,958.35',
      '  if everything comes in low   9,628.35',
    ]);
  });

  test('a figure that alone is wider is not cut', () => {
    const figure = '1,234,567,890,123.45';
    expect(optionsWithin(10, [{ cells: ['Total', figure, figure] }])).toEqual([`Total  ${figure}`, '', `Total  ${figure}`]);
  });
});

test('a list within so many columns: words give way, and then figures go below them', () => {
  const list: readonly Row[] = [{ cells: ['rebuild', 'engine-out + lifted (chosen)', '6,014.71', '28.9 h'] }, { cells: ['', 'in the car', '7,014.71', '38.9 h'] }];
  expect(listWithin(55, list, 1, [0, 1])).toEqual(layOut(list, [0, 1]));
  expect(listWithin(45, list, 1, [0, 1])).toEqual([
    'rebuild  engine-out +       6,014.71  28.9 h',
    '           lifted (chosen)',
    '         in the car         7,014.71  38.9 h',
  ]);
  expect(listWithin(30, list, 1, [0, 1])).toEqual(['rebuild: engine-out + lifted', '  (chosen)', '    6,014.71  28.9 h', 'in the car', '    7,014.71  38.9 h']);
});

const samples = path.resolve(import.meta.dirname, '../../samples');
const read = (name: string) => readFileSync(path.join(samples, name), 'utf8');

describe.each(['pilgrim-v6', 'tarn-inline', 'kestrel-flat', 'heron-pump', 'osprey-tear-down'])('%s in a narrow terminal', (name) => {
  const decision = serviceOver({ 'job.yard': read(`${name}.yard`), 'shop.yard': read('shop.yard') }).service.decision(uriOf('job.yard'));
  const wide = comparisonText(decision);
  const money = (text: string) => (text.match(/\d[\d,]*\.\d\d(?!\d)/g) ?? []).sort();
  const words = (text: string) => new Set(text.split(/\s+/));
  // A heading is one line, which the terminal breaks.
  const heads = new Set([...wide.split('\n\n')[0]?.split('\n') ?? [], 'What would turn the choice, nearest first']);

  test.each([40, 52, 66, 80, 95])('%i columns: no line is longer, no figure and no word is lost', (width) => {
    const text = comparisonText(decision, undefined, undefined, width);
    expect(text.split('\n').filter((line) => widthOf(line) > width && !heads.has(line))).toEqual([]);
    expect(money(text)).toEqual(money(wide));
    expect([...words(wide)].filter((word) => !words(text).has(word) && !word.startsWith('─'))).toEqual([]);
  });

  test('a place with room enough changes nothing, and one too narrow for anything is written for as if it had some', () => {
    expect(comparisonText(decision, undefined, undefined, 200)).toBe(wide);
    expect(comparisonText(decision, undefined, undefined, 1)).toBe(comparisonText(decision, undefined, undefined, 40));
  });
});
