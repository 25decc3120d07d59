import type { Emphasis } from './comparison-text.js';
import type { ListRow } from './list-row.js';
import { LIST_STATES, type ListReport } from './list-schema.js';
import type { Waits } from './list-waits.js';
import { moneyText } from './numbers.js';
import { plain } from './plain.js';
import { RULED_OUT } from './ruled-out.js';
import { layOut, type Row } from './table.js';

/** A row and the file that it tells of. */
export interface Listed {
  readonly file: string;
  readonly row: ListRow;
}

/** A file that could not be read, and why in a sentence. */
export interface Unread {
  readonly file: string;
  readonly why: string;
}

/** By state, and in a state the oldest first. */
export function inOrder(listed: readonly Listed[]): Listed[] {
  const order = ({ row }: Listed) => LIST_STATES.indexOf(row.state.state);
  return [...listed].sort((a, b) => order(a) - order(b) || (b.row.age ?? -1) - (a.row.age ?? -1) || (a.file < b.file ? -1 : 1));
}

/** What each state is called. */
export const stateTitles: Readonly<Record<ListRow['state']['state'], string>> = {
  draft: 'Draft', quoted: 'Quoted', authorised: 'Authorised', 'in-work': 'In work', closed: 'Closed', expired: 'Expired',
};

/** The list for people: a heading for each state, below it a line for each estimate. */
export function listText(listed: readonly Listed[], unread: readonly Unread[], emphasis: Emphasis = (text) => text): string {
  const several = new Set(listed.map(({ row }) => row.money.currency.code)).size > 1;
  const groups = LIST_STATES.map((state) => ({ state, own: inOrder(listed).filter(({ row }) => row.state.state === state) })).filter(({ own }) => own.length > 0);
  const rows = groups.flatMap(({ state, own }, i): Row[] => [...(i === 0 ? [] : ['gap' as const]), { cells: [stateTitles[state]] }, ...own.map((one) => ({ cells: cellsOf(one, several) }))]);
  const heads = new Set<string>(Object.values(stateTitles));
  const lines = layOut(rows, LEFT).map((line) => (heads.has(line) ? emphasis(line, 'strong') : line));
  const missing = unread.map(({ file, why }) => plain(why.includes(file) ? why : `${file}: ${why}`));
  return [
    ...(lines.length === 0 ? ['No estimates.'] : lines),
    ...(missing.length === 0 ? [] : ['', emphasis('Not read', 'strong'), ...missing]),
    ...(lines.length === 0 ? [] : ['', `${listed.length === 1 ? 'One estimate' : `${listed.length} estimates`}: ${groups.map(({ state, own }) => `${own.length} ${stateTitles[state].toLowerCase()}`).join(', ')}`]),
  ].join('\n') + '\n';
}

/** File, option and what is waited for are words; amount and age are figures. */
const LEFT = [0, 1, 4];

function cellsOf({ file, row: { pick, money, age, waits, whole } }: Listed, several: boolean): string[] {
  const code = several && money.currency.code !== '' ? ` ${money.currency.code}` : '';
  return [
    `  ${plain(file)}`,
    pick === undefined ? '' : `${plain(pick.name)}${asideOf(pick)}`,
    pick === undefined ? '' : `${moneyText(pick.amount, money)}${code}`,
    age === undefined ? '' : `${age} d`,
    [...(waits === undefined ? [] : [waitsText(waits, (amount) => moneyText(amount, money))]), ...(whole ? [] : ['has lines that can’t be read'])].join('; '),
  ];
}

/** How the pick came about, or what is to be known of it. */
function asideOf({ by, of, ruledOut }: NonNullable<ListRow['pick']>): string {
  if (by === 'cheapest') return ' (cheapest)';
  return of === 'stage' ? ' (stage)' : ruledOut.length > 0 ? ` (${RULED_OUT})` : '';
}

/** What is waited for, in words: `the customer’s answer, until 2026-12-08`. */
export function waitsText(waits: Waits, money: (amount: Extract<Waits, { readonly for: 'authorisation' }>['over']) => string): string {
  switch (waits.for) {
    case 'quote': return 'a quote';
    case 'answer': return `the customer’s answer${waits.until === undefined ? '' : `, until ${waits.until}`}`;
    case 'new-quote': return 'a new quote';
    case 'authorisation': return `authorisation for ${money(waits.over)} more`;
    case 'parts': return `parts, due ${waits.until}`;
    case 'start': return 'work to begin';
    case 'work': return `the work${waits.until === undefined ? '' : `, planned to ${waits.until}`}`;
    case 'closing': return `closing, planned for ${waits.planned}`;
  }
}

/** As plain data, in the form that `listReport` describes. */
export function listJson(listed: readonly Listed[], unread: readonly Unread[], today: string): ListReport {
  return { steelyard: 1, report: 'list', asOf: today, estimates: inOrder(listed).map(estimateJson), unread: [...unread] };
}

function estimateJson({ file, row: { title, vehicle, state, written, age, pick, money, waits, whole } }: Listed): ListReport['estimates'][number] {
  const amount = (value: NonNullable<typeof pick>['amount']) => value.toFixed(Math.max(money.currency.digits, value.decimalPlaces()));
  return {
    file,
    title: title ?? null,
    vehicle: vehicle ?? null,
    state: state.state,
    since: state.since ?? null,
    written: written ?? null,
    age: age ?? null,
    pick: pick === undefined ? null : { ...pick, ruledOut: [...pick.ruledOut], amount: amount(pick.amount) },
    currency: money.currency.code,
    waitsFor: waits === undefined ? null : waitsJson(waits, amount),
    whole,
  };
}

function waitsJson(waits: Waits, amount: (value: NonNullable<ListRow['pick']>['amount']) => string): ListReport['estimates'][number]['waitsFor'] {
  const until = waits.for === 'closing' ? waits.planned : 'until' in waits ? waits.until : undefined;
  return { what: waits.for, ...(until === undefined ? {} : { until }), ...(waits.for === 'authorisation' ? { over: amount(waits.over) } : {}) };
}
