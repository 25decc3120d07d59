import { describe, expect, test } from 'vitest';
import { serviceOver, uriOf } from '../../support/fixture.js';

// Without its estimate line a file got no check of the trade, and nothing said so.

const SHOP = 'shop "S"\n  workday 8 h\n  rate bench 100.00\n  tax sales 7% on parts\n';
const VEHICLE = 'vehicle "Van"\n';
const TWO = 'labour seal "Front seal" 2 h\noption one "Mend it"\n  do seal\n  warranty 12 mo\noption two "Mend it later"\n  do seal\n  warranty 12 mo\n';
const ONE = TWO.slice(0, TWO.indexOf('option two'));

function told(files: Readonly<Record<string, string>>, name = 'this.yard') {
  return serviceOver(files).service.diagnostics(uriOf(name)).filter(({ code }) => code === 'estimate-line-missing');
}

const on = (text: string) => told({ 'this.yard': `steelyard 1\n${text}` });

describe('a file that has options and no estimate line', () => {
  test('is told so on its first line', () => {
    expect(on(SHOP + VEHICLE + ONE).map(({ range, severity }) => ({ range, severity }))).toEqual([{ range: { start: 0, end: 11 }, severity: 'warning' }]);
    expect(on(SHOP + TWO)).toHaveLength(1);
  });

  test.each([
    ['it has one', `${SHOP}estimate "E"\n${VEHICLE}${TWO}`],
    ['it is begun: one option, and no vehicle', SHOP + ONE],
    ['none of its options does anything yet', `${SHOP}${VEHICLE}option one "Mend it"\noption two "Stop"\n`],
    ['it has none of its own to offer', SHOP + VEHICLE],
    ['the line can’t be read', `${SHOP}estimate E-1\n${VEHICLE}${TWO}`],
    ['the word of the line is misspelled', `${SHOP}estimat "E"\n${VEHICLE}${TWO}`],
  ])('is told nothing where %s', (_, text) => {
    expect(on(text)).toEqual([]);
  });

  test('a shared file is told nothing, and an estimate that uses it has its options from there', () => {
    const files = { 'shared.yard': `steelyard 1\n${SHOP}labour seal "Front seal" 2 h\npart ring "Ring" 4.00 new\n`, 'this.yard': 'steelyard 1\nuse "shared.yard"\nvehicle "Van"\noption one "Mend it"\n  do seal\n' };
    expect(told(files, 'shared.yard')).toEqual([]);
    expect(told(files)).toHaveLength(1);
    expect(told({ ...files, 'shared.yard': `${files['shared.yard']}estimate "E"\n` })).toEqual([]);
  });

  test.each(['\n', '\r\n'])('is mended below the lines that bring in shared files, and then looked through', (end) => {
    const text = `steelyard 1\nuse "shop.yard"  # ours\n${TWO}`.replaceAll('\n', end);
    const files = { 'shop.yard': `steelyard 1\n${SHOP}`, 'this.yard': text };
    const [one] = told(files);
    const { place, text: added } = one?.fix ?? { place: undefined, text: '' };
    const mended = text.slice(0, place?.range.start) + added + text.slice(place?.range.end);
    expect(mended.split(end).slice(0, 4)).toEqual(['steelyard 1', 'use "shop.yard"  # ours', 'estimate "Number, and what is wrong"', 'labour seal "Front seal" 2 h']);
    const codes = serviceOver({ ...files, 'this.yard': mended }).service.diagnostics(uriOf('this.yard')).map(({ code }) => code);
    expect(codes).not.toContain('estimate-line-missing');
    expect(codes).toEqual(expect.arrayContaining(['no-start', 'no-valid']));
  });
});
