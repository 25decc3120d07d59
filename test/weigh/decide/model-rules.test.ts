import { describe, expect, test } from 'vitest';
import { addedByChances } from '../../../src/report/quote/added.js';
import { decideText, soundText } from '../decision/weighing.js';

// What an option costs on average with what may turn up, worked out by hand. Rules of our own.

const head = 'steelyard 1\nshop "S"\n  rate bench 100.00\n';
const average = (lines: string, shop = '') => decideText(`${head}${shop}${lines}`).of('one').average;

/** What the customer is told that each chance adds. */
function added(text: string): readonly string[] {
  const { comparison, option } = soundText(text);
  return addedByChances(option('one'), comparison.estimate, comparison.money).map(({ before, then }) => then.total.likely.minus(before.total.likely).toFixed(2));
}

describe('chances of what only chances bring', () => {
  const out = 'access out "Out"\n  remove 5 h\n  refit 5 h\n  chance mount "Mount breaks" 50%\n    part "Mount" 100.00 new\n';
  const redo = 'labour redo "Redo" 2 h with out\n  chance worse "Bearing gone" 50%\n    part "Bearing" 400.00 new\n';
  const turns = '  chance "Groove" 40%\n    do redo\n  chance "Crack" 25%\n    labour "Carrier" 1 h with out\n';

  test('of a way in that either of two opens', () => {
    // Out is opened with 1 - 0.6 × 0.75 = 0.55.
    const wanted = 300 + 0.55 * 1000 + 0.4 * 200 + 0.25 * 100 + 0.4 * 0.5 * 400 + 0.55 * 0.5 * 100;
    expect(wanted).toBeCloseTo(1062.5, 9);
    expect(average(`${out}${redo}option one "One"\n  labour "Seal" 3 h\n${turns}`)).toBeCloseTo(wanted, 9);
    // Where the option has it out anyway, the mount may break whatever turns up.
    expect(average(`${out}${redo}option one "One"\n  labour "Seal" 3 h with out\n${turns}`)).toBeCloseTo(1300 + 0.4 * 200 + 0.25 * 100 + 0.4 * 0.5 * 400 + 0.5 * 100, 9);
  });

  test('of work that either of two brings, and what they add in the quote', () => {
    const text = `labour more "More" 1 h\n  chance worse "Worse" 50%\n    part "P" 200.00 new\noption one "One"\n  labour "Seal" 3 h\n  chance a "A" 20%\n    do more\n  chance b "B" 50%\n    do more\n`;
    // More is done with 1 - 0.8 × 0.5 = 0.6.
    expect(average(text)).toBeCloseTo(300 + 0.6 * 100 + 0.6 * 0.5 * 200, 9);
    expect(added(`${head}${text}`)).toEqual(['100.00', '200.00', '100.00']);
    const { comparison, option } = soundText(`${head}${text}`);
    expect(addedByChances(option('one'), comparison.estimate, comparison.money).map(({ after }) => after.map(({ title }) => title))).toEqual([[], ['A', 'B'], []]);
  });
});

describe('fees of the shop where nothing but a chance brings work', () => {
  const one = 'option one "One"\n  part "P" 100.00 new\n  chance a "A" 50%\n    part "X" 40.00 new\n';

  test('are for the chance that brings work, not for one that brings a part', () => {
    expect(average(`${one}  chance b "B" 10%\n    labour "W" 1 h\n`, '  fee flat "Flat" 30.00\n')).toBeCloseTo(100 + 0.5 * 40 + 0.1 * 130, 9);
  });

  test('are charged once where either of two brings work', () => {
    expect(average(`${one}  chance b "B" 50%\n    labour "W" 1 h\n  chance c "C" 50%\n    labour "V" 1 h\n`, '  fee flat "Flat" 30.00\n')).toBeCloseTo(100 + 20 + 100 + 0.75 * 30, 9);
  });
});

