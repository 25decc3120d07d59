import { zero, type Decimal } from '../../vocabulary/index.js';
import type { Cause, FollowKey } from './causes.js';
import type { Draft } from './drafts.js';
import type { Effect } from './types.js';

/** `total`: in the option's total. `beside`: what comes back and worth given up, which only its cost in all counts. */
export type Column = 'total' | 'beside';

const ROUNDING: FollowKey = { sort: 'rounding', title: 'Rounding', option: undefined };

/**
 * Who moved how much in which option. Shares are rounded to the smallest coin, halves away from nothing, so that they
 * turn their sign when the versions change places; what that leaves over is a row of its own.
 */
export class Ledger {
  private readonly rows = new Map<Cause, Map<string, Decimal>>();
  private readonly follows = new Map<string, FollowKey>();

  constructor(
    private readonly options: number,
    private readonly digits: number,
  ) {}

  /** Books the parts of one difference, each to its cause. */
  book(option: number, column: Column, parts: readonly (readonly [Cause, Decimal])[]): void {
    const [only, ...others] = parts;
    // Nothing is divided: worth may be written finer than the smallest coin, and stays so.
    if (only !== undefined && others.length === 0) return this.add(only[0], option, column, only[1]);
    let left = zero;
    for (const [cause, exact] of parts) {
      const rounded = exact.toDecimalPlaces(this.digits, 4);
      this.add(cause, option, column, rounded);
      left = left.plus(exact.minus(rounded));
    }
    this.add(ROUNDING, option, column, left.toDecimalPlaces(this.digits, 4));
  }

  effectsOf(cause: Cause): Effect[] {
    const row = this.rows.get(cause);
    return Array.from({ length: this.options }, (_, option) => {
      const total = row?.get(`${option} total`) ?? zero;
      return { total, inAll: total.plus(row?.get(`${option} beside`) ?? zero) };
    });
  }

  /** The rows of what follows that hold any money. */
  *followRows(): Generator<{ readonly key: FollowKey; readonly effects: readonly Effect[] }> {
    for (const key of this.follows.values()) {
      const effects = this.effectsOf(key);
      if (effects.some(({ total, inAll }) => !total.isZero() || !inAll.isZero())) yield { key, effects };
    }
  }

  private add(cause: Cause, option: number, column: Column, amount: Decimal): void {
    if (amount.isZero()) return;
    const one = isFollow(cause) ? this.known(cause) : cause;
    const row = this.rows.get(one) ?? new Map<string, Decimal>();
    this.rows.set(one, row.set(`${option} ${column}`, (row.get(`${option} ${column}`) ?? zero).plus(amount)));
  }

  private known(key: FollowKey): FollowKey {
    const words = `${key.sort} ${key.title} ${key.option ?? ''}`;
    const known = this.follows.get(words) ?? key;
    this.follows.set(words, known);
    return known;
  }
}

function isFollow(cause: Cause): cause is FollowKey {
  return !('key' in (cause as Partial<Draft>));
}
