import type { Rule } from './problem.js';
import type { Span } from './tree.js';
import { limits } from './limits.js';
import { hidden, isSpaceLike, opensTitle } from './look-alikes.js';

const swap = (title: string, at: Span, text: string) => ({ title, at, text });

export const openText: Rule<undefined> = {
  code: 'open-text',
  family: 'shape',
  severity: 'error',
  title: 'A title that is not closed',
  message: () => ({
    what: 'This title has no closing quote.',
    why: 'The rest of the line is read as part of the title, so its figures are lost.',
    instead: 'Put a " where the title ends; write \\" for a quote inside it.',
  }),
  example: 'steelyard 1\npart pump «"Coolant pump 64.30 new»\n',
};

export const mixedIndent: Rule<{ readonly plain: string; readonly own: 'tabs' | 'spaces' | 'both' }> = {
  code: 'mixed-indent',
  family: 'shape',
  severity: 'error',
  title: 'Tabs and spaces mixed',
  message: ({ own }) => ({
    what: own === 'both' ? 'This line is indented with a mix of tabs and spaces.' : `This line is indented with ${own}, and those around it with ${own === 'tabs' ? 'spaces' : 'tabs'}.`,
    why: 'Which line it belongs to depends on how wide a tab is shown, so it could end up under the wrong option.',
    instead: 'Indent it like the lines around it, best with two spaces for each step.',
  }),
  fix: ({ plain }, at) => swap('Indent like the lines around it', at, plain),
  example: 'steelyard 1\nvehicle "Van"\n  odometer 90000 mi\n« \t»worth 4000\n',
};

export const strayIndent: Rule<undefined> = {
  code: 'stray-indent',
  family: 'shape',
  severity: 'error',
  title: 'Indented under nothing',
  message: () => ({
    what: 'This line is indented, but there is no line above that it could belong to.',
    why: 'An indented line is a fact about the line above it, so this one is left out.',
    instead: 'Start it at the left edge, or put it below the line it belongs to.',
  }),
  fix: (_, at) => swap('Start at the left edge', at, ''),
  example: '«  »steelyard 1\nnote "All figures are invented"\n',
};

export const unevenIndent: Rule<{ readonly nearest: string }> = {
  code: 'uneven-indent',
  family: 'shape',
  severity: 'warning',
  title: 'Indentation that lines up with nothing',
  message: () => ({
    what: 'This line is indented less than the line above, but does not line up with any line before that.',
    why: 'It is read as belonging to the nearest line that is further left, which may not be what you meant.',
    instead: 'Line it up with its neighbours.',
  }),
  fix: ({ nearest }, at) => swap('Line up', at, nearest),
  example: 'steelyard 1\nvehicle "Van"\n    odometer 90000 mi\n«  »worth 4000\n',
};

export const tooDeep: Rule<undefined> = {
  code: 'too-deep',
  family: 'shape',
  severity: 'error',
  title: 'Indented too deep',
  message: () => ({
    what: `This line is more than ${limits.depth} steps deep.`,
    why: 'Nothing in an estimate goes that deep, so the line is left out.',
    instead: 'Indent it one step below the line it belongs to.',
  }),
  example: `steelyard 1\n${Array.from({ length: limits.depth }, (_, i) => `${' '.repeat(i)}note "${i}"`).join('\n')}\n«${' '.repeat(limits.depth)}»note "deep"\n`,
};

export const longLine: Rule<{ readonly length: number }> = {
  code: 'long-line',
  family: 'shape',
  severity: 'error',
  title: 'A line too long to be one',
  message: ({ length }) => ({
    what: `This line has ${length} characters; the longest that is read has ${limits.lineLength}.`,
    why: 'It is left out, so nothing on it is counted. The rest of the file is read as usual.',
    instead: 'Break it into lines of one fact each.',
  }),
  example: `steelyard 1\n«note "${'x'.repeat(limits.lineLength)}"»\n`,
};

