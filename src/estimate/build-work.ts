import { problem, Slot, type Problem, type Span } from '../language/index.js';
import { childrenOf, heldByRecords, is, kinds, type Name, type RecordOf } from '../vocabulary/index.js';
import { pictureOutside } from './file-rules.js';
import * as moneyRules from './money-rules.js';
import { upToMost } from './most.js';
import { onlyOnce } from './name-rules.js';
import { remember, rememberedAmong, type Among } from './remember.js';
import { wordsIn, type Scope } from './scope.js';
import type { Fee, Rate, Shop, Tool } from './shop-types.js';
import { sourceOf, titleOf } from './source.js';
import * as rules from './work-rules.js';
import type { Access, Core, Finding, Labour, Mode, Part, Sublet } from './work-types.js';

/** Finds the jobs that others name, and cuts circles where they close. */
export type Needed = (names: readonly Name[]) => Labour[];

/** What the builders of single lines look names up in. Each entity is built once, whoever asks first. */
export interface Lookup {
  readonly shop: Shop;
  readonly scope: Scope;
  /** Stands for everything that a job is looked up in but other jobs: the same object as long as all of that is the same. */
  readonly aroundWork: object;
  readonly problems: Problem[];
  readonly access: (name: string) => Access | undefined;
  readonly labour: (name: string) => Labour | undefined;
  readonly part: (name: string) => Part | undefined;
  readonly sublet: (name: string) => Sublet | undefined;
  readonly tool: (name: string) => Tool | undefined;
  readonly fee: (name: string) => Fee | undefined;
  readonly finding: (name: string) => Finding | undefined;
}

/** The shop that a line is priced by, and where what is wrong with the line is told. */
export type Telling = Pick<Lookup, 'shop' | 'problems'>;

export function pick<T>(names: readonly Name[] | undefined, find: (name: string) => T | undefined): T[] {
  const found: T[] = [];
  if (names === undefined) return found;
  const isLong = names.length > FEW_NAMES;
  for (const name of isLong ? distinct(names) : names) {
    const one = find(typeof name === 'string' ? name : name.name);
    if (one !== undefined && (isLong || !found.includes(one))) found.push(one);
  }
  return found;
}

/** Up to so many are compared with each other. */
const FEW_NAMES = 8;

/** Kept by the list, which stays the same until its line is typed in: an option may name hundreds of jobs. */
const distinctNames = new WeakMap<readonly Name[], readonly string[]>();

/** The names of a list, each once. */
function distinct(names: readonly Name[]): readonly string[] {
  let found = distinctNames.get(names);
  if (found === undefined) distinctNames.set(names, (found = [...new Set(names.map(({ name }) => name))]));
  return found;
}

/** The rate of a class of work; where none can be told, says so at the hours. */
export function rateFor(className: Name | undefined, at: Span, { shop, problems }: Telling): Rate | undefined {
  if (className !== undefined) return shop.rates.get(className.name);
  if (shop.usualRate !== undefined) return shop.usualRate;
  if (shop.rates.size === 0) problems.push(problem(moneyRules.noRate, at, undefined));
  else problems.push(problem(moneyRules.whichRate, at, { rates: [...shop.rates.keys()] }));
  return undefined;
}

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

interface Goods {
  readonly parts: readonly Part[];
  readonly sublets: readonly Sublet[];
}

const NO_GOODS: Goods = { parts: [], sublets: [] };

/** Names behind `uses` stand for parts first, then for outside work. */
function usedGoods(uses: readonly Name[] | undefined, lookup: Lookup): Goods {
  if (uses === undefined) return NO_GOODS;
  if (lookup.scope.named('sublet').length === 0) return { parts: pick(uses, lookup.part), sublets: [] };
  const isSublet = ({ name }: Name) => lookup.scope.find('part', name) === undefined && lookup.scope.find('sublet', name) !== undefined;
  return { parts: pick(uses.filter((name) => !isSublet(name)), lookup.part), sublets: pick(uses.filter(isSublet), lookup.sublet) };
}

