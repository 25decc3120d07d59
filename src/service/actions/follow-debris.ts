import { topics as allTopics, type Topic } from '../../vocabulary/index.js';
import { debrisNotFollowed } from '../checks/debris-not-followed.js';
import type { FeatureContext } from '../context.js';
import type { Action } from '../feature-types.js';
import type { Diagnostic } from '../types.js';
import { actionOf, lineAtEnd } from './edits.js';

/** One line of work for all places that nobody looks at yet. */
export function followDebris({ code, uri, data }: Diagnostic, context: FeatureContext): readonly (Action | undefined)[] {
  if (code !== debrisNotFollowed.code) return [];
  const { option: name, places, topics } = data as { readonly option: string; readonly places: readonly string[]; readonly topics: readonly Topic[] };
  const option = context.weighing(uri).resolved.estimate.options.find((one) => one.name === name)?.record;
  if (option === undefined || topics.some((topic) => !Object.hasOwn(allTopics, topic))) return [];
  const what = places.map((place) => place.replace(/^the /, '')).join(', ');
  return [actionOf(`Add work on ${what}, to be filled in`, code, [lineAtEnd(option, `labour "Debris: clean ${what}" counts as ${topics.join(', ')}`)], context)];
}
