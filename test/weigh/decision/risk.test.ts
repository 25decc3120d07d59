import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { CASES, decide } from '../../../src/weigh/index.js';
import { betaPert } from '../../../src/weigh/chance/index.js';
import { PATIENT, runs } from '../../support/random-runs.js';
import { meanErrorBound, shareError } from '../chance/errors.js';
import { asChances, averageOf, everyState, withChances, withCore, type WeighedState, type WithChances } from './states.js';
import { decideText, oneFile, soundText, weighFresh } from './weighing.js';

const COIN = 0.005;

function riskOf(text: string, name = 'one') {
  const { risk } = decideText(text).of(name);
  if (risk === undefined) throw new Error(`nothing varies in\n${text}`);
  return risk;
}

const spread = (states: readonly WeighedState[], mean: number) => Math.sqrt(states.reduce((sum, { share, inAll }) => sum + share * (inAll - mean) ** 2, 0));

/** Every case is one of the states to the cent, each about as often as it is likely, and so are the quantiles. */
function expectEnumerated(all: WithChances): number {
  const states = everyState(all);
  const text = asChances(all);
  const decided = decideText(text).of('one');
  const mean = averageOf(states, 'inAll');
  expect(decided.average, text).toBeCloseTo(mean, 6);
  const { risk } = decided;
  if (risk === undefined) throw new Error(`nothing varies in\n${text}`);
  const costs = [...new Set(states.map(({ inAll }) => inAll))].sort((a, b) => a - b);
  for (const cost of costs) {
    const share = states.reduce((sum, state) => sum + (state.inAll === cost ? state.share : 0), 0);
    const found = risk.cases.inAll.filter((one) => Math.abs(one - cost) < COIN / 2).length / CASES;
    // Five standard errors of unstratified cases, and one case.
    expect(Math.abs(found - share), `${cost} in\n${text}`).toBeLessThanOrEqual(5 * shareError(share, CASES) + 1 / CASES);
  }
  const stray = [...risk.cases.inAll].find((one) => costs.every((cost) => Math.abs(one - cost) >= COIN / 2));
  expect(stray, text).toBeUndefined();
  expect(Math.abs(risk.inAll.mean - mean), text).toBeLessThanOrEqual((5 * spread(states, mean)) / Math.sqrt(CASES) + 1e-9);
  for (const [p, value] of [[0.1, risk.inAll.p10], [0.5, risk.inAll.p50], [0.9, risk.inAll.p90]] as const) {
    const room = 5 * shareError(p, CASES) + 1 / CASES;
    const share = (holds: (cost: number) => boolean) => states.reduce((sum, state) => sum + (holds(state.inAll) ? state.share : 0), 0);
    expect(share((cost) => cost < value - COIN), text).toBeLessThanOrEqual(p + room);
    expect(share((cost) => cost <= value + COIN), text).toBeGreaterThanOrEqual(p - room);
  }
  const trouble = 1 - states.reduce((sum, { happened, share }) => sum + (happened.includes(true) ? 0 : share), 0);
  expect(Math.abs(risk.trouble - trouble)).toBeLessThanOrEqual(5 * shareError(trouble, CASES) + 1 / CASES);
  return states.length;
}

