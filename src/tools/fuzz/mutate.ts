import type { Dice } from './dice.js';
import { ENDS, FIGURES, ODD, WORDS } from './pieces.js';

/** One change of a text; `other` is a text to take pieces from. */
type Change = (text: string, dice: Dice, other: string) => string;

/** A text longer than this is not made longer. */
const LONGEST = 60_000;

/** A text after some changes. */
export function mutated(text: string, times: number, dice: Dice, other: string): string {
  let made = text;
  for (let i = 0; i < times; i++) {
    const next = dice.pick(CHANGES)(made, dice, other);
    made = next.length > LONGEST ? made : next;
  }
  return made;
}

/** Line noise that looks like an estimate from afar, or like nothing at all. */
export function noise(dice: Dice): string {
  const count = dice.upTo(60);
  const lists = [WORDS, WORDS, FIGURES, ODD, ENDS, ENDS] as const;
  const pieces = Array.from({ length: count }, () => (dice.chance(8) ? anyCharacter(dice) : dice.pick(dice.pick(lists))) + (dice.chance(70) ? ' ' : ''));
  return `${dice.chance(80) ? 'steelyard 1\n' : ''}${pieces.join('')}`;
}

function anyCharacter(dice: Dice): string {
  return dice.chance(50) ? String.fromCharCode(dice.upTo(255)) : String.fromCharCode(dice.upTo(65_535));
}

const insert = (text: string, at: number, piece: string, remove = 0) => text.slice(0, at) + piece + text.slice(at + remove);

/** A piece of a text that a pattern finds, chosen at random, in a place chosen at random so that no long text is searched whole. */
function found(pattern: RegExp, text: string, dice: Dice): { readonly start: number; readonly end: number } | undefined {
  const from = dice.placeIn(text);
  const part = text.slice(from, from + 400);
  const all = [...part.matchAll(pattern)];
  const one = all.length === 0 ? undefined : dice.pick(all);
  return one === undefined ? undefined : { start: from + one.index, end: from + one.index + one[0].length };
}

const TOKEN = /"(?:[^"\\\n]|\\.)*"|[^\s"#,/%]+|[,/%#]/g;

function token(text: string, dice: Dice): { readonly start: number; readonly end: number } | undefined {
  return found(TOKEN, text, dice);
}

/** Lines of a text with what is below them, or single ones. */
function lines(text: string, change: (lines: string[]) => void): string {
  const all = text.split('\n');
  change(all);
  return all.join('\n');
}

/** The lines from one on that are indented deeper: a whole record. */
function below(all: readonly string[], at: number): number {
  const indent = /^\s*/.exec(all[at] ?? '')?.[0].length ?? 0;
  let end = at + 1;
  while (end < all.length && (/^\s*/.exec(all[end] ?? '')?.[0].length ?? 0) > indent) end++;
  return end - at;
}

