import { authorisedSentence } from '../../report/index.js';
import type { Record } from '../../vocabulary/index.js';
import { authorisedIn, type Comparison } from '../../weigh/index.js';

/** What of an authorisation is used, what is left of the room, and whether to ask; of one that was replaced by which. */
export function authorisedSays(record: Record, comparison: Comparison): string[] {
  return authorisedIn(comparison).flatMap((one) => {
    if (one.authorised.record === record) return [authorisedSentence(one, comparison.money)];
    if (!one.earlier.some((earlier) => earlier.record === record)) return [];
    const { on } = one.authorised;
    return [`A later line holds for ${one.of.name}${on === undefined ? '' : `: that of ${on}`}.`];
  });
}