describe('a rebuilt part that a chance brings: the core goes back in full, putting the old unit together is paid', () => {
  const unit = '    part "Unit" 200.00 rebuilt\n      core 80.00\n        assemble 1 h\n';
  const chance = (percent: number, when = '', lines = unit) => `option one "One"\n  part "P" 100.00 new\n  chance "C" ${percent}%${when}\n${lines}`;
  const tax = '  tax levy 10% on parts, labour by item\n';

  test('as where it is written into the option', () => {
    const written = soundText(`${head}${tax}  core-tax refunded\noption one "One"\n  part "P" 100.00 new\n  part "Unit" 200.00 rebuilt\n    core 80.00\n      assemble 1 h\n`).option('one').inAll.likely.toNumber();
    expect(written).toBe(440);
    for (const when of ['', ' comeback']) {
      expect(average(chance(100, when), tax), when).toBeCloseTo(written, 9);
      expect(average(chance(50, when), tax), when).toBeCloseTo((110 + 440) / 2, 9);
    }
  });

  test('it is work: the fees of the shop are charged, and a percentage of labour counts it', () => {
    const lines = `${unit}    fee "F" 10% of labour\n`;
    // 100.00 + 200.00 + an hour, 10.00 on that, and 30.00.
    for (const when of ['', ' comeback']) expect(average(chance(100, when, lines), '  fee flat "Flat" 30.00\n'), when).toBeCloseTo(100 + 200 + 110 + 30, 9);
    expect(average(chance(50, '', lines), '  fee flat "Flat" 30.00\n')).toBeCloseTo(100 + (200 + 110 + 30) / 2, 9);
  });

  test('what the customer is told that it adds is the same', () => {
    expect(added(`${head}${tax}${chance(50)}`)).toEqual(['330.00']);
    expect(added(`${head}  fee flat "Flat" 30.00\n${chance(50, '', `${unit}    fee "F" 10% of labour\n`)}`)).toEqual(['340.00']);
  });

  test('for one that the option fits anyway nothing is paid again', () => {
    const fits = 'part unit "Unit" 200.00 rebuilt\n  core 80.00\n    assemble 1 h\noption one "One"\n  fit unit\n  chance "C" 50%\n    fit unit\n';
    expect([average(fits), added(`${head}${fits}`)]).toEqual([300, []]);
  });

  test('for a way in that only the chance needs', () => {
    const way = 'access up "Up"\n  remove 1 h\n  part "Bracket" 50.00 rebuilt\n    core 20.00\n      assemble 1 h\n';
    const text = (when: string) => `${way}option one "One"\n  part "P" 100.00 new\n  chance "C" 50%${when}\n    labour "W" 1 h with up\n`;
    for (const when of ['', ' comeback']) expect(average(text(when)), when).toBeCloseTo(100 + (100 + 100 + 50 + 100) / 2, 9);
    expect(added(`${head}${text('')}`)).toEqual(['350.00']);
  });
});

