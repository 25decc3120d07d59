/**
 * Quoted totals worked out a second time, from the records as plain data and from nothing else: every set of ways in is
 * tried. It shares no line of code with the product; a test reads the imports of this folder to hold that.
 */
import { compare, fromDigits, type Rational } from './rational.js';
import type { Json, Written } from './reader.js';
import { add, addHours, amount, list, NO_COINS, Prices, names, type Coins, type Line, type Three } from './prices.js';

export type { Coins } from './prices.js';

/** A job, the time it is done in, and its line. */
export interface OracleJob {
  readonly job: Json;
  readonly time: Written;
  readonly with: readonly string[];
  readonly line: Line;
}

export interface OraclePlan {
  readonly ways: readonly string[];
  readonly jobs: readonly OracleJob[];
  /** All lines, fees with them. */
  readonly lines: readonly Line[];
  readonly total: Coins;
  readonly tax: Coins;
  readonly access: Coins;
  readonly hours: Three;
}

/** A stage by itself, and with everything put back. */
export interface OracleStage {
  readonly name: string;
  readonly digits: number;
  readonly total: Coins;
  readonly stop: Coins;
  readonly hours: Three;
  readonly stopHours: Three;
}

export interface OracleOption {
  readonly name: string;
  readonly record: Json;
  readonly digits: number;
  /** Titles of the findings that name it behind rules out. */
  readonly ruledOut: readonly string[];
  /** False where some work can't be reached: then there is no plan. */
  readonly reached: boolean;
  /** The best plan; several where money, hours and number of ways tie. A pinned plan stands alone. */
  readonly best: readonly OraclePlan[];
  /** Where the option pins its ways in: the best without the pin. */
  readonly free: readonly OraclePlan[];
  /** The same work with every way in given and none paid for. */
  readonly stand: OraclePlan;
  /** Parts and outside work of the work itself, each once. */
  readonly things: readonly Json[];
}

export interface Oracle {
  readonly prices: Prices;
  readonly work: Works;
  readonly options: readonly OracleOption[];
  readonly stages: readonly OracleStage[];
}

export function oracle(records: readonly unknown[]): Oracle {
  const prices = new Prices(records as readonly Json[]);
  const work = new Works(prices);
  return { prices, work, options: work.options(), stages: work.stages.map((stage) => work.stageOf(stage)) };
}

/** What an option is asked for beyond its own record. */
interface Asked {
  readonly stages: readonly Json[];
  /** Whether what stages opened is closed again. */
  readonly then: 'closed' | 'left open';
  readonly parts?: readonly Json[];
  readonly lines?: readonly Line[];
}

class Works {
  readonly stages: readonly Json[];
  private readonly ways: readonly Json[];

  constructor(readonly prices: Prices) {
    this.stages = prices.all.filter((record) => record.kind === 'stage');
    this.ways = prices.all.filter((record) => record.kind === 'access' && prices.find('access', record.name as string) === record);
  }

  options(): OracleOption[] {
    const written = this.prices.all.filter((record) => record.kind === 'option');
    return [
      ...written.map((option) => this.option(option, { stages: this.stages, then: 'closed' })),
      ...this.soldAsItStands(written).map((option) => this.option(option, { stages: this.stages, then: 'left open' })),
    ];
  }

  /** Everything that these ways in give, and what those give. */
  given(paid: Iterable<string>): ReadonlySet<string> {
    const found = new Set<string>();
    const take = (name: string) => {
      if (found.has(name)) return;
      found.add(name);
      names(this.prices.find('access', name)?.['includes']).forEach(take);
    };
    for (const name of paid) take(name);
    return found;
  }

  /** Parts before outside work, where both have the name. */
  used(record: Json): Json[] {
    return names(record['uses']).flatMap((name) => this.prices.find('part', name) ?? this.prices.find('sublet', name) ?? []);
  }

  toolsOf(record: Json): Json[] {
    return names(record['needs']).flatMap((name) => (this.prices.find('labour', name) === undefined ? (this.prices.find('tool', name) ?? []) : []));
  }

