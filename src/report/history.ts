import type { Case, JobHistory } from '../weigh/index.js';

/** A case with where it is written, without keeping hold of the text. */
export interface PlacedCase extends Case {
  readonly file: string;
  readonly line: number;
}

/** A file of which nothing was taken. */
export interface LeftOut {
  readonly file: string;
  readonly line: number | undefined;
  readonly why: string;
}

/** The shop's book of times with all that it was made from. */
export interface History {
  readonly jobs: readonly JobHistory<PlacedCase>[];
  /** Files that were looked at, and those of them that are closed. */
  readonly files: number;
  readonly closed: number;
  readonly leftOut: readonly LeftOut[];
}
