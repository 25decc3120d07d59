import type { Range } from '../language/index.js';

/** A place in a file, in UTF-16 offsets. */
export interface Place {
  readonly uri: string;
  readonly range: Range;
}
