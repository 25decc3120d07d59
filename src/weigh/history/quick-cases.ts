import { parseSome, type Tree } from '../../language/index.js';
import { hoursIn, type Sources } from '../../estimate/index.js';
import { childrenOf, formatVersion, is, kinds, one, readBlock, type Amount, type Record, type RecordOf } from '../../vocabulary/index.js';
import { accessJob, caseOf, labourJob, type WrittenCase } from './case.js';

/** What says which other lines are needed, and whether a stage opens more than was clocked. */
const HEADS: ReadonlySet<string> = new Set([kinds.closed, kinds.format, kinds.use, kinds.stage].map(({ word }) => word));

type LabourRecord = RecordOf<typeof kinds.labour>;
type AccessRecord = RecordOf<typeof kinds.access>;
type ClockedRecord = RecordOf<typeof kinds.clocked>;

/**
 * The cases of a closed file from the few lines that its clocked lines name: several times sooner than by resolving it,
 * and always the same. Undefined where these lines alone don't settle it: an unclear or faulty line, a name that the option
 * reaches by a detour, work in several ways of which none is clocked.
 */
export function quickCases(uri: string, text: string, sources: Sources): { readonly cases: readonly WrittenCase[]; readonly tree: Tree } | undefined {
  const tree = parseSome(uri, text, (first) => HEADS.has(first));
  const head = allOf(tree);
  const [format, ...rest] = head ?? [];
  if (format === undefined || !is(format, kinds.format) || format.values.version?.likely.eq(formatVersion) !== true) return undefined;
  const [closed, ...others] = rest.filter((record) => is(record, kinds.closed));
  const done = closed?.values.for?.name;
  if (closed === undefined || done === undefined || others.length > 0) return undefined;
  const clocked = childrenOf(closed, kinds.clocked);
  const names = new Set(clocked.flatMap((line) => line.values.line?.name ?? []));
  const own = allOf(parseSome(uri, text, (first, second) => (first === kinds.labour.word ? names.has(second ?? '') : first === kinds.access.word || (first === kinds.option.word && second === done))));
  if (own === undefined) return undefined;
  const shared = sharedLines(uri, rest, sources, new Set([uri]));
  if (shared === undefined) return undefined;
  const lines = new Lines(own, shared);
  const [option, ...twins] = own.filter((record) => is(record, kinds.option));
  if (option === undefined || twins.length > 0 || lines.twice) return undefined;
  const cases = new Quick(option, lines, text, closed.values.on?.iso).cases(clocked);
  return cases === undefined ? undefined : { cases, tree };
}

/** The records of some blocks; undefined where one of them has a fault. */
function allOf({ blocks }: Tree): Record[] | undefined {
  const read = blocks.map(readBlock);
  return read.some(({ problems }) => problems.some(({ severity }) => severity === 'error')) ? undefined : read.flatMap(({ records }) => records);
}

const sharedRead = new WeakMap<Tree, readonly Record[]>();

/** Work and ways in of all files that are used, and that those use; undefined where one of them is not at hand, or where there is a stage. */
function sharedLines(uri: string, records: readonly Record[], sources: Sources, seen: Set<string>): Record[] | undefined {
  const found: Record[] = [];
  for (const record of records) {
    if (is(record, kinds.stage)) return undefined;
    if (!is(record, kinds.use)) continue;
    const target = record.title === undefined ? undefined : sources.resolvePath(uri, record.title.text);
    const tree = target === undefined ? 'missing' : sources.treeOf(target);
    if (target === undefined || typeof tree === 'string' || seen.has(target)) return undefined;
    seen.add(target);
    const own = sharedRead.get(tree) ?? tree.blocks.flatMap((block) => readBlock(block).records);
    sharedRead.set(tree, own);
    const below = sharedLines(target, own, sources, seen);
    if (below === undefined) return undefined;
    found.push(...own.filter((one) => is(one, kinds.labour) || is(one, kinds.access)), ...below);
  }
  return found;
}

/** The named lines at hand. */
class Lines {
  readonly labour = new Map<string, LabourRecord>();
  readonly access = new Map<string, AccessRecord>();
  /** Whether a name stands for two of them. */
  readonly twice: boolean;

  constructor(...all: readonly (readonly Record[])[]) {
    let twice = false;
    for (const record of all.flat()) {
      const name = record.name?.name;
      const map: Map<string, Record> | undefined = is(record, kinds.labour) ? this.labour : is(record, kinds.access) ? this.access : undefined;
      if (map === undefined || name === undefined) continue;
      if (map.has(name)) twice = true;
      map.set(name, record);
    }
    this.twice = twice;
  }

