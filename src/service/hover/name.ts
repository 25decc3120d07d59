import type { NamedKind } from '../../estimate/index.js';
import type { Token } from '../../language/index.js';
import { kinds, readBlock, type Record } from '../../vocabulary/index.js';
import type { Weighed } from '../../weigh/index.js';
import type { At, Mention } from '../at.js';
import type { Weighing } from '../types.js';
import { sharedBy } from './access.js';
import { chancesIn } from './chances.js';
import { restingOn } from './finding.js';
import { mentionsBelow, mentionsOf } from './mentions.js';
import type { Meaning } from './meaning.js';

/** The name under the pointer: the line that gives it, where it is used, and in which options it counts. */
export function nameAt({ block, token }: At, weighing: Weighing): Meaning | undefined {
  if (token?.kind !== 'word') return undefined;
  const mention = mentionAt(readBlock(block).records, token);
  const record = mention === undefined ? undefined : recordOf(mention, weighing);
  return record === undefined ? undefined : { from: token, to: token, paragraphs: sayName(record, mention?.gives === true, weighing) };
}

/** The line that the pointer's line is, where it has no name of its own to point at. */
export function sayRecord(record: Record, weighing: Weighing): string[] {
  return [...(record.kind.word === 'access' ? sharedBy(record, weighing) : []), ...(record.kind.word === 'finding' ? restingOn(record, weighing) : [])];
}

function mentionAt(records: readonly Record[], token: Token): Mention | undefined {
  for (const record of records) {
    const found = mentionsBelow(record).find(({ at }) => at.start === token.start);
    if (found !== undefined) return found;
  }
  return undefined;
}

function recordOf({ gives, name, kinds, record }: Mention, { resolved }: Weighing): Record | undefined {
  if (gives) return record;
  for (const kind of kinds) {
    const found = resolved.scope.find(kind as NamedKind, name);
    if (found !== undefined) return found;
  }
  return undefined;
}

function sayName(record: Record, gives: boolean, weighing: Weighing): string[] {
  const kind = record.kind.word;
  const uses = mentionsOf(record.name?.name ?? '', weighing).filter((one) => !one.gives && one.kinds.includes(kind));
  const by = new Map<string, number>();
  for (const { record: user } of uses) by.set(user.kind.word, (by.get(user.kind.word) ?? 0) + 1);
  const options = weighing.comparison.options.filter((weighed) => counts(record, weighed)).map(({ option }) => option.name);
  const where = [...by].map(([word, times]) => `${times} ${word} ${times === 1 ? 'line' : 'lines'}`).join(', ');
  return [
    ...(gives ? [] : [record.block.text.slice(record.at.start, record.at.end)]),
    ...(uses.length > 0 ? [`Used by ${where}.`] : options.length === 0 && isIdle(record) ? ['No line uses this name.'] : []),
    ...(options.length === 0 ? [] : [`Counts in ${options.join(', ')}.`]),
    ...mayCount(record, uses, weighing),
    ...sayRecord(record, weighing),
  ];
}

/** Whether a line does nothing until another names it. An option, a stage, a finding and a chance count by themselves, as does what stands below them. */
function isIdle(record: Record): boolean {
  return IDLE.has(record.kind.word) && (BELOW_SHOP.has(record.kind.word) || readBlock(record.block).records.includes(record));
}

const BELOW_SHOP: ReadonlySet<string> = new Set([kinds.rate, kinds.tool].map(({ word }) => word));
const IDLE: ReadonlySet<string> = new Set([...BELOW_SHOP, ...[kinds.labour, kinds.access, kinds.part, kinds.sublet, kinds.fee].map(({ word }) => word)]);

/** A chance may happen in some options, and what only a chance names may be needed there. */
function mayCount(record: Record, uses: readonly Mention[], { comparison }: Weighing): string[] {
  const isChance = record.kind.word === kinds.chance.word;
  const by = isChance ? [record] : uses.flatMap((one) => (one.record.kind.word === kinds.chance.word ? [one.record] : []));
  if (by.length === 0) return [];
  const options = comparison.options.filter((weighed) => (isChance || !counts(record, weighed)) && by.some((chance) => chancesIn(weighed).has(chance))).map(({ option }) => option.name);
  return options.length === 0 ? [] : [`May ${isChance ? 'happen' : 'be needed'} in ${options.join(', ')}.`];
}

/** Whether an option's figures, or its reasons, rest on a line. */
function counts(record: Record, { option, planned }: Weighed): boolean {
  const is = (one: { readonly record: Record }) => one.record === record;
  switch (record.kind.word) {
    case 'labour': return option.labour.some(is);
    case 'part': return option.parts.some(is) || planned.chosen.paid.some((way) => way.parts.some(is));
    case 'sublet': return option.sublets.some(is) || planned.chosen.paid.some((way) => way.sublets.some(is));
    case 'fee': return option.fees.some(is) || planned.chosen.totals.lines.some(is);
    case 'access': return planned.chosen.paid.some(is);
    case 'tool': return option.labour.some((job) => job.tools.some(is)) || planned.chosen.paid.some((way) => way.tools.some(is));
    case 'rate': return planned.chosen.jobs.some(({ job }) => job.rate !== undefined && is(job.rate)) || planned.chosen.paid.some((way) => way.rate !== undefined && is(way.rate));
    case 'finding': return option.labour.some((job) => job.because.some(is));
    default: return false;
  }
}
