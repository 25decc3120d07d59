import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { Decimal } from '../../src/vocabulary/index.js';
import { cheapestWays, type RankedPlan, type Weighed } from '../../src/weigh/index.js';
import { cheapestFirst } from '../../src/weigh/ways.js';
import { randomEstimate } from '../support/random-estimate.js';
import { PATIENT, runs } from '../support/random-runs.js';
import { onStand, unpinned } from './rewrite.js';
import { readSample, readSound, sampleFiles } from './weighed.js';

// The abstract problem ---------------------------------------------------------

interface Case {
  /** Ways that each way gives besides itself. */
  readonly includes: readonly number[];
  readonly prices: readonly number[];
  readonly wayHours: readonly number[];
  /** Goods that all ways of a set share: paid once where one of them is paid. */
  readonly shared: { readonly by: number; readonly price: number };
  readonly jobs: readonly (readonly { readonly takes: number; readonly price: number; readonly hours: number }[])[];
  /** A fee on top, by the hundred and capped: what a plan really comes to is above the sum of its prices. */
  readonly fee: number;
  readonly cap: number;
}

const WAYS = 5;
const bit = (i: number) => 1 << i;

/** Small prices, so that ties are common; several jobs have modes in common, and some can never be reached. */
const cases: fc.Arbitrary<Case> = fc.integer({ min: 0, max: WAYS }).chain((count) => {
  const set = fc.integer({ min: 0, max: bit(count) - 1 });
  const each = <T>(value: fc.Arbitrary<T>) => fc.array(value, { minLength: count, maxLength: count });
  // Now and then a job takes a way that nothing gives.
  const mode = fc.record({ takes: fc.oneof({ weight: 9, arbitrary: set }, { weight: 1, arbitrary: fc.constant(bit(WAYS)) }), price: fc.integer({ min: 0, max: 6 }), hours: fc.integer({ min: 0, max: 3 }) });
  return fc.record({
    includes: each(set), prices: each(fc.integer({ min: 0, max: 5 })), wayHours: each(fc.integer({ min: 0, max: 3 })),
    shared: fc.record({ by: set, price: fc.integer({ min: 0, max: 3 }) }),
    jobs: fc.array(fc.array(mode, { minLength: 1, maxLength: 4 }), { maxLength: 4 }),
    fee: fc.constantFrom(0, 0, 20, 50), cap: fc.integer({ min: 0, max: 4 }),
  });
});

/** All that paid ways give: includes are followed one step, as the planner hands them over closed already. */
function givenBy({ includes }: Case, paid: number): number {
  return includes.reduce((bits, more, i) => ((paid & bit(i)) === 0 ? bits : bits | bit(i) | more), 0);
}

type Plan = RankedPlan;

/** What a set of ways comes to; undefined where some job can't be done. */
function priced(one: Case, paid: number): Plan | undefined {
  const gives = givenBy(one, paid);
  let money = one.prices.reduce((sum, price, i) => sum + ((paid & bit(i)) === 0 ? 0 : price), 0) + ((paid & one.shared.by) === 0 ? 0 : one.shared.price);
  let hours = one.wayHours.reduce((sum, time, i) => sum + ((paid & bit(i)) === 0 ? 0 : time), 0);
  for (const job of one.jobs) {
    const [best] = job.filter((mode) => (mode.takes & ~gives) === 0).sort((a, b) => a.price - b.price || a.hours - b.hours);
    if (best === undefined) return undefined;
    money += best.price;
    hours += best.hours;
  }
  const withFee = new Decimal(money).plus(Math.min(one.cap, Math.round((money * one.fee) / 100)));
  return { ways: paid, money: withFee, hours: new Decimal(hours) };
}

const size = (set: number) => set.toString(2).replaceAll('0', '').length;

function inOrder(a: Plan, b: Plan): number {
  return a.money.comparedTo(b.money) || a.hours.comparedTo(b.hours) || size(a.ways) - size(b.ways) || a.ways - b.ways;
}

/** Every set of ways, the best first; sets with a way that can be left out without any job getting dearer or slower are dropped. */
function byBruteForce(one: Case): Plan[] {
  const plans: Plan[] = [];
  for (let paid = 0; paid < bit(one.prices.length); paid++) {
    const plan = priced(one, paid);
    if (plan !== undefined && everyWayHelps(one, paid)) plans.push(plan);
  }
  return plans.sort(inOrder);
}

