import type { Authorised, State } from '../estimate/index.js';
import type { AuthorisedWeighed, Money } from '../weigh/index.js';
import { moneyText } from './numbers.js';

/** How the customer said it, behind a name. */
const howWords: Readonly<Record<NonNullable<Authorised['how']>, string>> = {
  'in-person': 'in person', phone: 'by telephone', message: 'by message', email: 'by email', signed: 'signed',
};

/** `authorised 4,988.10 · 30.12 of 50.00 room used`: what fits above an option. */
export function authorisedShort(one: AuthorisedWeighed, money: Money): string {
  return `authorised ${moneyText(one.amount.likely, money)} · ${roomShort(one, money)}`;
}

/** `30.12 of 50.00 room used`: what fits behind the line of an authorisation. */
export function roomShort({ complete, mustAsk, over, used, room, beyond, total, since, against }: AuthorisedWeighed, money: Money): string {
  const text = (figure: AuthorisedWeighed['over']) => moneyText(figure.likely, money);
  if (against === 'nothing') return 'closed';
  if (against === 'billed') return `${text(total)} billed${over.likely.isZero() ? '' : `, ${text(over)} above it${room.likely.isZero() ? '' : `, room ${text(room)}`}`}${beyond.likely.isZero() ? '' : ': not authorised'}`;
  if (since !== undefined) return `since then ${since.name} was authorised`;
  if (!complete) return 'today’s total is not whole';
  if (mustAsk) return `${text(over)} above it${room.likely.isZero() ? '' : `, room ${text(room)}`}: ask the customer`;
  return room.likely.isZero() ? 'nothing above it' : `${text(used)} of ${text(room)} room used`;
}

/** The same in sentences, for a paragraph of its own: who agreed to what, today's total beside it, and what follows. */
export function authorisedSentence(one: AuthorisedWeighed, money: Money): string {
  const { authorised: { on, by, how, version }, of, amount, total } = one;
  const text = (figure: AuthorisedWeighed['over']) => moneyText(figure.likely, money);
  const who = [...(on === undefined ? [] : [`on ${on}`]), ...(by === undefined ? [] : [`by ${by}`]), ...(how === undefined ? [] : [howWords[how]])].join(' ');
  const which = version === undefined ? '' : `, version “${version}”`;
  const agreed = `“${of.title}”: ${text(amount)} was authorised${who === '' ? '' : ` ${who}`}${which}.`;
  if (one.against === 'nothing') return `${agreed} The job is closed.`;
  if (one.against === 'billed') return `${agreed} The ${text(total)} that was billed is ${besideWords(one, money)}.${unsaid(one)}`;
  if (one.since !== undefined) return `${agreed} Since then “${one.since.title}” was authorised.`;
  if (!one.complete) return `${agreed} A line of today’s total can’t be read or priced, so the two can’t be compared.`;
  return `${agreed} Today’s total, tax and core charges included, is ${text(total)}: ${follows(one, text)}`;
}

/** What was billed beside what was authorised: `Authorised: 6,394.04; what was billed is not above it.` */
export function billedBeside(one: AuthorisedWeighed, money: Money): string {
  return `Authorised: ${moneyText(one.amount.likely, money)}; what was billed is ${besideWords(one, money)}.${unsaid(one)}`;
}

function besideWords({ over, room, beyond, total, amount }: AuthorisedWeighed, money: Money): string {
  const text = (figure: AuthorisedWeighed['over']) => moneyText(figure.likely, money);
  if (over.likely.isZero()) return total.likely.eq(amount.likely) ? 'the same' : 'not above it';
  if (beyond.likely.isZero()) return `${text(over)} above it, within the room of ${text(room)}`;
  return room.likely.isZero() ? `${text(over)} above it, and there is no room above it` : `${text(over)} above it, ${text(beyond)} more than the room of ${text(room)}`;
}

/** Nothing is concluded from it. */
function unsaid({ beyond }: AuthorisedWeighed): string {
  return beyond.likely.isZero() ? '' : ' No line says that the customer agreed to that; check your local rule on written estimates and authorisation.';
}

function follows(one: AuthorisedWeighed, text: (figure: AuthorisedWeighed['over']) => string): string {
  const { over, room, left, beyond, total, amount, mustAsk } = one;
  const roomSaid = room.likely.isZero() ? 'There is no room to go above it without asking.' : `Room without asking: ${text(room)}.`;
  if (over.likely.isZero()) return `${total.likely.eq(amount.likely) ? 'the same' : 'not above it'}. ${roomSaid}`;
  if (!mustAsk) return `${text(over)} above it, of a room of ${text(room)}; ${text(left)} is left.`;
  const above = room.likely.isZero() ? `${text(over)} above it, and there is no room without asking` : `${text(over)} above it, ${text(beyond)} more than the room of ${text(room)}`;
  return `${above}. Ask the customer for the new total before going on; check your local rule on written estimates and authorisation.`;
}

const stateWords: Readonly<Record<State['state'], string>> = {
  draft: 'Draft', quoted: 'Quoted', authorised: 'Authorised', 'in-work': 'In work', closed: 'Closed', expired: 'Expired',
};

/** `Authorised since 2026-11-25: used`, `Quoted on 2026-11-24: used, valid until 2026-12-08`. */
export function stateText({ state, since, option, validUntil }: State): string {
  const on = state === 'quoted' || state === 'closed' ? 'on' : 'since';
  const when = since === undefined ? '' : ` ${on} ${since}`;
  const valid = validUntil === undefined || state === 'expired' ? '' : `, valid until ${validUntil}`;
  return `${stateWords[state]}${when}${option === undefined ? '' : `: ${option}`}${valid}`;
}