  jobsOf(option: Json): Set<Json> {
    const jobs = new Set<Json>();
    const take = (job: Json) => {
      if (jobs.has(job)) return;
      jobs.add(job);
      this.prices.named('labour', job['needs']).forEach(take);
    };
    this.prices.named('labour', option['do']).forEach(take);
    list(option['labour']).forEach(take);
    return jobs;
  }

  staged(some: readonly Json[]): ReadonlySet<Json> {
    return new Set(some.flatMap((stage) => [...this.jobsOf(stage)]));
  }

  openedBy(some: readonly Json[]): readonly string[] {
    return [...new Set(some.flatMap((stage) => names(stage['opens'])))];
  }

  feesOf(option: Json): Set<Json> {
    return new Set([...this.prices.named('fee', option['charge']), ...list(option['fee'])]);
  }

  private modesOf(job: Json): { readonly time: Written; readonly with: readonly string[] }[] {
    return [job, ...list(job['takes'])].flatMap((line) => {
      const time = amount(line['hours']);
      const takes = names(line['with']);
      return time === undefined || takes.some((name) => this.prices.find('access', name) === undefined) ? [] : [{ time, with: takes }];
    });
  }

  /** A job as cheaply as these ways in allow; of equals the quicker, then the one that is written first. */
  jobWith(job: Json, open: ReadonlySet<string>): OracleJob | undefined {
    const [first, ...rest] = this.modesOf(job).filter((mode) => mode.with.every((way) => open.has(way)))
      .map((mode): OracleJob => ({ job, ...mode, line: this.prices.work(job, mode.time, job['class'], false, amount(job['count'])) }));
    return rest.reduce((best, one) => (best !== undefined && (one.line.coins[1] < best.line.coins[1] || (one.line.coins[1] === best.line.coins[1] && compare(one.line.hours[1], best.line.hours[1]) < 0)) ? one : best), first);
  }

  option(option: Json, { stages, then, parts: more = [], lines: extra = [] }: Asked): OracleOption {
    const { prices } = this;
    const before = this.staged(stages);
    const opens = this.openedBy(stages);
    const jobs = new Set([...before, ...this.jobsOf(option)]);
    const things = new Set<Json>();
    for (const job of jobs) for (const thing of this.used(job)) things.add(thing);
    for (const thing of [...prices.named('part', option['fit']), ...prices.named('sublet', option['send']), ...list(option['part']), ...list(option['sublet']), ...more]) things.add(thing);
    const tools = new Set([...jobs].flatMap((job) => this.toolsOf(job)));

    /** What all comes to with these ways in paid for; undefined where some work can't be reached. */
    const plan = (paid: readonly string[], gives: ReadonlySet<string>): OraclePlan | undefined => {
      const lines: Line[] = [...[...things, ...tools].flatMap((thing) => prices.linesOf(thing, false)), ...extra];
      const done: OracleJob[] = [];
      for (const job of jobs) {
        // What stages do is done with what they open, whatever is opened later.
        const best = this.jobWith(job, before.has(job) ? this.given(opens) : gives);
        if (best === undefined) return undefined;
        done.push(best);
        lines.push(best.line);
      }
      const opened = new Set<Json>();
      for (const name of paid) {
        const way = prices.find('access', name) as Json;
        const isLeft = then === 'left open' && opens.includes(name);
        for (const time of [amount(way['remove']), isLeft ? undefined : amount(way['refit'])]) if (time !== undefined) lines.push(prices.work(way, time, way['class'], true));
        for (const thing of isLeft ? this.toolsOf(way) : [...this.goodsOf(way), ...this.toolsOf(way)]) if (!things.has(thing) && !tools.has(thing)) opened.add(thing);
      }
      for (const thing of opened) lines.push(...prices.linesOf(thing, true));
      lines.push(...prices.feeLines(this.feesOf(option), lines));
      const tax = prices.taxes(lines);
      return {
        ways: paid, jobs: done, lines, tax,
        total: add([...lines.map((line) => line.coins), tax]),
        access: add(lines.filter((line) => line.access).map((line) => line.coins)),
        hours: addHours(lines.map((line) => line.hours)),
      };
    };

    const everything = new Set(this.ways.map((way) => way.name as string));
    const stand = plan([], everything);
    const none: OraclePlan = { ways: [], jobs: [], lines: [], total: NO_COINS, tax: NO_COINS, access: NO_COINS, hours: addHours([]) };
    // What another one that is asked for includes comes with it, and is not paid for.
    const pins = option['way'] === undefined ? undefined : names(option['way']).filter((name, _, asked) => name !== 'in-car' && [...asked, ...opens].every((other) => other === name || !this.given([other]).has(name)));
    const both = [...new Set([...(pins ?? []), ...opens])];
    const pinned = pins === undefined ? undefined : plan(both, this.given(both));
    const free = stand === undefined ? [] : cheapest([...everything], (paid) => (opens.every((name) => paid.includes(name)) ? plan(paid, this.given(paid)) : undefined));
    const best = pins === undefined ? free : pinned === undefined ? [] : [pinned];
    const ruledOut = option.kind === 'option' ? prices.all.filter((one) => one.kind === 'finding' && names(one['rulesOut']).includes(option.name as string)).map((one) => one.title as string) : [];
    return { name: option.name as string, record: option, digits: prices.digits, ruledOut, reached: best.length > 0, best, free: pins === undefined ? [] : free, stand: stand ?? none, things: [...things] };
  }