function everyWayHelps(one: Case, paid: number): boolean {
  const jobsWith = (set: number) => {
    const gives = givenBy(one, set);
    return one.jobs.map((job) => job.filter((mode) => (mode.takes & ~gives) === 0).sort((a, b) => a.price - b.price || a.hours - b.hours)[0]);
  };
  const now = jobsWith(paid);
  return one.prices.every((_, i) => {
    if ((paid & bit(i)) === 0) return true;
    const without = jobsWith(paid & ~bit(i));
    return now.some((mode, job) => without[job] === undefined || without[job].price !== mode?.price || without[job].hours !== mode.hours);
  });
}

function bySearch(one: Case, most: number): Plan[] {
  return cheapestWays<Plan>({
    gives: one.includes.map((more, i) => more | bit(i)),
    prices: one.prices.map((price) => new Decimal(price)),
    jobs: one.jobs.map((job) => cheapestFirst(job.map(({ takes, price, hours }) => ({ takes, price: new Decimal(price), hours: new Decimal(hours) })))),
    base: new Decimal(0),
    plan: (paid) => priced(one, paid) as Plan,
  }, most);
}

const shown = (plans: readonly Plan[]) => plans.map(({ ways, money, hours }) => `${ways.toString(2)} at ${money.toFixed()} in ${hours.toFixed()}`);

describe('cheapest ways in, against every set of ways tried', () => {
  it('the same plans in the same order, runners-up too (2000 cases)', PATIENT, () => {
    let unreachable = 0;
    let ties = 0;
    fc.assert(fc.property(cases, fc.integer({ min: 1, max: 5 }), (one, most) => {
      const all = byBruteForce(one);
      if (all.length === 0) unreachable++;
      if (all[1] !== undefined && all[0]?.money.eq(all[1].money) === true) ties++;
      expect(shown(bySearch(one, most))).toEqual(shown(all.slice(0, most)));
    }), runs(324, 2000));
    // The cases are worth their name: many ties, many that can't be done.
    expect(ties).toBeGreaterThan(100);
    expect(unreachable).toBeGreaterThan(80);
  });

  it('never dearer, and never slower at the same money, than any set at all (600 cases)', PATIENT, () => {
    fc.assert(fc.property(cases, (one) => {
      const [best] = bySearch(one, 1);
      for (let paid = 0; paid < bit(one.prices.length); paid++) {
        const plan = priced(one, paid);
        if (plan === undefined) continue;
        if (best === undefined || (best.money.comparedTo(plan.money) || best.hours.comparedTo(plan.hours)) > 0) expect.fail(`${shown([plan])[0] ?? ''} is better than ${best === undefined ? 'none' : (shown([best])[0] ?? '')}`);
      }
    }), runs(2009, 600));
  });
});

// Through texts --------------------------------------------------------------

const POINTS = ['low', 'likely', 'high'] as const;

const SHOP = 'steelyard 1\nshop "Invented Bay"\n  rate bench 60.00\n';
const WAY = 'access out "Engine out"\n  remove 6 h\n  refit 7 h\n  part "Seals" 25.00 new\n  sublet "Alignment" 95.00\n';

/** Hours in tenths: at 60.00 an hour every line is whole cents and no fee or tax below needs rounding. */
const tenths = fc.integer({ min: 1, max: 120 }).map((n) => (n / 10).toFixed(1));

const lineSum = (weighed: Weighed) => weighed.totals.lines.map((line) => `${line.title} ${line.amount.likely.toFixed(2)}`);

