import { statementsOf, type Statement, type Tree } from '../language/index.js';
import { allKinds, type Kind } from '../vocabulary/index.js';
import type { Comparison, Line } from '../weigh/index.js';
import { explainShort, figureText } from '../report/index.js';
import type { Hover, Weighing } from './types.js';

/** The figure that the line under the pointer makes, option by option, or else what its first word means. */
export function hoverAt(tree: Tree, offset: number, { comparison }: Weighing): Hover | undefined {
  const found = statementAt(tree, offset);
  if (found === undefined) return undefined;
  const { statement, start } = found;
  const range = { start: start + (statement.tokens[0]?.start ?? 0), end: start + (statement.tokens[statement.tokens.length - 1]?.end ?? 0) };
  const figures = figuresOn(statement, comparison);
  const meaning = meaningOf(statement, tree, offset - start);
  const paragraphs = [...figures, ...(meaning === undefined ? [] : [meaning])];
  return paragraphs.length === 0 ? undefined : { range, paragraphs };
}

function statementAt(tree: Tree, offset: number): { readonly statement: Statement; readonly start: number } | undefined {
  const starts = new Map(tree.blocks.map((block, i) => [block, tree.starts[i] as number]));
  for (const statement of statementsOf(tree)) {
    const start = starts.get(statement.block) as number;
    const first = statement.tokens[0];
    const last = statement.tokens[statement.tokens.length - 1];
    if (first !== undefined && last !== undefined && offset >= start + first.start && offset <= start + last.end) return { statement, start };
  }
  return undefined;
}

/** Lines of the comparison that were made from this line of text, each with the option it stands in. */
function figuresOn(statement: Statement, comparison: Comparison): string[] {
  const by = new Map<string, string[]>();
  for (const weighed of comparison.options) {
    for (const line of weighed.totals.lines) {
      if (!comesFrom(line, statement)) continue;
      const hours = line.hours === undefined ? '' : ` for ${figureText(line.hours, comparison.money)}`;
      const ways = line.with.length === 0 || line.share === 'access' ? '' : ` with ${line.with.join(', ')}`;
      const says = `${line.title}: ${figureText(line.amount, comparison.money)}${hours}${ways}${explainShort(line.amount, comparison.money)}`;
      by.set(says, [...(by.get(says) ?? []), weighed.option.name]);
    }
    if (weighed.option.record.statement === statement) {
      by.set(`${weighed.option.title}: ${figureText(weighed.totals.total, comparison.money)}, of which ${figureText(weighed.penalty.money, comparison.money)} access penalty`, []);
    }
  }
  return [...by].map(([says, options]) => (options.length === 0 ? says : `${says} — in ${options.join(', ')}`));
}

function comesFrom(line: Line, statement: Statement): boolean {
  const own = line.record.statement;
  if (own === statement) return true;
  return own.block === statement.block && own.children.includes(statement) && line.at.start >= (statement.tokens[0]?.start ?? 0) && line.at.end <= (statement.tokens[statement.tokens.length - 1]?.end ?? 0);
}

/** What a kind or fact word means, where the pointer is on it. */
function meaningOf(statement: Statement, tree: Tree, at: number): string | undefined {
  const head = statement.tokens[0];
  if (head === undefined || at > head.end) return undefined;
  const word = head.text;
  const second = statement.tokens[1]?.text;
  const kind = allKinds.find((one) => one.word === word);
  if (kind !== undefined) return `${kind.word}: ${kind.says}`;
  const parent = parentKind(statement, tree);
  const key = parent?.leads.get(`${word} ${second ?? ''}`) ?? parent?.leads.get(word);
  return key === undefined || parent === undefined ? undefined : `${word}: ${parent.fields[key]?.says ?? ''}`;
}

function parentKind(statement: Statement, tree: Tree): Kind | undefined {
  for (const candidate of statementsOf(tree)) {
    if (candidate.children.includes(statement)) return allKinds.find((kind) => kind.word === candidate.tokens[0]?.text);
  }
  return undefined;
}