describe('what a way in needs that only a chance opens is paid once', () => {
  // Getting out and back in: 10 h. The hoist is hired, the shaft is 3 h and 200.00.
  const shop = 'access out "Engine out"\n  remove 5 h\n  refit 5 h\n  uses coolant\n  needs hoist\npart coolant "Coolant" 40.00 new\ntool hoist "Hoist" 60.00\nlabour fill "Fill" 1 h\n  uses coolant\nlabour lift "Lift" 1 h\n  needs hoist\n';
  const shaft = (name: string, more = '') => `  chance ${name} "Worn ${name}" 50%\n    labour "Shaft ${name}" 3 h with out\n    part "Shaft ${name}" 200.00 new\n${more}`;
  const both = (option: string) => [average(`${shop}option one "One"\n${option}`), added(`${head}${shop}option one "One"\n${option}`)];

  test('the parts and the hire that the option has anyway are not paid again', () => {
    expect(both(`  do fill\n${shaft('a')}`)).toEqual([140 + (1000 + 500 + 60) / 2, ['1560.00']]);
    expect(both(`  do fill, lift\n${shaft('a')}`)).toEqual([140 + 160 + (1000 + 500) / 2, ['1500.00']]);
  });

  test('nor what the chance brings itself', () => {
    expect(both(`  labour "Look" 1 h\n${shaft('a', '    do fill, lift\n')}`)).toEqual([100 + (1000 + 500 + 100 + 140 + 60) / 2, ['1800.00']]);
  });

  test('what one chance brings and the way in of another needs is paid if either happens', () => {
    const fill = '  chance b "B" 50%\n    do fill\n';
    for (const option of [`${shaft('a')}${fill}`, `${fill}${shaft('a')}`]) {
      // Coolant in three of four cases.
      expect(average(`${shop}option one "One"\n  labour "Look" 1 h\n${option}`)).toBeCloseTo(100 + 1560 / 2 + 100 / 2 + 0.75 * 40, 9);
    }
  });

  test('the way in itself if any of several needs it', () => {
    expect(both(`  labour "Look" 1 h\n${shaft('a')}${shaft('b')}`)).toEqual([100 + 0.75 * 1100 + 500, ['1600.00', '1600.00']]);
    expect(added(`${head}${shop}option one "One"\n  labour "Look" 1 h\n${shaft('a', '    chance below "Below" 50%\n      labour "More" 1 h with out\n')}`)).toEqual(['1600.00', '100.00']);
  });

  test('the way in is the cheapest for who has what it needs', () => {
    // Without the coolant and the hoist, out is 1,000.00, and 1,100.00 with them; up is 1,050.00.
    const up = 'access up "Up"\n  remove 10.5 h\nlabour deep "Deep"\n  takes 1 h with out\n  takes 1 h with up\n';
    const of = (option: string) => added(`${head}${shop}${up}option one "One"\n${option}  chance "C" 50%\n    do deep\n`);
    expect(of('  labour "Look" 1 h\n')).toEqual(['1150.00']);
    expect(of('  do fill, lift\n')).toEqual(['1100.00']);
  });

  test('a way in that is open is no reason to take a dearer one beside it', () => {
    const more = 'access head "Head off"\n  remove 3 h\naccess up "Up"\n  remove 4 h\nlabour deep "Deep"\n  takes 1 h with out, head\n  takes 1 h with up\n';
    expect(added(`${head}${shop}${more}option one "One"\n  labour "Look" 1 h with out\n  chance "C" 50%\n    do deep\n`)).toEqual(['400.00']);
  });
});

test('on average a core is refunded where the quote has it back in time, and not where it is late', () => {
  const text = (hours: number) => `steelyard 1\nestimate "E"\n  start 2026-11-30\nshop "S"\n  workday 8 h\n  rate bench 1.00\n  tax levy 10% on parts by item\n  core-tax refunded\noption one "One"\n  labour "W" ${hours} h\n  part "Unit" 500.00 rebuilt\n    core 100.00 due 1 d\n`;
  // Due in one day by the calendar: one day of work is in time, three days are not.
  expect([decideText(text(8)).of('one').average, decideText(text(24)).of('one').average]).toEqual([8 + 550, 24 + 550 + 110]);
});

test('a cost in each month needs no estimate line', () => {
  expect(decideText(`${head}option one "One"\n  part "P" 1200.00 new\n  lasts 12 mo\n`).of('one').monthly?.perMonth.likely.toFixed(2)).toBe('100.00');
});

describe('chances of work that is done anyway, and that a chance would bring too', () => {
  const jobs = 'labour redo "R" 2 h\n  chance worse "Worse" 50%\n    part "X" 400.00 new\nlabour seal "S" 3 h\n  chance groove "Groove" 40%\n    do redo\n';
  const both = (order: string) => `${jobs}option first "First"\n  do seal\noption one "One"\n  do ${order}\n`;

  test('happen as often in whatever order the jobs are done, on average and in the drawn cases', () => {
    for (const order of ['seal, redo', 'redo, seal']) {
      const { average, risk } = decideText(`${head}${both(order)}`).of('one');
      expect(average, order).toBeCloseTo(500 + 0.5 * 400, 9);
      // Drawn in layers of equal size: half of the cases, less what a layer leaves open.
      expect(Math.abs((risk?.inAll.mean ?? 0) - 700), order).toBeLessThan(2);
    }
  });

  test('and in an option that does not do it only where a chance brings it', () => {
    // By hand: 40 % bring 2 h, and half of those the part.
    const { average, risk } = decideText(`${head}${both('seal, redo')}`).of('first');
    expect(average).toBeCloseTo(300 + 0.4 * 200 + 0.2 * 400, 9);
    expect(Math.abs((risk?.inAll.mean ?? 0) - 460)).toBeLessThan(20);
  });

  test('the customer is told of none that adds nothing', () => {
    expect(added(`${head}${both('redo, seal')}`)).toEqual(['400.00']);
  });
});
