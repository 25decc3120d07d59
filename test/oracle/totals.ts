/**
 * Quoted totals worked out a second time, from the records as plain data and from nothing else: whole numbers of the
 * smallest coin, exact fractions, every set of ways in tried. It shares no line of code with the product; a test reads
 * the imports of this file to hold that.
 */
import { compare, fromDigits, nothing, per, plus, rounded, times, whole, type Rational, type Rounding } from './rational.js';

/** Low, likely and high, in the smallest coin. */
export type Coins = readonly [bigint, bigint, bigint];

export interface OraclePlan {
  readonly ways: readonly string[];
  readonly total: Coins;
  readonly tax: Coins;
  readonly access: Coins;
  readonly hours: Rational;
}

/** A stage by itself, and with everything put back. */
export interface OracleStage {
  readonly name: string;
  readonly digits: number;
  readonly total: Coins;
  readonly stop: Coins;
}

export interface OracleOption {
  readonly name: string;
  readonly digits: number;
  /** False where some work can't be reached: then there is no plan. */
  readonly reached: boolean;
  /** The best plan; several where money, hours and number of ways tie. A pinned plan stands alone. */
  readonly best: readonly OraclePlan[];
  /** Where the option pins its ways in: the best without the pin. */
  readonly free: readonly OraclePlan[];
  /** The same work with every way in given and none paid for. */
  readonly stand: OraclePlan;
}

/** What a record may hold, as its JSON has it. */
interface Written {
  readonly low: string;
  readonly likely: string;
  readonly high: string;
  readonly unit?: string;
}

interface Json {
  readonly kind: string;
  readonly name?: string;
  readonly [key: string]: unknown;
}

type Three = readonly [Rational, Rational, Rational];
type Kind = 'labour' | 'part' | 'sublet' | 'fee' | 'core';

interface Line {
  readonly kind: Kind;
  readonly access: boolean;
  readonly coins: Coins;
  readonly hours: Rational;
  /** Of a core charge: whether tax stands on it. */
  readonly taxed: boolean;
}

const MINOR_UNITS: Readonly<{ [code: string]: number }> = { JPY: 0, KRW: 0, CLP: 0, KWD: 3, BHD: 3, OMR: 3, TND: 3 };
const POINTS = [0, 1, 2] as const;

const list = (value: unknown): readonly Json[] => (value ?? []) as readonly Json[];
const names = (value: unknown): readonly string[] => (value ?? []) as readonly string[];
const amount = (value: unknown) => value as Written | undefined;
const three = (written: Written): Three => [fromDigits(written.low), fromDigits(written.likely), fromDigits(written.high)];
const product = (a: Three, b: Three): Three => [times(a[0], b[0]), times(a[1], b[1]), times(a[2], b[2])];
const add = (all: readonly Coins[]): Coins => all.reduce<Coins>((a, b) => [a[0] + b[0], a[1] + b[1], a[2] + b[2]], [0n, 0n, 0n]);
const isNothing = (coins: Coins) => coins[2] === 0n;

export function oracleTotals(records: readonly unknown[]): OracleOption[] {
  return oracle(records).options;
}

