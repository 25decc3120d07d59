// Checks that also work where there is no Node: the web build is tested in a browser's worker.

export function ok(value: unknown, says = 'expected something'): asserts value {
  if (value === undefined || value === null || value === false || value === '') throw new Error(says);
}

export function same(found: unknown, expected: unknown): void {
  const [a, b] = [JSON.stringify(found), JSON.stringify(expected)];
  if (a !== b) throw new Error(`found ${a}, expected ${b}`);
}
