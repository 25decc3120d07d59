/** Writes records as the text of an estimate file, so that a test can leave something out and have the rest read again. */
import { KINDS, type Value } from './kinds.js';
import type { Json, Written } from './reader.js';

/** Texts that stand in quotes; other words never do. */
const QUOTED = ['address', 'phone', 'engine', 'from', 'by', 'version', 'seenBy', 'fluid', 'noise', 'pictures', 'leavesOut'];

export function printed(records: readonly Json[]): string {
  return records.flatMap((record) => linesOf(record, '')).map((line) => `${line}\n`).join('');
}

function linesOf(record: Json, indent: string): string[] {
  const kind = KINDS[record.kind];
  if (kind === undefined) throw new Error(`no kind ${record.kind}`);
  const { slots, below } = kind;
  // `by` of a tax is a word, of an authorisation a text.
  const says = (key: string, value: unknown, how: Value) => valueText(value, how, QUOTED.includes(key) && !(record.kind === 'tax' && key === 'by'));
  const head = [record.kind, ...(record.name === undefined ? [] : [record.name]), ...(record.title === undefined ? [] : [quoted(record.title)])];
  const bare = [slots.counted, ...Object.values(slots.figures)].flatMap((key) => (key === undefined || record[key] === undefined ? [] : [`${says(key, record[key], 'amount')}${key === slots.counted ? ' at' : ''}`]));
  // What is counted stands on the line that counts it.
  const onHead = slots.counted !== undefined && record[slots.counted] !== undefined ? ['cost'] : [];
  const facts = Object.entries(slots.led).flatMap(([lead, { key, value }]) => (record[key] === undefined ? [] : [{ key, text: `${lead} ${says(key, record[key], value)}` }]));
  const words = slots.words.flatMap(({ key }) => (record[key] === undefined ? [] : [valueText(record[key], Array.isArray(record[key]) ? 'list' : 'text', false)]));
  return [
    `${indent}${[...head, ...bare, ...facts.filter(({ key }) => onHead.includes(key)).map(({ text }) => text), ...words].join(' ')}`,
    ...facts.filter(({ key }) => !onHead.includes(key)).map(({ text }) => `${indent}  ${text}`),
    ...below.flatMap((word) => ((record[word] ?? []) as Json[]).filter((child) => typeof child === 'object').flatMap((child) => linesOf(child, `${indent}  `))),
  ];
}

function valueText(value: unknown, how: Value, isText: boolean): string {
  if (how === 'amount') return amountText(value as Written);
  if (how === 'amounts') return (value as Written[]).map(amountText).join(', ');
  if (how === 'readings') {
    const { values, unit } = value as { readonly values: readonly string[]; readonly unit: string };
    return `${values.join(' ')} ${unit}`;
  }
  return (Array.isArray(value) ? (value as string[]) : [value as string]).map((one) => (isText ? quoted(one) : one)).join(', ');
}

function amountText({ low, likely, high, unit }: Written): string {
  // With three decimals money could be thousands, and is refused: a fourth says that it isn't.
  const plain = (digits: string) => digits.replace(/^\d{1,3}\.\d{3}$/, '$&0');
  const points = low === high ? plain(likely) : [low, likely, high].map(plain).join(' / ');
  return unit === undefined ? points : unit === '%' ? `${points}%` : `${points} ${unit}`;
}

function quoted(text: string): string {
  return `"${text.replace(/["\\]/g, (one) => `\\${one}`)}"`;
}
