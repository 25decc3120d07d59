/** Both answers in one form, side by side, and nothing more: figures of the product as it tells them, and those worked out here. */
import { expect } from 'vitest';
import { coresOf, comesBack, daysTold, downtimeOf, givenUp, inspectionPrice, marginOf, monthlyOf, openOf, shared } from './after.js';
import { add, less, addHours, each, POINTS, type Coins, type LineKind, type Three } from './prices.js';
import { compare, fromDigits, minus, per, plus, rounded, whole, type Rational } from './rational.js';
import { oracle, type Oracle, type OracleOption, type OraclePlan, type OracleStage } from './totals.js';
import { readFiles, type Json } from './reader.js';
import { told, type Texts, type Told, type ToldFigure, type ToldOption } from './told.js';

/** `12.50` of money with two decimals as 1250; whatever has more decimals than the smallest coin stays as it is, and fails. */
function coinsTold(digits: number, text: string): string {
  const [, sign = '', before = '', after = ''] = /^(-?)(\d+)(?:\.(\d+))?$/.exec(text) ?? [];
  return after.length === digits ? `${sign}${`${before}${after}`.replace(/^0+(?=\d)/, '')}` : text;
}

const toldPoints = (digits: number) => ({ low, likely, high }: ToldFigure) => [low, likely, high].map((text) => coinsTold(digits, text)).join(' / ');
const written = (coins: Coins) => coins.map(String).join(' / ');

/** Hours to the millionth, as they are told. */
const hoursTold = ({ low, likely, high }: ToldFigure) => [low, likely, high].map((text) => String(rounded(fromDigits(text), 6, 'half-up'))).join(' / ');
const hoursWritten = (hours: Three) => hours.map((value) => String(rounded(value, 6, 'half-up'))).join(' / ');

const sorted = (all: readonly string[]) => [...all].sort();
const waysOf = (names: readonly string[]) => sorted(names).join(', ');

/** Where plans tie in money, hours and number of ways, the one that the product took. */
export function planLike(option: OracleOption, { ways: { chosen } }: ToldOption): OraclePlan | undefined {
  return option.best.find((plan) => waysOf(plan.ways) === waysOf(chosen.ways)) ?? option.best[0];
}

/** What the product says of one option. */
function asTold(one: ToldOption, digits: number): unknown {
  if (!one.complete) return { option: one.name, complete: false };
  const points = toldPoints(digits);
  const { figures } = one;
  const figure = (key: string) => figures[key] as ToldFigure;
  return {
    option: one.name,
    ruledOut: one.ruledOut,
    ways: waysOf(one.ways.chosen.ways),
    free: one.ways.unpinned === null ? undefined : coinsTold(digits, one.ways.unpinned.total),
    money: Object.fromEntries(['access', 'labour', 'parts', 'outside', 'fees', 'cores', 'tax', 'total', 'penalty', 'comes-back', 'net'].map((key) => [key, points(figure(key))])),
    hours: Object.fromEntries(['hours', 'access-hours', 'penalty-hours'].map((key) => [key, hoursTold(figure(key))])),
    lines: sorted(one.lines.map(({ kind, share, amount, hours }) => `${kind} ${share} ${points(amount)}${hours === undefined ? '' : ` in ${hoursTold(hours)}`}`)),
    cores: sorted(one.cores.map(({ title, charge, refund, taxBack, taxKept, deadline, late }) => `${title}: ${points(charge)}; ${points(refund)}; ${points(taxBack)}; ${points(taxKept)}; ${deadline ?? 'any day'}${late ? ', late' : ''}`)),
    open: sorted(one.open.map(({ job, now, alone }) => `${job}: ${coinsTold(digits, now.likely)} or ${coinsTold(digits, alone.likely)}`)),
    margin: one.shopOnly.by.map(({ sort, sold, cost, margin, unknown }) => `${sort}: ${points(sold)} less ${points(cost)} is ${points(margin)}, ${unknown.length} unknown`),
    perHour: one.shopOnly.perHour === null ? undefined : coinsTold(digits, one.shopOnly.perHour),
    downtime: one.downtime === null ? undefined : coinsTold(digits, one.downtime.likely),
  };
}

