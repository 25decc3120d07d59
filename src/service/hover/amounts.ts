import type { Statement } from '../../language/index.js';
import { explainShort, figureText, spokenAgainst } from '../../report/index.js';
import { labourLine, type Comparison, type Figure, type Line, type Plan } from '../../weigh/index.js';
import { statementOf, type At } from '../at.js';
import { lineIndex } from './line-index.js';

/** What the line comes to and how that was made, with the options in which it does. */
export function amountsOf({ statement, above }: At, comparison: Comparison): string[] {
  if (statement === undefined) return [];
  const { money } = comparison;
  const parent = above[above.length - 1];
  const by = new Map<string, string[]>();
  for (const { option, totals, penalty, planned } of comparison.options) {
    for (const line of linesFrom(statement, parent, planned.chosen)) {
      const says = sayLine(line, money);
      const options = by.get(says);
      if (options === undefined) by.set(says, [option.name]);
      else if (!options.includes(option.name)) options.push(option.name);
    }
    if (statement === statementOf(option)) by.set(`${option.title}: ${figureText(totals.total, money)}${penaltySays(penalty.money, money)}`, []);
    if (statement === statementOf(option) && option.ruledOutBy.length > 0) by.set(`${raised(spokenAgainst(option))}: it is weighed like the others, and is no choice.`, []);
  }
  if (by.size === 0 && parent !== undefined) return timeNotTaken(statement, parent, comparison);
  return [...by].map(([says, options]) => (options.length === 0 ? says : `${says} — in ${options.join(', ')}`));
}

/** Nothing where nothing is paid for getting at the work. */
function penaltySays(penalty: Figure, money: Comparison['money']): string {
  return penalty.high.isZero() && penalty.low.isZero() ? '' : `, of which ${figureText(penalty, money)} access penalty`;
}

function raised(sentence: string): string {
  return sentence.charAt(0).toUpperCase() + sentence.slice(1);
}

function sayLine(line: Line, money: Comparison['money']): string {
  const hours = line.hours === undefined ? '' : ` for ${figureText(line.hours, money)}`;
  const ways = line.with.length === 0 || line.share === 'access' ? '' : ` with ${line.with.join(', ')}`;
  return `${line.title}: ${figureText(line.amount, money)}${hours}${ways}${explainShort(line.amount, money)}`;
}

/** Lines of the statement itself, and those of the record above it whose figure stands on this line. */
function linesFrom(statement: Statement, parent: Statement | undefined, plan: Plan): readonly Line[] {
  const { lines, times } = lineIndex(plan);
  const own = lines.get(statement) ?? [];
  if (parent === undefined) return own;
  const { start, end } = placeOf(statement);
  const taken = times.get(parent)?.get(start);
  return [...own, ...(taken === undefined ? [] : [taken]), ...(lines.get(parent) ?? []).filter(({ at }) => at.start >= start && at.end <= end)];
}

/** A time with a way in that no option takes is priced all the same: it is what the plan was chosen against. */
function timeNotTaken(statement: Statement, parent: Statement, { estimate, money }: Comparison): string[] {
  const job = estimate.labour.find(({ record }) => record.statement === parent);
  const mode = job?.modes.find(({ at }) => at.start === placeOf(statement).start);
  return job === undefined || mode === undefined ? [] : [`${sayLine(labourLine(job, mode, money), money)} — in no option`];
}

function placeOf({ tokens }: Statement): { readonly start: number; readonly end: number } {
  return { start: tokens[0]?.start ?? 0, end: tokens[tokens.length - 1]?.end ?? 0 };
}
