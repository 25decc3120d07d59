import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { explain } from '../../src/report/index.js';
import { authorisedIn, type AuthorisedWeighed } from '../../src/weigh/index.js';
import { compare, fromDigits, minus, per, plus, rounded, times, type Rational } from '../oracle/rational.js';
import { runs } from '../support/random-runs.js';
import { read } from '../weigh/weighed.js';

interface Case {
  readonly rule: string;
  readonly authorised: string;
  readonly total?: string;
  readonly shop?: string;
}

/** Read by the product from a text, as a shop would write it: one option that comes to `total`. */
function standing({ rule, authorised, total = authorised, shop = '' }: Case): AuthorisedWeighed {
  const { comparison, errors } = read(`steelyard 1\nshop "S"\n${shop}${rule === '' ? '' : `  overrun ${rule}\n`}option repair "Repair"\n  fee "All of it" ${total}\nauthorised ${authorised} for repair on 2026-11-25\n`);
  expect(errors).toEqual([]);
  const [one] = authorisedIn(comparison);
  if (one === undefined) throw new Error('nothing is authorised');
  return one;
}

const money = (figure: AuthorisedWeighed['room']) => figure.likely.toFixed(2);

describe('the room over what was authorised, by shape of rule', () => {
  // Examples of shapes of rules; whether a rule of law has one of them is for its readers.
  test.each([
    // The lesser of $50 and the greater of $10 and 10 %: Florida Statutes 559.909(1)(b), as read for check-values.md; figures computed from it.
    ['capped', '10% at least 10.00 at most 50.00', '80.00', '10.00'],
    ['capped', '10% at least 10.00 at most 50.00', '150.00', '15.00'],
    ['capped', '10% at least 10.00 at most 50.00', '400.00', '40.00'],
    ['capped', '10% at least 10.00 at most 50.00', '2000.00', '50.00'],
    // $10 or 10 %, whichever is less: an older guidance page of Michigan, as read for check-values.md; figures computed from it.
    ['the lesser', '10% at most 10.00', '80.00', '8.00'],
    ['the lesser', '10% at most 10.00', '100.00', '10.00'],
    ['the lesser', '10% at most 10.00', '2000.00', '10.00'],
    // Common practice; computed by hand.
    ['the greater', '10% at least 10.00', '80.00', '10.00'],
    ['the greater', '10% at least 10.00', '2000.00', '200.00'],
    ['a percentage', '15%', '333.33', '50.00'],
    ['a fixed amount', '50.00', '80.00', '50.00'],
    ['a fixed amount', '50.00', '20000.00', '50.00'],
    ['no rule: everything above must be asked', '', '2000.00', '0.00'],
    ['nothing authorised leaves the least', '10% at least 10.00', '0.00', '10.00'],
  ])('%s: overrun %s on %s leaves %s', (_, rule, authorised, room) => {
    expect(money(standing({ rule, authorised }).room)).toBe(room);
  });

  test.each([['half-up', '12.35'], ['half-down', '12.34'], ['half-even', '12.34']])('the percentage is rounded once, in the way of the shop: %s', (rounding, room) => {
    expect(money(standing({ rule: '10%', authorised: '123.45', shop: `  rounding ${rounding}\n` }).room)).toBe(room); // 12.345, by hand
  });

  test('currencies without cents round to whole ones', () => {
    expect(standing({ rule: '10%', authorised: '12345', shop: '  currency JPY\n' }).room.likely.toFixed()).toBe('1235'); // 1234.5, by hand
  });
});

describe('the edge: equal is within', () => {
  test.each([
    ['2000.00', '2000.00', '0.00', '0.00', '50.00', '0.00', false],
    ['2000.00', '1990.00', '0.00', '0.00', '50.00', '0.00', false],
    ['2000.00', '2030.12', '30.12', '30.12', '19.88', '0.00', false],
    ['2000.00', '2049.99', '49.99', '49.99', '0.01', '0.00', false],
    ['2000.00', '2050.00', '50.00', '50.00', '0.00', '0.00', false],
    ['2000.00', '2050.01', '50.01', '50.00', '0.00', '0.01', true],
    ['2000.00', '2600.00', '600.00', '50.00', '0.00', '550.00', true],
  ])('%s authorised, %s today', (authorised, total, over, used, left, beyond, mustAsk) => {
    const one = standing({ rule: '10% at least 10.00 at most 50.00', authorised, total });
    expect([money(one.over), money(one.used), money(one.left), money(one.beyond), one.mustAsk]).toEqual([over, used, left, beyond, mustAsk]);
  });

  test('without a rule the first cent must be asked', () => {
    expect(standing({ rule: '', authorised: '100.00', total: '100.00' }).mustAsk).toBe(false);
    expect(standing({ rule: '', authorised: '100.00', total: '100.01' }).mustAsk).toBe(true);
  });
});

