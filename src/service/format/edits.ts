import type { TextEdit } from '../feature-types.js';
import type { WantedLine } from './wanted.js';

/** The smallest edits that turn lines of a text into what is wanted. */
export function editsOf(text: string, lines: readonly WantedLine[]): TextEdit[] {
  return lines.flatMap((line) => smallestEdits(text.slice(line.start, line.end), line.text, line.start));
}

/** The same edits for a text that stands further down in a file. */
export function moved(edits: readonly TextEdit[], by: number): TextEdit[] {
  return edits.map(({ range, text }) => ({ range: { start: range.start + by, end: range.end + by }, text }));
}

/** The shortest replacements that turn one line into the other: one for each stretch of white space that differs. */
function smallestEdits(before: string, after: string, start: number): TextEdit[] {
  if (before === after) return [];
  const edits: TextEdit[] = [];
  let i = 0;
  let j = 0;
  while (i < before.length || j < after.length) {
    const from = spaceEnd(before, i);
    const to = spaceEnd(after, j);
    const [old, wanted] = [before.slice(i, from), after.slice(j, to)];
    if (old !== wanted) edits.push(spaceEdit(old, wanted, start + i));
    // Behind the white space the same character stands in both.
    i = from + 1;
    j = to + 1;
  }
  return edits;
}

function spaceEdit(old: string, wanted: string, start: number): TextEdit {
  let same = 0;
  while (same < old.length && same < wanted.length && old[same] === wanted[same]) same++;
  return { range: { start: start + same, end: start + old.length }, text: wanted.slice(same) };
}

function spaceEnd(text: string, from: number): number {
  let at = from;
  while (text[at] === ' ' || text[at] === '\t') at++;
  return at;
}

/** A text with edits made; edits must not overlap. */
export function applyEdits(text: string, edits: readonly TextEdit[]): string {
  const pieces: string[] = [];
  let at = 0;
  for (const { range, text: put } of [...edits].sort((a, b) => a.range.start - b.range.start)) {
    pieces.push(text.slice(at, range.start), put);
    at = range.end;
  }
  return pieces.join('') + text.slice(at);
}
