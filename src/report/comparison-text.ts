import type { Comparison, Figure, Plan, Weighed } from '../weigh/index.js';
import { cautionLines, estimateNotice } from './cautions.js';
import { figureNames, figureOf, type FigureName } from './figures.js';
import { hoursText, moneyText, valueText } from './numbers.js';
import { plain } from './plain.js';
import { layOut, wrap, type Row } from './table.js';
import { verdict } from './verdict.js';

/** How prominent a piece of text is; a terminal may show it, a file ignores it. */
export type Emphasis = (text: string, how: 'strong' | 'quiet') => string;

const WIDTH = 96;

/** The comparison as text for people: verdict, table, ways in, what is cheap while it is open, cautions. */
export function comparisonText(comparison: Comparison, emphasis: Emphasis = (text) => text): string {
  const { estimate, options } = comparison;
  const strong = (text: string) => emphasis(text, 'strong');
  const heads = [estimate.header?.title, estimate.vehicle?.title].flatMap((title) => (title === undefined ? [] : [plain(title)]));
  const sections: string[][] = [
    heads.map((head, i) => (i === 0 ? strong(head) : head)),
    wrap(plain(verdict(comparison)), WIDTH),
    options.length === 0 ? [] : layOut(tableRows(comparison)),
    titled(strong('Ways in'), waysIn(comparison)),
    titled(strong('Cheap while it is open'), whileOpen(comparison)),
    options.length === 0 ? [] : titled(strong('Cautions'), [...estimateNotice, ...cautionLines(options.flatMap((option) => option.cautions))].flatMap((line) => wrap(line, WIDTH))),
  ];
  return `${sections.filter((lines) => lines.length > 0).map((lines) => lines.join('\n')).join('\n\n')}\n`;
}

function titled(title: string, lines: readonly string[]): string[] {
  return lines.length === 0 ? [] : [title, ...lines.map((line) => `  ${line}`)];
}

const UP_TO_TOTAL: readonly FigureName[] = ['access', 'labour', 'parts', 'outside', 'fees', 'cores', 'tax'];

function tableRows(comparison: Comparison): Row[] {
  const { options, money } = comparison;
  const row = (label: string, cell: (option: Weighed) => string): Row => ({ cells: [label, ...options.map(cell)] });
  const likely = (name: FigureName) => (option: Weighed) => {
    const figure = figureOf(option, name);
    return figure === undefined ? '' : figure.unit === 'money' ? moneyText(figure.likely, money) : valueText(figure.likely, figure.unit, money);
  };
  const used = (name: FigureName) => options.some((option) => figureOf(option, name)?.likely.isZero() === false);
  const figures = (names: readonly FigureName[]) => names.filter(used).map((name) => row(figureNames[name], likely(name)));
  const range = (point: 'low' | 'high') => (option: Weighed) => moneyText(option.totals.total[point], money);
  const ranged = options.some(({ totals }) => !totals.total.low.eq(totals.total.high));
  return [
    row(money.currency.code === '' ? '' : money.currency.code, (option) => option.option.name),
    row('', (option) => place(option, comparison)),
    'gap',
    ...figures(UP_TO_TOTAL),
    'rule',
    row('Total', likely('total')),
    ...(ranged ? [row('  if everything comes in low', range('low')), row('  if everything comes in high', range('high'))] : []),
    ...(used('comes-back') || used('given-up') ? ['gap' as const, ...figures(['comes-back', 'net', 'given-up']), 'rule' as const, row(figureNames['in-all'], likely('in-all'))] : []),
    'gap',
    ...figures(['penalty', 'penalty-hours', 'hours']),
    row('Working days', likely('days')),
    ...(options.some((option) => option.ready.date !== undefined) ? [row('Ready', (option) => option.ready.date ?? '')] : []),
  ];
}

/** What stands under an option's name: its place in the ranking, or that it isn't whole. */
export function place(option: Weighed, { ranking }: Comparison): string {
  if (!option.complete) return 'incomplete';
  const at = ranking.indexOf(option);
  return at === 0 ? (ranking.length > 1 ? 'cheapest' : '') : `+${at + 1}`.replace(/^\+(\d+)$/, 'no. $1');
}

function waysIn(comparison: Comparison): string[] {
  const rows: Row[] = comparison.options.flatMap((option) => {
    const { chosen, others, unpinned } = option.planned;
    if (chosen.jobs.length === 0 || (chosen.paid.length === 0 && others.length === 0)) return [];
    const line = (plan: Plan, says: string): Row => ({ cells: [`${plan === chosen ? option.option.name : ''}`, says, moneyText(plan.money, comparison.money), `${hoursText(plan.hours)} h`] });
    const extra = unpinned === undefined || unpinned.ways === chosen.ways ? '' : `, pinned: ${moneyText(chosen.money.minus(unpinned.money), comparison.money)} dearer than the best`;
    return [line(chosen, `${wayWords(chosen)}${option.option.way === undefined ? ' (chosen)' : extra === '' ? ', pinned, and the cheapest' : extra}`), ...others.map((plan) => line(plan, wayWords(plan)))];
  });
  return layOut(rows.map((row) => (typeof row === 'string' ? row : { cells: leftTwo(row.cells, rows) })));
}

/** The second column is words too: it is filled up by hand, since tables align figures. */
function leftTwo(cells: readonly string[], rows: readonly Row[]): string[] {
  const width = Math.max(...rows.map((row) => (typeof row === 'string' ? 0 : (row.cells[1]?.length ?? 0))));
  return [cells[0] ?? '', (cells[1] ?? '').padEnd(width), ...cells.slice(2)];
}

export function wayWords(plan: Plan): string {
  return plan.paid.length === 0 ? 'in the car' : plan.paid.map((way) => way.name).join(' + ');
}

function whileOpen(comparison: Comparison): string[] {
  const rows = comparison.options.flatMap((option): Row[] => option.open.map((one) => ({
    cells: [`${option.option.name}: ${plain(one.job.title)}`, `now ${money(one.now)}`, `alone later ${money(one.alone)}`, `saves ${money(one.saved)}`],
  })));
  return layOut(rows);

  function money(figure: Figure): string {
    return moneyText(figure.likely, comparison.money);
  }
}
