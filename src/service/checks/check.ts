import { problem, type Problem, type Rule, type Span } from '../../language/index.js';
import type { OptionView, View } from './view.js';

/** A problem that a check found, with the facts that its fixes are made from. Plain data, so that it can be passed on. */
export interface Found extends Problem {
  readonly data: unknown;
}

export function found<D>(rule: Rule<D>, at: Span, data: D, related?: Problem['related']): Found {
  return { ...problem(rule, at, data, related), data };
}

/**
 * One check: its rule and the function that finds it. `option` checks are asked of each option that could be priced
 * whole, and what they find is kept while the option stays the same; `whole` checks are asked once of an estimate
 * without errors, since what is missing may stand on a line that can't be read.
 */
export type Check =
  | { readonly over: 'option'; readonly rule: Rule<never>; readonly find: (one: OptionView, view: View) => Iterable<Found> }
  | { readonly over: 'whole'; readonly rule: Rule<never>; readonly find: (view: View) => Iterable<Found> };

export function optionCheck<D>(rule: Rule<D>, find: (one: OptionView, view: View) => Iterable<Found>): Check {
  return { over: 'option', rule, find };
}

export function wholeCheck<D>(rule: Rule<D>, find: (view: View) => Iterable<Found>): Check {
  return { over: 'whole', rule, find };
}
