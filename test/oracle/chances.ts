/**
 * What an option costs on average, and what an inspection is worth, by listing every yes and no of its chances and working
 * out each state from the records. Figures must be single ones. No line is the product's.
 */
import { coresOf, givenUp, type PlannedDays } from './after.js';
import { add, addHours, amount, list, NO_COINS, three, type Coins, type Line } from './prices.js';
import { compare, fromDigits, type Rational } from './rational.js';
import type { Json, Written } from './reader.js';
import { type Oracle, type OracleOption, type OraclePlan } from './totals.js';

/** A chance of an estimate, with those of which one must happen before it can; none where it hangs on nothing. */
export interface Chance {
  readonly record: Json;
  readonly likelihood: number;
  readonly after: ReadonlySet<Json>;
  readonly comeback: boolean;
}

/**
 * The chances of an option as it is planned: its own, those of its jobs and of the ways in that it pays for, what is below them,
 * and those of the jobs and ways in that they bring. Round after round, until a round adds nothing.
 */
export function chancesOf(oracle: Oracle, option: OracleOption, plan: OraclePlan): Chance[] {
  const { prices } = oracle;
  const from = [option.record, ...plan.jobs.map(({ job }) => job), ...prices.named('access', plan.ways)];
  const roots = new Set(from.flatMap((one) => list(one['chance'])));
  const later = new Set<Json>();
  const after = new Map<Json, Set<Json>>([...roots].map((record) => [record, new Set<Json>()]));
  for (let size = -1; size !== after.size + [...after.values()].reduce((sum, some) => sum + some.size, 0);) {
    size = after.size + [...after.values()].reduce((sum, some) => sum + some.size, 0);
    for (const record of [...after.keys()]) {
      if (record['comeback'] !== undefined) later.add(record);
      const below = [...list(record['chance'])];
      if (later.has(record)) below.forEach((one) => later.add(one));
      // What comes back is taken as it is.
      else {
        const brings = broughtBy(oracle, record);
        const ways = waysBeyond(oracle, option, plan, brings)?.ways ?? [];
        below.push(...[...brings.jobs, ...ways].flatMap((one) => list(one['chance'])));
      }
      for (const one of below) {
        // What belongs to work that is done anyway waits for nothing, whatever else would bring that work.
        if (roots.has(one)) continue;
        after.set(one, (after.get(one) ?? new Set()).add(record));
      }
    }
  }
  return [...after].map(([record, some]) => ({ record, after: some, comeback: later.has(record), likelihood: Number((record['percent'] as Written).likely) / 100 }));
}

/** Everything that a chance brings, each thing once: work with what it needs, and goods. */
function broughtBy({ prices, work }: Oracle, record: Json) {
  const jobs = [...work.jobsOf(record)];
  const things = [...new Set([...jobs.flatMap((job) => work.used(job)), ...prices.named('part', record['fit']), ...prices.named('sublet', record['send']), ...list(record['part']), ...list(record['sublet'])])];
  return { jobs, things, tools: [...new Set(jobs.flatMap((job) => work.toolsOf(job)))], fees: [...new Set([...prices.named('fee', record['charge']), ...list(record['fee'])])] };
}

/**
 * The ways in that jobs of a chance take beyond the open ones: the set that comes to least with what goes with it, then to
 * fewest hours, then of fewest ways. Nothing is paid for goods and hires that the option or the chance brings anyway.
 */
function waysBeyond({ prices, work }: Oracle, option: OracleOption, plan: OraclePlan, { jobs, things, tools }: ReturnType<typeof broughtBy>): { readonly open: ReadonlySet<string>; readonly ways: readonly Json[]; readonly lines: readonly Line[] } | undefined {
  const open = work.given(plan.ways);
  const beyond = jobs.filter((job) => work.jobWith(job, open) === undefined);
  if (beyond.length === 0) return { open, ways: [], lines: [] };
  const paid = prices.named('access', plan.ways);
  const had = new Set([...option.things, ...paid.flatMap((way) => work.goodsOf(way)), ...things]);
  const hired = new Set([...plan.jobs.map(({ job }) => job), ...paid].flatMap((one) => work.toolsOf(one)).concat(tools));
  const stretches = (way: Json) => [amount(way['remove']), amount(way['refit'])].flatMap((time) => (time === undefined ? [] : [prices.work(way, time, way['class'], true)]));
  const base = [...had, ...new Set(beyond.flatMap((job) => work.toolsOf(job)))].flatMap((thing) => prices.linesOf(thing, false));
  const others = prices.all.filter((record) => record.kind === 'access' && prices.find('access', record.name as string) === record && !open.has(record.name as string));
  let best: { readonly open: ReadonlySet<string>; readonly ways: readonly Json[]; readonly lines: readonly Line[]; readonly coins: bigint; readonly hours: Rational; readonly count: number } | undefined;
  for (let set = 0; set < 1 << others.length; set++) {
    const ways = others.filter((_, i) => (set & (1 << i)) !== 0);
    const gives = work.given([...plan.ways, ...ways.map(({ name }) => name as string)]);
    const done = beyond.map((job) => work.jobWith(job, gives));
    if (done.some((one) => one === undefined)) continue;
    const goods = new Set(ways.flatMap((way) => [...work.goodsOf(way).filter((thing) => !had.has(thing)), ...work.toolsOf(way).filter((tool) => !hired.has(tool))]));
    const lines = [...ways.flatMap(stretches), ...[...goods].flatMap((thing) => prices.linesOf(thing, true))];
    const all = [...base, ...paid.flatMap(stretches), ...done.flatMap((one) => one?.line ?? []), ...lines];
    const whole = [...all, ...prices.feeLines(new Set(), all)];
    const coins = add([...whole.map((line) => line.coins), prices.taxes(whole)])[1];
    const hours = addHours(whole.map((line) => line.hours))[1];
    const order = best === undefined ? -1 : coins !== best.coins ? Number(coins - best.coins) : compare(hours, best.hours) || ways.length - best.count;
    if (order < 0) best = { open: gives, ways, lines, coins, hours, count: ways.length };
  }
  return best;
}

