import { byName, factsOf, type Meant } from './facts.js';
import { linksOf, nameOf, titleOf, type Thing, type Things } from './things.js';

/** What two lines are compared by. */
export interface Look {
  readonly title: string;
  readonly facts: ReadonlyMap<string, string>;
  /** All of it: equal where the lines say the same. */
  readonly whole: string;
  /** The same without name and title, and without what stands below. */
  readonly content: string;
}

/** One figure alone is no fingerprint: much work takes 1.5 h. */
export function saysEnough({ facts, content }: Look): boolean {
  return facts.size > 1 && /\d/.test(content);
}

/** The looks of lines, each made once. */
export class Looks {
  private readonly looks = new Map<Thing, Look>();
  private readonly lists = new Map<Thing, readonly string[]>();

  of(thing: Thing): Look {
    const known = this.looks.get(thing);
    if (known !== undefined) return known;
    const facts = new Map([...factsOf(thing, byName)].map(([key, { meaning }]) => [key, meaning]));
    const content = [...facts].map(([key, meaning]) => `${key}=${meaning}`).sort().join('; ');
    // Without a title it is known by what it says, and that is compared already.
    const title = thing.record.title === undefined && thing.record.name === undefined ? '' : titleOf(thing);
    const look = { title, facts, content, whole: `${thing.kind} ${nameOf(thing) ?? ''} ${title}: ${content} {${this.wholeBelow(thing)}}` };
    this.looks.set(thing, look);
    return look;
  }

  /** The titles of what stands below a line and of what it brings in. */
  below(thing: Thing, things: Things): readonly string[] {
    const known = this.lists.get(thing);
    if (known !== undefined) return known;
    const brought = linksOf(thing, things).map(({ lead, target }) => `${lead} ${target.kind} ${titleOf(target)}`);
    const list = [...brought, ...thing.children.map((child) => `${child.kind} ${titleOf(child)}`)].sort();
    this.lists.set(thing, list);
    return list;
  }

  /** All that stands below a line, and by its titles what it brings in; undefined where that is nothing. */
  contentWithBelow(thing: Thing, things: Things): string | undefined {
    const below = this.below(thing, things);
    return below.length === 0 ? undefined : `${thing.kind} ${this.of(thing).content} {${below.join('; ')}} {${this.wholeBelow(thing)}}`;
  }

  private wholeBelow(thing: Thing): string {
    return thing.children.map((child) => this.of(child).whole).sort().join('; ');
  }
}

/** What a line says, with names told by the titles of the lines that have them. */
export function factsByTitle(thing: Thing, things: Things): ReadonlyMap<string, string> {
  const byTitle: Meant = ({ refersTo, name }) => {
    const meant = things.named(refersTo, name.name);
    return meant === undefined ? `? ${name.name}` : `${meant.kind} ${titleOf(meant)}`;
  };
  return new Map([...factsOf(thing, byTitle)].map(([key, { meaning }]) => [key, meaning]));
}

/** How many of a list are in the other too, each as often as it is in both. */
export function countShared(ours: readonly string[], theirs: readonly string[]): number {
  if (ours.length === 0 || theirs.length === 0) return 0;
  const left = [...theirs];
  return ours.filter((one) => {
    const at = left.indexOf(one);
    if (at >= 0) left.splice(at, 1);
    return at >= 0;
  }).length;
}
