import { Decimal, one, zero } from '../../vocabulary/index.js';

/**
 * The discrete compound interest factors by their standard notation: the wanted over the given, of P (now), F (at the
 * end of the last period), A (at the end of each period) and G (a growth by one more G each period, from nothing in
 * the first).
 */
export type FactorName = 'F/P' | 'P/F' | 'F/A' | 'A/F' | 'P/A' | 'A/P' | 'P/G' | 'A/G';

/** Why something can't be reckoned. */
type TimeValueProblem =
  /** Not finite, or −1 (all is lost in one period) or below. */
  | { readonly kind: 'rate out of range'; readonly rate: Decimal }
  /** Not finite, 0 or below, or above `MOST_PERIODS`; a growth needs whole periods. */
  | { readonly kind: 'periods out of range'; readonly periods: number }
  | { readonly kind: 'amount not finite'; readonly amount: Decimal };

export type Reckoned<T> = { readonly kind: 'reckoned'; readonly value: T } | { readonly kind: 'refused'; readonly problem: TimeValueProblem };

/** Eighty thousand years of months: whatever has more periods is a slip. */
const MOST_PERIODS = 1_000_000;

/** A rate nearer to nothing than this counts as nothing: 1 + rate has no digits left for it to be told by. */
const LEAST_RATE = new Decimal('1e-20');

/**
 * A compound interest factor, for a rate per period as a fraction (0.15 for 15 %) and a count of periods. Formulas:
 * NCEES, FE Reference Handbook, Engineering Economics; with a rate of 0 their limits.
 *
 * Decimals, at 60 digits: the same digits on every machine, and with rates of a few decimals some 50 of them right.
 * Periods need not be whole, but for a growth: between whole periods the formula is followed as it stands, which is
 * how a payment after 2.5 years is meant for P/F and F/P, and a smooth way between two counts for a row of payments.
 */
export function factor(name: FactorName, rate: Decimal, periods: number): Reckoned<Decimal> {
  const problem = rateProblem(rate) ?? periodsProblem(name, periods);
  if (problem !== undefined) return { kind: 'refused', problem };
  const value = rate.abs().lt(LEAST_RATE) ? withoutInterest(name, new Decimal(periods)) : withInterest(name, rate, new Decimal(periods));
  return { kind: 'reckoned', value };
}

function withInterest(name: FactorName, i: Decimal, n: Decimal): Decimal {
  const growth = one.plus(i).pow(n);
  const interest = growth.minus(one);
  switch (name) {
    case 'F/P': return growth;
    case 'P/F': return one.div(growth);
    case 'F/A': return interest.div(i);
    case 'A/F': return i.div(interest);
    case 'P/A': return interest.div(i.times(growth));
    case 'A/P': return i.times(growth).div(interest);
    case 'P/G': return interest.div(i).minus(n).div(i.times(growth));
    case 'A/G': return one.div(i).minus(n.div(interest));
  }
}

function withoutInterest(name: FactorName, n: Decimal): Decimal {
  switch (name) {
    case 'F/P': case 'P/F': return one;
    case 'F/A': case 'P/A': return n;
    case 'A/F': case 'A/P': return one.div(n);
    case 'P/G': return n.times(n.minus(one)).div(2);
    case 'A/G': return n.minus(one).div(2);
  }
}

export interface PerPeriod {
  /** What is paid, or where it is below 0 received, at the end of each period instead of the rest. */
  readonly amount: Decimal;
  /** What of it recovers the amount paid now, and what sets the one at the end aside; the rest is paid each period. */
  readonly ofNow: Decimal;
  readonly ofEnd: Decimal;
}

/**
 * The equal amount per period that is worth the same (capital recovery): now × A/P + periodic + atEnd × A/F. All three
 * have one sign: above 0 is paid, below 0 is received, so what is got for the car at the end is a negative `atEnd`.
 * Money in and money out in one currency, unrounded; the rate is per period, as a fraction. What was spent before now
 * has no place in it.
 */
export function equivalentPerPeriod(given: { readonly now: Decimal; readonly periodic: Decimal; readonly atEnd: Decimal; readonly rate: Decimal; readonly periods: number }): Reckoned<PerPeriod> {
  for (const amount of [given.now, given.periodic, given.atEnd]) if (!amount.isFinite()) return { kind: 'refused', problem: { kind: 'amount not finite', amount } };
  const recovery = factor('A/P', given.rate, given.periods);
  if (recovery.kind === 'refused') return recovery;
  const sinking = factor('A/F', given.rate, given.periods);
  if (sinking.kind === 'refused') return sinking;
  const ofNow = given.now.times(recovery.value);
  const ofEnd = given.atEnd.times(sinking.value);
  return { kind: 'reckoned', value: { amount: ofNow.plus(given.periodic).plus(ofEnd), ofNow, ofEnd } };
}

/** The rate per month of a nominal yearly rate, compounded monthly: a twelfth. So loans are mostly written. */
export function monthlyOfNominal(yearly: Decimal): Reckoned<Decimal> {
  const monthly = yearly.div(12);
  const problem = rateProblem(monthly);
  return problem === undefined ? { kind: 'reckoned', value: monthly } : { kind: 'refused', problem: { kind: 'rate out of range', rate: yearly } };
}

function rateProblem(rate: Decimal): TimeValueProblem | undefined {
  return rate.isFinite() && rate.plus(one).gt(zero) ? undefined : { kind: 'rate out of range', rate };
}

function periodsProblem(name: FactorName, periods: number): TimeValueProblem | undefined {
  const growing = name === 'P/G' || name === 'A/G';
  const holds = periods > 0 && periods <= MOST_PERIODS && (!growing || Number.isInteger(periods));
  return holds ? undefined : { kind: 'periods out of range', periods };
}
