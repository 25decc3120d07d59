import type { Finding } from './work-types.js';

/** The findings that speak against something, by its name; in the order of the file. */
export type Against = ReadonlyMap<string, readonly Finding[]>;

/** What the findings of an estimate rule out, be it an option or work: a name that both have means both. */
export function againstIn(findings: readonly Finding[]): Against {
  const against = new Map<string, Finding[]>();
  for (const finding of findings) {
    for (const name of finding.rulesOut) {
      const others = against.get(name);
      if (others === undefined) against.set(name, [finding]);
      else others.push(finding);
    }
  }
  return against;
}
