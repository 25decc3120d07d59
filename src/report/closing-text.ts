import { percentOver, type ClosedLine, type ClosedPart, type Closing, type Comparison, type Figure, type Money } from '../weigh/index.js';
import type { Decimal } from '../vocabulary/index.js';
import { billedBeside } from './authorised-words.js';
import type { Emphasis } from './comparison-text.js';
import { hoursText, moneyText } from './numbers.js';
import { plain } from './plain.js';
import { layOut, shortened, wrap, type Row } from './table.js';

const WIDTH = 96;

/** What a job that is over really took, for people: a few sentences, then line by line beside the estimate. */
export function closingText(closing: Closing, { estimate, money }: Comparison, emphasis: Emphasis = (text) => text): string {
  const heads = [estimate.header?.title, estimate.vehicle?.title].flatMap((title) => (title === undefined ? [] : [plain(title)]));
  const tables = [
    rowsOf('Hours', closing.hours, hoursText),
    rowsOf(`Paid by the shop${money.currency.code === '' ? '' : `, ${money.currency.code}`}`, closing.paid, (value) => moneyText(value, money)),
    rowsOf('Core money back', closing.cores, (value) => moneyText(value, money)),
    alone([[closing.days, (value) => value.toFixed()], ...[closing.billed, ...(closing.authorised === undefined ? [] : [closing.authorised.line])].map((one) => [one, (value: Decimal) => moneyText(value, money)] as const)]),
  ].filter((rows) => rows.length > 0);
  const lines = layOut(tables.flatMap((rows, i): Row[] => (i === 0 ? rows : ['gap', ...rows])));
  const titles = new Set(tables.flatMap(([first]) => (first === undefined || typeof first === 'string' ? [] : [first.cells[0]])));
  const sections: string[][] = [
    heads.map((head, i) => (i === 0 ? emphasis(head, 'strong') : head)),
    closingSentences(closing, money).flatMap((sentence) => wrap(plain(sentence), WIDTH)),
    lines.map((line) => (titles.has(line.split(/ {2,}/)[0]) ? emphasis(line, 'strong') : line)),
  ];
  return `${sections.filter((section) => section.length > 0).map((section) => section.join('\n')).join('\n\n')}\n`;
}

/** The closing in sentences: what was done, how far hours, money and days were off, and what nobody wrote down. */
export function closingSentences({ closed, weighed, hours, paid, cores, days, billed, authorised, authorisedElse, otherWays }: Closing, money: Money): string[] {
  const amount = (value: Decimal) => moneyText(value, money);
  const open = [...hours.lines, ...paid.lines, ...cores.lines].filter((one) => one.planned && one.actual === undefined).length;
  return [
    `${weighed.option.title}: ${closed.on === undefined ? 'closed' : `closed on ${closed.on}`}${dayWords(days)}.`,
    offWords('Clocked on its lines', hours, (value) => `${hoursText(value)} h`, 'beside them'),
    offWords('Paid where it knows the cost', paid, amount, 'elsewhere'),
    offWords('Core money back', cores, amount, 'beside that'),
    billed.actual === undefined ? '' : `Billed: ${amount(billed.actual.likely)}${moreWords(billed, amount, 'than the estimate comes to')}.`,
    authorised === undefined ? '' : billedBeside(authorised.standing, money),
    authorisedElse === undefined ? '' : `“${authorisedElse.title}” is what was authorised last, not what was done.`,
    otherWays.taken.length === 0 ? '' : `${otherWays.taken.map(({ title }) => title).join(' and ')}: clocked, though the estimate plans ${otherWays.left.length === 0 ? 'without it' : `with ${otherWays.left.map(({ title }) => title).join(' and ')}`}.`,
    open === 0 ? '' : `${open === 1 ? 'One line was' : `${open} lines were`} not recorded; nothing is said of ${open === 1 ? 'it' : 'them'}, and sums compare only what was.`,
    weighed.complete ? '' : 'A line of the estimate could not be read or priced, so what was estimated may be too low.',
  ].filter((sentence) => sentence !== '');
}

