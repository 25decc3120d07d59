import { Decimal, zero } from '../../vocabulary/index.js';
import type { Figures } from './figures-said.js';
import { joined, say, type BillGroup, type BillLine, type Block, type Said } from './sheet.js';
import type { Quote, QuoteGroup, QuoteLine, QuoteTax } from './types.js';
import { conditionWords, groupTitles, groupWords, NO_CONDITION, taxedWords } from './words.js';

/** The proposed work with its amounts: groups, taxes, total. Every line of the option is in it, once. */
export function billOf({ groups, taxes, total, rates }: Pick<Quote, 'groups' | 'taxes' | 'total' | 'rates'>, figures: Figures, access = GOING_IN_AND_BACK): Block {
  const ratesSaid = rates.map(({ title, price }) => say`${figures.money(price)} (${title})`);
  return {
    kind: 'bill',
    groups: [
      ...groups.map((group) => groupSaid(group, group.kind === 'access' ? access : { title: groupTitles[group.kind], says: groupWords[group.kind] }, rates.length === 0 ? [] : [' An hour costs ', ...joined(ratesSaid, ' or '), '.'], figures)),
      ...(taxes.length === 0 ? [] : [taxGroup(taxes, figures)]),
    ],
    total: { label: 'Total', amount: figures.money(total) },
  };
}

/** What getting in is called, where all of it goes back afterwards. */
const GOING_IN_AND_BACK = { title: groupTitles.access, says: groupWords.access };

function groupSaid({ kind, lines, hours, amount }: QuoteGroup, { title, says }: typeof GOING_IN_AND_BACK, rates: Said, figures: Figures): BillGroup {
  return {
    key: kind,
    title,
    says: [says, ...(kind === 'labour' ? rates : [])],
    lines: lines.map((line) => lineSaid(line, kind === 'access' ? 'mixed' : 'alike', figures)),
    hours: hours === undefined ? undefined : figures.hours(hours),
    amount: figures.money(amount),
  };
}

function lineSaid(line: QuoteLine, group: 'mixed' | 'alike', figures: Figures): BillLine {
  return {
    title: line.title,
    detail: detailOf(line, group, figures),
    hours: line.hours === undefined ? undefined : figures.hours(line.hours),
    amount: figures.money(line.amount),
  };
}

/** What a line is, beyond its title; in a group of several kinds also that it is outside work. */
export function detailOf(line: QuoteLine, group: 'mixed' | 'alike', figures: Figures): Said {
  const { kind, stretch, quantity, condition, warranty, because } = line;
  const parts: Said[] = [
    ...(stretch === undefined ? [] : [[STRETCHES[stretch]]]),
    ...(quantity === undefined ? [] : [say`${figures.quantity(quantity)}`]),
    ...(kind === 'part' ? [[condition === undefined ? NO_CONDITION : conditionWords[condition]]] : []),
    ...(kind === 'sublet' && group === 'mixed' ? [['outside work']] : []),
    ...(warranty === undefined ? [] : [say`${figures.wait(warranty)} of warranty on it`]),
    ...(because.length === 0 ? [] : [[`for ${because.length === 1 ? 'finding' : 'findings'} ${because.map((at) => at + 1).join(' and ')}`]]),
  ];
  return joined(parts, ', ');
}

const STRETCHES: Readonly<Record<NonNullable<QuoteLine['stretch']>, string>> = {
  opening: 'getting in',
  closing: 'putting it all back',
  core: 'putting the old unit together so that it can go back',
};

function taxGroup(taxes: readonly QuoteTax[], figures: Figures): BillGroup {
  const [one, ...others] = taxes;
  return {
    key: 'tax',
    title: 'Tax',
    says: ['At the rates that this shop has written down.'],
    lines: taxes.map(({ title, percent, on, amount }) => ({
      title,
      detail: [...say`${figures.percent(percent)}`, ` on ${on.map((sort) => taxedWords[sort]).join(', ')}`],
      hours: undefined,
      amount: figures.money(amount),
    })),
    hours: undefined,
    amount: one !== undefined && others.length === 0 ? figures.money(one.amount) : figures.money(added(taxes.map(({ amount }) => amount))),
  };
}

/** Amounts added up, with the decimals of the finest. */
function added(amounts: readonly string[]): string {
  return amounts.reduce((sum, amount) => sum.plus(amount), zero).toFixed(Math.max(...amounts.map((one) => (one.split('.')[1] ?? '').length)));
}

/** The first less the second, with the decimals of the finer. */
export function less(amount: string, taken: string): string {
  return added([amount, new Decimal(taken).negated().toFixed((taken.split('.')[1] ?? '').length)]);
}
