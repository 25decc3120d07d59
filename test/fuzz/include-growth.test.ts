import { expect, test } from 'vitest';
import { createLanguageService, resolveWithin } from '../../src/service/index.js';

/** Files in a folder of which each uses the next twice, or all behind it: 2 to the power of their number if each were read as often as it is used. */
function readsOf(files: Readonly<Record<string, string>>): { readonly reads: readonly string[]; readonly codes: readonly string[] } {
  const reads: string[] = [];
  const service = createLanguageService({
    read: (uri) => {
      reads.push(uri);
      const text = files[uri.slice('/w/'.length)];
      return text === undefined ? 'missing' : { text };
    },
    resolvePath: (from, path) => resolveWithin('/w', from, path),
  });
  const codes = [...service.allDiagnostics('/w/f0.yard').values()].flat().map(({ code }) => code);
  return { reads, codes: [...new Set(codes)] };
}

const named = (count: number, uses: (i: number) => readonly number[]) => Object.fromEntries(Array.from({ length: count }, (_, i) => [`f${i}.yard`, `steelyard 1\n${uses(i).map((other) => `use "f${other}.yard"`).join('\n')}\n`]));

test.each([
  ['each uses the next twice', named(20, (i) => [i + 1, i + 1])],
  ['each uses all behind it', named(30, (i) => Array.from({ length: 29 - i }, (_, k) => i + 1 + k))],
  ['each uses all', named(30, () => Array.from({ length: 30 }, (_, k) => k))],
])('%s: a file is read as often as it must be, and what is too much is told', (_, files) => {
  const { reads, codes } = readsOf(files);
  expect(new Set(reads).size).toBeLessThanOrEqual(25);
  expect(reads.length).toBeLessThan(2_000);
  expect(codes).toContain('use-too-many');
});
