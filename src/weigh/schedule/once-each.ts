/** Up to so many are compared with each other; a set is only quicker for more. */
const SHORT = 8;

/** The same numbers in the same order, each once. Nearly every list is short and has nothing twice; it is then given back as it is. */
export function onceEach(list: readonly number[]): readonly number[] {
  if (list.length > SHORT) return [...new Set(list)];
  for (let i = 1; i < list.length; i++) if (list.indexOf(list[i] as number) < i) return [...new Set(list)];
  return list;
}
