import type { Span } from '../../language/index.js';
import type { Decimal } from '../../vocabulary/index.js';
import type { Money } from '../money.js';

/** What became of a line: it is new, it is gone, what it says is other, it only has another name or title, or it stands elsewhere. */
export type ChangeSort = 'came' | 'went' | 'moved' | 'renamed' | 'elsewhere';

/** A line as one of the two versions has it. */
export interface Said {
  /** First word of the line, such as `labour`. */
  readonly kind: string;
  readonly name: string | undefined;
  /** What people call it: its title, or else its name, or what the line says. */
  readonly title: string;
  /** The title of the line that it stands below. */
  readonly under: string | undefined;
  readonly at: Span;
}

/** One thing that a line says, as written in the two versions; undefined where that version doesn't say it. */
export interface FactMove {
  /** The word that leads to it, or what it is where no word does: `hours`, `price`. */
  readonly fact: string;
  readonly before: string | undefined;
  readonly after: string | undefined;
}

/** Money that something moves in one option: exact, in the smallest coins. */
export interface Effect {
  /** In its total. */
  readonly total: Decimal;
  /** In its cost in all, by which options are compared. */
  readonly inAll: Decimal;
}

/** How one change turns the day and the choice, found by weighing a text that has it against one that has not. */
export interface Turn {
  /** For each option of `Changes.options`; undefined where one of the two texts has no such option. */
  readonly options: readonly (TurnOfOption | undefined)[];
  /** The option that costs least in all, by its place in `Changes.options`; undefined where there is none. */
  readonly pick: { readonly before: number | undefined; readonly after: number | undefined };
}

export interface TurnOfOption {
  /** Working days until it is ready. */
  readonly days: { readonly before: Decimal; readonly after: Decimal };
  /** YYYY-MM-DD; undefined without a day to start from. */
  readonly ready: { readonly before: string | undefined; readonly after: string | undefined };
  /** Cost in all. */
  readonly inAll: { readonly before: Decimal; readonly after: Decimal };
}

/**
 * `none`: nothing that is weighed rests on it. `unknown`: the text with only this change, or without it, can't be weighed.
 * `beyond`: more changes than are tried one by one.
 */
export type Turned = Turn | 'none' | 'unknown' | 'beyond';

/** One change, with all that it does. */
export interface Change {
  readonly sort: ChangeSort;
  readonly before: Said | undefined;
  readonly after: Said | undefined;
  /** Set where the line itself is the same and another one brings it in, or does no more: by which word, and which line. */
  readonly link: { readonly lead: string; readonly by: Said } | undefined;
  readonly facts: readonly FactMove[];
  /** For each option of `Changes.options`. */
  readonly effects: readonly Effect[];
  /** The old version with only this change. */
  readonly alone: Turned;
  /** What it adds on top of all the others: the new version against that without it. */
  readonly last: Turned;
}

/** What follows from the changes without being a line of its own. */
export type FollowSort = 'ways' | 'rate' | 'fee' | 'tax' | 'refund' | 'tax-back' | 'worth' | 'rounding' | 'other';

export interface Follow {
  readonly sort: FollowSort;
  readonly title: string;
  /** Where it is of one option only, its place in `Changes.options`, and its words in the two versions. */
  readonly of: { readonly option: number; readonly before: string; readonly after: string } | undefined;
  readonly effects: readonly Effect[];
}

/** One option in one version. */
export interface OptionState {
  readonly name: string;
  readonly title: string;
  readonly at: Span;
  readonly total: Decimal;
  readonly inAll: Decimal;
  readonly hours: Decimal;
  readonly days: Decimal;
  readonly ready: string | undefined;
  readonly ways: readonly string[];
  /** False where a line that it rests on can't be read or priced; its effects are then incomplete too. */
  readonly complete: boolean;
  /** Titles of the findings that speak against it; with any it is no choice. */
  readonly ruledOut: readonly string[];
}

/** An option in both versions; undefined in the one that doesn't have it. */
export interface OptionPair {
  readonly before: OptionState | undefined;
  readonly after: OptionState | undefined;
}

/** The option that costs least in all, and by how much less than the next. */
export interface Pick {
  /** Its place in `Changes.options`. */
  readonly option: number;
  readonly inAll: Decimal;
  readonly less: Decimal | undefined;
  readonly next: number | undefined;
}

/** What stops a side from being weighed. */
export type SideTrouble = 'missing' | 'unreadable' | 'no-option';

export interface SideState {
  /** What whoever asked calls it. */
  readonly name: string;
  readonly uri: string;
  readonly title: string | undefined;
  readonly trouble: SideTrouble | undefined;
  readonly pick: Pick | undefined;
}

/**
 * Two versions of an estimate held against each other. For every option of both versions the effects of `changes` and
 * `follows` add up to the new less the old figure, to the smallest coin.
 */
export interface Changes {
  readonly before: SideState;
  readonly after: SideState;
  /** Of the new version. */
  readonly money: Money;
  /** False where the two versions don't count in the same currency: then no effect is worked out. */
  readonly comparable: boolean;
  readonly options: readonly OptionPair[];
  /** Largest effect first. */
  readonly changes: readonly Change[];
  readonly follows: readonly Follow[];
  /** How many changes are tried one by one for their turns at most. */
  readonly mostTried: number;
}
