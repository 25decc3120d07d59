import { Places, type Span } from '../../language/index.js';
import { topicsOf, type Estimate, type Finding, type Header, type Option, type Resolved, type Source } from '../../estimate/index.js';
import type { Name, Record, Topic } from '../../vocabulary/index.js';
import type { Book, Comparison, Planned, Weighed } from '../../weigh/index.js';
import { EMPTY } from '../book/entries.js';
import { promiseOf } from './promise-of.js';

/** What the checks look at: an estimate with its options, prepared once for all of them. */
export interface View {
  readonly estimate: Estimate;
  readonly header: Header;
  readonly comparison: Comparison;
  readonly resolved: Resolved;
  /** The shop's own book of times. */
  readonly book: Book;
  /** Whether a picture is there; undefined where the host can’t tell. */
  readonly exists: ((uri: string) => boolean) | undefined;
  /** Options that could be priced whole. Of the others nobody can tell what is missing. */
  readonly options: readonly OptionView[];
  /** Whether a line stands in the estimate's own file, and not in one that other estimates share. */
  readonly isOwn: (source: Pick<Source, 'record'>) => boolean;
}

/** One option with all that it does and brings along. */
export interface OptionView {
  readonly weighed: Weighed;
  readonly option: Option;
  /** Lines that stand for a topic, in the order of the option. Work of a stage is not among them: it calls for nothing in an option that leaves it at that. */
  readonly lines: (topic: Topic) => readonly Source[];
  readonly has: (...topics: readonly Topic[]) => boolean;
  /** True where the option does something that this estimate was written for, beyond what every visit takes. */
  readonly repairs: boolean;
  /** True where another engine goes in. */
  readonly swaps: boolean;
  /** Where a problem with a line is shown: at the line, or at the option where the line is shared. */
  readonly placeOf: (source: Source) => Span;
}

/** A file is checked for the trade once it says that it is an estimate and an option does some work, or should: not while it is begun. */
export function viewOf(resolved: Resolved, comparison: Comparison, book: Book = EMPTY, exists?: View['exists']): View | undefined {
  const { estimate } = resolved;
  const { header } = estimate;
  if (header === undefined || resolved.waitsFor.length > 0 || !estimate.options.some((option) => option.labour.length > 0 || (estimate.labour.length > 0 && promiseOf(option) !== undefined))) return undefined;
  const isOwn = ({ record }: Pick<Source, 'record'>) => record.block.uri === estimate.uri;
  const options = comparison.options.filter((one) => one.complete && one.option.written).map((one) => optionView(one, isOwn));
  return { estimate, header, comparison, resolved, book, exists, options, isOwn };
}

const byPlan = new WeakMap<Planned, ReadonlyMap<Topic, readonly Source[]>>();

function optionView(weighed: Weighed, isOwn: View['isOwn']): OptionView {
  const { option } = weighed;
  const held = heldBy(weighed);
  const inStage = new Set<Source>(option.staged?.labour);
  const lines = (topic: Topic) => (inStage.size === 0 ? (held.get(topic) ?? []) : (held.get(topic) ?? []).filter((line) => !inStage.has(line)));
  const has = (...topics: readonly Topic[]) => topics.some((topic) => held.has(topic));
  return {
    weighed, option, lines, has,
    repairs: option.labour.some(isOwn) || option.parts.some(isOwn) || option.sublets.some(isOwn),
    swaps: has('engine-swap', 'used-engine', 'exchange-engine'),
    placeOf: (source) => (isOwn(source) ? source.at : option.at),
  };
}

/** Every line of an option, with its ways in and what these bring along, by what it stands for. */
function heldBy({ option, planned }: Weighed): ReadonlyMap<Topic, readonly Source[]> {
  let held = byPlan.get(planned) as Map<Topic, Source[]> | undefined;
  if (held !== undefined) return held;
  held = new Map();
  const { paid } = planned.chosen;
  const jobs = standing.jobs.itemsIn(option.labour, option.record);
  const parts = standing.parts.itemsIn(option.parts, option.record);
  // Two ways in may bring along the same, or what the option has anyway.
  for (const line of new Set<Source>([...jobs, ...parts, ...option.sublets, ...option.fees, ...paid, ...paid.flatMap((way) => [...way.parts, ...way.sublets])])) {
    for (const topic of topicsOf(line)) {
      const list = held.get(topic);
      if (list === undefined) held.set(topic, [line]);
      else list.push(line);
    }
  }
  byPlan.set(planned, held);
  return held;
}

/** Which lines of an option stand for something: few do. */
const standing = { jobs: new Places(standsForSomething), parts: new Places(standsForSomething) };

function standsForSomething(line: Source): boolean {
  return topicsOf(line).size > 0;
}

/** The findings that some lines name behind because, in the order of the findings. */
export function findingsBehind(sources: Iterable<Pick<Source, 'record'>>, findings: readonly Finding[]): Finding[] {
  const open = new Set(findings.flatMap(({ name }) => name ?? []));
  for (const { record } of sources) {
    if (open.size === 0) break;
    for (const { name } of becauseOf(record)) open.delete(name);
  }
  return findings.filter(({ name }) => name !== undefined && !open.has(name));
}

export function becauseOf(record: Record): readonly Name[] {
  return (record.values['because'] as readonly Name[] | undefined) ?? [];
}
