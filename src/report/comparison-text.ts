import { stateOf } from '../estimate/index.js';
import { zero } from '../vocabulary/index.js';
import { authorisedIn, type Comparison, type Decided, type Decision, type Figure, type Plan, type Weighed } from '../weigh/index.js';
import { authorisedSentence, stateText } from './authorised-words.js';
import { cautionLines, estimateNotice } from './cautions.js';
import { aboutText, beyondSentence, coveredSentence, criticalWords, flipSentence, inspectionSentence, shareText, unreadSentence } from './decision-words.js';
import { decisionVerdict, NEAR } from './decision-verdict.js';
import { figureNames, figureOf, type FigureName } from './figures.js';
import { marginRows } from './margin-text.js';
import { listWithin, optionsWithin } from './narrow-table.js';
import { hoursText, moneyText, valueText } from './numbers.js';
import { plain } from './plain.js';
import { afterStagesRows, stageRows, stageSentences } from './stage-text.js';
import { RULED_OUT } from './ruled-out.js';
import { wrap, type Row } from './table.js';
import { warrantyText } from './warranty.js';

/** How prominent a piece of text is; a terminal may show it, a file ignores it. */
export type Emphasis = (text: string, how: 'strong' | 'quiet') => string;

const WIDTH = 96;
/** In a place narrower than this, lines are broken by whoever shows them. */
const LEAST_WIDTH = 40;

/**
 * The decision as text for people: verdict, table, ways in, calendar, what would turn the choice, cautions; its state as
 * of a day (YYYY-MM-DD). Tables stand as wide as they are, or within the columns that the place for it has.
 */
export function comparisonText(decision: Decision, emphasis: Emphasis = (text) => text, today?: string, columns = Infinity): string {
  const width = Math.max(LEAST_WIDTH, columns);
  const { comparison } = decision;
  const { estimate, options, money } = comparison;
  const strong = (text: string) => emphasis(text, 'strong');
  // Below a title everything is set in.
  const inner = width - 2;
  const wrapped = (sentences: readonly string[]) => sentences.flatMap((sentence) => hanging(plain(sentence), inner));
  const heads = [estimate.header?.title, estimate.vehicle?.title].flatMap((title) => (title === undefined ? [] : [plain(title)]));
  const near = decision.flips.filter(({ share = Infinity }) => share <= NEAR).slice(0, MOST_FLIPS);
  const sections: string[][] = [
    [...heads.map((head, i) => (i === 0 ? strong(head) : head)), ...stateLine(estimate, today)],
    wrap(plain(decisionVerdict(decision)), Math.min(WIDTH, width)),
    options.length === 0 ? [] : optionsWithin(width, tableRows(decision)),
    titled(strong('Authorised'), wrapped(authorisedIn(comparison).map((one) => authorisedSentence(one, money)))),
    titled(strong('Before the decision'), [...optionsWithin(inner, stageRows(comparison)), ...wrapped(stageSentences(comparison))]),
    titled(strong('Ways in'), waysIn(comparison, inner)),
    titled(strong('What decides the day'), wrapped(calendar(decision))),
    titled(strong('What would turn the choice, nearest first'), wrapped([...near.map((flip) => flipSentence(flip, money)), ...decision.beyond.map(beyondSentence)])),
    titled(strong('Inspect first?'), wrapped([...decision.inspections.map((one) => inspectionSentence(one, comparison)), ...decision.unread.map(unreadSentence)])),
    titled(strong('Coverage'), wrapped(decision.coverages.map(coveredSentence))),
    titled(strong('What moves the cost most'), wrapped(spread(decision))),
    titled(strong('Cheap while it is open'), whileOpen(comparison, inner)),
    titled(strong('For the shop’s eyes only: margin'), optionsWithin(inner, marginRows(decision))),
    options.length === 0 ? [] : titled(strong('Cautions'), [...estimateNotice, ...cautionLines(options.flatMap((option) => option.cautions))].flatMap((line) => wrap(line, Math.min(WIDTH, inner)))),
  ];
  return `${sections.filter((lines) => lines.length > 0).map((lines) => lines.join('\n')).join('\n\n')}\n`;
}

/** Told where the estimate has a record of the job: without one it is a draft, as every estimate is at first. */
function stateLine(estimate: Comparison['estimate'], today: string | undefined): string[] {
  const { quoted, authorised, started, closed } = estimate;
  const has = quoted.length > 0 || authorised.length > 0 || started !== undefined || closed !== undefined;
  return has && today !== undefined ? [plain(stateText(stateOf(estimate, today)))] : [];
}

/** More flip points than this nobody checks. */
const MOST_FLIPS = 6;

/** A sentence on lines of its own, those after the first set in. */
function hanging(sentence: string, width: number): string[] {
  return wrap(sentence, Math.min(WIDTH, width) - 2).map((line, i) => (i === 0 ? line : `  ${line}`));
}

function titled(title: string, lines: readonly string[]): string[] {
  return lines.length === 0 ? [] : [title, ...lines.map((line) => (line === '' ? '' : `  ${line}`))];
}

const UP_TO_TOTAL: readonly FigureName[] = ['access', 'labour', 'parts', 'outside', 'fees', 'cores', 'tax'];

