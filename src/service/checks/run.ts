import { sameItems, type Problem } from '../../language/index.js';
import type { Estimate, Resolved } from '../../estimate/index.js';
import type { Book, Comparison, Planned } from '../../weigh/index.js';
import { wordsOf } from '../../report/index.js';
import { found, type Check, type Found } from './check.js';
import { withoutEstimateLine } from './estimate-line-missing.js';
import { checkFailed } from './failed.js';
import { allChecks } from './index.js';
import { viewOf, type OptionView, type View } from './view.js';

/** What the checks of the trade find in an estimate. */
export function checkTrade(resolved: Resolved, comparison: Comparison, whole: boolean, book: Book, exists?: View['exists']): readonly Found[] {
  try {
    const view = viewOf(resolved, comparison, book, exists);
    return view === undefined ? withoutEstimateLine(resolved, whole) : runChecks(allChecks, view, whole);
  } catch (error) {
    // What all of them look at could not be made: what was read and weighed is told all the same.
    return resolved.records.slice(0, 1).map((record) => found(checkFailed, record.at, { check: undefined, why: wordsOf(error) }));
  }
}

/** True where everything could be read: nothing that is missing can stand on a line that was left out. */
export function isWhole({ spoiled, waitsFor }: Resolved, problems: readonly Problem[]): boolean {
  return spoiled.size === 0 && waitsFor.length === 0 && problems.every(({ severity }) => severity !== 'error');
}

/** A check that throws takes nothing with it but itself. */
export function runChecks(checks: readonly Check[], view: View, whole: boolean): readonly Found[] {
  const all: Found[] = [];
  for (const one of view.options) for (const item of overOption(checks, one, view)) all.push(item);
  if (!whole) return all;
  for (const check of checks) if (check.over === 'whole') collect(check.rule.code, () => check.find(view), view, all);
  return all;
}

interface Kept {
  readonly checks: readonly Check[];
  readonly madeFrom: readonly unknown[];
  readonly found: readonly Found[];
}

const kept = new WeakMap<Planned, Kept>();

/** An option that was weighed before, with the same facts around it, is not checked again. */
function overOption(checks: readonly Check[], one: OptionView, view: View): readonly Found[] {
  const { option, weighed } = one;
  const madeFrom = [option, ...surroundings(view.estimate)];
  const before = kept.get(weighed.planned);
  if (before !== undefined && before.checks === checks && sameItems(before.madeFrom, madeFrom)) return before.found;
  const own: Found[] = [];
  for (const check of checks) if (check.over === 'option') collect(check.rule.code, () => check.find(one, view), view, own);
  kept.set(weighed.planned, { checks, madeFrom, found: own });
  return own;
}

/** All that an option's checks may look at beyond the option and its plan. */
function surroundings({ shop, header, vehicle, findings, authorised, closed }: Estimate): readonly unknown[] {
  return [shop, header, vehicle, closed, ...findings, ...authorised];
}

function collect(code: string, find: () => Iterable<Found>, view: View, into: Found[]): void {
  try {
    for (const one of find()) into.push(one);
  } catch (error) {
    const first = view.resolved.records.find((record) => view.isOwn({ record })) ?? view.header.record;
    into.push(found(checkFailed, first.at, { check: code, why: wordsOf(error) }));
  }
}
