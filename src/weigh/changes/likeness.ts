/**
 * How alike two texts are, from 0 to 1: Dice's coefficient over their pairs of neighbouring characters, each as often
 * as it stands there (L. R. Dice, Ecology 26(3), 1945, for sets; here for bags). Capitals and spaces don't count.
 */
export function textLikeness(a: string, b: string): number {
  const [one, other] = [plainOf(a), plainOf(b)];
  if (one === other) return 1;
  const left = pairsOf(one);
  let count = 0;
  let shared = 0;
  for (let i = 0; i + 1 < other.length; i++) {
    const pair = other.slice(i, i + 2);
    const many = left.get(pair) ?? 0;
    if (many > 0) {
      shared++;
      left.set(pair, many - 1);
    }
    count++;
  }
  const all = count + Math.max(0, one.length - 1);
  return all === 0 ? 0 : (2 * shared) / all;
}

function pairsOf(text: string): Map<string, number> {
  const pairs = new Map<string, number>();
  for (let i = 0; i + 1 < text.length; i++) {
    const pair = text.slice(i, i + 2);
    pairs.set(pair, (pairs.get(pair) ?? 0) + 1);
  }
  return pairs;
}

function plainOf(text: string): string {
  return text.toLowerCase().replace(/\s/g, '');
}

/** The share of what two lines say in which they agree, from 0 to 1; 1 where neither says anything. */
export function sharedFacts(a: ReadonlyMap<string, string>, b: ReadonlyMap<string, string>): number {
  const keys = new Set([...a.keys(), ...b.keys()]);
  if (keys.size === 0) return 1;
  let equal = 0;
  for (const key of keys) if (a.get(key) !== undefined && a.get(key) === b.get(key)) equal++;
  return equal / keys.size;
}
