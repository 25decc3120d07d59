import { Decimal, one, zero } from '../../vocabulary/index.js';
import { rateProblem, type Reckoned, type TimeValueProblem } from './time-value.js';

export interface EconomicLife {
  /** For each count of years from 1, the equal yearly cost of keeping it that long. */
  readonly yearly: readonly Decimal[];
  /** How many years make that the lowest; the fewest of them at a tie. */
  readonly years: number;
  readonly lowest: Decimal;
}

/** The most years looked ahead. */
const MOST_YEARS = 100;

/** 60 digits are worked and fewer kept: what is equal on paper, but for the order of dividing, comes out equal. */
const KEPT_DIGITS = 40;
const KEPT_DECIMALS = 20;

/**
 * Equivalent uniform yearly cost of keeping something 1, 2, … years, from what each further year costs: the present
 * worths of those costs, spread by A/P (Newnan, Engineering Economic Analysis, ch. 13; factors: NCEES, FE Reference
 * Handbook). Costs fall at the ends of the years, in one currency; the rate is yearly, as a fraction.
 */
export function economicLife(marginal: readonly Decimal[], rate: Decimal): Reckoned<EconomicLife> {
  const problem = rateProblem(rate) ?? yearsProblem(marginal);
  return problem === undefined ? { kind: 'reckoned', value: lifeOf(marginal, rate) } : { kind: 'refused', problem };
}

function lifeOf(marginal: readonly Decimal[], rate: Decimal): EconomicLife {
  const growth = one.plus(rate);
  let discount = one;
  let worth = zero;
  let perOne = zero; // P/A: the sum of P/F
  const yearly = marginal.map((cost) => {
    discount = discount.div(growth);
    worth = worth.plus(cost.times(discount));
    perOne = perOne.plus(discount);
    return worth.div(perOne).toSignificantDigits(KEPT_DIGITS);
  });
  const lowest = Decimal.min(...yearly);
  return { yearly, lowest, years: yearly.findIndex((one) => one.eq(lowest)) + 1 };
}

/**
 * What each further year costs, from what the thing would fetch now and at the end of each year, and what running it
 * costs in each: the worth it loses, the interest on the worth it had, and the running.
 */
export function marginalCosts(given: { readonly worthNow: Decimal; readonly worths: readonly Decimal[]; readonly running: readonly Decimal[]; readonly rate: Decimal }): Reckoned<readonly Decimal[]> {
  const { worthNow, worths, running, rate } = given;
  const problem = rateProblem(rate) ?? yearsProblem(running) ?? amountsProblem([worthNow, ...worths]);
  if (problem !== undefined) return { kind: 'refused', problem };
  if (worths.length !== running.length) return { kind: 'refused', problem: { kind: 'wrong length', length: worths.length, needed: running.length } };
  const growth = one.plus(rate);
  return { kind: 'reckoned', value: running.map((cost, year) => (worths[year - 1] ?? worthNow).times(growth).minus(worths[year] as Decimal).plus(cost)) };
}

export interface Replacement {
  readonly defender: EconomicLife;
  readonly challenger: EconomicLife;
  readonly verdict: 'keep' | 'replace';
  /** How many more years the defender is best kept, of those that were given; 0 to replace it now. */
  readonly keepYears: number;
}

/**
 * Defender against challenger: what is there is kept for the number of years (0 too) after which the present worth
 * of its costs and then of challengers without end, each for its economic life, is the lowest. It is kept at all just
 * where its own lowest yearly cost is not above the challenger's, as the textbook rule says (Newnan, ch. 13); where
 * its yearly costs rise it goes once a further year costs more than that. At a tie it is kept: a change that saves
 * nothing is not made. Supposes that the need does not end and that later challengers cost what this one does.
 */
export function keepOrReplace(given: { readonly defender: readonly Decimal[]; readonly challenger: readonly Decimal[]; readonly rate: Decimal }): Reckoned<Replacement> {
  const defender = economicLife(given.defender, given.rate);
  if (defender.kind === 'refused') return defender;
  const challenger = economicLife(given.challenger, given.rate);
  if (challenger.kind === 'refused') return challenger;
  const keepYears = yearsToKeep(given.defender, defender.value, challenger.value.lowest, given.rate);
  return { kind: 'reckoned', value: { defender: defender.value, challenger: challenger.value, verdict: keepYears === 0 ? 'replace' : 'keep', keepYears } };
}

/** The years n that make the most of (challenger − own yearly cost) × P/A(n): what keeping saves by then, as of now. */
function yearsToKeep(marginal: readonly Decimal[], own: EconomicLife, challenger: Decimal, rate: Decimal): number {
  const growth = one.plus(rate);
  let discount = one;
  let perOne = zero;
  let most = zero;
  let keep = 0;
  for (const [year] of marginal.entries()) {
    discount = discount.div(growth);
    perOne = perOne.plus(discount);
    const saved = challenger.minus(own.yearly[year] as Decimal).times(perOne).toDecimalPlaces(KEPT_DECIMALS);
    if (saved.lt(most)) continue;
    most = saved;
    keep = year + 1;
  }
  return keep;
}

function yearsProblem(costs: readonly Decimal[]): TimeValueProblem | undefined {
  if (costs.length === 0) return { kind: 'no years' };
  if (costs.length > MOST_YEARS) return { kind: 'too many years', years: costs.length, most: MOST_YEARS };
  return amountsProblem(costs);
}

function amountsProblem(amounts: readonly Decimal[]): TimeValueProblem | undefined {
  const amount = amounts.find((one) => !one.isFinite());
  return amount === undefined ? undefined : { kind: 'amount not finite', amount };
}