describe('access is paid once', () => {
  function expectOnce(weighed: Weighed): void {
    for (const plan of [weighed.planned.chosen, ...weighed.planned.others]) {
      const work = plan.totals.lines.filter((line) => line.share === 'access' && line.kind === 'labour' && line.with.length === 1);
      const keys = work.map((line) => `${line.name ?? ''} ${line.at.start}`);
      expect(new Set(keys).size).toBe(keys.length);
      const isLeft = (way: (typeof plan.paid)[number]) => weighed.option.staged?.then === 'left open' && weighed.option.staged.ways.includes(way);
      const written = plan.paid.map((way) => [way.remove, isLeft(way) ? undefined : way.refit].filter((time) => time !== undefined).length).reduce((a, b) => a + b, 0);
      expect(work.length).toBe(written);
    }
  }

  it.each(sampleFiles)('sample %s', (file) => {
    readSample(file).comparison.options.forEach(expectOnce);
  });

  it('random estimates', PATIENT, () => {
    fc.assert(fc.property(randomEstimate, (text) => readSound(text).comparison.options.forEach(expectOnce)), runs(31, 30));
  });

  it('a second job behind the same way in adds its own line and nothing else', PATIENT, () => {
    fc.assert(fc.property(tenths, tenths, (one, two) => {
      const text = `${SHOP}${WAY}labour head "Head" ${one} h with out\nlabour pump "Pump" ${two} h with out\noption first "First"\n  do head\noption both "Both"\n  do head, pump\n`;
      const { option } = readSound(text);
      const added = lineSum(option('both')).filter((line) => !lineSum(option('first')).includes(line));
      const price = new Decimal(two).times(60);
      expect(added).toEqual([`Pump ${price.toFixed(2)}`]);
      expect(lineSum(option('both'))).toHaveLength(lineSum(option('first')).length + 1);
      expect(option('both').totals.total.likely.minus(option('first').totals.total.likely).toFixed(2)).toBe(price.toFixed(2));
      expect(option('both').totals.access.likely.toFixed(2)).toBe(option('first').totals.access.likely.toFixed(2));
    }), runs(7, 25));
  });

  it('with fees and taxes it adds its line and goods, and the fees and tax on these', PATIENT, () => {
    // Percentages of whole multiples of 6.00 and 20.00 that end on whole cents: nothing is rounded, so all is exact.
    const shop = `${SHOP}  tax sales 10% on parts, fees by item\n  tax work 5% on labour by invoice\n  fee supplies "Supplies" 5% of labour\n`;
    fc.assert(fc.property(tenths, tenths, fc.integer({ min: 1, max: 40 }), (one, two, pieces) => {
      const text = `${shop}${WAY}part bolts "Bolts" ${pieces} at 2.00 new\nlabour head "Head" ${one} h with out\nlabour pump "Pump" ${two} h with out\n  uses bolts\noption first "First"\n  do head\noption both "Both"\n  do head, pump\n`;
      const { option } = readSound(text);
      const labour = new Decimal(two).times(60);
      const goods = new Decimal(pieces).times(2);
      const fee = labour.times('0.05');
      const expected = labour.plus(goods).plus(fee).plus(labour.times('0.05')).plus(goods.times('0.1'));
      const difference = option('both').totals.total.likely.minus(option('first').totals.total.likely);
      // The supplies line is one line, taxed by item: 10 % of it is rounded to the cent in both options.
      const feeTax = (name: string) => option(name).totals.lines.filter((line) => line.title === 'Supplies').reduce((sum, line) => sum.plus(line.amount.likely.times('0.1').toDecimalPlaces(2, Decimal.ROUND_HALF_UP)), new Decimal(0));
      expect(difference.toFixed(2)).toBe(expected.plus(feeTax('both')).minus(feeTax('first')).toFixed(2));
    }), runs(8, 25));
  });

  it('jobs that share a way in share it too where one takes a way that includes it', () => {
    const text = `${SHOP}access lifted "Lifted"\n  remove 1 h\n  refit 1 h\naccess out "Out"\n  includes lifted\n  remove 5 h\n  refit 5 h\nlabour head "Head" 4 h with out\nlabour pump "Pump" 2 h with lifted\noption both "Both"\n  do head, pump\n`;
    const { planned, totals } = readSound(text).option('both');
    expect(planned.chosen.paid.map((way) => way.name)).toEqual(['out']);
    expect(totals.total.likely.toFixed(2)).toBe('960.00');
  });
});

describe('the access penalty', () => {
  function expectPenalty(text: string): void {
    const now = readSound(text).comparison.options;
    const stand = readSound(onStand(text)).comparison.options;
    const told = now.map(({ penalty }) => POINTS.map((point) => `${penalty.money[point].toFixed()} in ${penalty.hours[point].toFixed(9)}`));
    const workedOut = now.map(({ totals }, i) => POINTS.map((point) => {
      const free = (stand[i] as Weighed).totals;
      return `${totals.total[point].minus(free.total[point]).toFixed()} in ${totals.hours[point].minus(free.hours[point]).toFixed(9)}`;
    }));
    expect(told).toEqual(workedOut);
  }

  it('equals the difference to the same text with every way in free (random estimates)', PATIENT, () => {
    fc.assert(fc.property(randomEstimate, expectPenalty), runs(41, 60));
  });

  it('is nothing where nothing is paid for getting in', () => {
    const { penalty } = readSound(`${SHOP}labour pump "Pump" 2 h\noption one "One"\n  do pump\n`).option('one');
    expect([penalty.money.likely.toFixed(), penalty.hours.likely.toFixed()]).toEqual(['0', '0']);
  });

  it('counts the way in and the hours that it saves', () => {
    // In the car 9 h; out 1 h behind 13 h and goods of 120.00: on a stand the job takes 1 h, so getting at it costs 8 h.
    const { penalty, totals } = readSound(`${SHOP}${WAY}labour pump "Pump"\n  takes 9 h\n  takes 1 h with out\noption one "One"\n  do pump\n`).option('one');
    expect(totals.total.likely.toFixed(2)).toBe('540.00');
    expect([penalty.money.likely.toFixed(2), penalty.hours.likely.toFixed()]).toEqual(['480.00', '8']);
  });
});

