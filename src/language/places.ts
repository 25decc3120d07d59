import { LastTime, type Changes } from './last-time.js';

/**
 * Where in a list something holds, such as the lines of a file that name a currency. Each item is looked at when it comes
 * into a list, and not again while a keystroke replaces one of thousands.
 */
export class Places<T> {
  private readonly lastTime = new LastTime<T, readonly number[]>((list) => this.among(list), (places, changes) => this.replaced(places, changes));

  constructor(private readonly holds: (item: T) => boolean) {}

  /** The places in rising order. `of` is what the list is known again by, such as its first item. */
  in(list: readonly T[], of: object | undefined): readonly number[] {
    return this.lastTime.for(list, of);
  }

  /** What stands at those places. */
  itemsIn(list: readonly T[], of: object | undefined): readonly T[] {
    return this.in(list, of).map((i) => list[i] as T);
  }

  private among(list: readonly T[]): readonly number[] {
    const places: number[] = [];
    list.forEach((item, i) => {
      if (this.holds(item)) places.push(i);
    });
    return places;
  }

  private replaced(places: readonly number[], { places: changed, old, now }: Changes<T>): readonly number[] {
    if (changed.every((i) => this.holds(old[i] as T) === this.holds(now[i] as T))) return places;
    const others = places.filter((i) => !changed.includes(i));
    return [...others, ...changed.filter((i) => this.holds(now[i] as T))].sort((a, b) => a - b);
  }
}