describe('chances against every state, weighed as a text in which its lines really stand', () => {
  it('24 options with 1 to 5 chances, some below others: every case to the cent, shares, mean, quantiles; the average exactly', PATIENT, () => {
    let states = 0;
    fc.assert(fc.property(withChances(5), (all) => void (states += expectEnumerated(all))), runs(8801, 24));
    expect(states).toBeGreaterThan(150);
  });

  it('and with a core that what turns up may make too late: its refund is in the states that are ready in time', PATIENT, () => {
    const seen = { states: 0, both: 0 };
    fc.assert(fc.property(withCore(5), (all) => {
      seen.states += expectEnumerated(all);
      if (new Set(everyState(all).map(({ late }) => late)).size > 1) seen.both++;
    }), runs(8802, 24));
    expect(seen.states).toBeGreaterThan(150);
    expect(seen.both).toBeGreaterThan(8);
  });

  it('12 chances: 4096 states, of which the average is that of their sum (computed)', () => {
    const chances = Array.from({ length: 12 }, (_, i) => ({ percent: 5 + i * 7, price: 10 + i * 13 }));
    const text = `steelyard 1\nshop "S"\noption one "One"\n  part "P" 100.00 new\n${chances.map(({ percent, price }, i) => `  chance "C${i}" ${percent}%\n    part "X${i}" ${price}.00 new\n`).join('')}`;
    const { average, risk } = decideText(text).of('one');
    const mean = 100 + chances.reduce((sum, { percent, price }) => sum + (percent * price) / 100, 0);
    expect(average).toBeCloseTo(mean, 8);
    expect(Math.abs((risk?.inAll.mean ?? NaN) - mean)).toBeLessThanOrEqual(meanErrorBound(chances.map(({ price }) => price), CASES));
    // Cost apart from the sums of chances: standard deviation, from independence.
    const variance = chances.reduce((sum, { percent, price }) => sum + (percent / 100) * (1 - percent / 100) * price ** 2, 0);
    const cases = risk?.cases.inAll ?? new Float64Array();
    const own = cases.reduce((sum, one) => sum + (one - mean) ** 2, 0) / CASES;
    expect(Math.sqrt(own / variance)).toBeGreaterThan(0.9);
    expect(Math.sqrt(own / variance)).toBeLessThan(1.1);
  });

  it('12 chances count and a 13th does not, and is said', () => {
    const text = `steelyard 1\nshop "S"\noption one "One"\n${Array.from({ length: 13 }, (_, i) => `  chance "C${i}" 100%\n    part "X${i}" 1.00 new\n`).join('')}`;
    const fresh = weighFresh(oneFile(text));
    expect(fresh.problems.map(({ code }) => code)).toEqual([...Array.from({ length: 13 }, () => 'chance-in-every-case'), 'too-many-chances']);
    expect(decide(fresh.comparison).options[0]?.average).toBe(12);
  });

  it('one chance of 12 % is in 120 of 1000 cases, of 0 % in none and of 100 % in all', () => {
    const cases = (percent: number) => [...riskOf(`steelyard 1\nshop "S"\noption one "One"\n  part "P" 100.00 new\n  chance "C" ${percent}%\n    part "X" 40.00 new\n`).cases.inAll].filter((one) => one === 140).length;
    expect([cases(12), cases(0), cases(100), cases(0.1)]).toEqual([120, 0, 1000, 1]);
  });

  it('a chance below another happens only when that does: 50 % of 40 % (computed)', () => {
    const text = 'steelyard 1\nshop "S"\noption one "One"\n  chance "A" 40%\n    part "X" 100.00 new\n    chance "B" 50%\n      part "Y" 1000.00 new\n';
    const { average, risk } = decideText(text).of('one');
    expect(average).toBeCloseTo(0.4 * 100 + 0.4 * 0.5 * 1000, 9);
    const found = new Set(risk?.cases.inAll);
    expect([...found].sort((a, b) => a - b)).toEqual([0, 100, 1100]);
  });

  it('a chance on a way in counts in the options that pay for it, on a job in those that do it', () => {
    const text = 'steelyard 1\nshop "S"\n  rate bench 100.00\naccess out "Out"\n  remove 1 h\n  chance "Stud breaks" 50%\n    part "Stud" 10.00 new\nlabour job "Job"\n  takes 2 h with out\n  chance "Worn" 50%\n    part "Bush" 20.00 new\noption one "One"\n  do job\noption two "Two"\n  labour "Other" 1 h with out\noption three "Three"\n  part "P" 5.00 new\n';
    const { of } = decideText(text);
    expect([of('one').average, of('two').average, of('three').average]).toEqual([300 + 5 + 10, 200 + 5, 5]);
    // The stud breaks in both alike.
    const [one, two] = [of('one').risk?.cases.inAll ?? [], of('two').risk?.cases.inAll ?? []];
    const stud = Array.from(two, (cost) => cost > 200);
    expect(Array.from(one, (cost) => Math.round(cost - 300) % 20 === 10)).toEqual(stud);
  });
});

describe('what a chance brings with its work (computed)', () => {
  const average = (lines: string, shop = '') => decideText(`steelyard 1\nshop "S"\n  rate bench 100.00\n${shop}${lines}`).of('one').average;

  it('a tax by item on what turns up', () => {
    expect(average('option one "One"\n  part "P" 10.00 new\n  chance "C" 50%\n    part "X" 100.00 new\n', '  tax levy 10% on parts by item\n')).toBeCloseTo(11 + 55, 9);
  });

  it('a fee in percent of its own work', () => {
    expect(average('option one "One"\n  labour "W" 1 h\n  chance "C" 100%\n    labour "X" 1 h\n    fee "F" 10% of labour\n')).toBeCloseTo(210, 9);
  });

  it('fees of the shop where work turns up in an option that has none, and only then', () => {
    const lines = 'option one "One"\n  part "P" 100.00 new\n  chance "C" 10%\n    labour "X" 1 h\n';
    expect(average(lines, '  fee flat "Flat" 30.00\n')).toBeCloseTo(100 + 0.1 * 130, 9);
  });

  it('a tool that is hired anyway is hired once', () => {
    expect(average('tool puller "Puller" 50.00\noption one "One"\n  labour "W" 1 h\n    needs puller\n  chance "C" 100%\n    labour "X" 1 h\n      needs puller\n')).toBeCloseTo(250, 9);
  });
});