function tableRows(decision: Decision): Row[] {
  const { comparison, options: decided } = decision;
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
  const dated = options.some((option) => option.ready.date !== undefined);
  const by = (label: string, cell: (one: Decided) => string | undefined): Row[] => {
    const cells = decided.map((one) => cell(one) ?? '');
    return cells.every((one) => one === '') ? [] : [{ cells: [label, ...cells] }];
  };
  const about = (value: number | undefined) => (value === undefined ? undefined : aboutText(value, money));
  const amount = (figure: Figure | undefined) => (figure === undefined ? undefined : moneyText(figure.likely, money));
  return [
    row(money.currency.code === '' ? '' : money.currency.code, (option) => option.option.name),
    row('', (option) => place(option, comparison)),
    'gap',
    ...figures(UP_TO_TOTAL),
    'rule',
    row('Total', likely('total')),
    ...afterStagesRows(comparison),
    ...(ranged ? [row('  if everything comes in low', range('low')), row('  if everything comes in high', range('high'))] : []),
    ...(used('comes-back') || used('given-up') ? ['gap' as const, ...figures(['cores-back']), ...(used('tax-kept') ? [row('  tax on cores that does not come back', likely('tax-kept'))] : []), ...figures(['pieces', 'net', 'given-up']), 'rule' as const, row(figureNames['in-all'], likely('in-all'))] : []),
    ...section(decision.cases === undefined ? [] : [
      ...by(decision.options.some(({ risk }) => (risk?.trouble ?? 0) > 0) ? 'On average, with what may turn up' : 'On average', ({ average }) => about(average)),
      ...by(`  of ${decision.cases} cases 1 in 10 is below`, ({ risk }) => about(risk?.inAll.p10)),
      ...by('  and 1 in 10 above', ({ risk }) => about(risk?.inAll.p90)),
      ...by('  it is the cheapest in', ({ risk }) => (risk?.cheapest === undefined ? undefined : shareText(risk.cheapest))),
    ]),
    'gap',
    ...figures(['penalty', 'penalty-hours', 'hours']),
    row('Working days', likely('days')),
    row('Working days in the bay', (option) => valueText(option.ready.bay.likely, 'days', money)),
    ...(options.some(({ ready }) => !ready.waiting.likely.isZero()) ? [row('  of that, waiting', (option) => valueText(option.ready.waiting.likely, 'days', money))] : []),
    ...(dated ? [row('Ready', (option) => option.ready.date ?? '')] : []),
    ...by('  9 in 10 cases by', ({ risk }) => risk?.ready?.p90),
    ...by('Warranty', ({ weighed }) => warrantyText(weighed.option)),
    ...section([
      ...by('Cost in each month of service', ({ monthly }) => amount(monthly?.perMonth)),
      ...by('Days without the vehicle, apart', ({ downtime }) => amount(downtime)),
    ]),
  ];
}

function section(rows: readonly Row[]): Row[] {
  return rows.length === 0 ? [] : ['gap', ...rows];
}

/** For each option that takes more than a day what its ready date hangs on. */
function calendar({ options }: Decision): string[] {
  return options.flatMap(({ weighed: { option, ready } }) => {
    const critical = criticalWords(ready);
    if (critical === '' || ready.days.likely.lte(1)) return [];
    const gap = ready.proven ? '' : ` A better plan could be ready up to ${ready.gap.toFixed(1)} h sooner.`;
    return [`${option.name}: ${critical}.${gap}`];
  });
}

/** The lines that go with most of the spread of each option. */
function spread({ options }: Decision): string[] {
  return options.flatMap(({ weighed: { option }, risk }) => {
    if (risk === undefined || risk.contributions.length === 0) return [];
    return [`${option.name}: ${risk.contributions.map(({ title, share }) => `${title} (${shareText(share)})`).join(', ')}.`];
  });
}

/** What stands under an option's name: its place in the ranking, or that it isn't whole or no choice. */
export function place(option: Weighed, { ranking }: Comparison): string {
  if (!option.complete) return 'incomplete';
  if (option.option.ruledOutBy.length > 0) return RULED_OUT;
  const at = ranking.indexOf(option);
  return at === 0 ? (ranking.length > 1 ? 'cheapest' : '') : `+${at + 1}`.replace(/^\+(\d+)$/, 'no. $1');
}

function waysIn(comparison: Comparison, width: number): string[] {
  const rows: Row[] = comparison.options.flatMap((option) => {
    const { chosen, others } = option.planned;
    if (chosen.jobs.length === 0 || (chosen.paid.length === 0 && others.length === 0)) return [];
    const line = (plan: Plan, says: string): Row => ({ cells: [`${plan === chosen ? option.option.name : ''}`, says, moneyText(plan.money, comparison.money), `${hoursText(plan.hours)} h`] });
    return [line(chosen, `${wayWords(chosen)}${chosenWords(option, comparison)}`), ...others.map((plan) => line(plan, wayWords(plan)))];
  });
  return listWithin(width, rows, 1, [0, 1]);
}

/** How the plan stands that an option uses. One that leaves work out is cheap for that, so it is held against none. */
function chosenWords({ option, planned: { chosen, unpinned, unreachable }, complete }: Weighed, { money }: Comparison): string {
  if (option.way === undefined) return ' (chosen)';
  if (!complete) return unreachable.length === 0 ? ', pinned' : ', pinned: leaves work out';
  const extra = unpinned === undefined ? zero : chosen.money.minus(unpinned.money);
  return extra.gt(0) ? `, pinned: ${moneyText(extra, money)} dearer than the best` : ', pinned, and the cheapest';
}

export function wayWords(plan: Plan): string {
  return plan.paid.length === 0 ? 'in the car' : plan.paid.map((way) => way.name).join(' + ');
}

function whileOpen(comparison: Comparison, width: number): string[] {
  const rows = comparison.options.flatMap((option): Row[] => option.open.map((one) => ({
    cells: [`${option.option.name}: ${plain(one.job.title)}`, `now ${money(one.now)}`, `alone later ${money(one.alone)}`, `saves ${money(one.saved)}`],
  })));
  return listWithin(width, rows, 0, [0]);

  function money(figure: Figure): string {
    return moneyText(figure.likely, comparison.money);
  }
}
