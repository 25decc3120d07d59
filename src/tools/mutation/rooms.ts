import { readdirSync } from 'node:fs';
import path from 'node:path';

/** The rooms that are mutated when nothing else is asked for: what reads a text, and what works out figures. */
export const ROOMS: readonly string[] = ['src/language', 'src/vocabulary', 'src/estimate', 'src/weigh'];

/** Left out: these hold words and tables for readers, which the corpus and the generated files watch as text. */
const WORDS = /^src\/vocabulary\/(?:topics|.*rules|json|zod)\.ts$|\/index\.ts$|\/[\w-]*-rules\.ts$|\/types\.ts$/;

/** The tests that may kill a mutant. Those of the ends (editor, terminal, pages) are left out: they are slow, and see figures only as text. */
const TESTS: readonly string[] = ['language', 'vocabulary', 'estimate', 'weigh', 'oracle', 'changes', 'history', 'closing', 'authorised', 'stage', 'corpus'].map((name) => `test/${name}`);
const OF_ENDS = /(?:cli|service|shown)\.test\.ts$/;

function below(folder: string, wanted: (file: string) => boolean): string[] {
  const names = readdirSync(folder, { recursive: true, encoding: 'utf8' }).map((name) => path.posix.join(folder, name.split(path.sep).join('/')));
  return names.filter(wanted).sort();
}

/** The source files of folders and files, as paths from the root of the repository. */
export function sourcesOf(places: readonly string[]): string[] {
  return places.flatMap((place) => (place.endsWith('.ts') ? [place] : below(place, (name) => name.endsWith('.ts') && !WORDS.test(name))));
}

export function testsThatMayKill(): string[] {
  return TESTS.flatMap((folder) => below(folder, (name) => name.endsWith('.test.ts') && !OF_ENDS.test(name)));
}
