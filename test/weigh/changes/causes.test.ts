import { describe, expect, test } from 'vitest';
import { changed } from '../../changes/both.js';
import { JOB, rows, SHOP } from './rows.js';

// Which change is told for a line that only one version has, and in what order rows come. Rules of our own; sums by hand.

describe('why a line is in one version only', () => {
  test('the ways in are pinned: that line of the option moved them', () => {
    // In the car 8 h instead of 3 h and 2 h.
    expect(rows(JOB.replace('do pump\n', 'do pump\n  way in-car\n'))).toEqual(['moved Mend it: 360.00']);
    expect(rows(JOB, SHOP, JOB.replace('do pump\n', 'do pump\n  way in-car\n'))).toEqual(['moved Mend it: -360.00']);
    // Another word of the option moves nothing of it: the way in follows.
    expect(rows(JOB.replace('do pump\n', 'do pump\n  warranty 3 mo\n').replace('refit 1.0', 'refit 7.0'))).toEqual(['moved Front off: 0.00', 'moved Mend it: 0.00', 'ways Way in: 360.00']);
  });

  test('a way in that is worth it now, with what it brings along', () => {
    const gasket = JOB.replace('refit 1.0 h\n', 'refit 1.0 h\n  uses gasket\n  part "Sealer" 5.00 new\n').replace('labour pump', 'part gasket "Gasket" 20.00 new\nlabour pump');
    // 8 h in the car before. Now 3 h, 2 h and 25.00.
    expect(rows(gasket, SHOP, gasket.replace('refit 1.0', 'refit 7.0'))).toEqual(['moved Front off: 0.00', 'ways Way in: -335.00']);
  });

  test('a job that needs another one no more', () => {
    const chain = `${JOB.replace('  takes 8.0 h\n', '  needs strip\n  takes 8.0 h\n')}labour strip "Strip it" 1.0 h\n  uses rag\npart rag "Rag" 4.00 new\n`;
    expect(rows(chain.replace('  needs strip\n', ''), SHOP, chain)).toEqual(['went Strip it by Pump: renew: -124.00']);
  });

  test('a part that two jobs use, and one of them no more, stays', () => {
    const both = `${JOB.replace('do pump\n', 'do pump, look\n').replace('  takes 8.0 h\n', '  uses seal\n  takes 8.0 h\n')}labour look "Look" 1.0 h\n  uses seal\npart seal "Seal" 40.00 new\n`;
    expect(rows(both.replace('labour look "Look" 1.0 h\n  uses seal\n', 'labour look "Look" 1.0 h\n'), SHOP, both)).toEqual(['went Seal by Look: 0.00']);
  });

  test('a part that says now that it has a core', () => {
    const unit = `${JOB}  part "Unit" 90.00 rebuilt\n`;
    expect(rows(`${unit}    core 50.00\n      assemble 1.0 h\n`, SHOP, unit)).toEqual(['moved Unit: 170.00 (120.00)']);
  });
});

describe('rows', () => {
  const parts = (...titles: readonly string[]) => `${JOB}${titles.map((title) => `  part "${title}" 10.00 new\n`).join('')}`;

  test('come largest first; equals by what they say, wherever they stand in the file', () => {
    const wanted = (sort: string, sign: string) => ['Axle', 'Bolt', 'Cap'].map((title) => `${sort} ${title}: ${sign}10.00`);
    for (const order of [['Bolt', 'Axle', 'Cap'], ['Cap', 'Bolt', 'Axle'], ['Axle', 'Cap', 'Bolt']]) {
      expect(rows(parts(...order))).toEqual(wanted('came', ''));
      expect(rows(JOB, SHOP, parts(...order))).toEqual(wanted('went', '-'));
    }
    expect(rows(`${parts('Axle')}  part "Zinc" 11.00 new\n`)).toEqual(['came Zinc: 11.00', 'came Axle: 10.00']);
  });

  test('of what follows come by sort, then by option, then by title', () => {
    const two = `${JOB}option other "Other"\n  do pump\n  part "Seal" 40.00 new\n`;
    const shop = `${SHOP}  tax b "Town tax" 2% on parts\n  tax a "City tax" 1% on parts\n  fee two "Yard" 10% of labour\n  fee one "Waste" 5% of labour\n`;
    const found = rows(two.replace('refit 1.0', 'refit 7.0').replace('40.00', '50.00'), shop, two, shop);
    expect(found).toEqual([
      'moved Seal: 0.00 10.00', 'moved Front off: 0.00 0.00', 'ways Way in: 360.00 0.00', 'ways Way in: 0.00 360.00',
      'fee Waste: 18.00 18.00', 'fee Yard: 36.00 36.00', 'tax City tax: 0.00 0.10', 'tax Town tax: 0.00 0.20',
    ]);
  });

  test('the option that costs least, and the next, by their places', () => {
    const two = `${JOB}option other "Other"\n  part "Seal" 40.00 new\noption third "Third"\n  part "Hose" 45.00 new\n`;
    const files = (job: string) => ({ 'job.yard': `steelyard 1\n${job}`, 'shop.yard': SHOP });
    const { before, after } = changed(files(two), files(two.replace('40.00', '47.50')));
    const told = (pick: typeof before.pick) => [pick?.option, pick?.inAll.toFixed(2), pick?.less?.toFixed(2), pick?.next];
    expect([told(before.pick), told(after.pick)]).toEqual([[1, '40.00', '5.00', 2], [2, '45.00', '2.50', 1]]);
    const alone = changed(files(JOB), files(JOB)).after.pick;
    expect(told(alone)).toEqual([0, '600.00', undefined, undefined]);
  });
});
