import type { Option } from '../estimate/index.js';

/** How long the shop answers for the work of an option, as it is written: `12 mo`. */
export function warrantyText({ warranty }: Pick<Option, 'warranty'>): string | undefined {
  return warranty === undefined ? undefined : `${warranty.likely.toFixed()} ${warranty.unit?.word ?? ''}`.trimEnd();
}
