import { units, type Kind, type ValueType } from '../../vocabulary/index.js';
import { kindAbove, kindOf } from '../at.js';
import type { Weighing } from '../types.js';
import { closingOffers, isOfClosing } from './closing.js';
import { dayOffers } from './dates.js';
import { valueStop } from './defaults.js';
import { sameTitle, usedFigures } from './figures.js';
import { bookFigures } from './from-book.js';
import type { Here } from './here.js';
import { saidOf } from './line-start.js';
import { ledOffer } from './led.js';
import { nameOffers, namesFor } from './names.js';
import type { Offer } from './offer.js';
import { inOrder } from './order.js';
import { fieldOfKey, leadAt, walkFact, walkHead, type Walked } from './walk.js';

/** Figure slots that stand for the same thing: a line says one of them. */
export const EITHER_OR: readonly (readonly string[])[] = [['price', 'cost', 'percent']];

/** What may stand behind the first word of a line. */
export function inLine(here: Here, weighing: Weighing): Offer[] {
  const statement = here.statement;
  if (statement === undefined) return [];
  const kind = kindOf(statement, here.above);
  if (kind !== undefined) return headOffers(here, kind, weighing);
  const parent = kindAbove(here.above);
  const lead = parent === undefined ? undefined : leadAt(parent, statement.tokens, 0);
  if (parent === undefined || lead === undefined || here.before.length < lead.words) return [];
  const field = fieldOfKey(parent, lead.key);
  return valueOffers(here, parent, walkFact(lead.key, field, here.before, lead.words), walkFact(lead.key, field, [...here.before.slice(0, lead.words), ...here.behind], lead.words), weighing);
}

function headOffers(here: Here, kind: Kind, weighing: Weighing): Offer[] {
  const walked = walkHead(kind, here.before);
  if (walked.waits.own && !walked.waits.slots) return [];
  const rest = walkHead(kind, [...here.before, ...here.behind]);
  const values = valueOffers(here, kind, walked, rest, weighing);
  const at = walked.waits.at ? [atOffer(here, kind)] : [];
  if (!walked.waits.slots) return [...values, ...at];
  const below = here.statement === undefined ? rest.said : saidOf({ ...here.statement, tokens: here.before }, kind, undefined);
  const said = new Set([...walked.said, ...rest.said, ...below]);
  for (const either of EITHER_OR) if (either.some((key) => said.has(key))) for (const key of either) said.add(key);
  const alike = here.behind.length === 0 && walked.said.size === 0 ? sameTitle(here, kind, weighing) : [];
  return [...values, ...bookFigures(here, kind, said, weighing.book), ...alike, ...inOrder(kind, [...wordOffers(here, kind, said, weighing), ...leadOffers(here, kind, said, weighing)]), ...at];
}

/** Words that need no lead, and names that need none. */
function wordOffers(here: Here, kind: Kind, said: ReadonlySet<string>, weighing: Weighing): Offer[] {
  if (isOfClosing(kind)) return closingNames(here, kind, said, weighing);
  return kind.bares.words.filter((key) => !said.has(key)).flatMap((key) => {
    const { value } = fieldOfKey(kind, key);
    return value.refersTo === undefined ? choiceOffers(value, []) : nameOffers(namesFor(value, [], { kind: undefined, name: undefined }, weighing), weighing);
  });
}

/** What a line of a closing is for: a line of the option that was done, or any that it may name where no option is said. */
function closingNames(here: Here, kind: Kind, said: ReadonlySet<string>, weighing: Weighing): Offer[] {
  const isTitled = here.statement?.tokens.some(({ kind }) => kind === 'text') === true;
  if (isTitled || kind.bares.words.every((key) => said.has(key))) return [];
  const offers = closingOffers(kind, here.above[here.above.length - 1], here.statement, weighing);
  if (offers.length > 0) return offers;
  return kind.bares.words.flatMap((key) => nameOffers(namesFor(fieldOfKey(kind, key).value, [], { kind: undefined, name: undefined }, weighing), weighing));
}