function modesOf(record: RecordOf<typeof kinds.labour>, lookup: Lookup, problems: Problem[]): Mode[] {
  const { values } = record;
  const modes: Mode[] = [];
  const byWays = new Map<string, Mode>();
  const add = (hours: Mode['hours'] | undefined, names: readonly Name[] | undefined, at: Span) => {
    if (hours === undefined) return;
    // A mode that names an unknown way in is left out: without it the work must not look easier than it is.
    if (names?.some(({ name }) => lookup.scope.find('access', name) === undefined) === true) return;
    const mode: Mode = { hours, with: pick(names, lookup.access), at, held: undefined };
    const key = mode.with.map((way) => way.name).sort().join(' ');
    const twin = byWays.get(key);
    if (twin === undefined) {
      modes.push(mode);
      byWays.set(key, mode);
    } else {
      const way = mode.with.length === 0 ? 'in the car' : `with ${mode.with.map((one) => one.name).join(', ')}`;
      problems.push(problem(rules.takesTwice, at, { way }, { at: twin.at, says: 'The first one' }));
    }
  };
  add(values.hours, values.with, values.hours?.at ?? record.at);
  for (const line of childrenOf(record, kinds.takes)) {
    if (line.values.hours === undefined && !line.broken) problems.push(problem(moneyRules.amountMissing, line.at, { what: 'its hours', example: 'takes 4.5 h with engine-lifted' }));
    add(line.values.hours, line.values.with, line.at);
  }
  return modes;
}

export function buildAccess(record: RecordOf<typeof kinds.access>, lookup: Lookup, includes: readonly Access[]): Access | undefined {
  const used = usedGoods(record.values.uses, lookup);
  const tools = pick(record.values.needs, lookup.tool);
  return remember(record, [lookup.shop, ...includes, ...used.parts, ...used.sublets, ...tools], lookup.problems, (problems) => makeAccess(record, { shop: lookup.shop, problems }, includes, used, tools));
}

function makeAccess(record: RecordOf<typeof kinds.access>, lookup: Telling, includes: readonly Access[], used: ReturnType<typeof usedGoods>, tools: readonly Tool[]): Access | undefined {
  const { values, name } = record;
  const title = titleOf(record);
  if (name === undefined || title === undefined) return undefined;
  const parts = [...used.parts, ...childrenOf(record, kinds.part).flatMap((child) => buildPart(child, lookup) ?? [])];
  const sublets = [...used.sublets, ...childrenOf(record, kinds.sublet).flatMap((child) => buildSublet(child, lookup) ?? [])];
  const hours = values.remove ?? values.refit;
  if (hours === undefined && parts.length === 0 && sublets.length === 0 && !record.broken) lookup.problems.push(problem(rules.accessEmpty, record.at, undefined));
  return {
    record, at: record.at, broken: record.broken,
    name: name.name,
    title,
    includes,
    remove: values.remove,
    refit: values.refit,
    rate: hours === undefined ? undefined : rateFor(values.class, hours.at, lookup),
    tools,
    parts: upToMost(parts, 'parts', record, lookup.problems),
    sublets: upToMost(sublets, 'pieces of outside work', record, lookup.problems),
    cautions: wordsIn(values.caution),
  };
}

export function buildPart(record: RecordOf<typeof kinds.part>, lookup: Telling): Part | undefined {
  return remember(record, [lookup.shop], lookup.problems, (problems) => makePart(record, { shop: lookup.shop, problems }));
}

function makePart(record: RecordOf<typeof kinds.part>, lookup: Telling): Part | undefined {
  const { values, broken } = record;
  const title = titleOf(record);
  if (title === undefined) return undefined;
  const condition = values.condition?.word;
  if (!broken && condition !== 'customer-supplied') checkPrice(record, 'part', 'part pump "Coolant pump" 64.30 new', lookup);
  if (!broken && condition === undefined && (values.price ?? values.cost) !== undefined) lookup.problems.push(problem(moneyRules.conditionMissing, record.at, undefined));
  const [core, ...otherCores] = childrenOf(record, kinds.core);
  for (const other of otherCores) lookup.problems.push(problem(onlyOnce, other.at, { kind: 'core' }, core === undefined ? undefined : { at: core.at, says: 'The first one' }));
  return {
    record, at: record.at, broken,
    name: record.name?.name,
    title,
    quantity: values.quantity,
    price: values.price,
    cost: values.cost,
    condition,
    arrives: values.arrives,
    warranty: values.warranty,
    core: core === undefined ? undefined : buildCore(core, lookup),
    held: undefined,
  };
}