describe('comebacks, and ways in', () => {
  const text = (when: string, percent = 100) => `steelyard 1\nshop "S"\n  rate bench 100.00\naccess out "Out"\n  remove 5 h\nlabour again "Again"\n  takes 2 h with out\noption one "One"\n  labour "W" 1 h with out\n  chance fails "Fails" ${percent}%${when}\n    do again\n`;

  it('what turns up while it is open shares the way in; what happens later pays for it again (computed)', () => {
    // 6 h are quoted; 2 h more, or 2 h and another 5.
    expect([decideText(text('')).of('one').average, decideText(text(' comeback')).of('one').average]).toEqual([800, 1300]);
    const risk = riskOf(text(' comeback', 30));
    expect(risk.total).toMatchObject({ mean: 600, p10: 600, p90: 600 });
    expect(risk.inAll).toMatchObject({ p10: 600, p90: 1300 });
  });

  it('what happens later comes to what the same work costs as an option of its own, with fees and taxes', () => {
    const shop = 'steelyard 1\nshop "S"\n  rate bench 97.35\n  tax levy 7.25% on parts, labour by item\n  fee supplies "Supplies" 5% of labour cap 30.00\naccess out "Out"\n  remove 5 h\nlabour again "Again"\n  takes 2 h with out\noption one "One"\n  labour "W" 1 h with out\n';
    const all = `${shop}  chance fails "Fails" 100% comeback\n    do again\n    part "X" 33.33 new\n    fee "F" 3% of labour\noption two "Two"\n  do again\n  part "X" 33.33 new\n  fee "F" 3% of labour\n`;
    const { of } = decideText(all);
    const quote = soundText(all);
    expect(of('one').average).toBeCloseTo(quote.option('one').inAll.likely.plus(quote.option('two').totals.total.likely).toNumber(), 6);
  });

  it('a chance that needs another way in pays for it once, whatever number of chances need it (computed)', () => {
    const more = 'steelyard 1\nshop "S"\n  rate bench 100.00\naccess out "Out"\n  remove 5 h\noption one "One"\n  labour "W" 1 h\n  chance "A" 50%\n    labour "X" 1 h with out\n  chance "B" 50%\n    labour "Y" 2 h with out\n';
    // 100, and with A 600 more, with B 700 more, with both 800 more.
    expect(decideText(more).of('one').average).toBeCloseTo(100 + (600 + 700 + 800) / 4, 9);
    expect([...new Set(riskOf(more).cases.inAll)].sort((a, b) => a - b)).toEqual([100, 700, 800, 900]);
  });
});

