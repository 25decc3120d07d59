import { changedSince } from './changed-since.js';

interface Before<T> {
  readonly list: readonly T[];
  readonly places: readonly number[];
}

/**
 * Where in a list something holds, such as the lines of a file that name a currency. Items never change: each is looked at
 * when it comes into a list, and not again while a keystroke replaces one of thousands.
 */
export class Places<T extends object> {
  private readonly before = new WeakMap<object, Before<T>>();

  constructor(private readonly holds: (item: T) => boolean) {}

  /** The places in rising order. `of` is what the list is known again by, such as its first item. */
  in(list: readonly T[], of: object | undefined): readonly number[] {
    if (of === undefined) return this.among(list);
    const before = this.before.get(of);
    const changed = before === undefined ? undefined : changedSince(before.list, list);
    const places = before === undefined || changed === undefined ? this.among(list) : this.replaced(before, list, changed);
    this.before.set(of, { list, places });
    return places;
  }

  private among(list: readonly T[]): readonly number[] {
    const places: number[] = [];
    list.forEach((item, i) => {
      if (this.holds(item)) places.push(i);
    });
    return places;
  }

  private replaced({ list: old, places }: Before<T>, list: readonly T[], changed: readonly number[]): readonly number[] {
    if (changed.every((i) => this.holds(old[i] as T) === this.holds(list[i] as T))) return places;
    const others = places.filter((i) => !changed.includes(i));
    return [...others, ...changed.filter((i) => this.holds(list[i] as T))].sort((a, b) => a - b);
  }
}
