import type { Mutant } from './instrument.js';
import type { Passed, Timed } from './messages.js';

/** Which tests to run for a mutant, and in what order. */
export interface Killers {
  /** `kills` counts by test the mutants of the same file that it has killed already. */
  readonly of: (mutant: Mutant, kills: ReadonlyMap<string, number>) => readonly Timed[];
}

/** A test that may kill. */
interface Candidate extends Timed {
  readonly key: string;
  /** How many mutants it passes: the fewer, the more likely it looks at what this one spoils. */
  readonly breadth: number;
  /** About how long it takes to read its file, in milliseconds: some work out a good deal meanwhile. */
  readonly reading: number;
}

/** What a test is called among all. */
export function keyOf({ file, name }: Pick<Timed, 'file' | 'name'>): string {
  return `${file}: ${name}`;
}

/**
 * First come tests that are quick, about little, named like the source, and have killed its other mutants: most mutants
 * are killed by many tests. Those that together take longer than `budget` milliseconds are left out;
 * with `near`, also those whose name has nothing of the source's, but for the corpus.
 */
export function killersOf(passed: readonly Passed[], budget: number, reach: 'near' | 'all'): Killers {
  const byMutant = new Map<string, Candidate[]>();
  for (const file of passed) {
    for (const { passes, ...test } of file.tests) {
      const candidate = { ...test, key: keyOf(test), breadth: passes.length, reading: file.all.length / 50 };
      for (const key of new Set([...passes, ...file.all])) {
        const before = byMutant.get(key);
        if (before === undefined) byMutant.set(key, [candidate]);
        else before.push(candidate);
      }
    }
  }
  return {
    of: ({ file, id }, kills) => {
      const known = byMutant.get(`${file}#${id}`) ?? [];
      const candidates = reach === 'near' ? known.filter((test) => isNear(file, test.file)) : known;
      const kin = new Map([...new Set(candidates.map((test) => test.file))].map((name) => [name, kinship(file, name)]));
      const turn = ({ key, file: name, ms, reading, breadth }: Candidate) => ((ms + reading / 4 + 2) * Math.sqrt(breadth + 50)) / (1 + 30 * (kin.get(name) as number)) / (1 + 3 * (kills.get(key) ?? 0));
      const turns = new Map(candidates.map((test) => [test, turn(test)]));
      const all = [...candidates].sort((a, b) => (turns.get(a) as number) - (turns.get(b) as number));
      let sum = 0;
      const opened = new Set<string>();
      const affordable = all.filter((test, i) => {
        const cost = test.ms + (opened.has(test.file) ? 0 : test.reading);
        if (sum + cost > budget && i > 0) return false;
        sum += cost;
        opened.add(test.file);
        return true;
      });
      return affordable.map(({ file: name, name: test, ms }) => ({ file: name, name: test, ms }));
    },
  };
}

/** The corpus is near to everything: each of its texts is short and shows one thing, in whichever room that is made out. */
function isNear(source: string, test: string): boolean {
  return test.startsWith('test/corpus/') || kinship(source, test) > 0;
}

/** How many words the paths of a source and a test share: ‘schedule’ is tested in a folder of that name. */
function kinship(source: string, test: string): number {
  const words = wordsOf(test);
  return [...wordsOf(source)].filter((word) => words.has(word)).length;
}

/** The first letters are enough: ‘decide’ is tested in ‘decision’. */
function wordsOf(file: string): ReadonlySet<string> {
  return new Set(file.replace(/^\w+\/(?:weigh\/)?/, '').replace(/\.(?:test\.)?ts$/, '').split(/[/-]/).map((word) => word.slice(0, 4)));
}
