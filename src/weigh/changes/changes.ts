import type { Record } from '../../vocabulary/index.js';
import type { Comparison, Weighed } from '../weigh.js';
import type { Version } from './again.js';
import { draftsOf, saidOf, type Draft } from './drafts.js';
import { effectsOf, type WeighedPair } from './effects.js';
import { match, type Matched } from './match.js';
import { wayNames, stateOf, pickOf } from './states.js';
import { thingsOf } from './things.js';
import type { Change, Effect, Follow, OptionPair, Pick } from './types.js';
import { Decimal } from '../../vocabulary/index.js';

/** What one version says and what it comes to. */
export interface VersionRead {
  readonly records: readonly Record[];
  readonly comparison: Comparison;
}

/** A change without its turns, beside the draft that a text with only this change is made from. */
export interface Found {
  readonly draft: Draft;
  readonly change: Omit<Change, 'alone' | 'last'>;
}

/** Everything that the two versions tell by themselves, without weighing any text in between. */
export interface Compared {
  readonly before: Version;
  readonly after: Version;
  readonly matched: Matched;
  readonly comparable: boolean;
  readonly weighed: readonly WeighedPair[];
  readonly options: readonly OptionPair[];
  /** Largest effect first. */
  readonly found: readonly Found[];
  readonly follows: readonly Follow[];
  readonly pick: { readonly before: Pick | undefined; readonly after: Pick | undefined };
}

export function compareVersions(one: VersionRead, other: VersionRead): Compared {
  const before: Version = { comparison: one.comparison, things: thingsOf(one.records) };
  const after: Version = { comparison: other.comparison, things: thingsOf(other.records) };
  const matched = match(before.things, after.things);
  const drafts = draftsOf({ before: before.things, after: after.things, matched });
  const weighed = pairOptions(before, after, matched);
  const currency = [one, other].map(({ comparison: { money } }) => `${money.currency.code} ${money.currency.digits}`);
  const comparable = currency[0] === currency[1] || one.comparison.options.length === 0 || other.comparison.options.length === 0;
  const ledger = comparable ? effectsOf({ before, after }, matched, drafts, weighed) : undefined;
  const none: readonly Effect[] = weighed.map(() => ({ total: new Decimal(0), inAll: new Decimal(0) }));
  const found = drafts.all.map((draft): Found => ({ draft, change: told(draft, ledger?.effectsOf(draft) ?? none) }));
  const size = new Map(found.map((one) => [one, sizeOf(one.change.effects)]));
  found.sort((a, b) => (size.get(b) as Decimal).comparedTo(size.get(a) as Decimal) || (a.draft.key < b.draft.key ? -1 : a.draft.key > b.draft.key ? 1 : 0));
  const follows = ledger === undefined ? [] : [...ledger.followRows()].map(({ key: { sort, title, option }, effects }): Follow => ({
    sort, title, effects,
    of: option === undefined ? undefined : { option, before: wayNames(weighed[option]?.before), after: wayNames(weighed[option]?.after) },
  }));
  const order = ['ways', 'rate', 'fee', 'tax', 'refund', 'tax-back', 'worth', 'rounding', 'other'];
  follows.sort((a, b) => order.indexOf(a.sort) - order.indexOf(b.sort) || (a.of?.option ?? 0) - (b.of?.option ?? 0) || (a.title < b.title ? -1 : a.title > b.title ? 1 : 0));
  return {
    before, after, matched, comparable, weighed, found, follows,
    options: weighed.map((pair) => ({ before: stateOf(pair.before), after: stateOf(pair.after) })),
    pick: { before: pickOf(before.comparison, weighed, 'before'), after: pickOf(after.comparison, weighed, 'after') },
  };
}

function told({ sort, before, after, link, facts }: Draft, effects: readonly Effect[]): Found['change'] {
  return {
    sort, facts, effects,
    before: before === undefined ? undefined : saidOf(before),
    after: after === undefined ? undefined : saidOf(after),
    link: link === undefined ? undefined : { lead: link.lead, by: saidOf(sort === 'went' ? link.before : link.after) },
  };
}

/** The options of the new version in their order, then those that went. */
function pairOptions(before: Version, after: Version, matched: Matched): WeighedPair[] {
  const partner = (weighed: Weighed): Weighed | undefined => {
    const thing = after.things.of(weighed.option.record);
    const pair = thing === undefined ? undefined : matched.pairOf(thing);
    return before.comparison.options.find(({ option }) => option.written === weighed.option.written && (!option.written || option.record === pair?.before.record));
  };
  const pairs: WeighedPair[] = after.comparison.options.map((weighed) => ({ before: partner(weighed), after: weighed }));
  const used = new Set(pairs.map((pair) => pair.before));
  return [...pairs, ...before.comparison.options.filter((weighed) => !used.has(weighed)).map((weighed) => ({ before: weighed, after: undefined }))];
}

/** By the option in which it moves most. */
function sizeOf(effects: readonly Effect[]): Decimal {
  return effects.reduce((most, { total, inAll }) => Decimal.max(most, total.abs(), inAll.abs()), new Decimal(0));
}
