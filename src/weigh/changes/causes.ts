import type { Weighed } from '../weigh.js';
import type { SideName, Version } from './again.js';
import type { Draft, Drafts } from './drafts.js';
import type { Matched } from './match.js';
import { linksOf, nameOf, titleOf, type Thing } from './things.js';
import type { FollowSort } from './types.js';

/** A row of what follows: by its sort, what it is about, and the option where it has its own words in each. */
export interface FollowKey {
  readonly sort: FollowSort;
  readonly title: string;
  readonly option: number | undefined;
}

export type Cause = Draft | FollowKey;

/** One option as both versions weigh it. */
export interface BothWeighed {
  readonly index: number;
  readonly before: Weighed;
  readonly after: Weighed;
}

/** Where a walk begins, and why that is in one version only where it is. */
interface Start {
  readonly thing: Thing;
  readonly cause: Cause | 'in both';
}

/** Finds why a line stands in an option in one version only. */
export class Causes {
  constructor(
    private readonly versions: { readonly [side in SideName]: Version },
    private readonly matched: Matched,
    private readonly drafts: Drafts,
  ) {}

  /** Why a line of `thing` is in the option on `side` and not on the other. */
  of(thing: Thing, side: SideName, option: BothWeighed): Cause {
    const own = this.drafts.ofThing(thing);
    if (own !== undefined && (own.sort === 'came' || own.sort === 'went' || own.sort === 'elsewhere')) return own;
    // Not in what the other version says, though the line is there: it says less, or more, of the same thing.
    if (own?.sort === 'moved' && this.reached(this.partner(thing, side), side === 'before' ? 'after' : 'before', option)) return own;
    return this.linked(thing, side, option) ?? own ?? { sort: 'other', title: titleOf(thing), option: undefined };
  }

  /** Why other ways in are taken: since the option's pin moved, or because that became the cheapest. */
  ways({ index, after }: BothWeighed): Cause {
    const option = this.versions.after.things.of(after.option.record);
    const pinned = option === undefined ? undefined : this.drafts.ofThing(option);
    return pinned?.facts.some(({ fact }) => fact === 'way') === true ? pinned : { sort: 'ways', title: 'Way in', option: index };
  }

  private partner(thing: Thing, side: SideName): Thing | undefined {
    return this.matched.pairOf(thing)?.[side === 'before' ? 'after' : 'before'];
  }

  /** The first link on the way from the option to the thing that only this version has. */
  private linked(thing: Thing, side: SideName, option: BothWeighed): Cause | undefined {
    for (const walk of this.walks(side, option)) {
      const found = walk.get(thing);
      if (found !== undefined && found !== 'in both') return found;
    }
    return undefined;
  }

  private reached(thing: Thing | undefined, side: SideName, option: BothWeighed): boolean {
    return thing !== undefined && this.walks(side, option).some((walk) => walk.has(thing));
  }

  private readonly walked = new Map<string, readonly ReadonlyMap<Thing, Cause | 'in both'>[]>();

  private walks(side: SideName, option: BothWeighed): readonly ReadonlyMap<Thing, Cause | 'in both'>[] {
    const key = `${side} ${option.index}`;
    const walks = this.walked.get(key) ?? this.startsOf(side, option).map((start) => this.walk(start, side));
    this.walked.set(key, walks);
    return walks;
  }

  /** Where an option's lines begin: the option itself, the stages before it, and the ways in that it pays for. */
  private startsOf(side: SideName, both: BothWeighed): Start[] {
    const { things, comparison } = this.versions[side];
    const weighed = both[side];
    const options = weighed.option.written ? [weighed.option] : comparison.options.filter(({ option }) => option.written).map(({ option }) => option);
    const starts = [...options, ...comparison.estimate.stages].flatMap(({ record }): Start[] => {
      const thing = things.of(record);
      if (thing === undefined) return [];
      return [{ thing, cause: this.partner(thing, side) === undefined ? (this.drafts.ofThing(thing) ?? 'in both') : 'in both' }];
    });
    const paid = new Set(both[side === 'before' ? 'after' : 'before'].planned.chosen.paid.map(({ record }) => record));
    const ways = weighed.planned.chosen.paid.flatMap(({ record }) => {
      const thing = things.of(record);
      if (thing === undefined) return [];
      const partner = this.partner(thing, side);
      const cause = partner === undefined ? (this.drafts.ofThing(thing) ?? ('in both' as const)) : paid.has(partner.record) ? ('in both' as const) : this.ways(both);
      return [{ thing, cause }];
    });
    // A way in that a stage opens no more is missing for that reason, whatever the plan makes of it.
    const inOrder = (list: readonly Start[]) => [...list].sort((a, b) => compare(sortKey(a.thing), sortKey(b.thing)));
    return [...inOrder(starts), ...inOrder(ways)];
  }

  /** All that is brought in from a start, nearest first, each with the first link to it that only this version has. */
  private walk(start: Start, side: SideName): ReadonlyMap<Thing, Cause | 'in both'> {
    const { things } = this.versions[side];
    const found = new Map([[start.thing, start.cause]]);
    const queue = [start.thing];
    for (let at = 0; at < queue.length; at++) {
      const thing = queue[at] as Thing;
      const so = found.get(thing) as Cause | 'in both';
      const links = linksOf(thing, things).map(({ lead, target }) => ({ target, cause: so === 'in both' ? (this.drafts.ofLink(thing, lead, target) ?? so) : so }));
      const below = thing.children.filter(({ kind }) => kind !== 'chance').map((target) => ({ target, cause: so }));
      for (const { target, cause } of [...links, ...below].sort((a, b) => compare(sortKey(a.target), sortKey(b.target)))) {
        if (found.has(target)) continue;
        found.set(target, cause);
        queue.push(target);
      }
    }
    return found;
  }
}

function sortKey(thing: Thing): string {
  return `${thing.kind} ${nameOf(thing) ?? ''} ${titleOf(thing)}`;
}

function compare(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}
