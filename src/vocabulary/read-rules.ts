import type { Rule, Span } from '../language/index.js';
import { clip, DISCOUNT } from './value-rules.js';

/** Words that take something off, where nothing can be taken off. */
const LOWERING: ReadonlySet<string> = new Set(['less', 'minus', 'discount', 'rebate', 'off']);

const write = (at: Span, text: string) => ({ title: `Write ${text}`, at, text });

export const unknownKind: Rule<{ readonly written: string; readonly meant: string | undefined; readonly belongs: string | undefined; readonly kinds: readonly string[] }> = {
  code: 'unknown-kind', family: 'shape', severity: 'error', title: 'A line that starts with an unknown word',
  message: ({ written, meant, belongs, kinds }) => ({
    what: `No line starts with “${clip(written)}”.`,
    why: 'The first word says what the line is; this one and what stands below it are left out.',
    instead: LOWERING.has(written) ? DISCOUNT : meant !== undefined ? `Did you mean ${meant}?` : belongs !== undefined ? `It is a fact of ${belongs}: indent it below such a line.` : `Start with one of: ${kinds.join(', ')}.`,
  }),
  fix: ({ meant }, at) => (meant === undefined ? undefined : write(at, meant)),
  example: 'steelyard 1\n«labor» swap "Swap the engine" 6 h\n',
};

export const unknownFact: Rule<{ readonly written: string; readonly under: string; readonly meant: string | undefined; readonly belongs: string | undefined; readonly facts: readonly string[] }> = {
  code: 'unknown-fact', family: 'shape', severity: 'error', title: 'A fact that this line does not have',
  message: ({ written, under, meant, belongs, facts }) => ({
    what: `“${clip(written)}” is not something that can stand below ${under}.`,
    why: 'The line is left out, so what it says is not counted.',
    instead: LOWERING.has(written) ? `${DISCOUNT}${belongs === undefined ? '' : ` As a fact, “${written}” belongs below ${belongs}.`}` : meant !== undefined ? `Did you mean ${meant}?` : belongs !== undefined ? `It belongs below ${belongs}.` : facts.length === 0 ? `Nothing stands below ${under}.` : `What can stand here: ${facts.join(', ')}.`,
  }),
  fix: ({ meant }, at) => (meant === undefined ? undefined : write(at, meant)),
  example: 'steelyard 1\nvehicle "Van"\n  «odometre» 90000 mi\n',
};

/** What a line is worth on which reading stopped. */
const readSoFar = 'The line counts only as far as it could be read, so its figures may be too low.';

/** Two things of a list between which the comma is missing: where they stand, and how they are written. */
interface Joined {
  readonly start: number;
  readonly end: number;
  readonly text: string;
}

/** What is known of a word behind a list: that only the comma is missing, or what to write there instead. */
export interface BehindList {
  readonly joined?: Joined;
  readonly alone?: string | undefined;
}

export const unknownWord: Rule<{ readonly written: string; readonly kind: string; readonly meant: string | undefined; readonly can: readonly string[] } & BehindList> = {
  code: 'unknown-word', family: 'shape', severity: 'error', title: 'A word that this line does not know',
  message: ({ written, kind, meant, can, joined, alone }) => ({
    what: `“${clip(written)}” means nothing at this place of ${/^[aeiou]/.test(kind) ? 'an' : 'a'} ${kind} line.`,
    why: readSoFar,
    instead: joined !== undefined ? `Write a comma between them: ${clip(joined.text)}` : alone !== undefined ? alone : LOWERING.has(written) ? DISCOUNT : meant !== undefined ? `Did you mean ${meant}?` : can.length === 0 ? 'Remove it, or put it in a comment after #.' : `What can follow here: ${can.join(', ')}.`,
  }),
  fix: ({ meant, joined }, at) => (joined !== undefined ? write({ ...at, start: joined.start, end: joined.end }, joined.text) : meant === undefined ? undefined : write(at, meant)),
  example: 'steelyard 1\npart pump "Coolant pump" 64.30 «nwe»\n',
};

export const extraFigure: Rule<{ readonly kind: string; readonly before: string | undefined; readonly written: string }> = {
  code: 'extra-figure', family: 'shape', severity: 'error', title: 'A figure too many',
  message: ({ kind, before, written }) => ({
    what: `This ${kind} line already has its figures.`,
    why: `It is not clear which one is meant. ${readSoFar}`,
    instead: before === undefined ? 'Write one figure; a quantity stands before at, once, as in 12 at 5.85, and three figures are divided by /.' : `Write ${before}${written} where it is one number, ${before} at ${written} where it is so many at a price each.`,
  }),
  example: 'steelyard 1\npart pump "Coolant pump" 64.30 «71.00» new\n',
};

export const saidTwice: Rule<{ readonly word: string }> = {
  code: 'said-twice', family: 'shape', severity: 'error', title: 'One fact said twice',
  message: ({ word }) => ({
    what: `${word} is said twice here.`,
    why: 'Only one can be true; the first is used.',
    instead: 'Remove the one that is wrong.',
  }),
  example: 'steelyard 1\nvehicle "Van"\n  worth 4000\n  «worth» 4500\n',
};

export const nameMissing: Rule<{ readonly kind: string }> = {
  code: 'name-missing', family: 'shape', severity: 'error', title: 'A line without its name',
  message: ({ kind }) => ({
    what: `This ${kind} line has no name.`,
    why: 'Other lines, the comparison and the history find it by its name.',
    instead: `Put a short name before the title: ${kind} short-name "Title".`,
  }),
  example: 'steelyard 1\n«option» "Fit a used engine"\n',
};

export const titleMissing: Rule<{ readonly kind: string; readonly says: string; readonly named: boolean }> = {
  code: 'title-missing', family: 'shape', severity: 'error', title: 'A line without its title',
  message: ({ kind, says, named }) => ({
    what: `This ${kind} line has no text in quotes.`,
    why: `It is ${says}.`,
    instead: `Write it in double quotes behind ${kind}${named ? ' and its name' : ''}.`,
  }),
  example: 'steelyard 1\n«part» pump 64.30 new\n',
};

export const badName: Rule<{ readonly written: string; readonly plain: string | undefined }> = {
  code: 'bad-name', family: 'shape', severity: 'error', title: 'A name that can’t be used',
  message: ({ written, plain }) => ({
    what: `“${clip(written)}” can't be a name.`,
    why: 'A name is letters, digits and hyphens; it starts with a letter and does not end with a hyphen.',
    instead: plain === undefined ? 'Choose another name.' : `Write ${plain}.`,
  }),
  fix: ({ plain }, at) => (plain === undefined ? undefined : write(at, plain)),
  example: 'steelyard 1\npart «pump_2» "Coolant pump" 64.30 new\n',
};

export const nothingBelow: Rule<{ readonly word: string }> = {
  code: 'nothing-below', family: 'shape', severity: 'error', title: 'A line below one that takes none',
  message: ({ word }) => ({
    what: `Nothing can stand below ${word}.`,
    why: 'The line is left out, so what it says is not counted.',
    instead: `Line it up with ${word}, or put it below the line it belongs to.`,
  }),
  example: 'steelyard 1\nvehicle "Van"\n  worth 4000\n    «odometer» 90000 mi\n',
};