export function oracle(records: readonly unknown[]): { readonly options: OracleOption[]; readonly stages: OracleStage[] } {
  const all = records as readonly Json[];
  const shop: Json = all.find((record) => record.kind === 'shop') ?? { kind: 'shop' };
  const digits = MINOR_UNITS[shop['currency'] as string] ?? 2;
  const rounding = (shop['rounding'] ?? 'half-up') as Rounding;
  const coins = (value: Three): Coins => [rounded(value[0], digits, rounding), rounded(value[1], digits, rounding), rounded(value[2], digits, rounding)];

  const find = (kind: string, name: string): Json | undefined => {
    for (const record of all) {
      if (record.kind === kind && record.name === name) return record;
      if (kind === 'fee' || kind === 'tool') for (const child of list(record[kind])) if (child.name === name) return child;
    }
    return undefined;
  };
  const each = (kind: string, wanted: readonly string[]): Json[] => wanted.flatMap((name) => find(kind, name) ?? []);

  // Ways in ------------------------------------------------------------------

  const ways = all.filter((record) => record.kind === 'access' && find('access', record.name as string) === record);
  function given(paid: Iterable<string>): ReadonlySet<string> {
    const found = new Set<string>();
    const take = (name: string) => {
      if (found.has(name)) return;
      found.add(name);
      const way = find('access', name);
      if (way !== undefined) names(way['includes']).forEach(take);
    };
    for (const name of paid) take(name);
    return found;
  }

  // What things cost ---------------------------------------------------------

  function rateOf(name: unknown): Three | undefined {
    const rates = list(shop['rate']).filter((rate) => rate['price'] !== undefined);
    const rate = name === undefined ? (rates.find((one) => one['usual'] !== undefined) ?? (rates.length === 1 ? rates[0] : undefined)) : rates.find((one) => one.name === name);
    return rate === undefined ? undefined : three(amount(rate['price']) as Written);
  }

  function work(time: Written, rate: Three | undefined, isAccess: boolean, count?: Written): Line {
    const often: Three = count === undefined ? [whole(1n), whole(1n), whole(1n)] : three(count);
    const share = time.unit === 'min' ? 60n : 1n;
    const done = product(often, three(time));
    const hours = [per(done[0], share), per(done[1], share), per(done[2], share)] as const;
    return { kind: 'labour', access: isAccess, coins: rate === undefined ? [0n, 0n, 0n] : coins(product(hours, rate)), hours: hours[1], taxed: false };
  }

  /** The price of one: as written, or the cost raised by the band with the nearest end at or above it. */
  function priceOf(goods: Json, on: 'parts' | 'sublets'): Three {
    const price = amount(goods['price']);
    if (price !== undefined) return three(price);
    const cost = three(amount(goods['cost']) as Written);
    let nearest: Json | undefined;
    for (const band of list(shop['markup'])) {
      if (((band['on'] ?? 'parts') as string) !== on) continue;
      const end = amount(band['upTo']);
      if (end !== undefined && compare(cost[1], fromDigits(end.likely)) > 0) continue;
      const best = amount(nearest?.['upTo']);
      if (nearest === undefined || (end !== undefined && (best === undefined || compare(fromDigits(end.likely), fromDigits(best.likely)) < 0))) nearest = band;
    }
    if (nearest === undefined) return cost;
    const more = three(amount(nearest['percent']) as Written);
    const raise = (i: 0 | 1 | 2) => times(cost[i], per(plus(whole(100n), more[i]), 100n));
    return [raise(0), raise(1), raise(2)];
  }

  function many(goods: Json, each: Three): Three {
    const quantity = amount(goods['quantity']);
    return quantity === undefined ? each : product(three(quantity), each);
  }

  function coreIsTaxed(condition: unknown): boolean {
    const rule = condition === undefined ? undefined : list(shop['core-tax']).find((one) => one['on'] === undefined || names(one['on']).includes(condition as string));
    return rule !== undefined && rule['policy'] !== 'none';
  }

  function linesOfPart(part: Json, isAccess: boolean): Line[] {
    const none: Coins = [0n, 0n, 0n];
    const brought = part['condition'] === 'customer-supplied';
    const lines: Line[] = [{ kind: 'part', access: isAccess, coins: brought ? none : coins(many(part, priceOf(part, 'parts'))), hours: nothing, taxed: false }];
    const core = list(part['core'])[0];
    const charge = amount(core?.['charge']);
    if (core === undefined || charge === undefined) return lines;
    lines.push({ kind: 'core', access: false, coins: coins(many(part, three(charge))), hours: nothing, taxed: coreIsTaxed(part['condition']) });
    const assemble = amount(core['assemble']);
    if (assemble !== undefined) lines.push(work(assemble, rateOf(core['class']), false));
    return lines;
  }

  function linesOfSublet(sublet: Json, isAccess: boolean): Line[] {
    return [{ kind: 'sublet', access: isAccess, coins: coins(many(sublet, priceOf(sublet, 'sublets'))), hours: nothing, taxed: false }];
  }

  function linesOfTool(tool: Json, isAccess: boolean): Line[] {
    const price = amount(tool['price']);
    const owned = list(shop['tool']).includes(tool);
    return owned || price === undefined ? [] : [{ kind: 'fee', access: isAccess, coins: coins(three(price)), hours: nothing, taxed: false }];
  }

  function linesOfThing(thing: Json, isAccess: boolean): Line[] {
    return thing.kind === 'part' ? linesOfPart(thing, isAccess) : thing.kind === 'sublet' ? linesOfSublet(thing, isAccess) : linesOfTool(thing, isAccess);
  }

  /** Parts before outside work, where both have the name. */
  const used = (record: Json): Json[] => names(record['uses']).flatMap((name) => find('part', name) ?? find('sublet', name) ?? []);
  const toolsOf = (record: Json): Json[] => names(record['needs']).flatMap((name) => (find('labour', name) === undefined ? (find('tool', name) ?? []) : []));

  // One option ---------------------------------------------------------------

  function modesOf(job: Json): { readonly time: Written; readonly with: readonly string[] }[] {
    return [job, ...list(job['takes'])].flatMap((line) => {
      const time = amount(line['hours']);
      const takes = names(line['with']);
      return time === undefined || takes.some((name) => find('access', name) === undefined) ? [] : [{ time, with: takes }];
    });
  }

  const feesOf = (option: Json): Set<Json> => new Set([...each('fee', names(option['charge'])), ...list(option['fee'])]);

  function jobsOf(option: Json): Set<Json> {
    const jobs = new Set<Json>();
    const take = (job: Json) => {
      if (jobs.has(job)) return;
      jobs.add(job);
      each('labour', names(job['needs'])).forEach(take);
    };
    each('labour', names(option['do'])).forEach(take);
    list(option['labour']).forEach(take);
    return jobs;
  }

  function feeLines(option: Json, lines: readonly Line[]): Line[] {
    const charged = feesOf(option);
    if (lines.some((line) => line.kind === 'labour')) for (const fee of list(shop['fee'])) charged.add(fee);
    const kinds: Readonly<{ [of: string]: Kind }> = { labour: 'labour', parts: 'part', sublets: 'sublet' };
    return [...charged].map((fee) => {
      const percent = amount(fee['percent']);
      let value: Coins;
      if (percent === undefined) value = coins(many(fee, three(amount(fee['price']) as Written)));
      else {
        const base = add(lines.filter((line) => names(fee['of']).some((of) => kinds[of] === line.kind)).map((line) => line.coins));
        value = share(base, percent);
      }
      const cap = amount(fee['cap']);
      const most = cap === undefined ? undefined : coins(three(cap));
      const capped = most === undefined ? value : (POINTS.map((i) => (value[i] < most[i] ? value[i] : most[i])) as unknown as Coins);
      return { kind: 'fee', access: false, coins: capped, hours: nothing, taxed: false };
    });
  }

  /** A percentage of coins, in coins. */
  function share(base: Coins, percent: Written): Coins {
    const rate = three(percent);
    const of = (i: 0 | 1 | 2) => rounded(per(times(whole(base[i]), rate[i]), 100n * 10n ** BigInt(digits)), digits, rounding);
    return [of(0), of(1), of(2)];
  }

  function taxOf(tax: Json, lines: readonly Line[]): Coins {
    const on = names(tax['on']);
    const as: Readonly<{ [kind in Exclude<Kind, 'core'>]: string }> = { labour: 'labour', part: 'parts', sublet: 'sublets', fee: 'fees' };
    const taxed = lines.filter((line) => (line.kind === 'core' ? on.includes('parts') && line.taxed : on.includes(as[line.kind])) && !isNothing(line.coins));
    const percent = amount(tax['percent']) as Written;
    return tax['by'] === 'item' ? add(taxed.map((line) => share(line.coins, percent))) : share(add(taxed.map((line) => line.coins)), percent);
  }

  // What comes before the decision -------------------------------------------

  const staged = (some: readonly Json[]) => new Set(some.flatMap((stage) => [...jobsOf(stage)]));
  const openedBy = (some: readonly Json[]) => some.flatMap((stage) => names(stage['opens']));

  /** `then`: whether what stages opened is closed again. */
  function optionOf(option: Json, then: 'closed' | 'left open'): OracleOption {
    return workOf(option, all.filter((record) => record.kind === 'stage'), then, [], []);
  }

  function workOf(option: Json, stages: readonly Json[], then: 'closed' | 'left open', more: readonly Json[], extra: readonly Line[]): OracleOption {
    const before = staged(stages);
    const opens = openedBy(stages);
    const jobs = new Set([...before, ...jobsOf(option)]);
    const things = new Set<Json>();
    for (const job of jobs) for (const thing of [...used(job), ...toolsOf(job)]) things.add(thing);
    for (const thing of [...each('part', names(option['fit'])), ...each('sublet', names(option['send'])), ...list(option['part']), ...list(option['sublet']), ...more]) things.add(thing);

    /** What all comes to with these ways in paid for; undefined where some work can't be reached. */
    const plan = (paid: readonly string[], gives: ReadonlySet<string>): OraclePlan | undefined => {
      const lines: Line[] = [...[...things].flatMap((thing) => linesOfThing(thing, false)), ...extra];
      for (const job of jobs) {
        // What stages do is done with what they open, whatever is opened later.
        const open = before.has(job) ? given(opens) : gives;
        const reached = modesOf(job).filter((mode) => mode.with.every((way) => open.has(way)));
        const [first, ...rest] = reached.map((mode) => work(mode.time, rateOf(job['class']), false, amount(job['count'])));
        if (first === undefined) return undefined;
        lines.push(rest.reduce((best, line) => (line.coins[1] < best.coins[1] || (line.coins[1] === best.coins[1] && compare(line.hours, best.hours) < 0) ? line : best), first));
      }
      const opened = new Set<Json>();
      for (const name of paid) {
        const way = find('access', name) as Json;
        const isLeft = then === 'left open' && opens.includes(name);
        for (const time of [amount(way['remove']), isLeft ? undefined : amount(way['refit'])]) if (time !== undefined) lines.push(work(time, rateOf(way['class']), true));
        for (const thing of isLeft ? toolsOf(way) : [...used(way), ...list(way['part']), ...list(way['sublet']), ...toolsOf(way)]) if (!things.has(thing)) opened.add(thing);
      }
      for (const thing of opened) lines.push(...linesOfThing(thing, true));
      lines.push(...feeLines(option, lines));
      const tax = add(list(shop['tax']).map((one) => taxOf(one, lines)));
      return {
        ways: paid, tax,
        total: add([...lines.map((line) => line.coins), tax]),
        access: add(lines.filter((line) => line.access).map((line) => line.coins)),
        hours: lines.reduce((sum, line) => plus(sum, line.hours), nothing),
      };
    };

    const everything = new Set(ways.map((way) => way.name as string));
    const stand = plan([], everything);
    const none: OraclePlan = { ways: [], total: [0n, 0n, 0n], tax: [0n, 0n, 0n], access: [0n, 0n, 0n], hours: nothing };
    const pins = option['way'] === undefined ? undefined : names(option['way']).filter((name) => name !== 'in-car');
    const both = [...new Set([...(pins ?? []), ...opens])];
    const pinned = pins === undefined ? undefined : plan(both, given(both));
    const free = stand === undefined ? [] : cheapest([...everything], (paid) => (opens.every((name) => paid.includes(name)) ? plan(paid, given(paid)) : undefined));
    const best = pins === undefined ? free : pinned === undefined ? [] : [pinned];
    return { name: option.name as string, digits, reached: best.length > 0, best, free: pins === undefined ? [] : free, stand: stand ?? none };
  }

  /** A stage is pinned to what it opens; the hours of putting back and new parts for those it destroys come on top. */
  function stageOf(stage: Json): OracleStage {
    const alone: Json = { kind: 'option', name: stage.name as string, way: names(stage['opens']) };
    const hours = amount(stage['putBack']);
    const back = hours === undefined ? [] : [work(hours, rateOf(stage['class']), false)];
    const totalOf = ({ best: [plan] }: OracleOption): Coins => plan?.total ?? [0n, 0n, 0n];
    return {
      name: stage.name as string, digits,
      total: totalOf(workOf(alone, [stage], 'left open', [], [])),
      stop: totalOf(workOf(alone, [stage], 'closed', each('part', names(stage['destroys'])), back)),
    };
  }

  /** Selling the vehicle unrepaired: what every option does first, and every fee that they all charge, is owed all the same. */
  function soldAsItStands(options: readonly Json[]): Json[] {
    const [first, ...others] = options;
    const vehicle = all.find((record) => record.kind === 'vehicle');
    if (first === undefined || vehicle?.['unrepaired'] === undefined) return [];
    // What the others leave must be known, or it would look free beside them.
    if (vehicle['worth'] === undefined && options.some((option) => option['worth'] === undefined)) return [];
    const before = staged(all.filter((record) => record.kind === 'stage'));
    const labour = [...jobsOf(first)].filter((job) => job['done'] === 'first' && others.every((option) => jobsOf(option).has(job)) && !before.has(job));
    const fee = [...feesOf(first)].filter((one) => others.every((option) => feesOf(option).has(one)));
    const alone = (job: Json): Json => ({ ...job, needs: names(job['needs']).filter((name) => find('labour', name) === undefined) });
    return [{ kind: 'option', name: 'as-it-stands', labour: labour.map(alone), fee }];
  }

  const options = all.filter((record) => record.kind === 'option');
  return {
    options: [...options.map((option) => optionOf(option, 'closed')), ...soldAsItStands(options).map((option) => optionOf(option, 'left open'))],
    stages: all.filter((record) => record.kind === 'stage').map(stageOf),
  };
}

/** Tries every set of ways in. Least money first, then fewest hours, then fewest ways. */
function cheapest(ways: readonly string[], plan: (paid: readonly string[]) => OraclePlan | undefined): OraclePlan[] {
  let best: OraclePlan[] = [];
  for (let set = 0; set < 1 << ways.length; set++) {
    const one = plan(ways.filter((_, i) => (set & (1 << i)) !== 0));
    if (one === undefined) continue;
    const [other] = best;
    const order = other === undefined ? -1 : one.total[1] < other.total[1] ? -1 : one.total[1] > other.total[1] ? 1 : compare(one.hours, other.hours) || one.ways.length - other.ways.length;
    if (order < 0) best = [one];
    else if (order === 0) best.push(one);
  }
  return best;
}
