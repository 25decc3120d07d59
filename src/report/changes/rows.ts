import type { Change, Changes, Effect } from '../../weigh/changes/index.js';
import { zero, type Decimal } from '../../vocabulary/index.js';
import { moneyText } from '../numbers.js';
import { changeWords, followWords, turnWords } from './change-words.js';

/** One line of the table: its words, what it does besides, and an amount for each option. */
export interface ChangeRow {
  readonly words: string;
  /** Empty where it does nothing. */
  readonly note: string;
  readonly amounts: readonly Decimal[];
}

/** The rows that make the totals, and those that only the cost in all counts. */
interface ChangeRows {
  readonly changes: readonly ChangeRow[];
  readonly follows: readonly ChangeRow[];
  /** What comes back, and worth given up. */
  readonly beside: readonly ChangeRow[];
}

export function rowsOf(changes: Changes): ChangeRows {
  const total = (effects: readonly Effect[]) => effects.map((one) => one.total);
  const beside = (effects: readonly Effect[]) => effects.map((one) => one.inAll.minus(one.total));
  const told = [...changes.changes.map((one) => ({ words: changeWords(one), effects: one.effects })), ...changes.follows.map((one) => ({ words: followWords(one, changes), effects: one.effects }))];
  return {
    changes: changes.changes.map((one: Change) => ({ words: changeWords(one), note: turnWords(one, changes), amounts: total(one.effects) })),
    follows: changes.follows.filter(({ effects }) => moves(total(effects))).map((one) => ({ words: followWords(one, changes), note: '', amounts: total(one.effects) })),
    beside: told.filter(({ effects }) => moves(beside(effects))).map(({ words, effects }) => ({ words, note: '', amounts: beside(effects) })),
  };
}

function moves(amounts: readonly Decimal[]): boolean {
  return amounts.some((amount) => !amount.isZero());
}

/** The options that anything moves, by their place; all of them where nothing does. */
export function movedOptions({ options, changes, follows }: Changes): number[] {
  const all = options.map((_, i) => i);
  const moved = all.filter((i) => [...changes, ...follows].some(({ effects }) => effects[i]?.total.isZero() === false || effects[i]?.inAll.isZero() === false));
  return moved.length === 0 ? all : moved;
}

/** Signed, and empty where it is nothing. */
export function signedText(amount: Decimal, { money }: Changes): string {
  if (amount.isZero()) return '';
  return `${amount.gt(zero) ? '+' : ''}${moneyText(amount, money)}`;
}
