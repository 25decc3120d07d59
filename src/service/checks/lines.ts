import type { Fix, Span } from '../../language/index.js';

/** The line that an offset stands on: where it starts, and where it ends without its line end. */
export function lineAround(text: string, offset: number): { readonly start: number; readonly end: number; readonly next: number } {
  const start = text.lastIndexOf('\n', offset - 1) + 1;
  const newline = text.indexOf('\n', offset);
  const stop = newline < 0 ? text.length : newline;
  return { start, end: stop > start && text[stop - 1] === '\r' ? stop - 1 : stop, next: newline < 0 ? text.length : newline + 1 };
}

export function endOfLines(text: string): string {
  return text.includes('\r\n') ? '\r\n' : '\n';
}

/**
 * A fact on a line of its own below a line, in the columns of the lines that stand there already. `fact` starts with
 * its word, or two; what follows lines up with what follows the words of its neighbours.
 */
export function factBelow(at: Span, word: string, value: string): Omit<Fix, 'title'> {
  const { text } = at.block;
  const line = lineAround(text, at.start);
  const indent = /^[ \t]*/.exec(text.slice(line.start, line.end))?.[0] ?? '';
  const below = /^([ \t]+)([a-z-]+)( +)\S/.exec(text.slice(line.next));
  const deeper = below !== null && (below[1] as string).length > indent.length ? below : undefined;
  const step = deeper?.[1] ?? `${indent}  `;
  const width = deeper !== undefined && (deeper[3] as string).length > 1 ? (deeper[2] as string).length + (deeper[3] as string).length : 0;
  return { at: { block: at.block, start: line.end, end: line.end }, text: `${endOfLines(text)}${step}${`${word} `.padEnd(width)}${value}` };
}

/** A few words behind what stands on a line, before its comment. */
export function behind(at: Span, words: string): Omit<Fix, 'title'> {
  return { at: { block: at.block, start: at.end, end: at.end }, text: ` ${words}` };
}

/** Takes one name out of a list; with the last name goes its word, and with the last word of a line the line. */
export function withoutName(at: Span): Omit<Fix, 'title'> {
  const { block } = at;
  const { text } = block;
  const line = lineAround(text, at.start);
  const before = text.slice(line.start, at.start);
  const after = text.slice(at.end, line.end);
  const commaBefore = /(?<!\s)\s*,\s*$/.exec(before);
  if (commaBefore !== null) return { at: { block, start: at.start - commaBefore[0].length, end: at.end }, text: '' };
  const commaAfter = /^\s*,\s*/.exec(after);
  if (commaAfter !== null) return { at: { block, start: at.start, end: at.end + commaAfter[0].length }, text: '' };
  const words = before.trimEnd();
  const lead = words.length === before.length ? null : /(?<![a-z-])[a-z-]+$/.exec(words);
  const start = lead === null ? at.start : line.start + words.slice(0, lead.index).trimEnd().length;
  const alone = text.slice(line.start, start).trim() === '' && after.trim() === '';
  return { at: alone ? { block, start: line.start, end: line.next } : { block, start, end: at.end }, text: '' };
}
