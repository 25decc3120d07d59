import { describe, expect, test } from 'vitest';
import { JOB, rows, SHOP } from './rows.js';

// A line that comes to the same may have been moved by two changes that cancel; and what the shop says may move a line that says the same.
// Shares at the mean of where the others stand (see shares.test.ts); sums by hand.

describe('a line that comes to the same', () => {
  test('by other hours of the job in another way in', () => {
    // 9 h of getting in, so 8 h in the car. Then 20 h in the car, or 8 h with the way in: 17 h. Hours of the job by its own words and the
    // way in: 8 and 2 before, 20 and 8 after. Own: the mean of 12 and 6, 1080.00. The way in: the mean of -6 and -12, and 9 h of getting in.
    const job = (car: string, open: string) => JOB.replace('refit 1.0', 'refit 7.0').replace('takes 8.0', `takes ${car}`).replace('takes 2.0', `takes ${open}`);
    expect(rows(job('20.0', '8.0'), SHOP, job('8.0', '2.0'))).toEqual(['moved Pump: renew: 1080.00']);
  });

  test('by a dearer hour and a way in that takes fewer of them', () => {
    // 6 h at 120.00 in the car, then 4 h at 180.00 with 1 h of getting in. Rate: 60.00 on the mean of 6 h and 4 h. The way in: 2 h less at
    // the mean of the rates, and 180.00 of getting in.
    const job = (remove: string, refit: string) => JOB.replace('takes 8.0', 'takes 6.0').replace('takes 2.0', 'takes 4.0').replace('remove 2.0', `remove ${remove}`).replace('refit 1.0', `refit ${refit}`);
    expect(rows(job('0.5', '0.5'), SHOP.replace('120.00', '180.00'), job('2.0', '7.0'))).toEqual(['moved Bench: 300.00', 'moved Front off: 0.00', 'ways Way in: -120.00']);
  });

  test('by a dearer hour alone, which makes the way in worth it', () => {
    // 6 h at 120.00 in the car, where getting in is 3 h at 100.00 and saves 2 h; at 180.00 an hour, 4 h with the way in. Rate: 60.00 on the
    // mean of 6 h and 4 h. The way in: 2 h less at the mean of the rates, and 300.00 of getting in, are nothing together.
    const job = JOB.replace('takes 8.0', 'takes 6.0').replace('takes 2.0', 'takes 4.0').replace('"Pump: renew"\n', '"Pump: renew"\n  class fine\n');
    const shop = (fine: string) => SHOP.replace('120.00', '100.00').replace('150.00', fine);
    expect(rows(job, shop('180.00'), job, shop('120.00'))).toEqual(['moved Fine work: 300.00']);
  });

  test('what follows from changes that cancel is no row', () => {
    // Each of two taxes of one title stands on 10.00 more, or less.
    const goods = (part: string, sublet: string) => `${JOB}  part "Seal" ${part} new\n  sublet "Skim" ${sublet}\n`;
    const shop = `${SHOP}  tax goods "Sales tax" 10% on parts\n  tax work "Sales tax" 10% on sublets\n`;
    expect(rows(goods('50.00', '60.00'), shop, goods('40.00', '70.00'), shop)).toEqual(['moved Seal: 10.00', 'moved Skim: -10.00']);
  });

  test('a part that the customer brings has no price to share out, whenever it arrives', () => {
    const oil = (says: string) => `${JOB}  part "Oil" customer-supplied${says}\n`;
    expect(rows(oil(' arrives 2 d'), SHOP, oil(''))).toEqual(['moved Oil: 0.00']);
  });
});

describe('a line that says the same', () => {
  test('another way of rounding: half a cent of three shims goes down', () => {
    const shims = `${JOB}  part "Shim" 3 at 1.015 new\n`;
    const rounding = (how: string) => SHOP.replace('currency USD', `currency USD\n  rounding ${how}`);
    // 3.045 is 3.05 or 3.04.
    expect(rows(shims, rounding('half-down'), shims, rounding('half-up'))).toEqual(['moved Bay: 0.00', 'rounding Rounding: -0.01']);
    expect(rows(shims, rounding('half-up'), shims, rounding('half-down'))).toEqual(['moved Bay: 0.00', 'rounding Rounding: 0.01']);
  });

  test('of two rates without a usual one only one is left, and is the usual one by that', () => {
    // No hour had a price before. 3 h of getting in and 2 h of the job, both pinned, have one now.
    const pinned = JOB.replace('do pump\n', 'do pump\n  way open\n');
    const shop = (fine: string) => SHOP.replace(' usual', '').replace('  rate fine "Fine work" 150.00\n', fine);
    expect(rows(pinned, shop(''), pinned, shop('  rate fine "Fine work" 150.00\n'))).toEqual(['went Fine work: 0.00', 'rate Rate of the work: 600.00']);
  });

  test('another class whose rate is another line of the shop: its own words moved it', () => {
    // 2 h at 190.00 in place of 170.00.
    const job = (name: string) => JOB.replace('"Pump: renew"\n', `"Pump: renew" class ${name}\n`);
    expect(rows(job('swift'), `${SHOP}  rate swift "Overnight" 190.00\n`, job('quick'), `${SHOP}  rate quick "Rush" 170.00\n`)).toEqual(['moved Pump: renew: 40.00', 'went Rush: 0.00', 'came Overnight: 0.00']);
  });
});
