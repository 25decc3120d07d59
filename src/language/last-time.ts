import { changedSince } from './changed-since.js';

/** Where a list differs from what it was. */
export interface Changes<T> {
  readonly places: readonly number[];
  readonly old: readonly T[];
  readonly now: readonly T[];
}

/**
 * What is worked out from a list, kept for the next list that differs from it in a few items only: a keystroke replaces one
 * of thousands of lines. Items never change themselves.
 */
export class LastTime<T, V> {
  private readonly before = new WeakMap<object, { readonly list: readonly T[]; readonly value: V }>();

  /** @param again the value where some items changed; undefined where it must be worked out anew. */
  constructor(
    private readonly anew: (list: readonly T[]) => V,
    private readonly again: (value: V, changes: Changes<T>) => V | undefined,
  ) {}

  /** `of` is what the list is known again by, such as its first item. */
  for(list: readonly T[], of: object | undefined): V {
    if (of === undefined) return this.anew(list);
    const before = this.before.get(of);
    const places = before === undefined ? undefined : changedSince(before.list, list);
    const value = (before === undefined || places === undefined ? undefined : this.again(before.value, { places, old: before.list, now: list })) ?? this.anew(list);
    this.before.set(of, { list, value });
    return value;
  }
}