/** The same, worked out here. The day on which it is ready is the product's: `days.test.ts` works that out. */
function workedOut(own: OracleOption, all: Oracle, tool: ToldOption): unknown {
  const plan = planLike(own, tool);
  if (plan === undefined) return { option: own.name, complete: false };
  const { stand } = own;
  const sum = (kind: LineKind) => add(plan.lines.filter((line) => line.kind === kind && !line.access).map(({ coins }) => coins));
  const days = daysTold(tool.calendar);
  const back = comesBack(all, own, plan, days);
  const minusHours = (a: Three, b: Three): Three => each((i) => minus(a[i], b[i]));
  const margin = marginOf(plan);
  const inAll = add(margin.map((one) => one.margin))[1];
  const money = {
    access: plan.access, labour: sum('labour'), parts: sum('part'), outside: sum('sublet'), fees: sum('fee'), cores: sum('core'), tax: plan.tax, total: plan.total,
    penalty: less(plan.total, stand.total), 'comes-back': back, net: less(plan.total, back),
  };
  return {
    option: own.name,
    ruledOut: own.ruledOut,
    ways: waysOf(plan.ways),
    free: own.free[0] === undefined ? undefined : String(own.free[0].total[1]),
    money: Object.fromEntries(Object.entries(money).map(([key, coins]) => [key, written(coins)])),
    hours: {
      hours: hoursWritten(plan.hours), 'access-hours': hoursWritten(addHours(plan.lines.filter(({ access }) => access).map(({ hours }) => hours))),
      'penalty-hours': hoursWritten(minusHours(plan.hours, stand.hours)),
    },
    // A fee that comes to nothing is no line.
    lines: sorted(plan.lines.filter(({ kind, coins, record }) => kind !== 'fee' || record.kind === 'tool' || coins[2] !== 0n)
      .map(({ kind, access, coins, hours }) => `${kind} ${access ? 'access' : 'work'} ${written(coins)}${kind === 'labour' ? ` in ${hoursWritten(hours)}` : ''}`)),
    cores: sorted(coresOf(all, plan, days).map(({ title, charge, refund, taxBack, taxKept, deadline, late }) => `${title}: ${written(charge)}; ${written(refund)}; ${written(taxBack)}; ${written(taxKept)}; ${deadline ?? 'any day'}${late ? ', late' : ''}`)),
    // On what is left open and sold nobody does more work.
    open: tool.written || all.stages.length === 0 ? sorted(openOf(all, own, plan).map(({ job, now, alone }) => `${job}: ${now} or ${alone}`)) : [],
    margin: margin.map(({ sort, sold, cost, margin: left, unknown }) => `${sort}: ${written(sold)} less ${written(cost)} is ${written(left)}, ${unknown} unknown`),
    // What an hour leaves can't be told where some hours cost the shop nobody knows what.
    perHour: margin.some(({ sort, unknown }) => sort === 'labour' && unknown > 0) ? undefined : text(shared(all, inAll, plan.hours[1])),
    downtime: tool.written ? text(downtimeOf(all, days.ready, Number(tool.calendar.days.likely))) : undefined,
  };
}

const text = (value: bigint | undefined) => (value === undefined ? undefined : String(value));

/** Worth given up and the cost in all are exact, not rounded, where the worth is written finer than a coin. */
function expectInAll(own: OracleOption, all: Oracle, tool: ToldOption): void {
  const plan = planLike(own, tool);
  if (plan === undefined) return;
  const up = givenUp(all, own);
  const net = less(plan.total, comesBack(all, own, plan, daysTold(tool.calendar)));
  const exact = (coins: bigint) => per(whole(coins), 10n ** BigInt(own.digits));
  const same = (figure: ToldFigure | undefined, value: (point: 0 | 1 | 2) => Rational) =>
    expect(POINTS.map((i) => compare(fromDigits((figure as ToldFigure)[(['low', 'likely', 'high'] as const)[i]]), value(i)))).toEqual([0, 0, 0]);
  expect(tool.figures['given-up'] === undefined).toBe(up === undefined);
  if (up !== undefined) same(tool.figures['given-up'], (i) => up[i]);
  same(tool.figures['in-all'], (i) => plus(exact(net[i]), up?.[i] ?? whole(0n)));
  const monthly = monthlyOf(all, own, net);
  expect(tool.monthly === null).toBe(monthly === undefined);
  if (monthly === undefined || tool.monthly === null) return;
  same(tool.monthly.now, (i) => monthly.now[i]);
  // Rounded once, to the smallest coin; powers in binary numbers are a hair off.
  const coin = 10 ** -own.digits;
  expect(coinsTold(own.digits, tool.monthly.perMonth.likely)).not.toContain('.');
  expect(Math.abs(Number(tool.monthly.perMonth.likely) - monthly.perMonth)).toBeLessThanOrEqual(coin * 0.5 + Math.abs(monthly.perMonth) * 1e-9);
}

function expectStages(stages: readonly OracleStage[], tool: Told): void {
  const points = toldPoints(tool.currency.digits);
  const ours = stages.map(({ name, total, stop, hours, stopHours }) => ({
    name, total: written(total), stop: written(stop), putBack: written(less(stop, total)), hours: hoursWritten(hours), backHours: hoursWritten(each((i) => minus(stopHours[i], hours[i]))),
  }));
  expect((tool.stages ?? []).map(({ name, total, stop, putBack, hours, backHours }) => ({ name, total: points(total), stop: points(stop), putBack: points(putBack), hours: hoursTold(hours), backHours: hoursTold(backHours) }))).toEqual(ours);
}

export interface Both {
  readonly records: readonly Json[];
  readonly tool: Told;
  readonly own: Oracle;
}

/** Every quoted figure of some files is the one that is worked out here. */
export function expectSame(files: Texts): Both {
  const [main = ''] = files.keys();
  const records = readFiles(main, (name) => files.get(name) as string);
  const tool = told(files);
  const own = oracle(records);
  const { digits } = tool.currency;
  expect(digits).toBe(own.prices.digits);
  expect(tool.options.map((one) => asTold(one, digits))).toEqual(own.options.map((one, i) => workedOut(one, own, tool.options[i] as ToldOption)));
  own.options.forEach((one, i) => expectInAll(one, own, tool.options[i] as ToldOption));
  expectStages(own.stages, tool);
  for (const { name, price } of tool.inspections) {
    expect([name, toldPoints(digits)(price)]).toEqual([name, written(inspectionPrice(own, own.prices.all.find((one) => one.kind === 'inspect' && one.name === name) as Json))]);
  }
  return { records, tool, own };
}