const CHANGES: readonly Change[] = [
  // Characters.
  (text, dice) => insert(text, dice.placeIn(text), anyCharacter(dice), dice.upTo(1)),
  (text, dice) => insert(text, dice.placeIn(text), dice.pick(ODD)),
  (text, dice) => insert(text, dice.placeIn(text), '', 1 + dice.upTo(3)),
  (text, dice) => insert(text, dice.placeIn(text), '', 1 + dice.upTo(200)),
  (text, dice) => text.slice(0, dice.placeIn(text)),
  // Tokens.
  (text, dice) => replaced(text, token(text, dice), dice.pick(WORDS)),
  (text, dice) => replaced(text, token(text, dice), dice.pick(FIGURES)),
  (text, dice) => replaced(text, token(text, dice), dice.pick(ODD)),
  (text, dice) => replaced(text, token(text, dice), ''),
  (text, dice, other) => replaced(text, token(text, dice), pieceOf(other, token(other, dice))),
  (text, dice) => replaced(text, token(text, dice), pieceOf(text, token(text, dice))),
  (text, dice) => {
    const one = token(text, dice);
    return one === undefined ? text : insert(text, one.end, `${dice.pick([' ', ', ', ' / ', ''])}${text.slice(one.start, one.end)}`);
  },
  // Figures; by far the most that one line may hold of them.
  (text, dice) => replaced(text, found(/(?<![\w-])\d[\d.,]*(?![\w-])/g, text, dice), dice.pick(FIGURES)),
  (text, dice) => replaced(text, found(/(?<![\w-])\d[\d.,]*(?![\w-])/g, text, dice), dice.pick(FIGURES)),
  (text, dice) => replaced(text, found(/\d(?:[\d.]* \/ )?/g, text, dice), String(dice.upTo(9))),
  // Names: one that something else has, so that circles close and kinds clash.
  (text, dice) => replaced(text, found(/(?<=^(?:access|labour|part|sublet|option|finding|stage) )[a-z][\w-]*/gm, text, dice), pieceOf(text, found(/(?<=^\w+ )[a-z][\w-]*(?= )/gm, text, dice)) || 'x'),
  (text, dice) => replaced(text, found(/(?<=^ +(?:do|uses|with|includes|after|because|needs|fit|send|charge) +(?:[\w-]+, )*)[a-z][\w-]*/gm, text, dice), pieceOf(text, found(/(?<=^\w+ )[a-z][\w-]*(?= )/gm, text, dice)) || 'x'),
  // Lines.
  (text, dice) => lines(text, (all) => void all.splice(dice.upTo(all.length - 1), 1)),
  (text, dice) => lines(text, (all) => {
    const at = dice.upTo(all.length - 1);
    all.splice(at, below(all, at));
  }),
  (text, dice) => lines(text, (all) => {
    const at = dice.upTo(all.length - 1);
    all.splice(at, 0, ...all.slice(at, at + below(all, at)));
  }),
  (text, dice) => lines(text, (all) => {
    const [a, b] = [dice.upTo(all.length - 1), dice.upTo(all.length - 1)];
    [all[a], all[b]] = [all[b] as string, all[a] as string];
  }),
  (text, dice) => lines(text, (all) => {
    const from = dice.upTo(all.length - 1);
    const moved = all.splice(from, below(all, from));
    all.splice(dice.upTo(all.length), 0, ...moved);
  }),
  (text, dice) => lines(text, (all) => {
    const at = dice.upTo(all.length - 1);
    all[at] = `${dice.pick(['  ', ' ', '\t', '    ', '', ' '.repeat(40)])}${(all[at] ?? '').trimStart()}`;
  }),
  (text, dice) => lines(text, (all) => {
    const at = dice.upTo(all.length - 1);
    const count = below(all, at);
    const step = dice.pick(['  ', '\t', ' ']);
    for (let i = at; i < at + count; i++) all[i] = step + (all[i] ?? '');
  }),
  (text, dice) => insert(text, dice.placeIn(text), dice.pick(ENDS)),
  (text, dice) => lines(text, (all) => void all.splice(dice.upTo(all.length), 0, `${dice.pick(['', '  ', '    '])}# ${dice.pick(ODD)} ${dice.upTo(9999)}`)),
  (text, dice) => lines(text, (all) => {
    const at = dice.upTo(all.length - 1);
    all[at] = `${all[at] ?? ''}  # ${dice.upTo(9999)}`;
  }),
  // Two texts put together.
  (text, dice, other) => text.slice(0, dice.placeIn(text)) + other.slice(dice.placeIn(other)),
  (text, dice, other) => lines(text, (all) => {
    const theirs = other.split('\n');
    const at = dice.upTo(theirs.length - 1);
    all.splice(dice.upTo(all.length), 0, ...theirs.slice(at, at + below(theirs, at)));
  }),
  (text, dice, other) => lines(text, (all) => {
    const theirs = other.split('\n');
    const at = dice.upTo(theirs.length - 1);
    all.splice(dice.upTo(all.length), 0, ...theirs.slice(at, at + dice.upTo(12)));
  }),
  // The whole text.
  (text, dice) => (dice.chance(20) ? text.replace(/\r?\n/g, '\r\n') : dice.chance(20) ? `\ufeff${text}` : text.replace(/\n$/, '')),
];

function replaced(text: string, at: { readonly start: number; readonly end: number } | undefined, piece: string): string {
  return at === undefined ? text : text.slice(0, at.start) + piece + text.slice(at.end);
}

function pieceOf(text: string, at: { readonly start: number; readonly end: number } | undefined): string {
  return at === undefined ? '' : text.slice(at.start, at.end);
}
