import type { Finding, Option, Source } from '../../estimate/index.js';
import { findingsBehind, type OptionView, type View } from './view.js';

/** The findings that an option rests on, through any of its lines. */
export function workFindings({ option }: OptionView, { estimate }: View): readonly Finding[] {
  return findingsBehind(linesOf(option), estimate.findings);
}

/** One after the other, since most often the first ones name all findings there are. */
function* linesOf(option: Option): Iterable<Source> {
  yield option;
  yield* option.labour;
  yield* option.parts;
  yield* option.sublets;
}
