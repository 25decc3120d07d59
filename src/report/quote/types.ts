import type { CautionTopic, Condition } from '../../estimate/index.js';

/** Decimal digits, exactly as they are worth; amounts in the quote's currency with all its decimals. */
export type Digits = string;
/** YYYY-MM-DD. */
export type IsoDate = string;

/** What stands at the head of every paper for a customer: whose it is, about which vehicle, and what was found. */
export interface QuoteHead {
  /** BCP 47: how numbers and dates are written. The words are English. */
  readonly locale: string;
  readonly currency: { readonly code: string; readonly digits: number };
  readonly shop: { readonly name: string; readonly address: readonly string[]; readonly phone: string | undefined };
  readonly title: string;
  readonly written: IsoDate | undefined;
  readonly validUntil: IsoDate | undefined;
  readonly vehicle: QuoteVehicle | undefined;
  readonly findings: readonly QuoteFinding[];
}

/**
 * What a customer is told of one option, as plain data: one model for every form in which a quote is written. It holds
 * sold amounts only. What the shop pays, what it adds and what it keeps have no place in it.
 */
export interface Quote extends QuoteHead {
  readonly option: { readonly name: string; readonly title: string };
  /** False where nothing is done beyond what comes before the decision: there is no work to authorise. */
  readonly repairs: boolean;
  /** Groups without lines are left out. Their lines and the taxes add up to the total, to the smallest coin. */
  readonly groups: readonly QuoteGroup[];
  readonly taxes: readonly QuoteTax[];
  readonly total: Digits;
  /** What it comes to if every figure comes in low, or high; undefined where nothing varies. */
  readonly range: { readonly low: Digits; readonly high: Digits } | undefined;
  readonly rates: readonly { readonly title: string; readonly price: Digits }[];
  /** Of the total, what is authorised already for work before the decision, and what is left; undefined where nothing is. */
  readonly authorisedBefore: { readonly amount: Digits; readonly left: Digits } | undefined;
  readonly deposits: readonly QuoteDeposit[];
  /** Of the total, what comes back with the old units if all goes as planned; undefined where there is no deposit. */
  readonly comesBack: Digits | undefined;
  /** Pieces of the old unit that are kept, and what they are worth where it was said. */
  readonly kept: readonly { readonly title: string; readonly worth: Digits | undefined }[];
  readonly ready: QuoteReady | undefined;
  readonly warranty: QuoteWait | undefined;
  readonly leavesOut: readonly string[];
  /** Work that was considered and is not part of this. */
  readonly notDone: readonly { readonly title: string; readonly now: Digits | undefined; readonly alone: Digits | undefined }[];
  readonly couldBeFound: readonly QuoteChance[];
  /** Every complete option, the quoted one among them, in the order of the estimate. */
  readonly weighed: readonly QuoteOption[];
  /** Recalls and the like that may pay for this work; what is known not to hold is left out. */
  readonly maybeCovered: readonly string[];
  readonly notes: readonly string[];
  readonly cautions: readonly CautionTopic[];
  readonly ruleTypes: readonly RuleType[];
}

export interface QuoteVehicle {
  readonly title: string;
  readonly vin: string | undefined;
  readonly odometer: { readonly value: Digits; readonly unit: string } | undefined;
}

export interface QuoteFinding {
  readonly title: string;
  readonly seenBy: string | undefined;
  readonly compression: { readonly values: readonly Digits[]; readonly unit: string } | undefined;
  readonly leakage: readonly Digits[] | undefined;
  readonly debris: 'none' | 'magnetic' | 'non-magnetic' | undefined;
  readonly pictures: readonly QuotePicture[];
}

/** A picture as a data: address, or why it isn't there. `name` is the last step of its path. */
export type QuotePicture =
  | { readonly kind: 'shown'; readonly name: string; readonly data: string }
  | { readonly kind: 'absent'; readonly name: string; readonly why: WhyAbsent };

export type WhyAbsent = 'missing' | 'outside' | 'too-large' | 'too-many' | 'no-picture';

export type GroupKind = 'access' | 'labour' | 'parts' | 'outside' | 'fees' | 'deposits';

export interface QuoteGroup {
  readonly kind: GroupKind;
  readonly lines: readonly QuoteLine[];
  readonly hours: Digits | undefined;
  readonly amount: Digits;
}

export interface QuoteLine {
  readonly kind: 'labour' | 'part' | 'sublet' | 'fee' | 'core';
  readonly title: string;
  /** Which of the two stretches of getting in it is, or that it puts an old unit together to go back. */
  readonly stretch: 'opening' | 'closing' | 'core' | undefined;
  readonly hours: Digits | undefined;
  readonly quantity: { readonly value: Digits; readonly unit: string | undefined } | undefined;
  readonly condition: Condition | undefined;
  /** The warranty on this part or outside work itself, where it has its own. */
  readonly warranty: QuoteWait | undefined;
  /** Places in `findings`, from 0: why the work is done. */
  readonly because: readonly number[];
  readonly amount: Digits;
}

export interface QuoteTax {
  readonly title: string;
  readonly percent: Digits;
  readonly on: readonly ('parts' | 'labour' | 'sublets' | 'fees' | 'deposits')[];
  readonly amount: Digits;
}

/** An old unit that goes back for its deposit. */
export interface QuoteDeposit {
  readonly title: string;
  readonly charge: Digits;
  readonly refund: Digits;
  readonly taxBack: Digits;
  /** Of the tax on the charge, what does not come back. */
  readonly taxKept: Digits;
  /** The last day on which it can go back. */
  readonly until: IsoDate | undefined;
  /** True where the work is planned to end after that day, so that nothing is expected back. */
  readonly late: boolean;
  readonly less: readonly { readonly title: string | undefined; readonly amount: Digits }[];
}

export interface QuoteWait {
  readonly value: Digits;
  readonly unit: 'd' | 'wk' | 'mo';
}

export interface QuoteReady {
  readonly days: Digits;
  readonly start: IsoDate | undefined;
  readonly date: IsoDate | undefined;
  /** By when in 9 of 10 cases: an expectation, never a promise. Undefined where nothing varies. */
  readonly nineInTen: IsoDate | undefined;
  readonly answer: QuoteWait | undefined;
}

/** Something that may turn up while the work is open, and what it would then add. */
export interface QuoteChance {
  readonly title: string;
  /** Set where it can only turn up after another: that one's title. */
  readonly after: string | undefined;
  readonly lines: readonly QuoteLine[];
  /** Fees and taxes on these lines. */
  readonly feesAndTax: Digits;
  /** The lines with fees and taxes. */
  readonly amount: Digits;
}

export interface QuoteOption {
  readonly title: string;
  /** Titles of what was found that speaks against it. */
  readonly ruledOutBy: readonly string[];
  readonly isQuoted: boolean;
  readonly total: Digits;
  readonly comesBack: Digits | undefined;
  readonly ready: IsoDate | undefined;
  readonly days: Digits | undefined;
  readonly warranty: QuoteWait | undefined;
}

/** Types of rule to look up where the shop is. Nothing is concluded about any of them. */
export type RuleType = 'estimates' | 'tax' | 'deposits' | 'conditions' | 'outside' | 'warranty' | 'waste' | 'refrigerant';