function buildCore(record: RecordOf<typeof kinds.core>, lookup: Telling): Core {
  const { values, broken } = record;
  if (values.charge === undefined && !broken) lookup.problems.push(problem(moneyRules.amountMissing, record.at, { what: 'the core charge', example: 'core 150.00 due 30 d' }));
  return {
    ...sourceOf(record),
    charge: values.charge,
    due: values.due,
    less: values.less,
    assemble: values.assemble,
    rate: values.assemble === undefined ? undefined : rateFor(values.class, values.assemble.at, lookup),
    keeps: childrenOf(record, kinds.keeps).map((child) => ({ ...sourceOf(child), title: child.title?.text ?? '', less: child.values.less, worth: child.values.worth })),
  };
}

export function buildSublet(record: RecordOf<typeof kinds.sublet>, lookup: Telling): Sublet | undefined {
  return remember(record, [lookup.shop], lookup.problems, (problems) => makeSublet(record, { shop: lookup.shop, problems }));
}

function makeSublet(record: RecordOf<typeof kinds.sublet>, lookup: Telling): Sublet | undefined {
  const { values } = record;
  const title = titleOf(record);
  if (title === undefined) return undefined;
  if (!record.broken) checkPrice(record, 'outside work', 'sublet head-work "Valves, seats, faces" 12 at cost 31.00', lookup);
  return {
    ...sourceOf(record),
    name: record.name?.name, title, quantity: values.quantity, price: values.price, cost: values.cost,
    backIn: values.backIn, after: values.after ?? [], warranty: values.warranty,
  };
}

function checkPrice(record: RecordOf<typeof kinds.part> | RecordOf<typeof kinds.sublet>, kind: string, example: string, lookup: Telling): void {
  const { price, cost } = record.values;
  if (price === undefined && cost === undefined) lookup.problems.push(problem(moneyRules.priceMissing, record.at, { kind, example }));
  if (price !== undefined && cost !== undefined) lookup.problems.push(problem(moneyRules.priceAndCost, price.at, undefined));
  if (price === undefined && cost !== undefined) {
    const bands = kind === 'part' ? lookup.shop.markup.parts : lookup.shop.markup.sublets;
    const last = bands[bands.length - 1];
    if (last === undefined || (last.upTo !== undefined && last.upTo.likely.lt(cost.high))) {
      lookup.problems.push(problem(moneyRules.noMarkup, cost.at, { what: kind === 'part' ? 'parts' : 'outside work' }));
    }
  }
}

export function buildFee(record: RecordOf<typeof kinds.fee>, problems: Problem[]): Fee | undefined {
  return remember(record, [], problems, (own) => makeFee(record, own));
}

function makeFee(record: RecordOf<typeof kinds.fee>, problems: Problem[]): Fee | undefined {
  const { values } = record;
  const title = titleOf(record);
  if (title === undefined) return undefined;
  const of = wordsIn(values.of);
  if (!record.broken) {
    const lacks = values.price === undefined && values.percent === undefined ? 'amount' : values.price !== undefined && values.percent !== undefined ? 'one' : values.percent !== undefined && of.length === 0 ? 'of' : values.percent !== undefined && values.quantity !== undefined ? 'count' : undefined;
    if (lacks !== undefined) problems.push(problem(moneyRules.feeUnclear, record.at, { lacks }));
  }
  return { ...sourceOf(record), name: record.name?.name, title, quantity: values.quantity, price: values.price, percent: values.percent, of, cap: values.cap };
}

/** Where the path of a picture leads; undefined outside the workspace. */
export type PictureAt = (fromUri: string, path: string) => string | undefined;

const PICTURE = /\.(?:png|jpe?g|webp)$/i;

export function buildFinding(record: RecordOf<typeof kinds.finding>, pictureAt: PictureAt, problems: Problem[]): Finding | undefined {
  const { values } = record;
  const title = titleOf(record);
  if (title === undefined) return undefined;
  return remember(record, [], problems, (own) => ({
    ...sourceOf(record),
    name: record.name?.name, title, compression: values.compression, leakage: values.leakage, debris: values.debris?.word, seenBy: values.seenBy?.text,
    pictures: (values.pictures ?? []).map(({ text: path, at }) => {
      const uri = PICTURE.test(path) ? pictureAt(record.block.uri, path) : undefined;
      if (uri === undefined) own.push(problem(pictureOutside, at, { path }));
      return { path, uri, at };
    }),
  }));
}
