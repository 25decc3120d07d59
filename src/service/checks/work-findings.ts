import type { Finding } from '../../estimate/index.js';
import { findingsBehind, type OptionView, type View } from './view.js';

/** The findings that an option rests on, through any of its lines. */
export function workFindings({ option }: OptionView, { estimate }: View): readonly Finding[] {
  return findingsBehind([option, ...option.labour, ...option.parts, ...option.sublets], estimate.findings);
}
