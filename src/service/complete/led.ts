import type { Kind, ValueType } from '../../vocabulary/index.js';
import type { Weighing } from '../types.js';
import { isDayOfJob } from './dates.js';
import { valueStop } from './defaults.js';
import { exampleText } from './example.js';
import type { Here } from './here.js';
import { firstName, type Naming } from './names.js';
import type { Offer } from './offer.js';
import { fieldOfKey } from './walk.js';

/**
 * A lead word, with a value to type over that makes sense as it stands: a line that there is, the day, or what the
 * kind's own example says. Where the line goes on behind it, the word alone may do: what follows becomes its value.
 */
export function ledOffer(here: Here, kind: Kind, [lead, key]: readonly [string, string], own: Naming, weighing: Weighing): Offer {
  const field = fieldOfKey(kind, key);
  const { value, says } = field;
  const named = firstName(value, own, weighing) ?? Object.keys(value.builtIn ?? {})[0];
  const waits = value.refersTo !== undefined && named === undefined;
  const written = isDayOfJob(kind, field) ? here.today : undefined;
  const whole = `${lead} ${valueStop(value, 1, named ?? freshName(value, own), written ?? exampleText(kind, key))}`;
  return { label: lead, kind: 'fact', detail: waits ? nothingYet(value) : value.label, says, texts: here.behind.length > 0 ? [lead, whole] : [whole], waits };
}

/** Why a slot has nothing that it could name. */
export function nothingYet({ refersTo = [] }: ValueType<unknown>): string {
  return `there is no ${refersTo.join(' or ')} line yet`;
}

/** A name for a line that is still to be written; never that of the line itself. */
function freshName({ examples: [example = 'name'] }: ValueType<unknown>, own: Naming): string {
  return example === own.name ? `${example}-2` : example;
}
