import { describe, expect, test } from 'vitest';
import { JOB, rows, SHOP } from './rows.js';

// What two versions of one option differ in is shared out among what moved: own figures at the mean of the shop's, the
// shop's at the mean of the own (the Shapley value of two). All amounts are worked out by hand beside each case.

describe('getting in', () => {
  test('its hours and the rate together: 1 h more at 125.00, 10.00 more on 3.5 h of getting in and 2 h of work', () => {
    expect(rows(JOB.replace('remove 2.0', 'remove 3.0'), SHOP.replace('120.00', '130.00'))).toEqual(['moved Front off: 125.00', 'moved Bench: 55.00']);
  });

  test('at a class of its own: 1 h more at 155.00, 10.00 more on 3.5 h', () => {
    const fine = JOB.replace('refit 1.0 h\n', 'refit 1.0 h\n  class fine\n');
    expect(rows(fine.replace('remove 2.0', 'remove 3.0'), SHOP.replace('150.00', '160.00'), fine)).toEqual(['moved Front off: 155.00', 'moved Fine work: 35.00']);
  });

  test('at another class, whose rate moves too: 3 h dearer by 30.00 or 40.00, and 10.00 on 3 h in one of two orders', () => {
    expect(rows(JOB.replace('refit 1.0 h\n', 'refit 1.0 h\n  class fine\n'), SHOP.replace('150.00', '160.00'))).toEqual(['moved Front off: 105.00', 'moved Fine work: 15.00']);
  });

  test('at a class that only the new shop has: nothing tells what it would cost at the old one, so its own words moved it', () => {
    expect(rows(JOB.replace('refit 1.0 h\n', 'refit 1.0 h\n  class quick\n'), `${SHOP.replace('120.00', '130.00')}  rate quick "Quick" 170.00\n`)).toEqual(['moved Front off: 150.00', 'moved Bench: 20.00', 'came Quick: 0.00']);
  });

  test('the second of two that are paid for: 1 h more at 125.00, 10.00 more on 2 h, 1.5 h and 1 h', () => {
    const two = `access lid "Lid off"\n  remove 2.0 h\naccess pan "Pan off"\n  remove 1.0 h\nlabour pump "Pump: renew" 1.0 h with lid, pan\noption mend "Mend it"\n  do pump\n`;
    const job = (lines: string) => `use "shop.yard"\nestimate "E-1"\n${lines}`;
    expect(rows(job(two.replace('remove 1.0', 'remove 2.0')), SHOP.replace('120.00', '130.00'), job(two))).toEqual(['moved Pan off: 125.00', 'moved Bench: 45.00']);
  });

  test('opened by a stage and sold as it stands, only getting in counts: 1 h more at 125.00, 10.00 more on 2.5 h', () => {
    const staged = `${JOB.replace('estimate "E-1"\n', 'estimate "E-1"\nvehicle "Van"\n  worth 9000.00\n  unrepaired 1500.00\n')}stage tear-down "Take it apart"\n  opens open\n`;
    expect(rows(staged.replace('remove 2.0', 'remove 3.0').replace('refit 1.0', 'refit 2.0'), SHOP.replace('120.00', '130.00'), staged)).toEqual(['moved Front off: 250.00 125.00', 'moved Bench: 60.00 25.00']);
  });
});

describe('putting the old unit together', () => {
  const core = `${JOB}  part "Pump, rebuilt" 90.00 rebuilt\n    core 50.00\n      assemble 1.0 h\n`;

  test('hours and rate together: 1 h more at 125.00, 10.00 more on 1.5 h beside 5 h of the job', () => {
    expect(rows(core.replace('assemble 1.0', 'assemble 2.0'), SHOP.replace('120.00', '130.00'), core)).toEqual(['moved Pump, rebuilt: 125.00', 'moved Bench: 65.00']);
  });

  test('at a class of its own: 1 h more at 155.00, 10.00 more on 1.5 h', () => {
    const fine = core.replace('assemble 1.0 h\n', 'assemble 1.0 h\n      class fine\n');
    expect(rows(fine.replace('assemble 1.0', 'assemble 2.0'), SHOP.replace('150.00', '160.00'), fine)).toEqual(['moved Pump, rebuilt: 155.00', 'moved Fine work: 15.00']);
  });

  test('at a class that only the new shop has: its own words moved it', () => {
    expect(rows(core.replace('assemble 1.0 h\n', 'assemble 1.0 h\n      class quick\n'), `${SHOP}  rate quick "Quick" 170.00\n`, core)).toEqual(['moved Pump, rebuilt: 50.00', 'came Quick: 0.00']);
  });
});

