/** Worked out when somebody first asks, and kept: most of what a plan could tell nobody asks for while an estimate is typed. */
export function lazily<T>(make: () => T): () => T {
  let made: { readonly value: T } | undefined;
  return () => (made ??= { value: make() }).value;
}