describe('a pinned plan', () => {
  it('is honoured, and its extra cost is what it comes to less the free plan (random estimates)', PATIENT, () => {
    let pinned = 0;
    fc.assert(fc.property(randomEstimate, (text) => {
      const now = readSound(text).comparison.options;
      if (now.every((weighed) => weighed.option.way === undefined)) return;
      const free = readSound(unpinned(text)).comparison.options;
      now.forEach((weighed, i) => {
        const { option, planned, totals } = weighed;
        if (option.way === undefined) return expect(planned.unpinned).toBeUndefined();
        pinned++;
        const asked = option.way.filter((way, _, all) => all.every(({ includes }) => !includes.includes(way)));
        expect(planned.chosen.paid.map((way) => way.name).sort()).toEqual(asked.map((way) => way.name).sort());
        const extra = totals.total.likely.minus((free[i] as Weighed).totals.total.likely);
        expect(extra.gte(0)).toBe(true);
        expect(planned.chosen.money.minus(planned.unpinned?.money ?? NaN).toFixed()).toBe(extra.toFixed());
        expect(planned.others.every((plan) => plan.ways !== planned.chosen.ways)).toBe(true);
      });
    }), runs(51, 60));
    expect(pinned).toBeGreaterThan(10);
  });

  it('in-car takes the engine in its place, even where out is cheaper', () => {
    const work = 'labour pump "Pump"\n  takes 20 h\n  takes 1 h with out\n';
    const { option } = readSound(`${SHOP}${WAY}${work}option free "Free"\n  do pump\noption held "Held"\n  do pump\n  way in-car\n`);
    expect(option('free').totals.total.likely.toFixed(2)).toBe('960.00');
    expect(option('held').totals.total.likely.toFixed(2)).toBe('1200.00');
    expect(option('held').planned.unpinned?.money.toFixed(2)).toBe('960.00');
    expect(option('held').planned.chosen.paid).toEqual([]);
  });

  it('does not charge what another pinned way in includes', () => {
    const ways = 'access lifted "Lifted"\n  remove 1 h\n  refit 1 h\naccess out "Out"\n  includes lifted\n  remove 3 h\n  refit 4 h\n';
    const { option } = readSound(`${SHOP}${ways}labour pump "Pump" 2 h with lifted\noption both "Both"\n  do pump\n  way lifted, out\noption one "One"\n  do pump\n  way out\n`);
    expect(option('both').totals.total.likely.toFixed(2)).toBe(option('one').totals.total.likely.toFixed(2));
    expect(option('both').planned.chosen.paid.map(({ name }) => name)).toEqual(['out']);
  });

  it('charges a pinned way in that no job takes', () => {
    const { option } = readSound(`${SHOP}${WAY}labour pump "Pump" 2 h\noption held "Held"\n  do pump\n  way out\n`);
    expect(option('held').totals.total.likely.toFixed(2)).toBe('1020.00');
    expect(option('held').penalty.money.likely.toFixed(2)).toBe('900.00');
  });
});

describe('runners-up', () => {
  it('come after the chosen plan in order, and each is what pinning it comes to (random estimates)', PATIENT, () => {
    let seen = 0;
    fc.assert(fc.property(randomEstimate, (text) => {
      for (const weighed of readSound(text).comparison.options) {
        if (weighed.option.way !== undefined || !weighed.option.written) continue;
        const plans = [weighed.planned.chosen, ...weighed.planned.others];
        expect(plans).toEqual([...plans].sort(inOrder));
        for (const other of weighed.planned.others.slice(0, 1)) {
          seen++;
          const way = other.paid.length === 0 ? 'in-car' : other.paid.map((one) => one.name).join(', ');
          const held = readSound(text.replace(new RegExp(`^(option ${weighed.option.name} .*)$`, 'm'), `$1\n  way ${way}`)).option(weighed.option.name);
          expect(held.totals.total.likely.toFixed()).toBe(other.money.toFixed());
          expect(held.totals.hours.likely.toFixed()).toBe(other.hours.toFixed());
        }
      }
    }), runs(61, 40));
    expect(seen).toBeGreaterThan(5);
  });
});
