import { childrenOf, kinds, type RecordOf } from '../vocabulary/index.js';
import { problem, type Problem } from '../language/index.js';
import type { Against } from './against.js';
import { bring, withNeeded } from './brought.js';
import { buildChance } from './build-chance.js';
import { buildFee } from './build-fee.js';
import { buildPart, buildSublet } from './build-goods.js';
import { buildLabour } from './build-labour.js';
import { stagedBy } from './build-stage.js';
import * as decisionRules from './decision-rules.js';
import { pick, type Lookup } from './lookup.js';
import * as moneyRules from './money-rules.js';
import { upToMost } from './most.js';
import type { Option, Stage } from './option-types.js';
import { remember } from './remember.js';
import { monthsIn } from './months.js';
import { IN_CAR } from './name-rules.js';
import { reportRepeats } from './repeats.js';
import * as sense from './sense-rules.js';
import { sourceOf, titleOf } from './source.js';
import { wordsIn } from './words-in.js';
import type { Harvest } from './work-types.js';

/** Builds an option with all that it brings along, each thing once; what comes before the decision is in every option. `against`: findings by what they rule out. */
export function buildOption(record: RecordOf<typeof kinds.option>, stages: readonly Stage[], against: Against, lookup: Lookup): Option | undefined {
  const { values, name } = record;
  const title = titleOf(record);
  if (name === undefined || title === undefined) return undefined;
  const ownLabour = childrenOf(record, kinds.labour).flatMap((child) => buildLabour(child, lookup, (names) => pick(names, lookup.labour)) ?? []);
  const staged = stagedBy(stages, 'closed');
  const named = [...pick(values.do, lookup.labour), ...ownLabour];
  const labour = staged === undefined && named.every(({ needs }) => needs.length === 0) ? named : withNeeded([...(staged?.labour ?? []), ...named]);
  const ownParts = childrenOf(record, kinds.part).flatMap((child) => buildPart(child, lookup) ?? []);
  const ownSublets = childrenOf(record, kinds.sublet).flatMap((child) => buildSublet(child, lookup) ?? []);
  const ownFees = childrenOf(record, kinds.fee).flatMap((child) => buildFee(child, lookup.problems) ?? []);
  const parts = [...pick(values.fit, lookup.part), ...ownParts];
  const sublets = [...pick(values.send, lookup.sublet), ...ownSublets];
  const fees = new Set([...pick(values.charge, lookup.fee), ...ownFees]);
  const findings = pick(values.because, lookup.finding);
  const chances = childrenOf(record, kinds.chance).flatMap((child) => buildChance(child, lookup) ?? []);
  // Pinned to a way in that nobody knows, an option is planned freely rather than wrongly; the name has its message.
  const known = values.way?.every(({ name: one }) => one === IN_CAR || lookup.access(one) !== undefined) === true;
  const way = known ? pick(values.way, lookup.access) : undefined;
  const ruledOutBy = against.get(name.name) ?? [];
  return remember(record, [...stages, ...labour, ...parts, ...sublets, ...fees, ...chances, ...findings, known, ruledOutBy.length, ...ruledOutBy, ...(way ?? [])], lookup.problems, (problems) => {
    for (const key of ['do', 'fit', 'send', 'charge'] as const) reportRepeats(values[key] ?? [], key, problems);
    if (values.lasts !== undefined && monthsIn({ ...values.lasts, likely: values.lasts.low }).lt(1)) problems.push(problem(decisionRules.serviceOfNothing, values.lasts.at, undefined));
    if (values.resale !== undefined && values.lasts === undefined && !record.broken) problems.push(problem(sense.resaleWithoutLasts, values.resale.at, undefined));
    const inCar = values.way?.find((one) => one.name === IN_CAR);
    if (inCar !== undefined && (way?.length ?? 0) > 0) problems.push(problem(sense.wayAndInCar, inCar.at, undefined));
    const brought = bring(labour);
    return {
      ...sourceOf(record),
      name: name.name,
      title,
      labour: upToMost(labour, 'jobs', record, problems),
      parts: upToMost([...new Set([...brought.parts, ...parts])], 'parts', record, problems),
      sublets: upToMost([...new Set([...brought.sublets, ...sublets])], 'pieces of outside work', record, problems),
      fees: upToMost([...fees], 'fees', record, problems),
      staged,
      harvests: childrenOf(record, kinds.harvest).flatMap((child) => buildHarvest(child, problems)),
      chances,
      way,
      wayAt: way === undefined || values.way === undefined ? undefined : (values.way[0]?.at ?? record.at),
      worth: values.worth,
      warranty: values.warranty,
      lasts: values.lasts,
      resale: values.resale,
      because: findings,
      ruledOutBy,
      leavesOut: (values.leavesOut ?? []).map((one) => one.text),
      notes: childrenOf(record, kinds.note).flatMap((child) => child.title?.text ?? []),
      cautions: wordsIn(values.caution),
      written: true,
    };
  });
}

function buildHarvest(record: RecordOf<typeof kinds.harvest>, problems: Problem[]): Harvest[] {
  if (record.title === undefined) return [];
  if (record.values.value === undefined && !record.broken) problems.push(problem(moneyRules.amountMissing, record.at, { what: 'what the piece is worth', example: 'harvest "Alternator" 85.00' }));
  return [{ ...sourceOf(record), title: record.title.text, value: record.values.value }];
}
