import { describe, expect, test } from 'vitest';
import { changed } from '../../changes/both.js';
import { option, sorts, told } from './told.js';

// What a line says, as a change tells it: by its own words, and nothing is told where only order, spaces or names are others. Rules of our own.

describe('names in a line', () => {
  const jobs = (after: string, other = '') => `labour strip "Strip" 3.0 h\nlabour look "Look" 0.5 h\nlabour fit "Fit" 1.0 h${after === '' ? '' : ` after ${after}`}${other}\noption a "A"\n  do strip, look, fit\n`;

  test('in any order say the same', () => {
    expect(sorts(jobs('strip, look'), jobs('look, strip'))).toEqual([]);
  });

  test('one in place of another', () => {
    expect(sorts(jobs('strip'), jobs('look'))).toEqual(['moved Fit > Fit; after strip > look']);
    expect(sorts(jobs(''), jobs('look'))).toEqual(['moved Fit > Fit; after - > look']);
  });

  test('of one that a list can’t hold', () => {
    expect(sorts(jobs('', ' class bench'), jobs('', ' class fine'))).toEqual(['moved Fit > Fit; class bench > fine']);
  });
});

describe('lines that only say something of the line above', () => {
  test('two with the same title each count', () => {
    const kept = (...money: readonly string[]) => option('part "Box" 90.00 rebuilt', '  core 50.00', ...money.map((one) => `    keeps "Stud" less ${one}`));
    expect(sorts(kept('4.00', '6.00'), kept('5.00', '6.00'))).toEqual(['moved Box > Box; keeps less 4.00 > 5.00']);
    expect(sorts(kept('4.00', '6.00'), kept('4.00', '7.00'))).toEqual(['moved Box > Box; keeps less 6.00 > 7.00']);
    expect(sorts(kept('4.00', '6.00'), kept('4.00'))).toEqual(['moved Box > Box; keeps less 6.00 > -']);
  });

  const job = (...lines: readonly string[]) => `labour strip "Strip" 3.0 h\nlabour fit "Fit" 1.0 h\noption a "A"\n  do strip, fit\nclosed for a on 2026-03-02\n  billed 400.00\n${lines.map((line) => `  ${line}\n`).join('')}`;
  const CLOSED = 'closed for a on 2026-03-02';

  test('are told with their own word: hours that were clocked are no time of the line above', () => {
    expect(sorts(job('clocked strip 3.0 h'), job('clocked strip 3.5 h'))).toEqual([`moved ${CLOSED} > ${CLOSED}; clocked hours 3.0 h > 3.5 h`]);
    // A chance whose title is still to be written is no line of its own, and neither is the work below it.
    const halfWritten = (hours: string) => option('labour "Look" 1 h', 'chance 12%', `  labour "Dry it" ${hours}`);
    expect(sorts(halfWritten('1 h'), halfWritten('2 h'))).toEqual(['moved A > A; labour hours 1 h > 2 h']);
  });

  test('go by what they name, in any order', () => {
    expect(sorts(job('clocked strip 3.0 h', 'clocked fit 1.5 h'), job('clocked fit 1.5 h', 'clocked strip 3.0 h'))).toEqual([]);
    expect(sorts(job('clocked strip 3.0 h', 'clocked fit 1.5 h'), job('clocked fit 1.5 h'))).toEqual([`moved ${CLOSED} > ${CLOSED}; clocked hours 3.0 h > -; clocked line strip > -`]);
  });
});

describe('spaces and order', () => {
  test('a value is told with single spaces', () => {
    expect(sorts(option('labour "Strip" 1.0 /  1.5 /   2.0 h'), option('labour "Strip" 1.0 / 1.5 / 3.0   h'))).toEqual(['moved Strip > Strip; hours 1.0 / 1.5 / 2.0 h > 1.0 / 1.5 / 3.0 h']);
  });

  test('a line without a title is told as it stands, with single spaces', () => {
    const shop = (line: string) => `steelyard 1\nshop "Bay"\n  rate bench 100.00 usual\n  ${line}\n`;
    const title = ({ changes }: ReturnType<typeof changed>) => changes.map(({ before, after }) => [before?.title, after?.title]);
    expect(title(changed(shop('markup   30%   to    90.00'), shop('markup 40%  to  90.00')))).toEqual([['markup 30% to 90.00', 'markup 40% to 90.00']]);
  });
});

describe('the frame of a file', () => {
  const shop = 'steelyard 1\nshop "Bay"\n  rate bench 100.00 usual\n';
  const job = (file: string) => `steelyard 1\nuse "${file}"\noption a "A"\n  labour "Strip" 1 h\n`;

  test('which shared file it stands in changes nothing', () => {
    expect(changed({ 'job.yard': job('shop.yard'), 'shop.yard': shop }, { 'job.yard': job('bay.yard'), 'bay.yard': shop }).changes).toEqual([]);
    expect(changed({ 'job.yard': job('shop.yard'), 'shop.yard': shop }, { 'job.yard': job('shop.yard').replace('use "shop.yard"\n', shop.replace('steelyard 1\n', '')) }).changes).toEqual([]);
  });

  test('of two lines with one name that one is meant which stands first, as in the totals', () => {
    const seals = (fit: string) => `part seal "Seal" 4.00 new\npart seal "Quite another thing" 70.00 used\noption a "A"\n  labour "Strip" 1 h\n${fit}`;
    const found = changed(shop + seals('  fit seal\n'), shop + seals(''));
    expect(told(found.changes)).toEqual(['went Seal > Seal by A']);
    expect(found.changes[0]?.effects.map(({ total }) => total.toFixed(2))).toEqual(['-4.00']);
  });
});