function leadOffers(here: Here, kind: Kind, said: ReadonlySet<string>, weighing: Weighing): Offer[] {
  const own = { kind, name: here.statement?.tokens[1]?.text };
  return [...kind.leads].filter(([, key]) => !said.has(key)).map((lead) => ledOffer(here, kind, lead, own, weighing));
}

function atOffer(here: Here, kind: Kind): Offer {
  const price = fieldOfKey(kind, kind.bares.figures[0] as string).value;
  return { label: 'at', kind: 'fact', detail: 'the figure for one', says: 'Makes the figure before it a quantity, as in 12 at 5.85.', texts: here.behind.length > 0 ? ['at', `at ${valueStop(price, 1, undefined)}`] : [`at ${valueStop(price, 1, undefined)}`] };
}

/** What the value of a slot may be, and units that its figure may have. */
function valueOffers(here: Here, kind: Kind, walked: Walked, rest: Walked, weighing: Weighing): Offer[] {
  const { value: key, unitOf, behindAt } = walked.waits;
  const offers = unitOf.flatMap((one) => unitOffers(kind, one));
  if (behindAt) {
    const price = fieldOfKey(kind, kind.bares.figures[0] as string).value;
    const led = [...kind.leads].filter(([, one]) => fieldOfKey(kind, one).value.measures?.[0] === price.measures?.[0] && EITHER_OR.some((either) => either.includes(one)));
    offers.push(...led.map(([lead, one]): Offer => ({ label: lead, kind: 'fact', detail: fieldOfKey(kind, one).value.label, says: fieldOfKey(kind, one).says, texts: here.behind.length > 0 ? [lead] : [`${lead} ${valueStop(fieldOfKey(kind, one).value, 1, undefined)}`] })));
  }
  if (key === undefined) return onceEach(offers);
  const { value } = fieldOfKey(kind, key);
  const listed = [...(walked.listed.get(key) ?? []), ...(rest.listed.get(key) ?? [])];
  if (value.refersTo !== undefined) {
    const records = namesFor(value, listed, ownName(here, kind), weighing);
    const builtIn = Object.entries(value.builtIn ?? {}).filter(([word]) => !listed.includes(word));
    return [...nameOffers(records, weighing), ...builtIn.map(([word, says]): Offer => ({ label: word, kind: 'name', detail: undefined, says, texts: [word] }))];
  }
  if (value.words !== undefined) return choiceOffers(value, listed);
  if (value.day === true) return dayOffers(here, kind, key, weighing);
  return value.measures === undefined ? [] : usedFigures(kind, key, weighing);
}

function ownName(here: Here, kind: Kind): { readonly kind: Kind; readonly name: string | undefined } {
  const line = kindOf(here.statement as NonNullable<Here['statement']>, here.above) === kind ? here.statement : here.above[here.above.length - 1];
  return { kind, name: line?.tokens[1]?.text };
}

function choiceOffers(value: ValueType<unknown>, listed: readonly string[]): Offer[] {
  return Object.entries(value.words ?? {}).filter(([word]) => !listed.includes(word)).map(([word, says]) => ({ label: word, kind: 'choice', detail: undefined, says, texts: [word] }));
}

/** A unit that only a quantity has brings the `at` along that makes its figure one. */
function unitOffers(kind: Kind, key: string): Offer[] {
  const { value, counts } = fieldOfKey(kind, key);
  const measures = value.measures ?? [];
  const offer = (word: string, says: string): Offer => ({ label: word, kind: 'unit', detail: says, says: value.says, texts: counts ? [word, `${word} at ${valueStop(fieldOfKey(kind, kind.bares.figures[0] as string).value, 1, undefined)}`] : [word] });
  const found = units.filter(({ dimension }) => measures.includes(dimension)).map(({ word, says }) => offer(word, says));
  return measures.includes('percent') ? [...found, offer('%', 'per cent')] : found;
}

function onceEach(offers: readonly Offer[]): Offer[] {
  const labels = new Set<string>();
  return offers.filter(({ label }) => !labels.has(label) && labels.add(label));
}

