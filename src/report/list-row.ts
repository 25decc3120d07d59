import type { Problem } from '../language/index.js';
import { stateOf, type Estimate, type State } from '../estimate/index.js';
import type { Decimal } from '../vocabulary/index.js';
import { authorisedIn, calendar, type Comparison, type Money, type StageWeighed, type Weighed } from '../weigh/index.js';
import { waitsOf, type Waits } from './list-waits.js';

/** One estimate among many: how far it has come and what holds it up. */
export interface ListRow {
  readonly title: string | undefined;
  readonly vehicle: string | undefined;
  readonly state: State;
  readonly written: string | undefined;
  /** Days since it was written, or else since its first record; to the day on which it was closed. */
  readonly age: number | undefined;
  readonly pick: Picked | undefined;
  readonly money: Money;
  readonly waits: Waits | undefined;
  /** False where lines could not be read or priced, so that the amount may be too low. */
  readonly whole: boolean;
}

/** The option or stage that was done, authorised or quoted, or else the cheapest option. */
interface Picked {
  readonly of: 'option' | 'stage';
  readonly name: string;
  readonly title: string;
  readonly by: 'said' | 'cheapest';
  /** Titles of what was found that speaks against it. */
  readonly ruledOut: readonly string[];
  /** What was billed, where that is known, or else what it comes to today. */
  readonly amount: Decimal;
  readonly amountOf: 'billed' | 'total';
}

/**
 * An estimate as a row, on a day (YYYY-MM-DD); undefined for a file that only other files use: one without an option and
 * an `estimate` line of its own.
 */
export function rowOf({ comparison, problems }: { readonly comparison: Comparison; readonly problems: readonly Problem[] }, today: string): ListRow | undefined {
  const { estimate, money } = comparison;
  if (!isEstimate(estimate)) return undefined;
  const state = stateOf(estimate, today);
  const stage = comparison.stages.find((one) => one.stage.name === state.option);
  const weighed = stage === undefined ? pickedIn(comparison, state) : undefined;
  const of = stage?.stage ?? weighed?.option;
  return {
    title: estimate.header?.title,
    vehicle: estimate.vehicle?.title,
    state,
    written: estimate.header?.written,
    age: ageOf(estimate, state, today),
    pick: stage !== undefined ? pickOfStage(stage) : weighed === undefined ? undefined : pickOf(weighed, state, estimate),
    money,
    waits: waitsOf({ estimate, state, weighed, stage, standing: authorisedIn(comparison).find((one) => one.of === of) }, today),
    whole: (stage ?? weighed)?.complete !== false && problems.every(({ severity }) => severity !== 'error'),
  };
}

function isEstimate({ uri, header, options }: Estimate): boolean {
  return [...options.filter(({ written }) => written), ...(header === undefined ? [] : [header])].some(({ record }) => record.block.uri === uri);
}

function pickedIn({ options, ranking }: Comparison, { state, option }: State): Weighed | undefined {
  const said = options.find((one) => one.option.name === option);
  return said ?? (state === 'closed' ? undefined : ranking[0]);
}

function pickOf({ option, totals }: Weighed, { state, option: said }: State, { closed }: Estimate): Picked {
  const billed = state === 'closed' ? closed?.billed?.likely : undefined;
  return { of: 'option', name: option.name, title: option.title, by: said === option.name ? 'said' : 'cheapest', ruledOut: option.ruledOutBy.map((one) => one.title), amount: billed ?? totals.total.likely, amountOf: billed === undefined ? 'total' : 'billed' };
}

function pickOfStage({ stage: { name, title }, totals }: StageWeighed): Picked {
  return { of: 'stage', name, title, by: 'said', ruledOut: [], amount: totals.total.likely, amountOf: 'total' };
}

function ageOf({ header, quoted, authorised, started, closed }: Estimate, { state }: State, today: string): number | undefined {
  const first = header?.written ?? [...quoted, ...authorised, ...(started === undefined ? [] : [started])].flatMap(({ on }) => on ?? []).sort()[0];
  const last = state === 'closed' ? (closed?.on ?? today) : today;
  return first === undefined ? undefined : Math.max(0, calendar.dayOf(last) - calendar.dayOf(first));
}
