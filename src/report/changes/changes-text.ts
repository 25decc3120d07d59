import type { Changes } from '../../weigh/changes/index.js';
import type { Emphasis } from '../comparison-text.js';
import { moneyText } from '../numbers.js';
import { plain } from '../plain.js';
import { layOut, wrap, type Row } from '../table.js';
import { hoursMove, move, nameOf } from './change-words.js';
import { movedOptions, rowsOf, signedText, type ChangeRow } from './rows.js';
import { beyondSentence, isNothing, NOTHING_CHANGED, pickSentence, readySentence, warnings } from './whole-words.js';

const WIDTH = 96;
/** What the words of a change leave for each column of figures, and have at least themselves. */
const FIGURES = 13;
const LEAST_WORDS = 44;

/** What changed as text for people: the changes, what follows, the options old and new, the choice and the days. */
export function changesText(changes: Changes, emphasis: Emphasis = (text) => text): string {
  const strong = (text: string) => emphasis(text, 'strong');
  const sentences = (list: readonly string[]) => list.filter((one) => one !== '').flatMap((one) => wrap(plain(one), WIDTH));
  const title = changes.after.title ?? changes.before.title;
  const sections: string[][] = [
    [...(title === undefined ? [] : [strong(plain(title))]), plain(`${changes.before.name} → ${changes.after.name}`)],
    sentences(warnings(changes)),
    isNothing(changes) ? [NOTHING_CHANGED] : [],
    effectTable(changes, emphasis),
    ...(isNothing(changes) ? [] : optionTables(changes)),
    isNothing(changes) ? [] : sentences([pickSentence(changes), readySentence(changes), beyondSentence(changes)]),
  ];
  return `${sections.filter((lines) => lines.length > 0).map((lines) => lines.join('\n')).join('\n\n')}\n`;
}

function effectTable(changes: Changes, emphasis: Emphasis): string[] {
  const { changes: own, follows, beside } = rowsOf(changes);
  if (own.length + follows.length === 0) return [];
  const columns = changes.comparable ? movedOptions(changes) : [];
  const [head, ...lines] = layOut([
    { cells: [changes.money.currency.code, ...columns.map((i) => plain(nameOf(i, changes)))] },
    ...own.flatMap((row) => rowLines(row, columns, changes)),
    ...titled('What follows', follows.flatMap((row) => rowLines(row, columns, changes))),
    ...titled('Beside the total: what comes back, worth given up', beside.flatMap((row) => rowLines(row, columns, changes))),
  ]);
  return [head ?? '', ...lines].map((line, i) => (i === 0 ? emphasis(line, 'quiet') : line));
}

function titled(title: string, rows: readonly Row[]): Row[] {
  return rows.length === 0 ? [] : [{ cells: [title] }, ...rows];
}

function rowLines({ words, note, amounts }: ChangeRow, columns: readonly number[], changes: Changes): Row[] {
  const width = Math.max(LEAST_WORDS, WIDTH - FIGURES * columns.length) - 4;
  const [first = '', ...rest] = wrap(plain(words), width);
  const below = [...rest, ...(note === '' ? [] : wrap(plain(`(${note})`), width))];
  return [
    { cells: [`  ${first}`, ...columns.map((i) => signedText(amounts[i] as (typeof amounts)[number], changes))] },
    ...below.map((line): Row => ({ cells: [`    ${line}`] })),
  ];
}

/** Each option, old and new: its total, its hours and the day; and its cost in all where that moved otherwise. */
function optionTables(changes: Changes): string[][] {
  const { options, money, comparable } = changes;
  const dated = options.some(({ before, after }) => (before ?? after)?.ready !== undefined);
  const amounts = (key: 'total' | 'inAll', { before, after }: Changes['options'][number]) => [
    before === undefined ? 'new' : moneyText(before[key], money),
    after === undefined ? 'gone' : moneyText(after[key], money),
    before === undefined || after === undefined || !comparable ? '' : signedText(after[key].minus(before[key]), changes),
  ];
  const totals = layOut([
    { cells: ['', 'Total before', 'after', '', 'Hours', dated ? 'Ready' : 'Days'] },
    ...options.map((pair, i): Row => ({
      cells: [
        plain(nameOf(i, changes)), ...amounts('total', pair), hoursMove(pair.before?.hours, pair.after?.hours),
        dated ? move(pair.before?.ready, pair.after?.ready) : move(pair.before?.days.toFixed(), pair.after?.days.toFixed()),
      ],
    })),
  ]);
  if (rowsOf(changes).beside.length === 0) return [totals];
  return [totals, layOut([{ cells: ['', 'In all before', 'after', ''] }, ...options.map((pair, i): Row => ({ cells: [plain(nameOf(i, changes)), ...amounts('inAll', pair)] }))])];
}
