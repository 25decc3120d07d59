/** An invariant that does not hold: a short name of it, and what was seen. */
export class Broken extends Error {
  constructor(readonly claim: string, seen: string) {
    super(`${claim}: ${seen.length > 600 ? `${seen.slice(0, 600)}…` : seen}`);
  }
}

export function holds(claim: string, ok: boolean, seen: () => string): void {
  if (!ok) throw new Broken(claim, seen());
}

export function same(claim: string, found: string, wanted: string): void {
  if (found === wanted) return;
  let at = 0;
  while (found[at] === wanted[at]) at++;
  throw new Broken(claim, `from ${at} on ${JSON.stringify(found.slice(Math.max(0, at - 40), at + 120))} instead of ${JSON.stringify(wanted.slice(Math.max(0, at - 40), at + 120))}`);
}

/** What stands in no output unless it stands in the input: the words of a calculation or a template gone wrong. */
const GONE_WRONG = /\bNaN\b|\bInfinity\b|\bundefined\b|\[object \w+\]|\bnull\b/;

const UNSEEN = /[^!-~]+/g;

/** Text for people, of a given input. */
export function clean(claim: string, output: string, input: string): void {
  const found = GONE_WRONG.exec(output);
  // A message leaves out what can’t be seen, so the word may stand in the input in pieces.
  if (found !== null && !input.replace(UNSEEN, '').includes(found[0])) throw new Broken(claim, output.slice(Math.max(0, found.index - 80), found.index + 80));
}

/** Data: no number that is none, whatever its name. Looks as deep as data goes; what was seen is not looked at again. */
export function finite(claim: string, data: unknown): void {
  const seen = new Set<object>();
  const visit = (one: unknown, path: string): void => {
    if (typeof one === 'number' && !Number.isFinite(one)) throw new Broken(claim, `${one} at ${path}`);
    if (typeof one !== 'object' || one === null || seen.has(one)) return;
    seen.add(one);
    for (const [key, value] of one instanceof Map ? one : Object.entries(one)) visit(value, `${path}.${String(key)}`);
  };
  visit(data, '');
}
