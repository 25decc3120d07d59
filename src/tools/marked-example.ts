import { hidden } from '../language/look-alikes.js';

/** An example with its marks taken out, and where they stood. */
export interface Marked {
  readonly text: string;
  readonly start: number;
  readonly end: number;
}

/** Reads `…«…»…`. */
export function readMarks(example: string): Marked {
  const start = example.indexOf('«');
  const end = example.indexOf('»', start) - 1;
  return { text: example.slice(0, start) + example.slice(start + 1, end + 1) + example.slice(end + 2), start, end };
}

const LONGEST_SHOWN = 90;

/** The text with `^` under what is marked. Tabs and characters that can't be seen are spelled out. */
export function underlined({ text, start, end }: Marked): string {
  const out: string[] = [];
  let at = 0;
  for (const line of text.replace(/\n$/, '').split('\n')) {
    const from = Math.max(start, at);
    const to = Math.min(end, at + line.length);
    const shown = seen(line);
    out.push(shown.length > LONGEST_SHOWN ? `${shown.slice(0, LONGEST_SHOWN)} …` : shown);
    if (from < to) {
      const before = seen(line.slice(0, from - at)).length;
      const marked = seen(line.slice(from - at, to - at)).length;
      out.push(`${' '.repeat(before)}${'^'.repeat(Math.min(marked, LONGEST_SHOWN - before))}`);
    }
    at += line.length + 1;
  }
  return out.join('\n');
}

function seen(text: string): string {
  return text
    .replace(/\t/g, '[tab]')
    .replace(hidden, (character) => `[U+${character.charCodeAt(0).toString(16).toUpperCase().padStart(4, '0')}]`);
}
