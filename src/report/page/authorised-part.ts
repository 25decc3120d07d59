import { authorisedIn } from '../../weigh/index.js';
import { authorisedSentence } from '../authorised-words.js';
import type { PageView } from './cells.js';
import { titled } from './decided.js';
import type { Html } from './html.js';
import { sentences } from './sentence-lists.js';
import { authorisedId } from './targets.js';

/** What was authorised beside what it comes to today; each sentence leads to its line. Nothing where there is no such record. */
export function authorisedPart({ comparison }: PageView): Html | undefined {
  const all = authorisedIn(comparison);
  if (all.length === 0) return undefined;
  const { estimate: { authorised }, money } = comparison;
  return titled('authorised', 'Authorised', sentences(all.map((one) => [authorisedId(authorised.indexOf(one.authorised)), authorisedSentence(one, money)])));
}