  /** A way in with all that it gives; undefined where one of them is not at hand, or they go round in a circle. */
  opened(name: string, path: readonly string[] = []): string[] | undefined {
    const record = this.access.get(name);
    if (record === undefined || record.broken || path.includes(name)) return undefined;
    const found = [name];
    for (const { name: included } of record.values.includes ?? []) {
      const below = this.opened(included, [...path, name]);
      if (below === undefined) return undefined;
      found.push(...below);
    }
    return found;
  }
}

interface QuickMode {
  readonly hours: Amount;
  readonly with: readonly string[];
}

class Quick {
  constructor(
    private readonly option: RecordOf<typeof kinds.option>,
    private readonly lines: Lines,
    private readonly text: string,
    private readonly on: string | undefined,
  ) {}

  cases(clocked: readonly ClockedRecord[]): WrittenCase[] | undefined {
    const jobs = new Map<Record, ClockedRecord>();
    for (const line of clocked) {
      const record = this.meant(line);
      if (record === undefined || record.broken || line.broken || jobs.has(record)) return undefined;
      jobs.set(record, line);
    }
    const opened = new Set<string>();
    for (const record of jobs.keys()) {
      if (!is(record, kinds.access)) continue;
      const gives = this.lines.opened(record.name?.name ?? '');
      if (gives === undefined) return undefined;
      for (const way of gives) opened.add(way);
    }
    const found: WrittenCase[] = [];
    const wanted = new Set<string>();
    for (const [record, { values: { hours } }] of jobs) {
      const made = hours === undefined ? undefined : is(record, kinds.access) ? accessCase(record, hours, this.on) : is(record, kinds.labour) ? this.labourCase(record, hours, opened, wanted) : undefined;
      if (made === undefined) return undefined;
      found.push(...made);
    }
    // A way in that none of the clocked work takes may be none of the option's.
    return [...jobs.keys()].every((record) => !is(record, kinds.access) || wanted.has(record.name?.name ?? '')) ? found : undefined;
  }

  /** The line that is meant, where the option does that itself. */
  private meant({ values: { line: name }, title }: ClockedRecord): Record | undefined {
    if (name !== undefined) {
      const work = this.lines.labour.get(name.name);
      const way = this.lines.access.get(name.name);
      if (title !== undefined || (work !== undefined && way !== undefined)) return undefined;
      return way ?? (this.option.values.do?.some((one) => one.name === name.name) === true ? work : undefined);
    }
    if (title === undefined || this.text.split(`"${title.text}"`).length !== 3) return undefined; // here and there
    return childrenOf(this.option, kinds.labour).find((child) => child.title?.text === title.text && child.name === undefined);
  }

  private labourCase(record: LabourRecord, hours: Amount, opened: ReadonlySet<string>, wanted: Set<string>): WrittenCase[] | undefined {
    const modes = this.modesOf(record);
    if (modes === undefined) return undefined;
    for (const mode of modes) for (const way of mode.with) for (const gives of this.around(way)) wanted.add(gives);
    const mode = modes.length === 1 ? modes[0] : modes.filter((one) => one.with.every((way) => opened.has(way))).reduce<QuickMode | undefined>((best, one) => (best === undefined || hoursIn(one.hours).lt(hoursIn(best.hours)) ? one : best), undefined);
    if (mode === undefined || (modes.length > 1 && opened.size === 0)) return undefined;
    const title = record.title?.text;
    return title === undefined ? undefined : caseOf(labourJob({ name: record.name?.name, title }, mode.with), hours, record.values.count?.likely ?? one, [mode.hours], this.on);
  }

  /** A way in, what it gives, and those that give it. */
  private around(way: string): string[] {
    return [...(this.lines.opened(way) ?? []), ...[...this.lines.access.keys()].filter((other) => this.lines.opened(other)?.includes(way) === true)];
  }

  /** As it is written, without a way that says no hours; undefined where a way in is not at hand or two are for the same ways. */
  private modesOf(record: LabourRecord): QuickMode[] | undefined {
    const { values } = record;
    const modes = [values, ...childrenOf(record, kinds.takes).map((line) => line.values)].flatMap(({ hours, with: ways = [] }): QuickMode[] => (hours === undefined ? [] : [{ hours, with: [...new Set(ways.map(({ name }) => name))] }]));
    const keys = new Set(modes.map((mode) => [...mode.with].sort().join()));
    const known = modes.every((mode) => mode.with.every((way) => this.lines.opened(way) !== undefined));
    return known && keys.size === modes.length ? modes : undefined;
  }
}

function accessCase({ name, title, values: { remove, refit } }: AccessRecord, hours: Amount, on: string | undefined): WrittenCase[] | undefined {
  return name === undefined || title === undefined ? undefined : caseOf(accessJob({ name: name.name, title: title.text }), hours, one, [remove, refit], on);
}
