import { expect } from 'vitest';
import { resolve, type Resolved } from '../../src/estimate/index.js';
import { parse, sentence, type Problem, type Span } from '../../src/language/index.js';

/** A message as its code, the words that it marks, and those of the line that it points back to. */
export type Told = readonly [code: string, marked: string, first?: string];

/** An estimate with its shared files, resolved without a service. Paths are names of files. */
export function resolved(text: string, shared: Readonly<Record<string, string>> = {}): Resolved {
  const texts = new Map([...Object.entries(shared), ['e.yard', text]]);
  const trees = new Map([...texts].map(([name, own]) => [name, parse(name, own)]));
  return resolve('e.yard', { treeOf: (uri) => trees.get(uri) ?? 'missing', resolvePath: (_from, path) => (path.startsWith('/') || path.startsWith('..') ? undefined : path) });
}

const SHOP = 'steelyard 1\nshop "S"\n  rate bench 100.00 usual\n  rate body 90.00\n  markup 50% to 100.00\n  markup 30% to 20.00 on sublets\n';

/** An estimate of a shop with a usual rate, another one, and a markup on parts and on outside work. */
export function inShop(text: string): Resolved {
  return resolved(SHOP + text);
}

/** What an estimate complains about; none of the words may have a hole. */
export function told({ problems }: Pick<Resolved, 'problems'>): readonly Told[] {
  return problems.map(({ code, at, message, related }): Told => {
    expect(sentence(message)).not.toMatch(/undefined|NaN|\[object/);
    return related === undefined ? [code, marked(at)] : [code, marked(at), marked(related.at)];
  });
}

export function wordsOf({ problems }: Pick<Resolved, 'problems'>, code: string): string {
  const found = problems.find((one) => one.code === code) as Problem;
  return sentence(found.message);
}

export function marked({ block, start, end }: Span): string {
  return block.text.slice(start, end);
}

/** Names, or titles where there is no name. */
export function called(list: Iterable<{ readonly name?: string | undefined; readonly title: string }>): readonly string[] {
  return [...list].map(({ name, title }) => name ?? title);
}
