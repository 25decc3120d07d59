import { factsOf, type Fact, type Meant } from './facts.js';
import type { Matched, Pair } from './match.js';
import { linksOf, nameOf, titleOf, withAllBelow, type Thing, type Things } from './things.js';
import type { ChangeSort, FactMove, Said } from './types.js';

/** A change, before it is known what it does. */
export interface Draft {
  readonly sort: ChangeSort;
  readonly before: Thing | undefined;
  readonly after: Thing | undefined;
  readonly facts: readonly FactMove[];
  /** Set where another line brings this one in, or does no more. */
  readonly link: Link | undefined;
  /** The same whichever version is the first; orders what is equal otherwise. */
  readonly key: string;
}

/** A name behind a word that brings lines in, and the line that says it, which both versions have. */
export interface Link extends Pair {
  readonly lead: string;
}

/** Both versions with what became of whom. */
export interface Versions {
  readonly before: Things;
  readonly after: Things;
  readonly matched: Matched;
}

/** Every change, and which of them a line or a link belongs to. */
export interface Drafts {
  readonly all: readonly Draft[];
  /** What became of a thing: of itself, or of the line above it that came or went with it. */
  readonly ofThing: (thing: Thing) => Draft | undefined;
  /** The change that a link came or went by; undefined where both versions have it. */
  readonly ofLink: (owner: Thing, lead: string, target: Thing) => Draft | undefined;
}

export function draftsOf(versions: Versions): Drafts {
  const { matched } = versions;
  const all: Draft[] = [];
  const byThing = new Map<Thing, Draft>();
  const byLink = new Map<string, Draft>();
  const ids = new Map<Thing, number>();
  const idOf = (thing: Thing): number => {
    const one = matched.pairOf(thing)?.before ?? thing;
    const id = ids.get(one) ?? ids.size;
    ids.set(one, id);
    return id;
  };
  const linkKey = (owner: Thing, lead: string, target: Thing) => `${idOf(owner)} ${lead} ${idOf(target)}`;
  const add = (draft: Omit<Draft, 'key'>, moved: readonly string[] = []): Draft => {
    const made = { ...draft, key: keyOf(draft, moved) };
    all.push(made);
    return made;
  };

  for (const [sort, things] of [['went', matched.went], ['came', matched.came]] as const) {
    for (const thing of things) {
      const draft = add({ sort, before: sort === 'went' ? thing : undefined, after: sort === 'came' ? thing : undefined, facts: [], link: undefined });
      for (const one of withAllBelow(thing)) byThing.set(one, draft);
    }
  }
  const meaning = { before: meantIn(versions.before, matched), after: meantIn(versions.after, matched) };
  for (const pair of matched.pairs) {
    const moves = movesOf(factsOf(pair.before, meaning.before), factsOf(pair.after, meaning.after));
    const facts = [...moves.values()];
    const sort = sortOf(pair, facts, matched);
    if (sort === undefined) continue;
    const draft = add({ sort, before: pair.before, after: pair.after, facts, link: undefined }, [...moves.keys()]);
    byThing.set(pair.before, draft);
    byThing.set(pair.after, draft);
  }
  for (const pair of matched.pairs) {
    const links = { before: linksOf(pair.before, versions.before), after: linksOf(pair.after, versions.after) };
    const has = { before: new Set(links.before.map(({ lead, target }) => linkKey(pair.before, lead, target))), after: new Set(links.after.map(({ lead, target }) => linkKey(pair.after, lead, target))) };
    for (const [side, other, sort] of [['before', 'after', 'went'], ['after', 'before', 'came']] as const) {
      for (const { lead, target } of links[side]) {
        const key = linkKey(pair[side], lead, target);
        const there = matched.pairOf(target);
        if (has[other].has(key) || there === undefined || byLink.has(key) || takesItsLinks(byThing.get(target))) continue;
        byLink.set(key, add({ sort, before: there.before, after: there.after, facts: [], link: { lead, ...pair } }));
      }
    }
  }
  return {
    all,
    ofThing: (thing) => byThing.get(thing),
    ofLink: (owner, lead, target) => takesItsLinks(byThing.get(target)) ? byThing.get(target) : matched.pairOf(owner) === undefined ? byThing.get(owner) : byLink.get(linkKey(owner, lead, target)),
  };
}

/** What names a line that came, went or stands elsewhere changes with it. */
function takesItsLinks(target: Draft | undefined): boolean {
  return target !== undefined && target.sort !== 'moved' && target.sort !== 'renamed';
}

/** A name means the line that has it, whatever that is called in the other version. */
function meantIn(things: Things, matched: Matched): Meant {
  return ({ refersTo, name, field }) => {
    const thing = things.named(refersTo, name.name);
    const pair = thing === undefined ? undefined : matched.pairOf(thing);
    // By both names and titles: of lines that swapped their names each has its own.
    if (pair !== undefined) return [pair.before, pair.after].map((one) => `${one.kind} ${nameOf(one) ?? ''} ${titleOf(one)}`).sort().join(' = ');
    // A list loses or gains by another change what only one version has.
    return thing !== undefined && field.many ? undefined : `? ${name.name}`;
  };
}

/** By keys that are the same in both versions; what a fact is called may not be. */
function movesOf(before: ReadonlyMap<string, Fact>, after: ReadonlyMap<string, Fact>): ReadonlyMap<string, FactMove> {
  return new Map([...new Set([...before.keys(), ...after.keys()])].sort().flatMap((key): (readonly [string, FactMove])[] => {
    const [one, other] = [before.get(key), after.get(key)];
    const said = one ?? other;
    if (said === undefined || one?.meaning === other?.meaning) return [];
    return [[key, { fact: said.label, before: one?.written, after: other?.written }]];
  }));
}

function sortOf({ before, after }: Pair, facts: readonly FactMove[], matched: Matched): ChangeSort | undefined {
  const sameOwner = before.owner === undefined || after.owner === undefined ? before.owner === after.owner : matched.pairOf(before.owner)?.after === after.owner;
  if (!sameOwner) return 'elsewhere';
  if (facts.length > 0) return 'moved';
  return nameOf(before) !== nameOf(after) || before.record.title?.text !== after.record.title?.text ? 'renamed' : undefined;
}

function keyOf({ before, after, link, facts }: Omit<Draft, 'key'>, moved: readonly string[]): string {
  const say = (thing: Thing | undefined) => (thing === undefined ? '' : `${thing.owner === undefined ? '' : titleOf(thing.owner)} ${thing.kind} ${nameOf(thing) ?? ''} ${titleOf(thing)}`);
  const ends = (one: string, other: string) => [one, other].sort().join(' | ');
  return [ends(say(before), say(after)), link?.lead ?? '', ends(say(link?.before), say(link?.after)), ...facts.map((one, i) => `${moved[i] ?? ''} ${ends(one.before ?? '', one.after ?? '')}`)].join(' / ');
}

/** A thing as it is told. */
export function saidOf(thing: Thing): Said {
  return { kind: thing.kind, name: nameOf(thing), title: titleOf(thing), under: thing.owner === undefined ? undefined : titleOf(thing.owner), at: thing.record.at };
}
