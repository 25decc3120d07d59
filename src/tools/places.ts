import { allKinds, fileKinds, type Kind } from '../vocabulary/index.js';

/** Where a kind may stand: the kinds above it, outermost first; empty at the left edge. */
export type Place = readonly Kind[];

/**
 * Every place where a line of this kind may stand. A kind that may stand below itself, or below what stands below it,
 * is met once on the way down, so that there are as many places as there are different ones.
 */
export function placesOf(kind: Kind): readonly Place[] {
  return placesBelow(kind, new Set());
}

function placesBelow(kind: Kind, met: ReadonlySet<Kind>): readonly Place[] {
  const places: Place[] = fileKinds.includes(kind) ? [[]] : [];
  for (const parent of parentsOf(kind)) {
    if (met.has(parent)) continue;
    for (const above of placesBelow(parent, new Set([...met, parent]))) places.push([...above, parent]);
  }
  return places;
}

export function parentsOf(kind: Kind): readonly Kind[] {
  return allKinds.filter((parent) => parent.children.includes(kind));
}

/** A kind's example as it stands at a place: below the first lines of its parents' examples. */
export function exampleAt(kind: Kind, place: Place): string {
  const heads = place.map((parent, depth) => `${'  '.repeat(depth)}${parent.example.split('\n')[0] ?? ''}`);
  const own = kind.example.split('\n').map((line) => `${'  '.repeat(place.length)}${line}`);
  const first = kind.word === 'steelyard' ? [] : ['steelyard 1'];
  return [...first, ...heads, ...own, ''].join('\n');
}
