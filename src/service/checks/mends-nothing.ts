import { bring, type Option } from '../../estimate/index.js';

/** Whether an option leaves the vehicle as it is: all that it does comes before the decision. */
export function mendsNothing({ labour, staged, parts, sublets, chances, warranty, lasts, written }: Option): boolean {
  if (!written || warranty !== undefined || lasts !== undefined || chances.length > 0) return false;
  const before = labour.filter((job) => job.done === 'first' || staged?.labour.includes(job) === true);
  if (before.length < labour.length) return false;
  const brought = bring(before);
  return parts.every((part) => brought.parts.includes(part)) && sublets.every((sublet) => brought.sublets.includes(sublet));
}
