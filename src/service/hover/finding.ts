import { is, kinds, type Record } from '../../vocabulary/index.js';
import type { Weighing } from '../types.js';
import { mentionsOf } from './mentions.js';

const MOST_NAMED = 8;

/** What rests on a finding, and what it speaks against. */
export function restingOn(record: Record, weighing: Weighing): string[] {
  const name = record.name?.name;
  const uses = name === undefined ? [] : mentionsOf(name, weighing).filter((one) => !one.gives && one.kinds.includes(kinds.finding.word));
  const users = [...new Set(uses.map(({ record: user }) => `${user.kind.word} ${user.name?.name ?? `“${user.title?.text ?? ''}”`}`))];
  const more = users.length > MOST_NAMED ? ` and ${users.length - MOST_NAMED} more` : '';
  const against = is(record, kinds.finding) ? (record.values.rulesOut ?? []).map((one) => one.name) : [];
  return [
    users.length === 0 ? 'Nothing rests on this finding.' : `On it rests: ${users.slice(0, MOST_NAMED).join(', ')}${more}.`,
    ...(against.length === 0 ? [] : [`It speaks against ${against.join(', ')}.`]),
  ];
}
