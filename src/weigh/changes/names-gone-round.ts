import { sharedFacts } from './likeness.js';
import { factsByTitle, type Looks } from './looks.js';
import { nameOf, referencesIn, titleOf, withAllBelow, type Thing, type Things } from './things.js';

/** A line of the old version, and one of the new version that may be the same. */
export type Couple = readonly [before: Thing, after: Thing];

export interface Sides {
  readonly before: Things;
  readonly after: Things;
}

/**
 * Lines that keep their title under a name that another line had or gets: two swapped their names, or names went on from line
 * to line. Taken by their titles where these agree better than their names with what the lines say, what they bring in and
 * who names them; else the name decides, so lines that swapped only their titles stay what they were.
 */
export function namesGoneRound(before: readonly Thing[], after: readonly Thing[], sides: Sides, looks: Looks): readonly Couple[] {
  const byName = { before: named(before), after: named(after) };
  // Who has the same title under the same name is the same, and has nothing to do with it.
  const open = (side: 'before' | 'after') => [...byName[side]].flatMap(([key, thing]) => {
    const other = byName[side === 'before' ? 'after' : 'before'].get(key);
    return other !== undefined && titleOf(other) === titleOf(thing) ? [] : [thing];
  });
  const byTitle = onlyOnes(open('after'), callOf);
  const titled = new Map([...onlyOnes(open('before'), callOf)].flatMap(([title, a]): readonly Couple[] => {
    const b = byTitle.get(title);
    return a === undefined || b === undefined ? [] : [[a, b]];
  }));
  if (titled.size === 0) return [];
  const namedBy = { before: namersIn(sides.before), after: namersIn(sides.after) };
  const said = (thing: Thing, side: 'before' | 'after') => new Map([
    ...factsByTitle(thing, sides[side]), ...[...looks.below(thing, sides[side]), ...(namedBy[side].get(thing) ?? [])].map((one) => [`: ${one}`, ''] as const),
  ]);
  const agreement = ([a, b]: Couple) => {
    const [ours, theirs] = [said(a, 'before'), said(b, 'after')];
    return ours.size + theirs.size === 0 ? 0 : sharedFacts(ours, theirs);
  };
  return ringsOf(titled, byName).flatMap(({ titles, names }) => {
    const sum = (couples: readonly Couple[]) => couples.reduce((all, one) => all + agreement(one), 0);
    return sum(titles) > sum(names) + NOISE ? titles : [];
  });
}

/** Sums of the same shares in another order differ by less. */
const NOISE = 1e-9;

/** Couples by their titles that hang together over the names of their lines, and the couples that the names make of them. */
function ringsOf(titled: ReadonlyMap<Thing, Thing>, byName: { readonly [side in 'before' | 'after']: ReadonlyMap<string, Thing> }): { readonly titles: readonly Couple[]; readonly names: readonly Couple[] }[] {
  const titledBefore = new Map([...titled].map(([a, b]) => [b, a]));
  const seen = new Set<Thing>();
  return [...titled].flatMap(([first, other]) => {
    if (seen.has(first)) return [];
    const titles: Couple[] = [];
    const names = new Map<Thing, Thing>();
    const queue: Couple[] = [[first, other]];
    seen.add(first);
    for (let at = 0; at < queue.length; at++) {
      const [a, b] = queue[at] as Couple;
      titles.push([a, b]);
      const [next, last] = [byName.after.get(nameKey(a)), byName.before.get(nameKey(b))];
      if (next !== undefined) names.set(a, next);
      if (last !== undefined) names.set(last, b);
      for (const one of [next === undefined ? undefined : titledBefore.get(next), last]) {
        const its = one === undefined ? undefined : titled.get(one);
        if (one === undefined || its === undefined || seen.has(one)) continue;
        seen.add(one);
        queue.push([one, its]);
      }
    }
    return [{ titles, names: [...names] }];
  });
}

/** For each line that others name, their titles. */
function namersIn(things: Things): ReadonlyMap<Thing, readonly string[]> {
  const found = new Map<Thing, string[]>();
  for (const namer of things.top.flatMap(withAllBelow)) {
    for (const { key, refersTo, name } of namer.said.flatMap(referencesIn)) {
      const meant = things.named(refersTo, name.name);
      if (meant === undefined) continue;
      const namers = found.get(meant);
      const words = `${key} of ${callOf(namer)}`;
      if (namers === undefined) found.set(meant, [words]);
      else namers.push(words);
    }
  }
  return found;
}

function named(things: readonly Thing[]): ReadonlyMap<string, Thing> {
  const found = onlyOnes(things.filter((thing) => nameOf(thing) !== undefined), nameKey);
  return new Map([...found].flatMap(([key, thing]) => (thing === undefined ? [] : [[key, thing] as const])));
}

function nameKey(thing: Thing): string {
  return `${thing.kind} ${nameOf(thing) ?? ''}`;
}

function callOf(thing: Thing): string {
  return `${thing.kind} ${titleOf(thing)}`;
}

/** By a key: the line that alone has it; undefined where several do. */
export function onlyOnes(things: readonly Thing[], keyOf: (thing: Thing) => string | undefined): ReadonlyMap<string, Thing | undefined> {
  const found = new Map<string, Thing | undefined>();
  for (const thing of things) {
    const key = keyOf(thing);
    if (key !== undefined) found.set(key, found.has(key) ? undefined : thing);
  }
  return found;
}