test('another class is the usual one: both classes moved what names none, in equal parts', () => {
  // 2 h and 3 h of the job, 1 h of putting together, 30.00 dearer: 180.00.
  const core = `${JOB}  part "Pump, rebuilt" 90.00 rebuilt\n    core 50.00\n      assemble 1.0 h\n`;
  expect(rows(core, SHOP.replace(' usual', '').replace('150.00', '150.00 usual'), core)).toEqual(['moved Bench: 90.00', 'moved Fine work: 90.00']);
});

describe('work', () => {
  test('at a class that only the new shop has: its own words moved it', () => {
    expect(rows(JOB.replace('"Pump: renew"\n', '"Pump: renew" class quick\n'), `${SHOP.replace('120.00', '130.00')}  rate quick "Quick" 170.00\n`)).toEqual(['moved Pump: renew: 100.00', 'moved Bench: 30.00', 'came Quick: 0.00']);
  });

  test('hours, rate and way in together: each at the mean of what the others allow', () => {
    // With the way in 3 h and 2 h before; closing up takes 6 h longer now, so 7 h in the car are cheaper. Hours of the job by its own
    // words and the way in: 2 and 8 before, 2 and 7 after; an hour at 120.00 or 130.00. Weights of three: 1/3, 1/6 twice, 1/3.
    // Own: -120 / 6 - 130 / 3. Rate: 20 / 3 + (20 + 80) / 6 + 70 / 3. Way: 720 / 3 + (600 + 780) / 6 + 650 / 3, less 360.00 of getting in.
    // A third of a cent is lost by each; together that is the cent that is left over.
    expect(rows(JOB.replace('refit 1.0', 'refit 7.0').replace('8.0 h', '7.0 h'), SHOP.replace('120.00', '130.00'))).toEqual(
      ['moved Pump: renew: -63.33', 'moved Bench: 46.67', 'moved Front off: 0.00', 'ways Way in: 326.67', 'rounding Rounding: -0.01'],
    );
  });
});

describe('goods', () => {
  const goods = `${JOB}  part "Seal" cost 40.00 new\n  part "Hose" 30.00 new\n  sublet "Skim" cost 50.00\n`;

  test('outside work by its cost and the markup for it: 10.00 at 25 %, and 10 % of 55.00', () => {
    expect(rows(goods.replace('cost 50.00', 'cost 60.00'), SHOP.replace('20% on', '30% on'), goods)).toEqual(['moved Skim: 12.50', 'moved markup 30% on sublets: 5.50']);
  });

  test('a price that is written is none of the markup’s', () => {
    expect(rows(goods.replace('30.00 new', '33.00 new'), SHOP.replace('markup 50%', 'markup 60%'), goods)).toEqual(['moved markup 60% to 100.00: 4.00', 'moved Hose: 3.00']);
  });

  test('a cost that comes into another band: both bands moved it', () => {
    // 40.00 at 50 % is 60.00. At 110.00 it is the band beyond, 30 %: 143.00, and with 40 %: 154.00. Own: the mean of 83.00 and 94.00.
    expect(rows(goods.replace('cost 40.00', 'cost 110.00'), SHOP.replace('30%\n', '40%\n'), goods)).toEqual(['moved Seal: 88.50', 'moved markup 40%: 5.50']);
  });

  test('a bound of a band that moves past a cost', () => {
    expect(rows(goods, SHOP.replace('to 100.00', 'to 35.00'), goods)).toEqual(['moved markup 50% to 35.00: -8.00']);
  });
});