describe('ranged amounts', () => {
  it.each([[1, 4, 7], [6, 9, 18], [100, 100, 400]] as const)('a part of %s / %s / %s: mean and quantiles of its curve within the bound', (low, likely, high) => {
    const curve = betaPert({ low, likely, high });
    const risk = riskOf(`steelyard 1\nshop "S"\noption one "One"\n  part "P" ${low} / ${likely} / ${high} new\n`);
    // Rounded to the cent, and the middles of strata.
    expect(Math.abs(risk.inAll.mean - curve.mean)).toBeLessThanOrEqual(meanErrorBound([high - low], CASES) + COIN);
    expect(Math.abs(risk.inAll.p90 - curve.quantile(0.9))).toBeLessThanOrEqual(0.011);
    expect(Math.abs(risk.inAll.p50 - curve.quantile(0.5))).toBeLessThanOrEqual(0.011);
  });

  it('P80 and P90 of beta-PERT (1,4,7) are 5.040412 and 5.520181 (computed, check values)', () => {
    const risk = riskOf('steelyard 1\nshop "S"\noption one "One"\n  part "P" 1000 / 4000 / 7000 new\n');
    expect(Math.abs(risk.inAll.p90 - 5520.181)).toBeLessThan(0.02);
  });

  it('sums of ranged amounts: mean and variance from the closed form (25 random options of 2 to 6 parts and hours)', PATIENT, () => {
    const amount = fc.tuple(fc.integer({ min: 1, max: 500 }), fc.integer({ min: 0, max: 500 }), fc.integer({ min: 1, max: 500 }));
    fc.assert(fc.property(fc.array(amount, { minLength: 2, maxLength: 6 }), (all) => {
      const points = all.map(([low, more, most]) => ({ low, likely: low + more, high: low + more + most }));
      const text = `steelyard 1\nshop "S"\n  rate bench 1.00\noption one "One"\n${points.map(({ low, likely, high }, i) => (i % 2 === 0 ? `  part "P${i}" ${low} / ${likely} / ${high} new\n` : `  labour "L${i}" ${low} / ${likely} / ${high} h\n`)).join('')}`;
      const { risk, average } = decideText(text).of('one');
      const curves = points.map((one) => betaPert(one));
      const mean = curves.reduce((sum, curve) => sum + curve.mean, 0);
      expect(average).toBeCloseTo(mean, 1);
      const sampled = risk as NonNullable<typeof risk>;
      expect(Math.abs(sampled.inAll.mean - mean)).toBeLessThanOrEqual(meanErrorBound(points.map(({ low, high }) => high - low), CASES) + COIN * all.length);
      const variance = curves.reduce((sum, curve) => sum + curve.variance, 0);
      const own = sampled.cases.inAll.reduce((sum, one) => sum + (one - mean) ** 2, 0) / CASES;
      expect(Math.abs(own / variance - 1)).toBeLessThan(0.2);
    }), runs(8802, 25));
  });

  it('a line that two options share moves them together: their difference never varies, and one is always the cheapest', () => {
    const text = 'steelyard 1\nshop "S"\n  rate bench 90 / 100 / 120\nlabour job "Job" 3 / 5 / 9 h\npart pump "Pump" 100 / 150 / 400 new\noption one "One"\n  do job\n  fit pump\noption two "Two"\n  do job\n  fit pump\n  part "X" 1.00 new\n';
    const { of } = decideText(text);
    const [one, two] = [of('one').risk, of('two').risk];
    const apart = new Set(Array.from(one?.cases.inAll ?? [], (cost, i) => Math.round(((two?.cases.inAll[i] as number) - cost) * 100)));
    expect([...apart]).toEqual([100]);
    expect([one?.cheapest, two?.cheapest]).toEqual([1, 0]);
  });

  it('two lines that are written alike vary apart, each with its own draws', () => {
    const text = 'steelyard 1\nshop "S"\noption one "One"\n  part "P" 100 / 150 / 400 new\n  part "P" 100 / 150 / 400 new\noption two "Two"\n  part "P" 100 / 150 / 400 new\n  part "P" 100 / 150 / 400 new\n';
    const { of } = decideText(text);
    const [one, two] = [of('one').risk, of('two').risk] as const;
    expect(Math.abs((one?.cheapest ?? NaN) - 0.5)).toBeLessThan(5 * shareError(0.5, CASES));
    expect((one?.cheapest ?? NaN) + (two?.cheapest ?? NaN)).toBeCloseTo(1, 9);
  });

  it('only what an option rests on moves it, and no line has more than all of the spread', () => {
    const lines = (of: string) => Array.from({ length: 12 }, (_, i) => `  part "${of} ${i}" ${5 + i} / ${10 + i} / ${30 + i} new\n`).join('');
    const { of } = decideText(`option one "One"\n  part "Mine" 100 / 120 / 200 new\noption two "Two"\n${lines('Theirs')}`);
    for (const name of ['one', 'two']) {
      const moved = of(name).risk?.contributions ?? [];
      expect(moved.map(({ title }) => title).filter((title) => title.startsWith('Mine') !== (name === 'one'))).toEqual([]);
      for (const { share } of moved) expect(share).toBeLessThanOrEqual(1);
    }
  });

  it('lines that vary and lines that may come: the greatest shares of the spread are named, at most three', () => {
    const text = 'steelyard 1\nshop "S"\noption one "One"\n  part "Wide" 100 / 500 / 900 new\n  part "Narrow" 100 / 101 / 102 new\n  chance "Big" 50%\n    part "X" 800.00 new\n  chance "Small" 50%\n    part "Y" 1.00 new\n';
    const { contributions } = riskOf(text);
    expect(contributions.map(({ title, kind }) => `${kind} ${title}`)).toEqual(['chance Big', 'figure Wide']);
    // Variances: .25 × 800² = 160 000; beta-PERT (100,500,900): 22 857.14.
    const [big, wide] = contributions.map(({ share }) => share);
    expect(big).toBeCloseTo(160_000 / 182_857.39, 1);
    expect(wide).toBeCloseTo(22_857.14 / 182_857.39, 1);
  });
});

