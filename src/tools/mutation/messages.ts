import type { Mutant } from './instrument.js';

/** A test, and how long it took with no mutant on, in milliseconds. */
export interface Timed {
  readonly file: string;
  readonly name: string;
  readonly ms: number;
}

/** What one test file passes: mutants as `file#id`. `all` are passed while the file is read, so they concern each of its tests. */
export interface Passed {
  readonly file: string;
  readonly tests: readonly (Timed & { readonly passes: readonly string[] })[];
  readonly all: readonly string[];
  /** Tests that fail with no mutant on; they can't kill. */
  readonly failing: readonly string[];
}

export type Asked =
  | { readonly ask: 'measure'; readonly file: string }
  | { readonly ask: 'try'; readonly mutant: Mutant; readonly tests: readonly Timed[] };

export type Answer =
  | { readonly say: 'measured'; readonly passed: Passed }
  | { readonly say: 'busy' }
  | { readonly say: 'tried'; readonly end: 'killed' | 'survived' | 'too long'; readonly by?: string; readonly why?: string };
