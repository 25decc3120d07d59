import type { Statement, Tree } from '../../language/index.js';
import type { Figure } from '../../weigh/index.js';
import { figureOf, figureText, lineId, type FigureName } from '../../report/index.js';
import { locate, statementOf } from '../at.js';
import type { TotalUsing } from '../feature-types.js';
import { endOf } from './lines.js';
import { madeLines, type MadeLine } from '../show/made-lines.js';
import type { Weighing } from '../types.js';

/** Figures that a line may come into without being a line of the option itself, the nearest first. */
const SUMS: readonly FigureName[] = ['total', 'comes-back', 'given-up', 'in-all'];

/**
 * What the line under the cursor brings into each option. A job or part is one of the option's lines, and so is a way
 * of doing it where the option does it that way; a tax, a rate or a markup comes into its sums.
 */
export function totalsUsingAt(tree: Tree, offset: number, weighing: Weighing): readonly TotalUsing[] {
  const at = locate(tree, offset);
  if (at?.statement === undefined) return [];
  const { statement, above } = at;
  const { options, money } = weighing.comparison;
  const made = linesOf(statement, above, weighing);
  return options.flatMap((weighed) => {
    const says = (figure: Figure, id: string): TotalUsing => ({ option: weighed.option.name, title: weighed.option.title, figure: id, amount: figureText(figure, money) });
    const own = made.filter((one) => one.weighed === weighed);
    if (own.length > 0) return own.map(({ index, line }) => says(line.amount, lineId(weighed, index)));
    const tax = weighed.totals.taxes.find((one) => one.tax.record.statement === statement);
    if (tax !== undefined) return [says(tax.amount, `${weighed.option.name}.tax`)];
    const name = statementOf(weighed.option) === statement ? 'total' : SUMS.find((one) => restsOn(figureOf(weighed, one), statement));
    const figure = name === undefined ? undefined : figureOf(weighed, name);
    return figure === undefined || name === undefined ? [] : [says(figure, `${weighed.option.name}.${name}`)];
  });
}

/** Lines that the statement makes, or that the line above it makes with what this one says. */
function linesOf(statement: Statement, above: readonly Statement[], weighing: Weighing): readonly MadeLine[] {
  const made = madeLines(weighing);
  const own = made.get(statement);
  if (own !== undefined) return own;
  const parent = above[above.length - 1];
  return parent === undefined ? [] : (made.get(parent) ?? []).filter(({ line }) => restsOn(line.amount, statement));
}

/** Whether a figure was worked out from something that stands on this line, or on a line below it. */
function restsOn(figure: Figure | undefined, statement: Statement): boolean {
  if (figure === undefined) return false;
  const start = statement.tokens[0]?.start ?? 0;
  const end = endOf(statement);
  const seen = new Set<Figure>();
  const visit = (one: Figure): boolean => {
    if (seen.has(one)) return false;
    seen.add(one);
    if (one.step.kind === 'given' && one.at?.block === statement.block && one.at.start >= start && one.at.end <= end) return true;
    return one.from.some(visit);
  };
  return visit(figure);
}
