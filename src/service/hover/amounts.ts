import type { Statement } from '../../language/index.js';
import { explainShort, figureText } from '../../report/index.js';
import type { Comparison, Line } from '../../weigh/index.js';
import type { At } from '../at.js';
import { linesBy } from './line-index.js';

/** What the line comes to and how that was made, with the options in which it does. */
export function amountsOf({ statement, above }: At, comparison: Comparison): string[] {
  if (statement === undefined) return [];
  const { money } = comparison;
  const by = new Map<string, string[]>();
  for (const { option, totals, penalty } of comparison.options) {
    for (const line of linesFrom(statement, above[above.length - 1], linesBy(totals))) {
      const hours = line.hours === undefined ? '' : ` for ${figureText(line.hours, money)}`;
      const ways = line.with.length === 0 || line.share === 'access' ? '' : ` with ${line.with.join(', ')}`;
      const says = `${line.title}: ${figureText(line.amount, money)}${hours}${ways}${explainShort(line.amount, money)}`;
      const options = by.get(says);
      if (options === undefined) by.set(says, [option.name]);
      else if (!options.includes(option.name)) options.push(option.name);
    }
    if (option.record.statement === statement) by.set(`${option.title}: ${figureText(totals.total, money)}, of which ${figureText(penalty.money, money)} access penalty`, []);
  }
  return [...by].map(([says, options]) => (options.length === 0 ? says : `${says} — in ${options.join(', ')}`));
}

/** Lines of the statement itself, and those of the record above it whose figure stands on this line. */
function linesFrom(statement: Statement, parent: Statement | undefined, lines: ReadonlyMap<Statement, readonly Line[]>): readonly Line[] {
  const own = lines.get(statement) ?? [];
  const start = statement.tokens[0]?.start ?? 0;
  const end = statement.tokens[statement.tokens.length - 1]?.end ?? 0;
  const fromParent = parent === undefined ? [] : (lines.get(parent) ?? []).filter(({ at }) => at.start >= start && at.end <= end);
  return [...own, ...fromParent];
}
