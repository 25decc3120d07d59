import type { Comparison, Weighed } from '../weigh.js';
import type { SideName } from './again.js';
import type { Compared, Found } from './changes.js';
import type { Draft } from './drafts.js';
import type { WeighedPair } from './effects.js';
import type { Thing } from './things.js';
import type { Change, Turn, Turned } from './types.js';

/** So many changes are tried one by one, two texts each, those with the largest effects first. */
export const MOST_TRIED = 24;

/** Weighs a version with one change made in it; undefined where the text with it is not whole. */
export type TryTexts = (base: SideName, draft: Draft) => Comparison | undefined;

/** Nothing that is quoted or planned rests on these. */
const UNWEIGHED: ReadonlySet<string> = new Set(['note', 'coverage', 'consider', 'inspect', 'chance', 'quoted', 'authorised', 'started', 'closed']);

/** Adds to each change what it does to the day and the choice, alone and on top of all the others. */
export function withTurns(compared: Compared, tryTexts: TryTexts): readonly Change[] {
  let tried = 0;
  return compared.found.map((one) => {
    const { change } = one;
    if (!mayTurn(one)) return { ...change, alone: 'none', last: 'none' };
    if (++tried > MOST_TRIED) return { ...change, alone: 'beyond', last: 'beyond' };
    const { before, after } = compared;
    const alone = turnOf(before.comparison, tryTexts('before', one.draft), 'before', compared.weighed);
    const last = turnOf(tryTexts('after', one.draft), after.comparison, 'after', compared.weighed);
    return { ...change, alone, last };
  });
}

/** Another name or title alone turns nothing, since it is changed wherever it is used; nor does a finding that rules nothing out. */
function mayTurn({ draft: { sort, before, after, link } }: Found): boolean {
  if (sort === 'renamed') return false;
  for (let thing: Thing | undefined = link?.after ?? link?.before ?? after ?? before; thing !== undefined; thing = thing.owner) if (UNWEIGHED.has(thing.kind)) return false;
  return ![before, after].some((one) => one?.kind === 'finding') || [before, after].some((one) => one?.record.values['rulesOut'] !== undefined);
}

function turnOf(before: Comparison | undefined, after: Comparison | undefined, base: SideName, pairs: readonly WeighedPair[]): Turned {
  if (before === undefined || after === undefined) return 'unknown';
  return {
    options: pairs.map((pair) => {
      const [one, other] = [optionIn(before, pair, base), optionIn(after, pair, base)];
      if (one === undefined || other === undefined) return undefined;
      return {
        days: { before: one.ready.days.likely, after: other.ready.days.likely },
        ready: { before: one.ready.date, after: other.ready.date },
        inAll: { before: one.inAll.likely, after: other.inAll.likely },
      };
    }),
    pick: { before: pickIn(before, base, pairs), after: pickIn(after, base, pairs) },
  } satisfies Turn;
}

/** Texts in between go by the names of the version they were made from; what came in has its own. */
function optionIn({ options }: Comparison, pair: WeighedPair, base: SideName): Weighed | undefined {
  const name = (pair[base] ?? pair.before ?? pair.after)?.option.name;
  return options.find(({ option }) => option.name === name);
}

/** Its place among the pairs. */
function pickIn({ ranking: [first] }: Comparison, base: SideName, pairs: readonly WeighedPair[]): number | undefined {
  const at = pairs.findIndex((one) => (one[base] ?? one.before ?? one.after)?.option.name === first?.option.name);
  return at < 0 ? undefined : at;
}
