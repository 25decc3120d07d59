import { readFileSync } from 'node:fs';
import path from 'node:path';
import { parse, rangeIn, type Block, type Problem, type Span, type Tree } from '../../../src/language/index.js';
import { resolve, type Resolved } from '../../../src/estimate/index.js';
import { decide, weigh, type Comparison, type Decided, type Decision, type Weighed } from '../../../src/weigh/index.js';

/** The texts of some files by their names; the first is the estimate. */
export type Files = ReadonlyMap<string, string>;

/** An estimate weighed afresh: nothing of it is kept from an earlier text. */
export interface Fresh {
  readonly files: Files;
  readonly resolved: Resolved;
  readonly comparison: Comparison;
  readonly problems: readonly Problem[];
  readonly sound: boolean;
  readonly option: (name: string) => Weighed;
  /** The files with other words in place of those at a span. */
  readonly rewritten: (at: Span, words: string) => Files;
  readonly wordsAt: (at: Span) => string;
}

export function oneFile(text: string): Files {
  return new Map([['one.yard', text]]);
}

const samples = path.resolve(import.meta.dirname, '../../../samples');

export function sampleWithShop(file: string): Files {
  return new Map([file, 'shop.yard'].map((name) => [name, readFileSync(path.join(samples, name), 'utf8')]));
}

/** Parses, resolves and weighs some files from their texts alone. */
export function weighFresh(files: Files): Fresh {
  const [first] = files.keys() as unknown as Iterable<string>;
  const trees = new Map<string, Tree>();
  const treeOf = (uri: string): Tree | 'missing' => {
    const text = files.get(uri);
    if (text === undefined) return 'missing';
    const tree = trees.get(uri) ?? parse(uri, text);
    trees.set(uri, tree);
    return tree;
  };
  const resolved = resolve(first as string, { treeOf, resolvePath: (_, to) => to });
  const flawed = new Set<Block>([...resolved.spoiled, ...resolved.problems.filter((one) => one.severity === 'error').map((one) => one.at.block)]);
  const comparison = weigh(resolved.estimate, flawed);
  const problems = [...resolved.problems, ...comparison.problems];
  const placeOf = (at: Span) => {
    const range = rangeIn(trees.get(at.block.uri) as Tree, at);
    if (range === undefined) throw new Error('a span of another text');
    return { uri: at.block.uri, text: files.get(at.block.uri) as string, ...range };
  };
  return {
    files, resolved, comparison, problems,
    sound: problems.every(({ severity }) => severity !== 'error'),
    option: (name) => {
      const found = comparison.options.find(({ option }) => option.name === name);
      if (found === undefined) throw new Error(`no option ${name}`);
      return found;
    },
    rewritten: (at, words) => {
      const { uri, text, start, end } = placeOf(at);
      return new Map([...files].map(([name, old]) => [name, name === uri ? `${text.slice(0, start)}${words}${text.slice(end)}` : old]));
    },
    wordsAt: (at) => {
      const { text, start, end } = placeOf(at);
      return text.slice(start, end);
    },
  };
}

/** Weighs a text of one file that must be free of errors. */
export function soundText(text: string): Fresh {
  const fresh = weighFresh(oneFile(text));
  if (!fresh.sound) throw new Error(`${fresh.problems.filter(({ severity }) => severity === 'error').map(({ code, message }) => `${code} ${JSON.stringify(message)}`).join('\n')}\n${text}`);
  return fresh;
}

export function decideText(text: string): Decision & { readonly of: (name: string) => Decided } {
  return named(decide(soundText(text).comparison));
}

function named(decision: Decision): Decision & { readonly of: (name: string) => Decided } {
  return {
    ...decision,
    of: (name) => {
      const found = decision.options.find(({ weighed }) => weighed.option.name === name);
      if (found === undefined) throw new Error(`no option ${name}`);
      return found;
    },
  };
}

/** A figure's words with one number in place of its numbers: its unit, percent sign and currency stay. */
export function withNumber(words: string, number: string): string {
  const numbers = /\d[\d.]*(?:\s*\/\s*\d[\d.]*)*/;
  if (!numbers.test(words)) throw new Error(`no number in ${words}`);
  return words.replace(numbers, number);
}
