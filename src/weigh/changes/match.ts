import { kinds } from '../../vocabulary/index.js';
import { sharedFacts, textLikeness } from './likeness.js';
import { countShared, Looks, saysEnough } from './looks.js';
import { namesGoneRound, onlyOnes } from './names-gone-round.js';
import { nameOf, type Thing, type Things } from './things.js';

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

/** So many lines with the same kind or title are looked through for likeness on each side; beyond, only what one line alone has tells. */
const MOST_COMPARED = 150;

/** Of these there is one in an estimate, whatever it is called. */
const SINGLE: ReadonlySet<string> = new Set([kinds.shop.word, kinds.estimate.word, kinds.vehicle.word]);

/** Puts a thing of a version among those that it may be taken for; undefined where it can't be any. */
type KeyOf = (thing: Thing, version: Things) => string | undefined;

/** Finds what became of each line. The order of lines doesn't matter, nor which version is held against which. */
export function match(before: Things, after: Things): Matched {
  const pairs: Pair[] = [];
  const found = new Map<Thing, Pair>();
  const looks = new Looks();
  const join = (a: Thing, b: Thing) => {
    const pair = { before: a, after: b };
    pairs.push(pair);
    found.set(a, pair);
    found.set(b, pair);
  };
  const left = (things: readonly Thing[]) => things.filter((thing) => !found.has(thing));
  const byName: KeyOf = (thing) => (SINGLE.has(thing.kind) ? thing.kind : nameOf(thing) === undefined ? undefined : `${thing.kind} ${nameOf(thing) ?? ''}`);
  const byTitle: KeyOf = (thing) => `${thing.kind} ${looks.of(thing).title}`;
  const byTitleAndContent: KeyOf = (thing) => `${thing.kind} ${looks.of(thing).title}: ${looks.of(thing).content}`;

  // What a line is called goes before what it says: another line may say the same.
  matchCalled(before.top, after.top);
  matchElsewhere(byTitleAndContent);
  matchAlike(before.top, after.top);
  matchElsewhere(byTitle);
  return { pairs, pairOf: (thing) => found.get(thing), went: left(looseOf(before.top)), came: left(looseOf(after.top)) };

  /** Those whose owner is matched, or that stand at the left edge. */
  function looseOf(things: readonly Thing[]): Thing[] {
    return things.flatMap((thing) => (found.has(thing) ? looseOf(thing.children) : [thing]));
  }

  /** By name and title, where they stand. */
  function matchCalled(as: readonly Thing[], bs: readonly Thing[]): void {
    for (const [a, b] of namesGoneRound(as, bs, { before, after }, looks)) join(a, b);
    joinOnlyOnes(left(as), left(bs), byName);
    joinBest(left(as), left(bs), byTitle);
    for (const a of as) {
      const b = found.get(a)?.after;
      if (b !== undefined) matchCalled(a.children, b.children);
    }
  }

  /** By what they say, where they stand: of what is left, all the same below, the same content, then the likest. */
  function matchAlike(as: readonly Thing[], bs: readonly Thing[]): void {
    const open = left(as);
    joinOnlyOnes(open, left(bs), (thing, version) => looks.contentWithBelow(thing, version));
    joinOnlyOnes(left(as), left(bs), (thing) => (saysEnough(looks.of(thing)) ? `${thing.kind} ${looks.of(thing).content}` : undefined));
    joinBest(left(as), left(bs), ({ kind }) => kind);
    for (const a of open) matchCalled(a.children, found.get(a)?.after.children ?? []);
    for (const a of as) matchAlike(a.children, found.get(a)?.after.children ?? []);
  }

  /** What is below matched lines and left over may stand elsewhere: under its name, or else with the same of `keyOf`, and alike. */
  function matchElsewhere(keyOf: KeyOf): void {
    const open = left(looseOf(before.top));
    joinBest(open, left(looseOf(after.top)), byName);
    joinBest(left(open), left(looseOf(after.top)), keyOf);
    for (const a of open) {
      const b = found.get(a)?.after;
      if (b === undefined) continue;
      matchCalled(a.children, b.children);
      matchAlike(a.children, b.children);
    }
  }

  /** Joins what has a key that nobody else of its version has. */
  function joinOnlyOnes(as: readonly Thing[], bs: readonly Thing[], keyOf: KeyOf): void {
    const [ofA, ofB] = [onlyOnes(as, (thing) => keyOf(thing, before)), onlyOnes(bs, (thing) => keyOf(thing, after))];
    for (const [key, a] of ofA) {
      const b = ofB.get(key);
      if (a !== undefined && b !== undefined) join(a, b);
    }
  }

  /**
   * Joins those of one key that are alike enough, best first, each once. Of equals those that both have a name or both have
   * none, then those with more in common below them, then by what the lines say, whichever version is first.
   */
  function joinBest(as: readonly Thing[], bs: readonly Thing[], keyOf: KeyOf): void {
    const candidates: { readonly a: Thing; readonly b: Thing; readonly score: number; readonly named: number; readonly below: number; readonly key: string }[] = [];
    const [ofA, ofB] = [grouped(as, before, keyOf), grouped(bs, after, keyOf)];
    for (const [key, ours] of ofA) {
      const theirs = ofB.get(key) ?? [];
      if (Math.max(ours.length, theirs.length) > MOST_COMPARED) continue;
      for (const a of ours) {
        for (const b of theirs) {
          const score = likeness(a, b);
          if (score < ALIKE) continue;
          const named = (nameOf(a) === undefined) === (nameOf(b) === undefined) ? 1 : 0;
          candidates.push({ a, b, score, named, below: countShared(looks.below(a, before), looks.below(b, after)), key: [looks.of(a).whole, looks.of(b).whole].sort().join('\n') });
        }
      }
    }
    candidates.sort((x, y) => y.score - x.score || y.named - x.named || y.below - x.below || (x.key < y.key ? -1 : x.key > y.key ? 1 : 0));
    for (const { a, b } of candidates) if (!found.has(a) && !found.has(b)) join(a, b);
  }

  function likeness(a: Thing, b: Thing): number {
    const [one, other] = [looks.of(a), looks.of(b)];
    return (2 * textLikeness(one.title, other.title) + sharedFacts(one.facts, other.facts)) / 3;
  }
}

function grouped(things: readonly Thing[], version: Things, keyOf: KeyOf): ReadonlyMap<string, readonly Thing[]> {
  const groups = new Map<string, Thing[]>();
  for (const thing of things) {
    const key = keyOf(thing, version);
    if (key === undefined) continue;
    const group = groups.get(key);
    if (group === undefined) groups.set(key, [thing]);
    else group.push(thing);
  }
  return groups;
}
