import { problem, Slot, type Problem, type Span } from '../language/index.js';
import { childrenOf, heldByRecords, is, kinds, type Name, type RecordOf } from '../vocabulary/index.js';
import { hoursIn } from './hours-in.js';
import { pick, type Lookup } from './lookup.js';
import * as moneyRules from './money-rules.js';
import { rateFor } from './rate-for.js';
import { remember, rememberedAmong, type Among } from './remember.js';
import * as sense from './sense-rules.js';
import type { Tool } from './shop-types.js';
import { titleOf } from './source.js';
import { usedGoods } from './used-goods.js';
import { wordsIn } from './words-in.js';
import * as rules from './work-rules.js';
import type { Labour, Mode } from './work-types.js';

/** Finds the jobs that others name, and cuts circles where they close. */
export type Needed = (names: readonly Name[]) => Labour[];

interface Needs {
  readonly needs: readonly Labour[];
  readonly tools: readonly Tool[];
}

const NO_NEEDS: Needs = { needs: [], tools: [] };

/** Names behind `needs` stand for jobs first, then for tools. */
function needsOf(names: readonly Name[], lookup: Lookup, needed: Needed): Needs {
  const isTool = ({ name }: Name) => lookup.scope.find('labour', name) === undefined && lookup.scope.find('tool', name) !== undefined;
  return { needs: needed(names.filter((name) => !isTool(name))), tools: pick(names.filter(isTool), lookup.tool) };
}

export function buildLabour(record: RecordOf<typeof kinds.labour>, lookup: Lookup, needed: Needed): Labour | undefined {
  const { values } = record;
  const { needs, tools } = values.needs === undefined ? NO_NEEDS : needsOf(values.needs, lookup, needed);
  const among: Among = { around: lookup.aroundWork, near: values.needs === undefined ? needs : [...needs, ...tools] };
  const kept = rememberedAmong<Labour | undefined>(record, among, lookup.problems);
  if (kept !== undefined) return kept.value;
  const { parts, sublets } = usedGoods(values.uses, lookup);
  const because = pick(values.because, lookup.finding);
  const ways = waysNamed(record).map(({ name }) => lookup.access(name));
  const madeFrom = [lookup.shop, ...needs, ...tools, ...parts, ...sublets, ...because, ...ways];
  return remember(record, madeFrom, lookup.problems, (problems) => {
    const title = titleOf(record);
    if (title === undefined) return undefined;
    const modes = modesOf(record, lookup, problems);
    // Hours behind an unknown way in are said all the same: the name has its own message.
    const saysHours = values.hours !== undefined || childrenOf(record, kinds.takes).length > 0;
    reportSense(record, modes, problems);
    if (!saysHours && !record.broken) problems.push(problem(rules.hoursMissing, record.at, undefined));
    return {
      record, at: record.at, broken: record.broken,
      name: record.name?.name,
      title,
      count: values.count,
      modes,
      rate: modes.length === 0 ? undefined : rateFor(values.class, (modes[0] as Mode).hours.at, { shop: lookup.shop, problems }),
      needs, tools, parts, sublets, because,
      after: values.after ?? [],
      apart: values.apart,
      done: values.done?.word,
      cautions: wordsIn(values.caution),
      held: undefined,
    };
  }, among);
}

/** What a job says that can't be meant. */
function reportSense({ name, values: { count, apart, after } }: RecordOf<typeof kinds.labour>, modes: readonly Mode[], problems: Problem[]): void {
  if (count?.high.isZero() === true) problems.push(problem(sense.quantityOfNothing, count.at, undefined));
  if (after !== undefined) for (const one of after) if (one.name === name?.name) problems.push(problem(sense.afterItself, one.at, { name: one.name }));
  if (apart === undefined || modes.length === 0) return;
  const all = modes.map(({ hours }) => hoursIn(hours).times(count?.likely ?? 1));
  const longest = all.reduce((a, b) => (b.gt(a) ? b : a));
  if (hoursIn(apart).gt(longest)) problems.push(problem(sense.apartTooLate, apart.at, { apart: hoursIn(apart).toFixed(), takes: longest.toFixed() }));
}

const namedWays = new Slot<readonly Name[]>(heldByRecords);

/** Every way in that a job's times name. */
function waysNamed(record: RecordOf<typeof kinds.labour>): readonly Name[] {
  let found = namedWays.get(record);
  if (found === undefined) {
    const all = [...(record.values.with ?? [])];
    for (const child of record.children) if (is(child, kinds.takes)) for (const name of child.values.with ?? []) all.push(name);
    found = all;
    namedWays.set(record, found);
  }
  return found;
}

function modesOf(record: RecordOf<typeof kinds.labour>, lookup: Lookup, problems: Problem[]): Mode[] {
  const { values } = record;
  const modes: Mode[] = [];
  const byWays = new Map<string, Mode>();
  const add = (hours: Mode['hours'] | undefined, names: readonly Name[] | undefined, at: Span, broken: boolean) => {
    if (hours === undefined) return;
    // A mode that names an unknown way in is left out: without it the work must not look easier than it is.
    if (names?.some(({ name }) => lookup.scope.find('access', name) === undefined) === true) return;
    const mode: Mode = { hours, with: pick(names, lookup.access), at, held: undefined };
    const key = mode.with.map((way) => way.name).sort().join(' ');
    const twin = byWays.get(key);
    if (twin === undefined) {
      modes.push(mode);
      byWays.set(key, mode);
    } else if (!broken) {
      const way = mode.with.length === 0 ? 'in the car' : `with ${mode.with.map((one) => one.name).join(', ')}`;
      problems.push(problem(rules.takesTwice, at, { way }, { at: twin.at, says: 'The first one' }));
    }
  };
  add(values.hours, values.with, values.hours?.at ?? record.at, false);
  for (const line of childrenOf(record, kinds.takes)) {
    if (line.values.hours === undefined && !line.broken) problems.push(problem(moneyRules.amountMissing, line.at, { what: 'its hours', example: 'takes 4.5 h with engine-lifted' }));
    // The way in of a line that can't be read to its end may be what is missing.
    add(line.values.hours, line.values.with, line.at, line.broken);
  }
  return modes;
}