describe('what comes back', () => {
  const core = `${JOB}  part "Pump, rebuilt" 90.00 rebuilt\n    core 50.00 due 1 wk\n`;
  const started = (job: string) => job.replace('estimate "E-1"\n', 'estimate "E-1"\n  start 2026-11-30\n');

  test('a dearer core is paid and comes back', () => {
    expect(rows(core.replace('50.00', '60.00'), SHOP, core)).toEqual(['moved Pump, rebuilt: 10.00 (0.00)']);
  });

  test('a core that is damaged comes back for less', () => {
    expect(rows(core.replace('due 1 wk', 'due 1 wk less 5.00'), SHOP, core)).toEqual(['moved Pump, rebuilt: 0.00 (5.00)']);
  });

  test('a piece that is kept: the refund loses 12.00, the piece is worth 30.00', () => {
    expect(rows(`${core}      keeps "Housing" less 12.00 worth 30.00\n`, SHOP, core)).toEqual(['moved Pump, rebuilt: 0.00 (-18.00)']);
  });

  test('two of them come back twice', () => {
    expect(rows(core.replace('rebuilt"', 'rebuilt" 2 at').replace('50.00', '60.00'), SHOP, core.replace('rebuilt"', 'rebuilt" 2 at'))).toEqual(['moved Pump, rebuilt: 20.00 (0.00)']);
  });

  test('only the one of two that says something else', () => {
    const two = (refund: string, worth: string) => `${JOB}  part "Pump" 90.00 rebuilt\n    core 50.00\n  part "Box" 80.00 used\n    core 60.00${refund}\n      keeps "Lid" less 1.00 worth 8.00\n      keeps "Tap" less 1.00 worth ${worth}\n`;
    expect(rows(two(' less 7.00', '9.00'), SHOP, two('', '9.00'))).toEqual(['moved Box: 0.00 (7.00)']);
    expect(rows(two('', '11.00'), SHOP, two('', '9.00'))).toEqual(['moved Box: 0.00 (-2.00)']);
    const taken = (value: string) => `${JOB}  harvest "Alternator" 85.00\n  harvest "Bracket" ${value}\n`;
    expect(rows(taken('14.00'), SHOP, taken('12.00'))).toEqual(['moved Bracket: 0.00 (-2.00)']);
  });

  test('of a part that the option fits no more: the line that says so', () => {
    const fitted = `${JOB}  fit unit\npart unit "Unit" 90.00 rebuilt\n  core 50.00\n    keeps "Lid" less 5.00 worth 8.00\n`;
    expect(rows(fitted.replace('  fit unit\n', ''), SHOP, fitted)).toEqual(['went Unit by Mend it: -140.00 (-87.00)']);
    expect(rows(fitted, SHOP, fitted.replace('  fit unit\n', ''))).toEqual(['came Unit by Mend it: 140.00 (87.00)']);
  });

  test('a piece taken off', () => {
    const taken = `${JOB}  harvest "Alternator" 85.00\n`;
    expect(rows(taken, SHOP)).toEqual(['came Alternator: 0.00 (-85.00)']);
    expect(rows(JOB, SHOP, taken)).toEqual(['went Alternator: 0.00 (85.00)']);
    expect(rows(taken.replace('85.00', '95.00'), SHOP, taken)).toEqual(['moved Alternator: 0.00 (-10.00)']);
  });

  test('dearer, and too late by what else changed: half of 10.00 by the charge, and at the mean of 50.00 and 60.00 by the day', () => {
    // 3 h + 2 h from Monday; 90 h more of closing up are past the week in which it is due. In the car it would be 8 h, so that is taken: pinned.
    const pinned = started(core).replace('do pump\n', 'do pump\n  way open\n');
    expect(rows(pinned.replace('50.00', '60.00').replace('refit 1.0', 'refit 91.0'), SHOP, pinned)).toEqual(['moved Front off: 10800.00', 'moved Pump, rebuilt: 10.00 (5.00)', 'refund Core back in time or not: 0.00 (55.00)']);
  });

  test('a part that came too late for its core never had another day', () => {
    const late = started(JOB).replace('do pump\n', 'do pump\n  way open\n').replace('refit 1.0', 'refit 91.0');
    expect(rows(`${late}  part "Pump, rebuilt" 90.00 rebuilt\n    core 50.00 due 1 wk\n`, SHOP, late)).toEqual(['came Pump, rebuilt: 140.00']);
  });

  test('tax that comes back with it', () => {
    const taxed = `${SHOP}  tax sales "Sales tax" 10% on parts\n  core-tax refunded on rebuilt\n`;
    // 10.00 and its tax of 1.00 are paid and come back.
    expect(rows(core.replace('50.00', '60.00'), taxed, core, taxed)).toEqual(['moved Pump, rebuilt: 10.00 (0.00)', 'tax Sales tax: 1.00', 'tax-back Tax back with the cores: 0.00 (-1.00)']);
  });
});

