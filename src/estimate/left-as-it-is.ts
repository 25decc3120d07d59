import { bring } from './brought.js';
import type { Option } from './option-types.js';

/** Whether an option leaves the vehicle as it is: all the work and goods that it has come before the decision. */
export function isLeftAsItIs({ labour, staged, parts, sublets }: Pick<Option, 'labour' | 'staged' | 'parts' | 'sublets'>): boolean {
  if (labour.some((job) => job.done !== 'first' && staged?.labour.includes(job) !== true)) return false;
  const brought = bring(labour);
  return parts.length === brought.parts.length && sublets.length === brought.sublets.length;
}
