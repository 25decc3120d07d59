import { describe, expect, test } from 'vitest';
import { read, readSound } from './weighed.js';

// What comes back for old units and pieces, and by when. Dates by the calendar of ISO 8601: 2026-11-30 is a Monday.

const SHOP = 'steelyard 1\nshop "Invented Bay"\n  currency USD\n  rate bench 100.00\n';
const STARTS = 'estimate "E"\n  start 2026-11-30\n';

describe('worth of pieces', () => {
  const salvage = (text: string) => read(`${SHOP}option one "One"\n${text}`).option('one').returns.salvage;
  const said = (text: string) => {
    const { likely, from } = salvage(text);
    return [likely.toFixed(), from.map(({ label }) => label)];
  };

  test('kept back from a core counts where it is worth something; where that is not said, only the refund is less', () => {
    const core = (keeps: string) => `  part "Unit" 47.00 rebuilt\n    core 20.00\n${keeps}`;
    expect(said(core('      keeps "Housing" less 2.00 worth 3.25\n      keeps "Bracket" less 1.00\n'))).toEqual(['3.25', ['Housing']]);
    const { returns } = readSound(`${SHOP}option one "One"\n${core('      keeps "Housing" less 2.00\n      keeps "Cover" worth 4.00\n')}`).option('one');
    expect([returns.refunds, returns.salvage, returns.all].map(({ likely }) => likely.toFixed())).toEqual(['18', '4', '22']);
  });

  test('taken off the old engine counts at what the writer says; a piece without its worth is left out', () => {
    expect(said('  harvest "Alternator" 85.00\n  harvest "Starter"\n  harvest "Pump" 12.50\n')).toEqual(['97.5', ['Alternator', 'Pump']]);
  });
});

test('a refund is made of the charge and of what is taken off it, and of nothing else', () => {
  const made = (core: string) => readSound(`${SHOP}option one "One"\n  part "Unit" 47.00 rebuilt\n    core 20.00${core}`).option('one').returns.cores[0]?.refund.from.map(({ label, likely }) => `${label}: ${likely.toFixed()}`);
  expect(made('\n')).toEqual(['Unit: core charge: 20']);
  expect(made('\n      keeps "Cover" worth 4.00\n')).toEqual(['Unit: core charge: 20']);
  expect(made(' less 1.50\n      keeps "Housing" less 2.00\n')).toEqual(['Unit: core charge: 20', 'Damaged or incomplete: 1.5', 'Housing kept: 2']);
});

describe('the last day to return a core', () => {
  const coreOf = (part: string, dates = STARTS) => readSound(`${SHOP}${dates}option one "One"\n  labour "Work" 2 h\n${part}`).option('one').returns.cores.map(({ deadline, late }) => [deadline, late]);

  test('counts from the day on which work starts, for a part that is on the shelf', () => {
    expect(coreOf('  part "Unit" 47.00 rebuilt\n    core 7.00 due 5 d\n')).toEqual([['2026-12-05', false]]);
  });

  test('counts from the arrival of its own part, not of another that comes later', () => {
    // Three working days after Monday: Thursday 3 December, and five days more. The hose comes on the 10th, so the plan ends too late.
    expect(coreOf('  part "Unit" 47.00 rebuilt arrives 3 d\n    core 7.00 due 5 d\n  part "Hose" 10.00 new arrives 8 d\n')).toEqual([['2026-12-08', true]]);
  });

  test('is unknown without a day on which work starts, or where nothing says how long there is', () => {
    for (const comes of ['', ' arrives 3 d', ' arrives 1 wk', ' arrives 1 mo']) expect(coreOf(`  part "Unit" 47.00 rebuilt${comes}\n    core 7.00 due 5 d\n`, '')).toEqual([[undefined, false]]);
    expect(coreOf('  part "Unit" 47.00 rebuilt arrives 3 d\n    core 7.00\n')).toEqual([[undefined, false]]);
  });

  test('is unknown where the part never comes, since the shop is closed on every day', () => {
    const closed = SHOP.replace('  rate', '  closed monday, tuesday, wednesday, thursday, friday, saturday, sunday\n  rate');
    const { cores } = read(`${closed}${STARTS}option one "One"\n  labour "Work" 2 h\n  part "Unit" 47.00 rebuilt arrives 3 d\n    core 7.00 due 5 d\n`).option('one').returns;
    expect(cores.map(({ deadline, late, refund }) => [deadline, late, refund.likely.toFixed()])).toEqual([[undefined, false, '7']]);
  });

  test('that is passed by the plan is told with both days', () => {
    const [core] = readSound(`${SHOP}${STARTS}option one "One"\n  labour "Work" 80 h\n  part "Unit" 47.00 rebuilt\n    core 7.00 due 2 d\n`).option('one').returns.cores;
    expect(core?.refund.step).toEqual({ kind: 'found', how: 'The work is planned to end on 2026-12-11, after the last day to return the core, 2026-12-02.' });
    expect(core?.refund.from.map(({ label }) => label)).toEqual(['Unit: core charge']);
  });
});