describe('fees and taxes', () => {
  test('a percentage of work: 2 % at the mean of 600.00 and 720.00, 6 % of 120.00', () => {
    const fee = (percent: number) => `${SHOP}  fee supplies "Supplies" ${percent}% of labour\n`;
    expect(rows(JOB.replace('refit 1.0', 'refit 2.0'), fee(7), JOB, fee(5))).toEqual(['moved Front off: 120.00', 'moved Supplies: 13.20', 'fee Supplies: 7.20']);
  });

  test('a percentage of parts and of outside work follows these', () => {
    const goods = `${JOB}  part "Seal" 40.00 new\n  sublet "Skim" 50.00\n`;
    const fees = `${SHOP}  fee a "Handling" 10% of parts\n  fee b "Freight" 20% of sublets\n`;
    expect(rows(goods.replace('40.00', '60.00').replace('50.00', '65.00'), fees, goods, fees)).toEqual(['moved Seal: 20.00', 'moved Skim: 15.00', 'fee Freight: 3.00', 'fee Handling: 2.00']);
  });

  test('a fee of the shop where an option has work now, and had none, follows the work', () => {
    const none = JOB.replace('  do pump\n', '  part "Seal" 40.00 new\n');
    const fee = `${SHOP}  fee tow "Yard fee" 15.00\n`;
    expect(rows(none.replace('option mend "Mend it"\n', 'option mend "Mend it"\n  labour "Fit it" 1.0 h\n'), fee, none, fee)).toEqual(['came Fit it: 120.00', 'fee Yard fee: 15.00']);
  });

  test('a fee that an option charges no more, by its link', () => {
    const charged = `${JOB}  charge tow\nfee tow "Tow in" 40.00\n`;
    expect(rows(charged.replace('  charge tow\n', ''), SHOP, charged)).toEqual(['went Tow in by Mend it: -40.00']);
    expect(rows(charged.replace('40.00', '45.00'), SHOP, charged)).toEqual(['moved Tow in: 5.00']);
  });

  test('hire of a tool', () => {
    const hired = `${JOB.replace('  takes 8.0 h\n', '  needs puller\n  takes 8.0 h\n')}tool puller "Puller" 30.00\n`;
    expect(rows(hired.replace('30.00', '36.00'), SHOP, hired)).toEqual(['moved Puller: 6.00']);
  });

  test('its rate, the rule for cores and what it stands on, all at once', () => {
    // 10 % or 12 % of 90.00, with the core taxed or not, 50.00 or 60.00: 9.00, 10.80; 14.00, 16.80; 15.00, 18.00. Weights of three: 1/3, 1/6 twice, 1/3.
    // Rate: 1.80 / 3 + (2.80 + 1.80) / 6 + 3.00 / 3. Rule: 5.00 / 3 + (6.00 + 6.00) / 6 + 7.20 / 3. Base: (0 + 1.00) / 6 + 1.20 / 3.
    const core = `${JOB}  part "Pump, rebuilt" 90.00 rebuilt\n    core 50.00\n`;
    const tax = (percent: number) => `${SHOP}  tax sales "Sales tax" ${percent}% on parts\n`;
    expect(rows(core.replace('50.00', '60.00'), `${tax(12)}  core-tax kept\n`, core, tax(10))).toEqual(
      ['moved Pump, rebuilt: 10.00 (0.00)', 'came core-tax kept: 6.07', 'moved Sales tax: 2.37', 'tax Sales tax: 0.57', 'rounding Rounding: -0.01'],
    );
  });

  test('two rules for cores that moved share in equal parts', () => {
    // 50.00 of one part and 60.00 of another are taxed now: 11.00, and nothing tells the two rules apart.
    const cores = `${JOB}  part "Pump" 90.00 rebuilt\n    core 50.00\n  part "Box" 80.00 used\n    core 60.00\n`;
    const tax = `${SHOP}  tax sales "Sales tax" 10% on parts\n`;
    expect(rows(cores, `${tax}  core-tax kept on rebuilt\n  core-tax kept on used\n`, cores, tax)).toEqual(['came core-tax kept on rebuilt: 5.50', 'came core-tax kept on used: 5.50']);
  });

  test('a tax that is gone, and one that came', () => {
    const goods = `${JOB}  part "Seal" 40.00 new\n`;
    expect(rows(goods, `${SHOP}  tax city "City tax" 5% on parts\n`, goods, `${SHOP}  tax sales "Sales tax" 10% on parts\n`)).toEqual(['went Sales tax: -4.00', 'came City tax: 2.00']);
  });
});

describe('whole options', () => {
  const other = `${JOB}option used "Fit a used pump"\n  part "Used pump" 200.00 used\n    core 30.00\n  harvest "Bracket" 12.00\n`;

  test('one that came or went counts in whole, with what comes back', () => {
    expect(rows(other, SHOP)).toEqual(['came Fit a used pump: 0.00 230.00 (188.00)']);
    expect(rows(JOB, SHOP, other)).toEqual(['went Fit a used pump: 0.00 -230.00 (-188.00)']);
  });

  test('worth that is given up', () => {
    const worth = (after: string) => other.replace('estimate "E-1"\n', 'estimate "E-1"\nvehicle "Van"\n  worth 9000.00\n').replace('"Fit a used pump"\n', `"Fit a used pump"\n  worth ${after}\n`);
    expect(rows(worth('7500.00'), SHOP, worth('8000.00'))).toEqual(['moved Fit a used pump: 0.00 0.00', 'worth Worth given up: 0.00 0.00 (500.00)']);
  });
});