  /** Parts and outside work that come with a way in. */
  goodsOf(way: Json): Json[] {
    return [...this.used(way), ...list(way['part']), ...list(way['sublet'])];
  }

  /** A stage is pinned to what it opens; the hours of putting back and new parts for those it destroys come on top. */
  stageOf(stage: Json): OracleStage {
    const alone: Json = { kind: 'option', name: stage.name as string, way: names(stage['opens']) };
    const hours = amount(stage['putBack']);
    const back = hours === undefined ? [] : [this.prices.work(stage, hours, stage['class'], false)];
    const only = this.option(alone, { stages: [stage], then: 'left open' }).best[0];
    const whole = this.option(alone, { stages: [stage], then: 'closed', parts: this.prices.named('part', stage['destroys']), lines: back }).best[0];
    return {
      name: stage.name as string, digits: this.prices.digits,
      total: only?.total ?? NO_COINS, stop: whole?.total ?? NO_COINS, hours: only?.hours ?? addHours([]), stopHours: whole?.hours ?? addHours([]),
    };
  }

  /** Selling the vehicle unrepaired: what every option does first, and every fee that they all charge, is owed all the same. */
  private soldAsItStands(options: readonly Json[]): Json[] {
    const [first, ...others] = options;
    const vehicle = this.prices.all.find((record) => record.kind === 'vehicle');
    if (first === undefined || vehicle?.['unrepaired'] === undefined) return [];
    // What the others leave must be known, or it would look free beside them.
    if (vehicle['worth'] === undefined && options.some((option) => option['worth'] === undefined)) return [];
    const before = this.staged(this.stages);
    const labour = [...this.jobsOf(first)].filter((job) => job['done'] === 'first' && others.every((option) => this.jobsOf(option).has(job)) && !before.has(job));
    const fee = [...this.feesOf(first)].filter((one) => others.every((option) => this.feesOf(option).has(one)));
    const alone = (job: Json): Json => ({ ...job, needs: names(job['needs']).filter((name) => this.prices.find('labour', name) === undefined) });
    return [{ kind: 'option', name: 'as-it-stands', labour: labour.map(alone), fee, worth: vehicle['unrepaired'] }];
  }
}

/** Tries every set of ways in. Least money first, then fewest hours, then fewest ways. */
function cheapest(ways: readonly string[], plan: (paid: readonly string[]) => OraclePlan | undefined): OraclePlan[] {
  let best: OraclePlan[] = [];
  for (let set = 0; set < 1 << ways.length; set++) {
    const one = plan(ways.filter((_, i) => (set & (1 << i)) !== 0));
    if (one === undefined) continue;
    const [other] = best;
    const order = other === undefined ? -1 : one.total[1] < other.total[1] ? -1 : one.total[1] > other.total[1] ? 1 : compare(one.hours[1], other.hours[1]) || one.ways.length - other.ways.length;
    if (order < 0) best = [one];
    else if (order === 0) best.push(one);
  }
  return best;
}

/** A written figure that is one number: its likely one. */
export function likely(value: unknown): Rational | undefined {
  const written = amount(value);
  return written === undefined ? undefined : fromDigits(written.likely);
}
