import { sameItems } from '../language/index.js';

/**
 * Keeps what was worked out for a thing, for as long as that and everything else it was worked from stays the same.
 * The calculations stay pure: the same inputs give the same result, only sooner. Entities keep their identity over
 * keystrokes that don't touch them, so an edit works out anew only what it changes.
 */
export function keeper<K extends object, V>(): (thing: K, workedFrom: readonly unknown[], work: () => V) => V {
  const kept = new WeakMap<K, { readonly workedFrom: readonly unknown[]; readonly value: V }>();
  return (thing, workedFrom, work) => {
    const before = kept.get(thing);
    if (before !== undefined && sameItems(before.workedFrom, workedFrom)) return before.value;
    const value = work();
    kept.set(thing, { workedFrom, value });
    return value;
  };
}