function dayWords({ estimated, actual }: ClosedLine): string {
  if (actual === undefined) return '';
  const days = (value: Decimal) => `${value.toFixed()} working ${value.eq(1) ? 'day' : 'days'}`;
  const planned = estimated === undefined ? '' : estimated.likely.eq(actual.likely) ? ', as planned' : `; ${estimated.likely.toFixed()} ${estimated.likely.eq(1) ? 'was' : 'were'} planned`;
  return ` after ${days(actual.likely)}${planned}`;
}

function offWords(what: string, { estimated, actual, over, beyond, lines }: ClosedPart, text: Text, elsewhere: string): string {
  if (!lines.some((one) => one.over !== undefined)) return '';
  return `${what}: ${text(actual.likely)}${moreWords({ estimated, over }, text, 'than estimated')}${beyond.from.length === 0 ? '' : `; ${elsewhere} ${text(beyond.likely)}`}.`;
}

function moreWords({ estimated, over }: Pick<ClosedLine, 'estimated' | 'over'>, text: Text, than: string): string {
  if (over === undefined) return '';
  if (over.likely.isZero()) return ', as estimated';
  const percent = percentOver({ estimated, over });
  return `, ${text(over.likely.abs())}${percent === undefined ? '' : ` (${percent.abs().toFixed(1)} %)`} ${over.likely.isNegative() ? 'less' : 'more'} ${than}`;
}

type Text = (value: Decimal) => string;

function rowsOf(title: string, part: ClosedPart, text: Text): Row[] {
  if (part.lines.length === 0) return [];
  const lines = part.lines.map((one): Row => ({ cells: [`  ${plain(shortened(one.title))}${wayWords(one)}`, ...cellsOf(one, text)] }));
  const { estimated, actual, over, beyond, open } = part;
  const rest: Row[] = [
    ...(beyond.from.length === 0 ? [] : [{ cells: ['  Without an estimate', '', text(beyond.likely)] }]),
    ...(open.from.length === 0 ? [] : [{ cells: ['  Not recorded', text(open.likely)] }]),
  ];
  const all: Row[] = rest.length === 0 ? [] : [...rest, { cells: ['  In all', text(estimated.likely.plus(open.likely)), text(actual.likely.plus(beyond.likely))] }];
  const compared = part.lines.some((one) => one.over !== undefined) ? [{ cells: [rest.length === 0 ? '  In all' : '  Estimated and recorded', ...cellsOf({ estimated, actual, over, planned: true }, text)] }] : [];
  return [{ cells: [title, 'estimated', 'really', 'more', ''] }, ...lines, 'rule', ...compared, ...all];
}

function wayWords({ with: ways }: ClosedLine): string {
  return ways.length === 0 ? '' : `, with ${ways.join(' and ')}`;
}

function cellsOf(one: Pick<ClosedLine, 'estimated' | 'actual' | 'over' | 'planned'>, text: Text): string[] {
  const percent = percentOver(one);
  return [
    one.estimated === undefined ? (one.planned ? 'cost not written' : 'not in it') : text(one.estimated.likely),
    one.actual === undefined ? 'not recorded' : text(one.actual.likely),
    one.over === undefined ? '' : signed(one.over, text),
    percent === undefined ? '' : `${signOf(percent)}${percent.abs().toFixed(1)} %`,
  ];
}

function signed({ likely }: Figure, text: Text): string {
  return `${signOf(likely)}${text(likely.abs())}`;
}

function signOf(value: Decimal): string {
  return value.isZero() ? '' : value.isNegative() ? '−' : '+';
}

function alone(lines: readonly (readonly [ClosedLine, Text])[]): Row[] {
  const known = lines.filter(([one]) => one.actual !== undefined || one.estimated !== undefined);
  return known.map(([one, text]) => ({ cells: [one.title, ...cellsOf(one, text)] }));
}
