import { fnv1a } from '../../weigh/index.js';

/** The name says how the value is made; a change of that makes it v2 (3.27.17). */
export const FINGERPRINT = 'lineWords/v1';

/** A second 32 bits from the same hash, begun elsewhere. */
const SECOND_BASIS = 0x9747b28c;

/**
 * Tells a finding from all others of its file, and stays when lines above come or go or columns are lined up anew: made
 * from the rule and the words of the line, and from how many such there were before in the file.
 */
export function fingerprints(): (file: string, rule: string, line: string) => string {
  const met = new Map<string, number>();
  return (file, rule, line) => {
    const words = `${rule}\n${line.trim().replace(/\s+/g, ' ')}`;
    const key = `${file}\n${words}`;
    const count = (met.get(key) ?? 0) + 1;
    met.set(key, count);
    const hex = (basis?: number) => fnv1a(words, basis).toString(16).padStart(8, '0');
    return `${hex()}${hex(SECOND_BASIS)}:${count}`;
  };
}