const coins = (most: number) => fc.nat({ max: most }).map((cents) => `${Math.floor(cents / 100)}.${String(cents % 100).padStart(2, '0')}`);
const rules = fc.record({
  percent: fc.nat({ max: 10_000 }).map((hundredths) => `${hundredths / 100}`),
  limits: fc.oneof(
    fc.constant({ least: undefined, most: undefined }),
    coins(30_000).map((least) => ({ least, most: undefined })),
    coins(30_000).map((most) => ({ least: undefined, most })),
    fc.tuple(coins(20_000), coins(20_000)).map(([a, b]) => (compare(fromDigits(a), fromDigits(b)) <= 0 ? { least: a, most: b } : { least: b, most: a })),
  ),
});

const written = ({ percent, limits: { least, most } }: { readonly percent: string; readonly limits: { readonly least: string | undefined; readonly most: string | undefined } }) =>
  `${percent}%${least === undefined ? '' : ` at least ${least}`}${most === undefined ? '' : ` at most ${most}`}`;

describe('on random rules and amounts', () => {
  const cents = (one: AuthorisedWeighed['room']): Rational => fromDigits(one.likely.toFixed());
  const hundredth = (value: bigint): Rational => ({ n: value, d: 100n });

  test('the room is what exact fractions make of the rule, within its limits, and never below nothing', () => {
    fc.assert(fc.property(rules, coins(500_000), (rule, authorised) => {
      const { room } = standing({ rule: written(rule), authorised });
      const { least, most } = rule.limits;
      let wanted = hundredth(rounded(per(times(fromDigits(authorised), fromDigits(rule.percent)), 100n), 2, 'half-up'));
      if (least !== undefined && compare(fromDigits(least), wanted) > 0) wanted = fromDigits(least);
      if (most !== undefined && compare(fromDigits(most), wanted) < 0) wanted = fromDigits(most);
      expect(compare(cents(room), wanted)).toBe(0);
      expect(room.likely.isNegative()).toBe(false);
      if (least !== undefined) expect(compare(cents(room), fromDigits(least))).toBeGreaterThanOrEqual(0);
      if (most !== undefined) expect(compare(cents(room), fromDigits(most))).toBeLessThanOrEqual(0);
    }), runs(21, 300));
  });

  test('more authorised never leaves less room', () => {
    fc.assert(fc.property(rules, coins(500_000), coins(500_000), (rule, a, b) => {
      const [less, more] = compare(fromDigits(a), fromDigits(b)) <= 0 ? [a, b] : [b, a];
      const room = (authorised: string) => cents(standing({ rule: written(rule), authorised }).room);
      expect(compare(room(less), room(more))).toBeLessThanOrEqual(0);
    }), runs(22, 150));
  });

  test('used and left make up the room, used and what is above it make up what is over, and asking hangs on that alone', () => {
    fc.assert(fc.property(rules, coins(100_000), coins(150_000), (rule, authorised, total) => {
      const one = standing({ rule: written(rule), authorised, total });
      const apart = minus(fromDigits(total), fromDigits(authorised));
      expect(compare(plus(cents(one.used), cents(one.left)), cents(one.room))).toBe(0);
      expect(compare(plus(cents(one.used), cents(one.beyond)), cents(one.over))).toBe(0);
      expect(compare(cents(one.over), apart.n < 0n ? fromDigits('0') : apart)).toBe(0);
      expect(one.mustAsk).toBe(compare(apart, cents(one.room)) > 0);
    }), runs(23, 150));
  });
});

test('a room says how it was made, down to the lines', () => {
  const { comparison } = read('steelyard 1\nshop "S"\n  overrun 10% at least 10.00 at most 50.00\noption repair "Repair"\n  fee "All of it" 2030.00\nauthorised 2000.00 for repair on 2026-11-25\n');
  const room = authorisedIn(comparison)[0]?.room;
  if (room === undefined) throw new Error('no room');
  const rows = explain(room, comparison.money, (span) => span.block.text.slice(span.start, span.end));
  expect(rows.map(({ depth, text, how }) => `${'  '.repeat(depth)}${text} (${how})`)).toEqual([
    'Room over what was authorised: 50.00 (the least of these)',
    '  Raised to the least: 200.00 (the greatest of these)',
    '    Percentage of what was authorised: 200.00 (the percentage of the first, rounded)',
    '      Authorised: 2,000.00 (as written)',
    '      Overrun: 10 % (as written)',
    '    At least: 10.00 (as written)',
    '  At most: 50.00 (as written)',
  ]);
  expect(rows.filter(({ how }) => how === 'as written').map(({ where }) => where)).toEqual(['2000.00', '10%', '10.00', '50.00']);
});
