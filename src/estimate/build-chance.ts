import { Places, problem, Slot } from '../language/index.js';
import { childrenOf, heldByRecords, hundred, is, kinds, type Name, type Record, type RecordOf } from '../vocabulary/index.js';
import { bring, withNeeded } from './brought.js';
import { buildFee } from './build-fee.js';
import { buildPart, buildSublet } from './build-goods.js';
import { buildLabour } from './build-labour.js';
import * as rules from './decision-rules.js';
import { pick, type Lookup } from './lookup.js';
import { upToMost } from './most.js';
import { remember } from './remember.js';
import * as sense from './sense-rules.js';
import { sourceOf, titleOf } from './source.js';
import type { Chance } from './work-types.js';

type ChanceRecord = RecordOf<typeof kinds.chance>;

/** Builds a chance with all that it then takes, each thing once, and the chances below it. */
export function buildChance(record: ChanceRecord, lookup: Lookup): Chance | undefined {
  const { values } = record;
  const needed = (names: readonly Name[]) => pick(names, lookup.labour);
  const title = titleOf(record);
  if (title === undefined) return undefined;
  const labour = withNeeded([...(values.do === undefined ? [] : needed(values.do)), ...childrenOf(record, kinds.labour).flatMap((child) => buildLabour(child, lookup, needed) ?? [])]);
  const parts = [...pick(values.fit, lookup.part), ...childrenOf(record, kinds.part).flatMap((child) => buildPart(child, lookup) ?? [])];
  const sublets = [...pick(values.send, lookup.sublet), ...childrenOf(record, kinds.sublet).flatMap((child) => buildSublet(child, lookup) ?? [])];
  const fees = [...new Set([...pick(values.charge, lookup.fee), ...childrenOf(record, kinds.fee).flatMap((child) => buildFee(child, lookup.problems) ?? [])])];
  const chances = childrenOf(record, kinds.chance).flatMap((child) => buildChance(child, lookup) ?? []);
  return remember(record, [...labour, ...parts, ...sublets, ...fees, ...chances], lookup.problems, (problems) => {
    const { percent } = values;
    if (percent === undefined && !record.broken) problems.push(problem(rules.percentMissing, record.at, { what: 'how likely it is', example: 'chance cracked "The head is cracked" 12%' }));
    if (percent !== undefined && percent.high.gt(hundred)) problems.push(problem(rules.overHundred, percent.at, { written: percent.high.toFixed(), of: 'chance' }));
    else if (percent !== undefined && !percent.low.eq(percent.high)) problems.push(problem(rules.chanceInThree, percent.at, { likely: percent.likely.toFixed() }));
    if (percent?.low.eq(hundred) === true && percent.high.eq(hundred)) problems.push(problem(sense.chanceInEveryCase, percent.at, undefined));
    if (percent !== undefined && saysNothing(record) && !record.broken) problems.push(problem(rules.chanceOfNothing, record.at, undefined));
    const brought = bring(labour);
    return {
      ...sourceOf(record),
      name: record.name?.name,
      title,
      percent: percent !== undefined && percent.high.gt(hundred) ? undefined : percent,
      when: values.comeback === undefined ? 'open' : 'comeback',
      labour: upToMost(labour, 'jobs', record, problems),
      parts: upToMost([...new Set([...brought.parts, ...parts])], 'parts', record, problems),
      sublets: upToMost([...new Set([...brought.sublets, ...sublets])], 'pieces of outside work', record, problems),
      fees: upToMost(fees, 'fees', record, problems),
      chances,
    };
  });
}

/** Names that nothing has, and lines below that can't be read, are no silence: they have their own message. */
function saysNothing({ values, children }: ChanceRecord): boolean {
  const names = values.do ?? values.fit ?? values.send ?? values.charge;
  return names === undefined && children.every(({ kind }) => kind.word === kinds.note.word);
}

const holders = new Slot<readonly Record[]>(heldByRecords);
const NONE: readonly Record[] = [];

/** The jobs and ways in, at whatever depth, that have chances of their own. */
function withChances(record: Record): readonly Record[] {
  if (record.children.every((child) => child.children.length === 0 && !is(child, kinds.chance))) return NONE;
  let found = holders.get(record);
  if (found === undefined) {
    const own = (is(record, kinds.labour) || is(record, kinds.access)) && record.children.some((child) => is(child, kinds.chance)) ? [record] : [];
    const all = [...own, ...record.children.flatMap(withChances)];
    found = all.length === 0 ? NONE : all;
    holders.set(record, found);
  }
  return found;
}

const holding = new Places<Record>((record) => withChances(record).length > 0);

/** The chances of every job and way in, by its record. `first` is the first record of the file itself. */
export function chancesByRecord(records: readonly Record[], first: Record | undefined, lookup: Lookup): ReadonlyMap<Record, readonly Chance[]> {
  const found = new Map<Record, readonly Chance[]>();
  for (const record of holding.itemsIn(records, first)) {
    for (const holder of withChances(record)) found.set(holder, childrenOf(holder, kinds.chance).flatMap((child) => buildChance(child, lookup) ?? []));
  }
  return found;
}
