import type { Span } from '../language/index.js';
import type { Targets } from '../report/page/index.js';
import type { LanguageService } from '../service/index.js';

/** Rows and headings of the page that stand for one line of the text; sums stand for many and are not marked. */
const ROWS = /\.(?:head|(?:line|tax|way|open)\.\d+)$|^\.(?:flip|finding|inspect|coverage)\.\d+$/;

/**
 * What on the page comes from the line at an offset, or from the line that it belongs to: a fact that is indented
 * below a line of work stands for that work. `home` says where a span of a tried text is in the file.
 */
export function rowsAt(targets: readonly Targets[], uri: string, offset: number, home: (span: Span) => Span, service: Pick<LanguageService, 'tree'>): readonly string[] {
  const tree = service.tree(uri);
  if (tree === undefined) return [];
  let start = 0;
  const block = tree.blocks.find(({ text }) => {
    if (offset < start + text.length) return true;
    start += text.length;
    return false;
  }) ?? tree.blocks.at(-1);
  if (block === undefined) return [];
  const local = offset - (start < tree.text.length || block.text.length === 0 ? start : start - block.text.length);
  const lineEnd = endOf(block.text, local);
  const rows = targets.flatMap((some) => [...some].flatMap(([id, [best]]) => {
    const at = best === undefined || !ROWS.test(id) ? undefined : home(best);
    return at === undefined || at.block !== block || at.start > lineEnd ? [] : [{ id, line: startOf(block.text, at.start) }];
  }));
  const nearest = Math.max(...rows.map(({ line }) => line));
  const own = startOf(block.text, local);
  if (rows.length === 0 || (nearest !== own && indent(block.text, own) <= indent(block.text, nearest))) return [];
  return [...new Set(rows.filter(({ line }) => line === nearest).map(({ id }) => id))];
}

function startOf(text: string, offset: number): number {
  return Math.max(text.lastIndexOf('\n', offset - 1), text.lastIndexOf('\r', offset - 1)) + 1;
}

function endOf(text: string, offset: number): number {
  const end = text.slice(offset).search(/[\r\n]/);
  return end < 0 ? text.length : offset + end;
}

function indent(text: string, lineStart: number): number {
  return /^[ \t]*/.exec(text.slice(lineStart))?.[0].length ?? 0;
}
