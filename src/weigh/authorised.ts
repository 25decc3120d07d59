import { latest, type Authorised, type Option, type Overrun, type Stage } from '../estimate/index.js';
import type { Amount } from '../vocabulary/index.js';
import { zero } from '../vocabulary/index.js';
import { constant, given, greatest, least, percentage, remainder, type Figure } from './figure.js';
import { keeper } from './keep.js';
import type { Money } from './money.js';
import type { Comparison } from './weigh.js';

/** What it comes to beside what was authorised. */
interface Overrunning {
  readonly amount: Figure;
  /** What it is held against: today's total, or what was billed. */
  readonly total: Figure;
  /** By how much the total is above what was authorised; nothing where it is not. */
  readonly over: Figure;
  /** How far it may be above without asking. */
  readonly room: Figure;
  readonly used: Figure;
  readonly left: Figure;
  /** What is above the room too: as soon as there is any, the whole new total must be asked for. */
  readonly beyond: Figure;
}

/** The authorisation that holds for an option or a stage, beside what that comes to today. */
export interface AuthorisedWeighed extends Overrunning {
  readonly authorised: Authorised;
  /** Those for the same that it took the place of, in the order of the file. */
  readonly earlier: readonly Authorised[];
  readonly of: Option | Stage;
  /** The option that was authorised later, or was done, so that this one is not. */
  readonly since: Option | undefined;
  /** False where a line that the total rests on could not be read or priced: it may be too low. */
  readonly complete: boolean;
  readonly against: Against;
  /** Never once the job is closed: what was not asked before can't be. */
  readonly mustAsk: boolean;
}

/**
 * What an amount is held against: today's total while the job goes on; what was billed once it is closed. `nothing` where
 * it is closed and there is nothing to hold it against: another option was done, or nothing, or what was billed is not known.
 */
type Against = 'today' | 'billed' | 'nothing';

/**
 * The room that a shop's rule leaves over an authorised amount: a fixed amount, or a percentage of it, raised to the least
 * and then held to the most. The percentage is rounded to the smallest coin in the shop's own way; that is the only
 * rounding there is. Without a rule there is no room.
 */
function roomFor(amount: Figure, rule: Overrun | undefined, money: Money): Figure {
  const label = 'Room over what was authorised';
  if (rule === undefined) return constant(label, 'money', zero);
  const { by } = rule;
  if ('fixed' in by) return once(label, 'money', by.fixed);
  const { atLeast, atMost } = by;
  const share = percentage(atLeast === undefined && atMost === undefined ? label : 'Percentage of what was authorised', amount, once('Overrun', 'percent', by.percent), money, rule.at);
  const raised = atLeast === undefined ? share : greatest(atMost === undefined ? label : 'Raised to the least', [share, once('At least', 'money', atLeast)]);
  return atMost === undefined ? raised : least(label, [raised, once('At most', 'money', atMost)]);
}

/** Equal is within: only what is above the room must be asked. */
function overrunning(amount: Figure, total: Figure, rule: Overrun | undefined, money: Money): Overrunning {
  const room = roomFor(amount, rule, money);
  const over = remainder('Over what was authorised', 'money', [total, amount]);
  const used = least('Room used', [over, room]);
  return { amount, total, over, room, used, left: remainder('Room left', 'money', [room, used]), beyond: remainder('Above the room', 'money', [over, room]) };
}

const keepStanding = keeper<Comparison, readonly AuthorisedWeighed[]>();

/**
 * For every option and stage that something is authorised for: the latest authorisation beside today's total, tax and core
 * charges included, or what was billed for it. Of several options the one authorised last is the job, or the one that was done. Amounts in another currency than the shop's, and those that are missing, are left out: they have their message.
 */
export function authorisedIn(comparison: Comparison): readonly AuthorisedWeighed[] {
  return keepStanding(comparison, [], () => {
    const { estimate: { authorised, closed, shop }, options, stages, money } = comparison;
    if (authorised.length === 0) return [];
    const told = authorised.filter((one) => isMoney(one.amount, money));
    const agreed = options.find(({ option: { name } }) => name === latest(told.filter((one) => options.some(({ option }) => option.name === one.for)))?.for)?.option;
    const job = closed?.option ?? agreed;
    const billed = isMoney(closed?.billed, money) ? closed?.billed : undefined;
    const totals = [
      ...stages.map(({ stage, totals: { total }, complete }) => ({ of: stage, total, complete, since: undefined })),
      ...options.map(({ option, totals: { total }, complete }) => ({ of: option, total, complete, since: option === job ? undefined : job })),
    ];
    return totals.flatMap(({ of, total, complete, since }) => {
      const all = told.filter((one) => one.for === of.name);
      const last = latest(all);
      if (last?.amount === undefined) return [];
      const against = closed === undefined ? 'today' : of === closed.option && billed !== undefined ? 'billed' : 'nothing';
      const held = against === 'billed' && billed !== undefined ? once('Billed', 'money', billed) : total;
      const beside = overrunning(once('Authorised', 'money', last.amount), held, shop.overrun, money);
      return [{ ...beside, authorised: last, earlier: all.filter((one) => one !== last), of, complete, since, against, mustAsk: against === 'today' && beside.beyond.likely.gt(zero) }];
    });
  });
}

/**
 * What was authorised last, where the job was closed for something else: an option, or a stage where no option was
 * authorised. Undefined where nothing was done, or nothing authorised.
 */
export function authorisedElse({ closed, authorised, options, stages }: Comparison['estimate']): Option | Stage | undefined {
  const done = closed?.option;
  if (done === undefined || authorised.length === 0) return undefined;
  const lastOf = (all: readonly (Option | Stage)[]) => {
    const last = latest(authorised.filter((one) => all.some(({ name }) => name === one.for)));
    return all.find(({ name }) => name === last?.for);
  };
  const last = lastOf(options) ?? lastOf(stages);
  return last === done ? undefined : last;
}

function isMoney(amount: Amount | undefined, { currency }: Money): boolean {
  return amount !== undefined && (amount.currency === undefined || amount.currency === currency.code);
}

/** Of three figures, where one belongs, the middle one. */
function once(label: string, unit: 'money' | 'percent', amount: Amount): Figure {
  return given(label, unit, { ...amount, low: amount.likely, high: amount.likely });
}