/** Cost in all of an option where some of its chances happen; undefined where one can't be done. */
export function costIn(oracle: Oracle, option: OracleOption, plan: OraclePlan, happened: readonly Chance[], days: PlannedDays): number | undefined {
  const { prices, work } = oracle;
  const own = plan.lines.filter(({ kind, record }) => kind !== 'fee' || record.kind === 'tool');
  const lines: Line[] = [...own];
  // What is written once is done, fitted or hired once: with the option, or with the first chance that brings it.
  const had = new Set<Json>([...own.map((line) => line.record), ...plan.jobs.map(({ job }) => job)]);
  const seen = new Set<Json>();
  let later: Coins = NO_COINS;
  for (const { record, comeback } of happened) {
    if (comeback) {
      const [alone] = work.option({ ...record, kind: 'option', name: 'comeback', chance: [] }, { stages: [], then: 'closed' }).best;
      if (alone === undefined) return undefined;
      const kept = alone.lines.filter(({ kind }) => kind !== 'core');
      later = add([later, ...kept.map(({ coins }) => coins), prices.taxes(kept)]);
      continue;
    }
    const brings = broughtBy(oracle, record);
    const { jobs: wanted, things, tools, fees } = brings;
    const beyond = waysBeyond(oracle, option, plan, brings);
    if (beyond === undefined) return undefined;
    const jobs = wanted.filter((job) => !had.has(job));
    const done = jobs.map((job) => work.jobWith(job, beyond.open));
    if (done.some((one) => one === undefined)) return undefined;
    // A core that a chance's part would bring is put together and taken to go back in full; what is hired anyway is hired once.
    const brought = [
      ...done.flatMap((one) => one?.line ?? []), ...things.filter((thing) => !had.has(thing)).flatMap((thing) => prices.linesOf(thing, false)).filter(({ kind }) => kind !== 'core'),
      ...tools.filter((tool) => !had.has(tool)).flatMap((tool) => prices.linesOf(tool, false)),
    ];
    const opened = beyond.lines.filter((line) => line.kind !== 'core' && !had.has(line.record));
    lines.push(...[...brought, ...opened].filter((line) => !seen.has(line.record)), ...prices.feesOn(fees, brought));
    for (const line of [...brought, ...opened]) seen.add(line.record);
  }
  // The option's own fees and those of the shop count what really happens; the fees of a chance only its own work.
  lines.push(...prices.feeLines(work.feesOf(option.record), lines));
  const total = add([...lines.map(({ coins }) => coins), prices.taxes(lines)]);
  const back = coresOf(oracle, plan, days).flatMap(({ refund, taxBack }) => [refund, taxBack]);
  const pieces = [...plan.lines.filter(({ kind }) => kind === 'core').flatMap(({ record }) => list(list(record['core'])[0]?.['keeps']).flatMap((piece) => amount(piece['worth']) ?? [])), ...list(option.record['harvest']).flatMap((piece) => amount(piece['value']) ?? [])];
  const coins = total[1] + later[1] - add([...back, ...pieces.map((worth) => prices.coins(three(worth)))])[1];
  const up = givenUp(oracle, option)?.[1] ?? fromDigits('0');
  return Number(coins) / 10 ** prices.digits + Number(up.n) / Number(up.d);
}

/**
 * Every state of some chances that can be, with its share: a coin is thrown for each, and what would happen by its own does so
 * only once something did that it hangs on.
 */
export function statesOf(chances: readonly Chance[]): { readonly happened: readonly Chance[]; readonly share: number }[] {
  const shares = new Map<string, { readonly happened: readonly Chance[]; share: number }>();
  for (let coins = 0; coins < 1 << chances.length; coins++) {
    const share = chances.reduce((product, { likelihood }, i) => product * ((coins & (1 << i)) !== 0 ? likelihood : 1 - likelihood), 1);
    if (share === 0) continue;
    const would = chances.filter((_, i) => (coins & (1 << i)) !== 0);
    const records = new Set<Json>();
    for (let round = 0; round < chances.length; round++) for (const { record, after } of would) if (after.size === 0 || [...after].some((one) => records.has(one))) records.add(record);
    const happened = chances.filter(({ record }) => records.has(record));
    const key = happened.map((one) => chances.indexOf(one)).join();
    const known = shares.get(key);
    if (known === undefined) shares.set(key, { happened, share });
    else known.share += share;
  }
  return [...shares.values()];
}
