import { describe, expect, test } from 'vitest';
import { createLanguageService } from '../../../src/service/index.js';
import { MemoryHost } from '../../support/fixture.js';
import { cursorIn, URI } from './cursor.js';

const HEAD = 'steelyard 1\nshop "Bench"\n  rate bench 100.00\noption fix "Fix"\n  worth 10\n';

function pasted(rows: string, marked = `${HEAD}  $0`): { readonly text: string; readonly count: number } | undefined {
  const { service, offset } = cursorIn(marked);
  return service.pastedRows(URI, offset, rows);
}

const lines = (rows: string) => pasted(rows)?.text.split('\n').map((line) => line.replace(/^ {2}/, ''));

/** Tables as they are copied, and the lines they become. */
const tables: readonly (readonly [string, string, readonly string[]])[] = [
  ['tabs, number, description, quantity, price, total', 'ZX-4411\tHead gasket set\t1\t118.00\t118.00\nZX-9002\tHead bolts\t8\t5.85\t46.80', [
    'part "Head gasket set"  1 at 118.00 new  # ZX-4411', 'part "Head bolts"       8 at   5.85 new  # ZX-9002']],
  ['a header row in another order', 'Qty\tDescription\tPart No.\tUnit Price\tTotal\n2\tSeal\tQ-17\t$4.50\t$9.00', ['part "Seal"  2 at 4.50 new  # Q-17']],
  ['semicolons and decimal commas', 'Gasket;1;64,30\nBolt;12;5,85', ['part "Gasket"   1 at 64.30 new', 'part "Bolt"    12 at  5.85 new']],
  ['runs of spaces', 'Coolant pump   1   92.00\nDrive belt     2   24.50', ['part "Coolant pump"  1 at 92.00 new', 'part "Drive belt"    2 at 24.50 new']],
  ['description and price', 'Used engine\t$1,350.00', ['part "Used engine"  1 at 1350.00 new']],
  ['thousands and decimal commas together', 'Engine\t1\t1.350,00 €\nSeal\t2\t4,10 €', ['part "Engine"  1 at 1350.00 new', 'part "Seal"    2 at    4.10 new']],
  ['a total that disagrees', 'Bolt\t8\t5.85\t46.90', ['part "Bolt"  8 at 5.85 new  # check: 8 at 5.85 is 46.80, the list says 46.90']],
  ['a number and a total that disagrees', 'B-77\tBolt\t8\t5.85\t46.90', ['part "Bolt"  8 at 5.85 new  # B-77; check: 8 at 5.85 is 46.80, the list says 46.90']],
  ['a row that is no part', 'Bolt\t8\t5.85\nask for the seals too\nNut\t2\t1.10', ['part "Bolt"  8 at 5.85 new', '# ask for the seals too', 'part "Nut"   2 at 1.10 new']],
  ['sums below', 'Bolt\t8\t5.85\nNut\t8\t1.00\nTotal\t\t54.80', ['part "Bolt"  8 at 5.85 new', 'part "Nut"   8 at 1.00 new', '# Total    54.80']],
  ['a credit', 'Bolt\t8\t5.85\nNut\t1\t1.10\nReturned\t1\t-4.00', ['part "Bolt"  8 at 5.85 new', 'part "Nut"   1 at 1.10 new', '# Returned  1  -4.00']],
  ['units of the language and of lists', 'Coolant\t11 L\t4.10\nSeal\t2 pcs\t3.00', ['part "Coolant"  11 L at 4.10 new', 'part "Seal"      2   at 3.00 new']],
  ['positions in front', '1\tBolt\t8\t5.85\t46.80\n2\tNut\t3\t1.00\t3.00', ['part "Bolt"  8 at 5.85 new', 'part "Nut"   3 at 1.00 new']],
  ['quotes in a description', 'Hose 2"\t1\t9.00', ['part "Hose 2\\""  1 at 9.00 new']],
  ['cells in quotes', '"Bolt, long";2;"1,50"', ['part "Bolt, long"  2 at 1.50 new']],
  ['quantity and total under heads', 'Description\tQty\tTotal\nBolt\t8\t46.80\nNut\t3\t1.00', ['part "Bolt"  8 at 5.85 new', '# Nut  3  1.00']],
  ['a figure that could be two', 'Description\tQty\tPrice\nEngine\t1\t1,350\nBolt\t2\t3', ['# Engine  1  1,350', 'part "Bolt"  2 at 3.00 new']],
  ['heads of a name and a price', 'Part\tPrice\nBolt\t3', ['part "Bolt"  1 at 3.00 new']],
  ['currency codes', 'Bolt\t8\tUSD 5.85', ['part "Bolt"  8 at 5.85 new']],
];

describe('rows as part lines', () => {
  test.each(tables)('%s', (_, rows, wanted) => {
    expect(lines(rows)).toEqual(wanted);
    expect(pasted(rows)?.count).toBe(wanted.filter((line) => line.startsWith('part')).length);
  });

  test.each(tables)('%s: the lines are read without a message', (_, rows) => {
    const host = new MemoryHost();
    host.set('estimate.yard', `${HEAD}  ${pasted(rows)?.text ?? ''}\n`);
    expect(createLanguageService(host).diagnostics(URI)).toEqual([]);
  });

  test.each([
    ['an empty line at the left edge', 'steelyard 1\n\n$0', 'part "Bolt"  8 at 5.85 new\npart "Nut"   1 at 1.10 new'],
    ['right below an option', `${HEAD}$0`, '  part "Bolt"  8 at 5.85 new\n  part "Nut"   1 at 1.10 new'],
    ['half indented', `${HEAD} $0`, ' part "Bolt"  8 at 5.85 new\n  part "Nut"   1 at 1.10 new'],
    ['too far indented', `${HEAD}     $0`, '\n  part "Bolt"  8 at 5.85 new\n  part "Nut"   1 at 1.10 new'],
    ['at the end of a line', 'steelyard 1\noption a "A"$0', '\n  part "Bolt"  8 at 5.85 new\n  part "Nut"   1 at 1.10 new'],
    ['below tabs', 'steelyard 1\noption a "A"\n\tworth 1\n\t$0', 'part "Bolt"  8 at 5.85 new\n\tpart "Nut"   1 at 1.10 new'],
  ])('indented for %s', (_, marked, wanted) => {
    expect(pasted('Bolt\t8\t5.85\nNut\t1\t1.10', marked)?.text).toBe(wanted);
  });

  test('a last line end stays', () => {
    expect(pasted('Bolt\t8\t5.85\n')?.text).toBe('part "Bolt"  8 at 5.85 new\n');
  });
});

describe('anything else is left alone', () => {
  test.each([
    ['a sentence', 'The engine ran hot, twice.'], ['several', 'First this.\nThen that; and more.'], ['nothing', ''], ['a word', 'pump'], ['a figure', '64.30'],
    ['lines of an estimate', 'part seal   "Seal"   2 at 4.10 new\npart bolt   "Bolt"   cost 4.10 new'], ['a fact', '  worth     6400.00'], ['two columns of anything', 'Cylinder\t4\nPlug\t3'],
    ['a table of readings', 'Cylinder\tDry\tWet\n1\t171\t175\n2\t168\t170'], ['names only', 'Bolt\tlong\nNut\tshort'],
  ])('%s', (_, text) => {
    expect(pasted(text)).toBeUndefined();
  });

  test('and so are rows pasted into a text or a comment', () => {
    expect(pasted('Bolt\t8\t5.85', `${HEAD}  # $0`)).toBeUndefined();
    expect(pasted('Bolt\t8\t5.85', `${HEAD}  note "$0"`)).toBeUndefined();
  });
});
