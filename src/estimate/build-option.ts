import { childrenOf, kinds, type RecordOf } from '../vocabulary/index.js';
import { problem, type Problem } from '../language/index.js';
import { buildFee, buildLabour, buildPart, buildSublet, pick, type Lookup } from './build-work.js';
import * as moneyRules from './money-rules.js';
import { remember } from './remember.js';
import { reportRepeats, wordsIn } from './scope.js';
import { sourceOf, titleOf } from './source.js';
import type { Fee, Harvest, Labour, Option, Part, Sublet } from './types.js';

/** The word that pins the engine in its place. */
const IN_CAR = 'in-car';

/** Builds an option with all that it brings along, each thing once. */
export function buildOption(record: RecordOf<typeof kinds.option>, lookup: Lookup, feeNamed: (name: string) => Fee | undefined): Option | undefined {
  const { values, name } = record;
  const title = titleOf(record);
  if (name === undefined || title === undefined) return undefined;
  const ownLabour = childrenOf(record, kinds.labour).flatMap((child) => buildLabour(child, lookup, (names) => pick(names, lookup.labour)) ?? []);
  const labour = withNeeded([...pick(values.do, lookup.labour), ...ownLabour]);
  const ownParts = childrenOf(record, kinds.part).flatMap((child) => buildPart(child, lookup) ?? []);
  const ownSublets = childrenOf(record, kinds.sublet).flatMap((child) => buildSublet(child, lookup) ?? []);
  const ownFees = childrenOf(record, kinds.fee).flatMap((child) => buildFee(child, lookup.problems) ?? []);
  const parts = [...pick(values.fit, lookup.part), ...ownParts];
  const sublets = [...pick(values.send, lookup.sublet), ...ownSublets];
  const fees = new Set([...pick(values.charge, feeNamed), ...ownFees]);
  // Pinned to a way in that nobody knows, an option is planned freely rather than wrongly; the name has its message.
  const known = values.way?.every(({ name: one }) => one === IN_CAR || lookup.access(one) !== undefined) === true;
  const way = known ? pick(values.way, lookup.access) : undefined;
  return remember(record, [...labour, ...parts, ...sublets, ...fees, known, ...(way ?? [])], lookup.problems, (problems) => {
    for (const key of ['do', 'fit', 'send', 'charge'] as const) reportRepeats(values[key] ?? [], key, problems);
    const brought = bring(labour);
    return {
      ...sourceOf(record),
      name: name.name,
      title,
      labour,
      parts: [...new Set([...brought.parts, ...parts])],
      sublets: [...new Set([...brought.sublets, ...sublets])],
      fees: [...fees],
      harvests: childrenOf(record, kinds.harvest).flatMap((child) => buildHarvest(child, problems)),
      way,
      wayAt: way === undefined || values.way === undefined ? undefined : (values.way[0]?.at ?? record.at),
      worth: values.worth,
      warranty: values.warranty,
      cautions: wordsIn(values.caution),
    };
  });
}

/** The jobs with all that they need, each once, in the order in which they are first asked for. */
export function withNeeded(jobs: readonly Labour[]): Labour[] {
  const all = new Set<Labour>();
  const visit = (job: Labour) => {
    if (all.has(job)) return;
    all.add(job);
    job.needs.forEach(visit);
  };
  jobs.forEach(visit);
  return [...all];
}

/** The parts and outside work that jobs bring along, each once. */
export function bring(jobs: readonly Labour[]): { readonly parts: readonly Part[]; readonly sublets: readonly Sublet[] } {
  const parts = new Set<Part>();
  const sublets = new Set<Sublet>();
  for (const job of jobs) {
    for (const part of job.parts) parts.add(part);
    for (const sublet of job.sublets) sublets.add(sublet);
  }
  return { parts: [...parts], sublets: [...sublets] };
}

function buildHarvest(record: RecordOf<typeof kinds.harvest>, problems: Problem[]): Harvest[] {
  if (record.title === undefined) return [];
  if (record.values.value === undefined && !record.broken) problems.push(problem(moneyRules.amountMissing, record.at, { what: 'what the piece is worth', example: 'harvest "Alternator" 85.00' }));
  return [{ ...sourceOf(record), title: record.title.text, value: record.values.value }];
}
