import type { Range, Statement, Tree } from '../../language/index.js';
import type { Access } from '../../estimate/index.js';
import { authorisedIn, type Comparison, type StageWeighed, type Weighed } from '../../weigh/index.js';
import { authorisedShort, moneyText, RULED_OUT } from '../../report/index.js';
import type { Lens } from '../feature-types.js';
import { statementOf } from '../at.js';
import type { Weighing } from '../types.js';

const MINUS = '\u2212';

/** Above each option what it comes to and where it stands, above each stage its price and that of putting back; above each way in that is paid for, who shares it. */
export function lensesIn(tree: Tree, { comparison }: Weighing): readonly Lens[] {
  const starts = new Map(tree.blocks.map((block, i) => [block, tree.starts[i] as number]));
  const above = (statement: Statement): Range | undefined => {
    const start = starts.get(statement.block);
    const first = statement.tokens[0];
    const last = statement.tokens[statement.tokens.length - 1];
    return start === undefined || first === undefined || last === undefined ? undefined : { start: start + first.start, end: start + last.end };
  };
  const lenses: Lens[] = [];
  for (const weighed of comparison.options) {
    const range = above(statementOf(weighed.option));
    if (range !== undefined) lenses.push({ range, label: standing(weighed, comparison), figure: `${weighed.option.name}.total` });
  }
  for (const weighed of comparison.stages) {
    const range = above(weighed.stage.record.statement);
    if (range !== undefined) lenses.push({ range, label: alone(weighed, comparison), figure: `stage.${weighed.stage.name}.total` });
  }
  for (const way of comparison.estimate.access) {
    const range = above(way.record.statement);
    const shared = range === undefined ? undefined : sharing(way, comparison.options);
    if (range !== undefined && shared !== undefined) lenses.push({ range, ...shared });
  }
  return lenses.sort((a, b) => a.range.start - b.range.start);
}

/** `1,489.05 · cheapest`, `1,858.65 · +369.60`, `1,400.00 · −89.05 · ruled out: “Bores scored”`; with the cost in all where the options are compared by that, and with what was authorised. */
function standing(weighed: Weighed, comparison: Comparison): string {
  const { ranking, options, money } = comparison;
  const { totals, inAll, complete } = weighed;
  if (!complete) return 'Not weighed: a line that it rests on can’t be read or reached';
  // Nobody wrote this option, so the line it stands above does not say what the figures are of.
  const sums = [`${weighed.option.written ? '' : `${weighed.option.title}: `}${moneyText(totals.total.likely, money)}`];
  if (!inAll.likely.eq(totals.total.likely)) sums.push(`${moneyText(inAll.likely, money)} in all`);
  const cheapest = ranking[0];
  if (cheapest !== undefined && options.length > 1) {
    const more = inAll.likely.minus(cheapest.inAll.likely);
    // The only one left to choose is cheaper than none.
    if (cheapest !== weighed || ranking.length > 1) sums.push(cheapest === weighed ? 'cheapest' : more.isZero() ? `the same as ${cheapest.option.name}` : `${more.isNegative() ? MINUS : '+'}${moneyText(more.abs(), money)}`);
  }
  const { ruledOutBy } = weighed.option;
  if (ruledOutBy.length > 0) sums.push(`${RULED_OUT}: ${ruledOutBy.map(({ title }) => `“${title}”`).join(', ')}`);
  const authorised = authorisedIn(comparison).find(({ of }) => of === weighed.option);
  if (authorised !== undefined) sums.push(authorisedShort(authorised, money));
  return sums.join(' · ');
}

/** `630.00 alone · 745.00 to put back`; with what was authorised. */
function alone({ stage, totals, putBack, complete }: StageWeighed, comparison: Comparison): string {
  if (!complete) return 'Not weighed: a line that it rests on can’t be read or reached';
  const { money } = comparison;
  const authorised = authorisedIn(comparison).find(({ of }) => of === stage);
  return [`${moneyText(totals.total.likely, money)} alone`, `${moneyText(putBack.likely, money)} to put back`, ...(authorised === undefined ? [] : [authorisedShort(authorised, money)])].join(' · ');
}

/** `paid once, shared by 3 jobs in rebuild, used`; undefined where no option pays for the way in. */
function sharing(way: Access, options: readonly Weighed[]): Pick<Lens, 'label' | 'figure'> | undefined {
  const byCount = new Map<number, string[]>();
  for (const { option, planned } of options) {
    if (!planned.chosen.paid.includes(way)) continue;
    const jobs = planned.chosen.jobs.filter(({ mode }) => mode.with.some((one) => one === way || way.includes.includes(one))).length;
    byCount.set(jobs, [...(byCount.get(jobs) ?? []), option.name]);
  }
  const [first] = [...byCount.values()].flat();
  if (first === undefined) return undefined;
  const says = [...byCount].map(([jobs, names]) => `${jobs === 0 ? 'for no job' : jobs === 1 ? 'for 1 job' : `shared by ${jobs} jobs`} in ${names.join(', ')}`);
  return { label: `paid once, ${says.join('; ')}`, figure: `${first}.access` };
}
