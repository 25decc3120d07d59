import fc from 'fast-check';
import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { allKinds, units, type Field } from '../../src/vocabulary/index.js';

/** Every word that means something somewhere. */
const words = [...new Set(allKinds.flatMap((kind) => [kind.word, ...kind.leads.keys(), ...Object.values(kind.fields).flatMap((field) => Object.keys((field as Field).value.words ?? {}))]))].concat(units.map(({ word }) => word), 'at', 'pump', 'bench', 'shop.yard', 'USD', 'in-car');
const figures = ['0', '1', '12', '7.5', '64.30', '1,250.00', '-3', '$5', '.5', '1e5', '99999999999999', '4.5h', '2026-11-30', '2026-02-30', '2012-11', '1M8GDM9AXKP042788'];
const marks = ['/', ',', '%', '#', '# a comment', '"', '"Coolant pump"', '"a \\" b"', '\\', '“', '”', '(', '.', '-'];
const odd = ['\u00a0', '\u200b', '\u202e', '\ufeff', '\u0430', '🔧', '\ud800', '\0', '\r', '\u2028', 'é', '€', '１'];
const ends = ['\n', '\n', '\n', '\r\n', '\n  ', '\n  ', '\n    ', '\n\t', '\n\t\t', '\n \t'];

/** Pieces that a line is made of, with the line ends among them. */
const piece = fc.oneof(
  { weight: 6, arbitrary: fc.constantFrom(...words) },
  { weight: 3, arbitrary: fc.constantFrom(...figures) },
  { weight: 3, arbitrary: fc.constantFrom(...marks) },
  { weight: 1, arbitrary: fc.constantFrom(...odd) },
  { weight: 4, arbitrary: fc.constantFrom(...ends) },
);

/** Line noise that looks like an estimate from afar. */
export const noise = fc.array(fc.tuple(piece, fc.constantFrom(' ', ' ', ' ', '')), { maxLength: 60 }).map((pieces) => `steelyard 1\n${pieces.map(([text, gap]) => text + gap).join('')}`);

const root = path.resolve(import.meta.dirname, '../..');
const textsIn = (folder: string) => readdirSync(path.join(root, folder)).filter((file) => file.endsWith('.yard')).sort().map((file) => [file, readFileSync(path.join(root, folder, file), 'utf8')] as const);

/** Samples and good files by name. Where two share one, the sample stands. */
export const goodFiles: Readonly<Record<string, string>> = Object.fromEntries([...textsIn('test/corpus/ok'), ...textsIn('samples')]);

export interface Edit {
  readonly at: number;
  readonly remove: number;
  readonly insert: string;
}

/** An edit anywhere in a text; `at` is a share of its length. */
export const edit: fc.Arbitrary<Edit> = fc.record({
  at: fc.double({ min: 0, max: 1, noNaN: true }),
  remove: fc.oneof(fc.constant(0), fc.nat(3), fc.nat(120)),
  insert: fc.oneof(fc.constant(''), fc.string({ unit: 'binary', maxLength: 3 }), fc.array(piece, { maxLength: 5 }).map((pieces) => pieces.join(' '))),
});

export function placed(text: string, { at, remove }: Edit): { readonly from: number; readonly to: number } {
  const from = Math.min(text.length, Math.floor(at * (text.length + 1)));
  return { from, to: Math.min(text.length, from + remove) };
}

export function apply(text: string, one: Edit): string {
  const { from, to } = placed(text, one);
  return text.slice(0, from) + one.insert + text.slice(to);
}

/** A good file after a few edits. */
export const mutated = fc.tuple(fc.constantFrom(...Object.values(goodFiles)), fc.array(edit, { minLength: 1, maxLength: 4 })).map(([text, edits]) => edits.reduce(apply, text));

/** Any text at all: any characters, noise, and good files gone wrong. */
export const anyText = fc.oneof(fc.string({ unit: 'binary', maxLength: 200 }), fc.string({ unit: 'grapheme', maxLength: 100 }), noise, mutated);
