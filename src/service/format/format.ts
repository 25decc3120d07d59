import type { Block, Range, Tree } from '../../language/index.js';
import type { TextEdit } from '../feature-types.js';
import { editsOf, moved } from './edits.js';
import { groupsOf, type Group } from './groups.js';
import type { WantedLine } from './wanted.js';

export { applyEdits } from './edits.js';

/**
 * The edits that put a file, or the lines of it that touch a range, into columns. Only white space changes: every
 * word, comment, blank line and line end stays. A block with a fault is left as it is.
 */
export function formatEdits(tree: Tree, only?: Range): TextEdit[] {
  return [...groupsOf(tree, only)].flatMap((group) => moved(only === undefined ? group.edits : editsWithin(group, only), group.start));
}

function editsWithin({ start, text, lines }: Group, only: Range): TextEdit[] {
  const isTouched = (line: WantedLine) => start + line.end >= only.start && start + line.start <= only.end;
  // Lines of one block must be indented alike, or they would belong to other lines than before.
  const whole = new Set<Block>(lines.filter((line) => isTouched(line) && indentChanges(text, line)).map(({ block }) => block));
  return editsOf(text, lines.filter((line) => isTouched(line) || whole.has(line.block)));
}

/**
 * The edits for a line end just typed before the offset: the line above it and its run. Nothing where that would
 * change an indentation, which the writer has just chosen.
 */
export function formatOnTypeEdits(tree: Tree, offset: number): TextEdit[] {
  const { text } = tree;
  const here = offset === 0 ? 0 : text.lastIndexOf('\n', offset - 1) + 1;
  if (here === 0 || text.slice(here, offset).trim() !== '') return [];
  const end = text[here - 2] === '\r' ? here - 2 : here - 1;
  for (const group of groupsOf(tree, { start: end, end })) {
    const above = group.lines.find((line) => group.start + line.end === end);
    if (above === undefined) continue;
    const run = above.run === 0 ? [above] : group.lines.filter((line) => line.run === above.run);
    if (run.some((line) => indentChanges(group.text, line))) return [];
    // The line with the cursor is still being written.
    return moved(editsOf(group.text, run.filter((line) => group.start + line.start !== here)), group.start);
  }
  return [];
}

function indentChanges(text: string, line: WantedLine): boolean {
  const lead = (one: string) => /^[ \t]*/.exec(one)?.[0] ?? '';
  const isComment = line.text.trimStart().startsWith('#');
  return line.text !== '' && !isComment && lead(text.slice(line.start, line.end)) !== lead(line.text);
}
