/** The closest word within two slips of the finger, or undefined. */
export function closest(written: string, words: Iterable<string>): string | undefined {
  if (written.length > 40) return undefined;
  const most = written.length <= 3 ? 1 : 2;
  let best: string | undefined;
  let bestDistance = most + 1;
  for (const word of words) {
    if (Math.abs(word.length - written.length) > most) continue;
    const distance = slips(written.toLowerCase(), word.toLowerCase());
    if (distance < bestDistance) {
      best = word;
      bestDistance = distance;
    }
  }
  return best;
}

/** The one word of a list that such a beginning stands for: `sat` for saturday. */
export function begun(written: string, words: readonly string[]): string | undefined {
  const found = written.length < 2 ? [] : words.filter((word) => word.startsWith(written.toLowerCase()));
  return found.length === 1 ? found[0] : undefined;
}

/** Insertions, deletions, changes and swapped neighbours between two short words (optimal string alignment). */
function slips(a: string, b: string): number {
  let twoBack: number[] = [];
  let previous = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const row = [i];
    for (let j = 1; j <= b.length; j++) {
      const change = a[i - 1] === b[j - 1] ? 0 : 1;
      let cost = Math.min((previous[j] as number) + 1, (row[j - 1] as number) + 1, (previous[j - 1] as number) + change);
      if (i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1]) cost = Math.min(cost, (twoBack[j - 2] as number) + 1);
      row.push(cost);
    }
    twoBack = previous;
    previous = row;
  }
  return previous[b.length] as number;
}
