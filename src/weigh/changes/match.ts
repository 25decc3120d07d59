import { kinds } from '../../vocabulary/index.js';
import { sharedFacts, textLikeness } from './likeness.js';
import { byName, factsOf } from './facts.js';
import { nameOf, titleOf, type Thing, type Things } from './things.js';

/** A line in both versions. */
export interface Pair {
  readonly before: Thing;
  readonly after: Thing;
}

export interface Matched {
  readonly pairs: readonly Pair[];
  readonly pairOf: (thing: Thing) => Pair | undefined;
  /** What only one version has; of lines that stand below each other only the uppermost. */
  readonly went: readonly Thing[];
  readonly came: readonly Thing[];
}

/**
 * Lines with neither name nor title in common are the same from here on: two thirds for the likeness of the titles,
 * one third for the share of figures that are equal.
 */
const ALIKE = 0.6;

/** So many lines of one kind are looked through for likeness on each side; beyond, only names, titles and content tell. */
const MOST_COMPARED = 150;

/** Of these there is one in an estimate, whatever it is called. */
const SINGLE: ReadonlySet<string> = new Set([kinds.shop.word, kinds.estimate.word, kinds.vehicle.word]);

/** What two lines are compared by. */
interface Look {
  readonly title: string;
  readonly facts: ReadonlyMap<string, string>;
  /** All of it: equal where the lines say the same. */
  readonly whole: string;
  /** The same without name and title. */
  readonly content: string;
}

/** Finds what became of each line. The order of lines doesn't matter, nor which version is held against which. */
export function match(before: Things, after: Things): Matched {
  const pairs: Pair[] = [];
  const found = new Map<Thing, Pair>();
  const looks = new Map<Thing, Look>();
  const join = (a: Thing, b: Thing) => {
    const pair = { before: a, after: b };
    pairs.push(pair);
    found.set(a, pair);
    found.set(b, pair);
  };
  const look = (thing: Thing): Look => {
    let known = looks.get(thing);
    if (known === undefined) looks.set(thing, (known = lookOf(thing)));
    return known;
  };
  const left = (things: readonly Thing[]) => things.filter((thing) => !found.has(thing));

  matchBelow(before.top, after.top);
  const loose = { before: left(looseOf(before.top)), after: left(looseOf(after.top)) };
  // What is below matched lines and left over may stand elsewhere.
  for (const [a, b] of bestFirst(loose.before, loose.after, (one, other) => (sameCall(one, other) ? likeness(one, other) : 0))) {
    join(a, b);
    matchBelow(a.children, b.children);
  }
  return { pairs, pairOf: (thing) => found.get(thing), went: left(looseOf(before.top)), came: left(looseOf(after.top)) };

  /** Those whose owner is matched, or that stand at the left edge. */
  function looseOf(things: readonly Thing[]): Thing[] {
    return things.flatMap((thing) => (found.has(thing) ? looseOf(thing.children) : [thing]));
  }

  function matchBelow(as: readonly Thing[], bs: readonly Thing[]): void {
    joinByKey(as, bs, (thing) => (SINGLE.has(thing.kind) ? thing.kind : nameOf(thing) === undefined ? undefined : `${thing.kind} ${nameOf(thing) ?? ''}`));
    for (const [a, b] of bestFirst(left(as), left(bs), (one, other) => (nameOf(one) === undefined && nameOf(other) === undefined && sameTitle(one, other) ? likeness(one, other) : 0))) join(a, b);
    joinByKey(left(as), left(bs), (thing) => (saysEnough(look(thing)) ? `${thing.kind} ${look(thing).content}` : undefined));
    for (const [a, b] of bestFirst(left(as), left(bs), likeness)) join(a, b);
    for (const a of as) {
      const b = found.get(a)?.after;
      if (b !== undefined) matchBelow(a.children, b.children);
    }
  }

  /** Joins what has a key that nobody else of its version has. */
  function joinByKey(as: readonly Thing[], bs: readonly Thing[], keyOf: (thing: Thing) => string | undefined): void {
    const [ofA, ofB] = [onlyOnes(as, keyOf), onlyOnes(bs, keyOf)];
    for (const [key, a] of ofA) {
      const b = ofB.get(key);
      if (a !== undefined && b !== undefined) join(a, b);
    }
  }

  /** The pairs that are alike enough, best first, each thing once. Ties go by what the lines say, whichever version is first. */
  function bestFirst(as: readonly Thing[], bs: readonly Thing[], score: (a: Thing, b: Thing) => number): (readonly [Thing, Thing])[] {
    const candidates: { readonly a: Thing; readonly b: Thing; readonly score: number; readonly key: string }[] = [];
    const ofKind = new Map<string, Thing[]>();
    for (const b of bs) ofKind.set(b.kind, [...(ofKind.get(b.kind) ?? []), b]);
    const count = new Map<string, number>();
    for (const { kind } of as) count.set(kind, (count.get(kind) ?? 0) + 1);
    for (const a of as) {
      const others = ofKind.get(a.kind) ?? [];
      if (Math.max(count.get(a.kind) ?? 0, others.length) > MOST_COMPARED) continue;
      for (const b of others) {
        const alike = score(a, b);
        if (alike >= ALIKE) candidates.push({ a, b, score: alike, key: [look(a).whole, look(b).whole].sort().join('\n') });
      }
    }
    candidates.sort((x, y) => y.score - x.score || (x.key < y.key ? -1 : x.key > y.key ? 1 : 0));
    const taken = new Set<Thing>();
    return candidates.flatMap(({ a, b }) => {
      if (taken.has(a) || taken.has(b)) return [];
      taken.add(a).add(b);
      return [[a, b] as const];
    });
  }

  function likeness(a: Thing, b: Thing): number {
    const [one, other] = [look(a), look(b)];
    return (2 * textLikeness(one.title, other.title) + sharedFacts(one.facts, other.facts)) / 3;
  }

  function sameCall(a: Thing, b: Thing): boolean {
    return sameTitle(a, b) || (nameOf(a) !== undefined && nameOf(a) === nameOf(b));
  }

  function sameTitle(a: Thing, b: Thing): boolean {
    return a.kind === b.kind && look(a).title === look(b).title;
  }
}

function lookOf(thing: Thing): Look {
  const facts = new Map([...factsOf(thing, byName)].map(([key, { meaning }]) => [key, meaning]));
  const content = [...facts].map(([key, meaning]) => `${key}=${meaning}`).sort().join('; ');
  // Without a title it is known by what it says, and that is compared already.
  const title = thing.record.title === undefined && thing.record.name === undefined ? '' : titleOf(thing);
  const below = thing.children.map((child) => lookOf(child).whole).sort().join('; ');
  return { title, facts, content, whole: `${thing.kind} ${nameOf(thing) ?? ''} ${title}: ${content} {${below}}` };
}

/** One figure alone is no fingerprint: much work takes 1.5 h. */
function saysEnough({ facts, content }: Look): boolean {
  return facts.size > 1 && /\d/.test(content);
}

function onlyOnes(things: readonly Thing[], keyOf: (thing: Thing) => string | undefined): ReadonlyMap<string, Thing | undefined> {
  const found = new Map<string, Thing | undefined>();
  for (const thing of things) {
    const key = keyOf(thing);
    if (key !== undefined) found.set(key, found.has(key) ? undefined : thing);
  }
  return found;
}
