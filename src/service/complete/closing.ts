import { linesOfOption } from '../../estimate/index.js';
import type { Range, Statement, Tree } from '../../language/index.js';
import { kinds, type Kind } from '../../vocabulary/index.js';
import { kindOf, locate, rangeAt } from '../at.js';
import type { Completion } from '../feature-types.js';
import type { Weighing } from '../types.js';
import { insideOf } from './inside.js';
import type { Offer } from './offer.js';

/** A line that hours were clocked on, or money was paid or received for: by its name, or else by its title. */
interface ClosingLine {
  readonly name: string | undefined;
  readonly title: string;
}

/** Lines of a closing, and which lines of the option each can be for. A credit is for a part that has a core. */
const LINES: ReadonlyMap<Kind, (all: ReturnType<typeof linesOfOption>) => readonly ClosingLine[]> = new Map<Kind, (all: ReturnType<typeof linesOfOption>) => readonly ClosingLine[]>([
  [kinds.clocked, ({ work }) => work],
  [kinds.paid, ({ goods }) => goods],
  [kinds.credited, ({ cores }) => cores.filter(({ line }) => line.core !== undefined)],
]);

export function isOfClosing(kind: Kind): boolean {
  return LINES.has(kind);
}

/** The lines of the option that was done of which nothing is said yet, in the estimate's order. Each stands once below a closing. */
export function closingLines(kind: Kind, closed: Statement | undefined, own: Statement | undefined, { resolved: { estimate } }: Weighing): readonly ClosingLine[] {
  const done = closed?.tokens.find((_, i, all) => all[i - 1]?.text === 'for') ?? closed?.children.find(({ tokens }) => tokens[0]?.text === 'for')?.tokens[1];
  const option = estimate.options.find(({ name }) => name === done?.text);
  const said = new Set(closed?.children.flatMap((one) => (one !== own && one.tokens[0]?.text === kind.word ? [one.tokens[1]?.text] : [])));
  const lines = LINES.get(kind)?.(linesOfOption(option, estimate, estimate.shop)) ?? [];
  const seen = new Set<string>();
  return lines.filter(({ name, title }) => {
    const key = name ?? `"${title}`;
    if (seen.has(key) || said.has(name ?? title) || said.has(title)) return false;
    seen.add(key);
    return true;
  });
}

/** A line as a closing calls it. */
export function calledIn({ name, title }: ClosingLine): string {
  return name ?? `"${title.replace(/["\\]/g, '\\$&')}"`;
}

export function closingOffers(kind: Kind, closed: Statement | undefined, own: Statement | undefined, weighing: Weighing): Offer[] {
  return closingLines(kind, closed, own, weighing).map((line): Offer => ({
    label: line.name ?? line.title, kind: 'name', detail: line.name === undefined ? 'by its title, having no name' : line.title, says: kind.says, texts: [calledIn(line)],
  }));
}

/** Titles inside the quotes of a line of a closing, of what has no name. Undefined anywhere else. */
export function closingTitles(tree: Tree, offset: number, weighing: Weighing): Completion[] | undefined {
  const at = locate(tree, offset);
  const [, text] = at?.statement?.tokens ?? [];
  if (at?.statement === undefined || text?.kind !== 'text') return undefined;
  const kind = kindOf(at.statement, at.above);
  const inside = insideOf(text, offset - at.start);
  if (kind === undefined || inside === undefined || !isOfClosing(kind)) return undefined;
  // A text that is still open holds the rest of the line: its figure stays.
  const range: Range = rangeAt(at.start, text.open === true ? { ...inside, end: offset - at.start } : inside);
  return closingLines(kind, at.above[at.above.length - 1], at.statement, weighing).filter(({ name }) => name === undefined).map((line, order) => ({
    label: line.title, kind: 'name', detail: undefined, says: kind.says, snippet: false, order,
    edit: { range, text: `${calledIn(line).slice(1, -1)}${text.open === true ? '"' : ''}` },
  }));
}
