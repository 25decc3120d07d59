import { problem, type Problem } from '../language/index.js';
import { childrenOf, type Fields, type Kind, type Record } from '../vocabulary/index.js';
import * as rules from './most-rules.js';
import type { Option } from './option-types.js';

/**
 * Lines below shop that every option is worked out with, so that they multiply with all it does. A shop has a few taxes
 * and fees, and ten or twenty steps of markup.
 */
export const MOST_OF_SHOP: Readonly<{ [word: string]: number }> = { tax: 40, fee: 40, markup: 200, rate: 100 };

/** Jobs, parts, outside work or fees of an option, a stage, a chance or a way in. The longest quote of a shop has some two hundred lines. */
export const MOST_LINES = 1_000;

/** Jobs, parts, outside work and fees of all options, with those of their chances, each counted in every option that has it. */
export const MOST_IN_ALL = 5_000;

/** The lines of a kind below shop, up to the most; says where there are more. */
export function ofShop<F extends Fields>(shop: Record, kind: Kind<F>, problems: Problem[]): readonly Record<F>[] {
  const all = childrenOf(shop, kind);
  const most = MOST_OF_SHOP[kind.word] ?? Infinity;
  const over = all[most];
  if (over === undefined) return all;
  problems.push(problem(rules.tooManyOfShop, over.at, { word: kind.word, most }));
  return all.slice(0, most);
}

/** What a line brings of one kind, up to the most; says so at the line where there is more. */
export function upToMost<T>(brought: readonly T[], what: 'jobs' | 'parts' | 'pieces of outside work' | 'fees', { kind, at }: Pick<Record, 'kind' | 'at'>, problems: Problem[]): readonly T[] {
  if (brought.length <= MOST_LINES) return brought;
  problems.push(problem(rules.tooManyLines, at, { kind: kind.word, what, most: MOST_LINES }));
  return brought.slice(0, MOST_LINES);
}

type Bringing = Pick<Option, 'labour' | 'parts' | 'sublets' | 'fees' | 'chances'>;

/** The options that together bring no more than the most, the first whatever it brings; says where there are more. */
export function upToMostInAll(options: readonly Option[], problems: Problem[]): readonly Option[] {
  let lines = 0;
  const over = options.findIndex((option, i) => (lines += linesOf(option)) > MOST_IN_ALL && i > 0);
  if (over === -1) return options;
  problems.push(problem(rules.tooLongInAll, (options[over] as Option).at, { most: MOST_IN_ALL }));
  return options.slice(0, over);
}

function linesOf({ labour, parts, sublets, fees, chances }: Bringing): number {
  return chances.reduce((sum, chance) => sum + linesOf(chance), labour.length + parts.length + sublets.length + fees.length);
}
