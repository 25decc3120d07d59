const NOTHING: readonly never[] = [];

/**
 * The same items in a list that holds no room for more: one that grew by pushes does, and a long file has tens of
 * thousands of short lists.
 */
export function exact<T>(items: readonly T[]): readonly T[] {
  return items.length === 0 ? NOTHING : items.slice();
}