describe('the same file gives the same bytes', () => {
  const lines = {
    shop: 'shop "S"\n  rate bench 90 / 100 / 120\n',
    job: 'labour job "Job" 3 / 5 / 9 h\n  chance "Worn" 30%\n    part "Bush" 10 / 20 / 30 new\n',
    pump: 'part pump "Pump" 100 / 150 / 400 new\n',
    belt: 'part belt "Belt" 10 / 15 / 40 new\n',
    one: 'option one "One"\n  do job\n  fit pump\n',
    two: 'option two "Two"\n  fit belt, pump\n  chance later-on "Later" 12%\n    part "X" 700.00 new\n',
  };
  const text = (...order: (keyof typeof lines)[]) => `steelyard 1\n${order.map((key) => lines[key]).join('')}`;
  const bytes = (of: string, name: string) => {
    const { inAll, days } = riskOf(of, name).cases;
    return [...inAll, ...days].join();
  };

  it('on two runs, and with the lines in another order', () => {
    const first = text('shop', 'job', 'pump', 'belt', 'one', 'two');
    for (const name of ['one', 'two']) {
      expect(bytes(`${first}`, name)).toBe(bytes(first, name));
      expect(bytes(text('belt', 'two', 'pump', 'one', 'job', 'shop'), name)).toBe(bytes(first, name));
    }
  });

  it('a line, a job, a chance and an option more leave all other draws as they were', () => {
    const first = text('shop', 'job', 'pump', 'belt', 'one', 'two');
    const more = `steelyard 1\npart other "Other" 5 / 6 / 60 new\nlabour extra "Extra" 1 / 2 / 3 h\n  chance "Stuck" 50%\n    part "Oil" 3.00 new\n${lines.shop}${lines.job}option zero "Zero"\n  do extra\n  fit other\n${lines.pump}${lines.belt}${lines.one}${lines.two}`;
    for (const name of ['one', 'two']) expect(bytes(more, name)).toBe(bytes(first, name));
  });
});

describe('a core comes back in the cases in which it is ready in time', () => {
  const text = (due: string, hours: string, percent: number) => `steelyard 1\nestimate "E"\n  start 2026-11-30\nshop "S"\n  workday 8 h\n  rate bench 1.00\n  tax levy 10% on parts by item\n  core-tax refunded\noption one "One"\n  labour "W" ${hours}\n  part "Unit" 500.00 rebuilt\n    core 100.00 due ${due}\n  chance "More" ${percent}%\n    labour "X" 16 h\n`;

  it('a chance that holds it up past the last day loses the refund and its tax (computed)', () => {
    // One day of work, due in one day by the calendar: Tuesday, 1 December. Two days more end on Wednesday.
    const risk = riskOf(text('1 d', '8 h', 25));
    const inTime = 8 + 500 + 50;
    expect([...new Set(risk.cases.inAll)].sort((a, b) => a - b)).toEqual([inTime, inTime + 16 + 100 + 10]);
    expect(risk.cases.inAll.filter((cost) => cost === inTime)).toHaveLength(750);
    expect(risk.cases.days.filter((days) => days === 3)).toHaveLength(250);
    expect(risk.ready).toEqual({ p10: '2026-11-30', p50: '2026-11-30', p90: '2026-12-02' });
  });

  it('late in the quote already: the refund comes in no case', () => {
    const risk = riskOf(text('1 d', '24 h', 25));
    expect([...new Set(risk.cases.inAll)].sort((a, b) => a - b)).toEqual([24 + 600 + 60, 24 + 600 + 60 + 16]);
  });

  it('late by its likely hours, in time by its low ones: it comes in the cases of few hours', () => {
    const risk = riskOf(text('1 d', '8 / 18 / 19 h', 0));
    const late = [...risk.cases.days].filter((days) => days > 2).length;
    expect(late).toBeGreaterThan(100);
    expect(late).toBeLessThan(900);
    risk.cases.days.forEach((days, i) => {
      const cost = risk.cases.inAll[i] as number;
      expect(cost > 600 + 60, `${days} days, ${cost}`).toBe(days > 2);
    });
  });

  it('on a closed day the last day is the working day before', () => {
    // Friday and five days by the calendar: Wednesday; and Friday and one day: a Saturday, so Friday is the last.
    const on = (due: string, hours: string) => riskOf(text(due, hours, 50).replace('2026-11-30', '2026-12-04')).cases;
    const friday = on('1 d', '8 h');
    friday.days.forEach((days, i) => expect((friday.inAll[i] as number) > 660).toBe(days > 1));
    const wednesday = on('5 d', '16 h');
    wednesday.days.forEach((days, i) => expect((wednesday.inAll[i] as number) > 660, String(days)).toBe(days > 4));
  });
});