test('tax comes back with a core where it is a tax on parts; what would come back in time is known though it is late', () => {
  const shop = SHOP.replace('  rate', '  tax goods "Goods tax" 10% on parts\n  tax work "Work tax" 20% on labour\n  core-tax refunded on rebuilt\n  rate');
  const back = (due: string) => readSound(`${shop}${STARTS}option one "One"\n  labour "Work" 80 h\n  part "Unit" 47.00 rebuilt\n    core 30.00 due ${due}\n`).option('one').returns.cores.map(({ refund, taxBack, inTime, late }) => [late, ...[refund, taxBack, inTime].map(({ likely }) => likely.toFixed())]);
  expect(back('30 d')).toEqual([[false, '30', '3', '33']]);
  expect(back('2 d')).toEqual([[true, '0', '0', '33']]);
});

describe('tax on a core that does not come back', () => {
  // 10 % of goods tax and 2 % of town tax on parts; by hand, each rounded to the cent.
  const kept = (policy: string, core: string) => {
    const shop = SHOP.replace('  rate', `  tax goods "Goods tax" 10% on parts\n  tax town "Town tax" 2% on parts by item\n  tax work "Work tax" 20% on labour\n${policy}  rate`);
    const { returns, net, totals } = readSound(`${shop}${STARTS}option one "One"\n  labour "Work" 80 h\n  part "Unit" 47.00 rebuilt\n    core ${core}\n`).option('one');
    expect(net.likely.toFixed()).toBe(totals.total.likely.minus(returns.all.likely).toFixed());
    return [returns.taxKept, returns.withCores].map(({ likely }) => likely.toFixed(2));
  };

  test('all of it where the tax is kept', () => expect(kept('  core-tax kept on rebuilt\n', '15.00')).toEqual(['1.80', '15.00']));
  test('none where it comes back', () => expect(kept('  core-tax refunded on rebuilt\n', '15.00')).toEqual(['0.00', '16.80']));
  test('that on what is taken off, where it comes back', () => expect(kept('  core-tax refunded on rebuilt\n', '15.00 less 5.00')).toEqual(['0.60', '11.20']));
  test('all of it where the core goes back too late', () => expect(kept('  core-tax refunded on rebuilt\n', '15.00 due 2 d')).toEqual(['1.80', '0.00']));
  test('none where a core is not taxed', () => {
    expect(kept('  core-tax none on rebuilt\n', '15.00')).toEqual(['0.00', '15.00']);
    expect(kept('', '15.00')).toEqual(['0.00', '15.00']);
  });
});

test('each core comes back at its own charge', () => {
  const { cores } = readSound(`${SHOP}option one "One"\n  part "Unit" 47.00 rebuilt\n    core 7.00\n      assemble 1 h\n  part "Turbocharger" 90.00 rebuilt\n    core 30.00\n`).option('one').returns;
  expect(cores.map(({ part, refund }) => `${part.title}: ${refund.likely.toFixed()}`)).toEqual(['Unit: 7', 'Turbocharger: 30']);
});

test('a part without a core brings nothing back, beside one that has it', () => {
  const { cores } = readSound(`${SHOP}option one "One"\n  part "Hose" 10.00 new\n  part "Unit" 47.00 rebuilt\n    core 7.00\n  part "Belt" 12.00 new\n`).option('one').returns;
  expect(cores.map(({ part, refund }) => `${part.title}: ${refund.likely.toFixed()}`)).toEqual(['Unit: 7']);
});
