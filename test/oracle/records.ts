/** What was authorised and what a job really took, held against the quote: from the records alone, without a line of the product. */
import { coresOf, type PlannedDays } from './after.js';
import { workingDaysBetween } from './day-walk.js';
import { amount, list, names, three, type Coins, type Line } from './prices.js';
import { compare, fromDigits, minus, nothing, per, plus, whole, type Rational } from './rational.js';
import type { Json, Written } from './reader.js';
import type { Oracle, OraclePlan } from './totals.js';

export interface Room {
  readonly for: string;
  readonly earlier: number;
  readonly amount: Rational;
  readonly room: Rational;
  readonly over: Rational;
  readonly used: Rational;
  readonly left: Rational;
  readonly beyond: Rational;
}

const max = (a: Rational, b: Rational) => (compare(a, b) < 0 ? b : a);
const min = (a: Rational, b: Rational) => (compare(a, b) < 0 ? a : b);
const above = (a: Rational, b: Rational) => max(minus(a, b), nothing);
const figure = (value: unknown) => fromDigits((value as Written).likely);

/** For what something is authorised for: the latest, by its day and then by its place, beside today's likely total. */
export function roomOf({ prices }: Oracle, name: string, total: bigint): Room | undefined {
  const all = prices.all.filter((record) => record.kind === 'authorised' && record['for'] === name);
  const latest = all.reduce<Json | undefined>((last, one) => (last === undefined || (one['on'] as string) >= (last['on'] as string) ? one : last), undefined);
  if (latest === undefined) return undefined;
  const agreed = figure(latest['amount']);
  const room = roomFor(agreed, list(prices.shop['overrun'])[0], prices.coin.bind(prices), prices.digits);
  const over = above(per(whole(total), 10n ** BigInt(prices.digits)), agreed);
  const used = min(over, room);
  return { for: name, earlier: all.length - 1, amount: agreed, room, over, used, left: above(room, used), beyond: above(over, room) };
}

/** A fixed amount, or a percentage rounded to the smallest coin, raised to the least and then held to the most. */
function roomFor(agreed: Rational, rule: Json | undefined, coin: (value: Rational) => bigint, digits: number): Rational {
  if (rule === undefined) return nothing;
  if (rule['fixed'] !== undefined) return figure(rule['fixed']);
  const percent = figure(rule['percent']);
  const share = per(whole(coin({ n: agreed.n * percent.n, d: agreed.d * percent.d * 100n })), 10n ** BigInt(digits));
  const raised = rule['atLeast'] === undefined ? share : max(share, figure(rule['atLeast']));
  return rule['atMost'] === undefined ? raised : min(raised, figure(rule['atMost']));
}

/** Estimated beside recorded, where both are known; what was recorded beyond the estimate; what is open. */
export interface ClosedSums {
  readonly estimated: Rational;
  readonly actual: Rational;
  readonly beyond: Rational;
  readonly open: Rational;
  readonly beyondLines: number;
}

interface Pair {
  readonly estimated: Rational | undefined;
  readonly actual: Rational | undefined;
}

function sumsOf(pairs: readonly Pair[]): ClosedSums {
  const sum = (pick: (pair: Pair) => Rational | undefined) => pairs.reduce((all, pair) => plus(all, pick(pair) ?? nothing), nothing);
  return {
    estimated: sum(({ estimated, actual }) => (actual === undefined ? undefined : estimated)),
    actual: sum(({ estimated, actual }) => (estimated === undefined ? undefined : actual)),
    beyond: sum(({ estimated, actual }) => (estimated === undefined ? actual : undefined)),
    open: sum(({ estimated, actual }) => (actual === undefined ? estimated : undefined)),
    beyondLines: pairs.filter(({ estimated, actual }) => estimated === undefined && actual !== undefined).length,
  };
}

/** Everything is recorded by name here. */
function pairsOf(planned: ReadonlyMap<Json, Rational | undefined>, recorded: ReadonlyMap<Json, Rational>): Pair[] {
  return [
    ...[...planned].map(([record, estimated]) => ({ estimated, actual: recorded.get(record) })),
    ...[...recorded].filter(([record]) => !planned.has(record)).map(([, actual]) => ({ estimated: undefined, actual })),
  ];
}

export interface Closing {
  readonly hours: ClosedSums;
  readonly paid: ClosedSums;
  readonly cores: ClosedSums;
  readonly days: number | undefined;
}

/** A closing of an option that was planned in this way, and was to be ready on a day. */
export function closingOf(oracle: Oracle, plan: OraclePlan, closed: Json, days: PlannedDays): Closing {
  const { prices } = oracle;
  const exact = (coins: Coins | undefined) => (coins === undefined ? undefined : per(whole(coins[1]), 10n ** BigInt(prices.digits)));
  const recorded = (word: string, kinds: readonly string[], value: (line: Json) => Rational) => new Map(list(closed[word]).map((line) => {
    const [record] = kinds.flatMap((kind) => prices.find(kind, line['line'] as string) ?? []);
    return [record ?? line, value(line)] as const;
  }));
  const coins = (line: Json) => per(whole(prices.coins(three(line['amount'] as Written))[1]), 10n ** BigInt(prices.digits));
  const clocked = recorded('clocked', ['labour', 'access'], (line) => per(figure(line['hours']), amount(line['hours'])?.unit === 'min' ? 60n : 1n));
  const paid = recorded('paid', ['part', 'sublet', 'fee'], coins);
  const credited = recorded('credited', ['part'], coins);

  const hours = new Map<Json, Rational>();
  for (const { kind, record, hours: [, likely] } of plan.lines) if (kind === 'labour') hours.set(record, plus(hours.get(record) ?? nothing, likely));
  const isGoods = ({ kind, record }: Line) => (kind === 'part' || kind === 'sublet' ? record['condition'] !== 'customer-supplied' : kind === 'fee' && paid.has(record));
  const goods = new Map(plan.lines.filter(isGoods).map(({ record, cost, kind }) => [record, kind === 'fee' ? undefined : exact(cost)]));
  const cores = new Map(coresOf(oracle, plan, days).map(({ part, refund }) => [part, exact(refund)]));

  const started = prices.all.find(({ kind }) => kind === 'started')?.['on'] as string | undefined;
  return {
    hours: sumsOf(pairsOf(hours, clocked)), paid: sumsOf(pairsOf(goods, paid)), cores: sumsOf(pairsOf(cores, credited)),
    days: started === undefined ? undefined : workingDaysBetween(prices.shop, started, closed['on'] as string),
  };
}

/**
 * Ways in that were clocked and not planned, and, where any was, those planned and not clocked. Undefined where one was
 * clocked that no time of the option's jobs takes: it may belong to what turned up, which is not looked into here.
 */
export function otherWays({ prices }: Oracle, plan: OraclePlan, closed: Json): { readonly taken: readonly string[]; readonly left: readonly string[] } | undefined {
  const clocked = names(list(closed['clocked']).map((line) => line['line'])).filter((name) => prices.find('labour', name) === undefined && prices.find('access', name) !== undefined);
  const taken = new Set([...plan.ways, ...plan.jobs.flatMap(({ job }) => [job, ...list(job['takes'])].flatMap((time) => names(time['with'])))]);
  if (clocked.some((name) => !taken.has(name))) return undefined;
  if (clocked.length === 0) return { taken: [], left: [] };
  return { taken: clocked.filter((name) => !plan.ways.includes(name)), left: plan.ways.filter((name) => !clocked.includes(name)) };
}