export const longFile: Rule<{ readonly has: number; readonly what: 'characters' | 'lines at its left edge' }> = {
  code: 'long-file',
  family: 'shape',
  severity: 'error',
  title: 'A file too long to be an estimate',
  message: ({ has, what }) => ({
    what: `This file has ${has} ${what}; the longest that is read has ${what === 'characters' ? limits.fileLength : limits.blocks}.`,
    why: 'Nothing in it is counted.',
    instead: 'Keep one estimate in one file, and put what several share into a shared file.',
  }),
  get example() {
    return `«s»teelyard 1\n${'note "A line"\n'.repeat(limits.blocks)}`;
  },
};

export const strangeCharacter: Rule<{ readonly written: string; readonly plain: string | undefined }> = {
  code: 'strange-character',
  family: 'shape',
  severity: 'error',
  title: 'A character that only looks right',
  message: ({ written, plain }) => ({
    what: whatIsStrange(written, plain),
    why: 'Such characters come in by copy and paste; names and figures with them do not match what they look like, so the line can’t be read to its end.',
    instead: plain === undefined ? withoutTwin(written) : plain === '' ? 'Delete it.' : plain.trim() === '' ? 'Type plain spaces instead.' : `Type ${plain.trim()}${plain.includes(' ') && !plain.startsWith('"') ? ' with a plain space' : ''}.`,
  }),
  fix: ({ plain }, at) => (plain === undefined ? undefined : swap(plain === '' ? 'Delete the invisible character' : plain.trim() === '' ? 'Write plain spaces' : `Write ${plain.trim()}`, at, plain)),
  example: 'steelyard 1\npart pump «“Coolant pump”» 64.30 new\n',
};

export const hiddenCharacter: Rule<{ readonly code: string }> = {
  code: 'hidden-character',
  family: 'shape',
  severity: 'warning',
  title: 'A character that cannot be seen',
  message: ({ code }) => ({
    what: `There is an invisible character here (${code}).`,
    why: 'It can turn the reading order round or make two names that look the same differ.',
    instead: 'Delete it.',
  }),
  fix: (_, at) => swap('Delete the invisible character', at, ''),
  example: 'steelyard 1\nnote "Price «\u202e»03.46"\n',
};

/** What to do about characters that no plain ones look like: letters of other alphabets belong into titles. */
function withoutTwin(written: string): string {
  return /^[\p{L}\p{M}\d-]+$/u.test(written) ? 'Write names with the letters a to z, digits and hyphens; in a "title" stands any letter.' : 'Remove it, or put it inside a "title".';
}

function whatIsStrange(written: string, plain: string | undefined): string {
  const strange = [...new Set(written)].filter((character) => !/[ -~]/.test(character));
  const codes = strange.slice(0, 3).map((c) => `U+${(c.codePointAt(0) ?? 0).toString(16).toUpperCase().padStart(4, '0')}`).join(' ');
  const visible = [...written].filter((character) => !hidden.test(character)).join('').trim();
  const start = visible.length > 20 ? `${visible.slice(0, 20)}…` : visible;
  // A title brings quotes of its own.
  const shown = opensTitle(start.charCodeAt(0)) ? start : `“${start}”`;
  if (plain === undefined) return `${shown} means nothing here (${codes}).`;
  if (strange.every((character) => hidden.test(character))) return visible === '' ? `There is an invisible character here (${codes}).` : `${shown} has an invisible character in it (${codes}).`;
  if (strange.every((character) => isSpaceLike(character.charCodeAt(0)))) return visible === '' ? `The space here is not a plain one (${codes}).` : `${shown} has a space at it that is not a plain one (${codes}).`;
  if (/^\d+\.\D+$/.test(written)) return `${shown} is not a plain number (${codes}).`;
  return `${shown} looks like ${plain.trim()} but is written with other characters (${codes}).`;
}
