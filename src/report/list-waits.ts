import type { Estimate, State } from '../estimate/index.js';
import type { Decimal } from '../vocabulary/index.js';
import { calendar, waitEndsOn, waitUnitOf, workdayOf, type AuthorisedWeighed, type StageWeighed, type Weighed } from '../weigh/index.js';

/** What an estimate waits for. */
export type Waits =
  /** Nobody was given a price yet, or not for what follows a stage that is done. */
  | { readonly for: 'quote' }
  /** The customer's answer; the prices hold until that day. */
  | { readonly for: 'answer'; readonly until: string | undefined }
  /** The prices no longer hold. */
  | { readonly for: 'new-quote' }
  /** The customer's word on a new total; today's is by so much above what was authorised. */
  | { readonly for: 'authorisation'; readonly over: Decimal }
  /** Parts that were ordered on the day of the authorisation; the last is due on that day. */
  | { readonly for: 'parts'; readonly until: string }
  | { readonly for: 'start' }
  /** The work is going on; planned to that day. */
  | { readonly for: 'work'; readonly until: string | undefined }
  /** By the plan it is over: it wants its `closed` line. */
  | { readonly for: 'closing'; readonly planned: string };

interface Standing {
  readonly estimate: Estimate;
  readonly state: State;
  readonly weighed: Weighed | undefined;
  /** Where the job is a stage so far. */
  readonly stage: StageWeighed | undefined;
  /** What was authorised for it, beside what it comes to today. */
  readonly standing: AuthorisedWeighed | undefined;
}

/**
 * What holds an estimate up, as far as its records and its plan say. That parts have come is nowhere recorded: they
 * are waited for until the day on which they should be there.
 */
export function waitsOf(one: Standing, today: string): Waits | undefined {
  switch (one.state.state) {
    case 'draft': return { for: 'quote' };
    case 'quoted': return { for: 'answer', until: one.state.validUntil };
    case 'expired': return { for: 'new-quote' };
    case 'closed': return undefined;
    case 'authorised': return overrun(one) ?? parts(one, today) ?? { for: 'start' };
    case 'in-work': return one.state.asked === true ? answer(one.state, today) : (overrun(one) ?? parts(one, today) ?? work(one, today));
  }
}

/** What was quoted while the work stands. */
function answer({ validUntil }: State, today: string): Waits {
  return validUntil !== undefined && validUntil < today ? { for: 'new-quote' } : { for: 'answer', until: validUntil };
}

function overrun({ standing }: Standing): Waits | undefined {
  return standing !== undefined && standing.complete && standing.mustAsk ? { for: 'authorisation', over: standing.over.likely } : undefined;
}

function parts({ weighed, stage, standing, estimate: { shop } }: Standing, today: string): Waits | undefined {
  const ordered = standing?.authorised.on;
  if (ordered === undefined) return undefined;
  const from = calendar.dayOf(ordered);
  const ofOption = (weighed?.ready.tasks ?? []).flatMap(({ task: { kind, length, wait, counts } }) => {
    return kind === 'part' && counts && wait !== undefined ? (waitEndsOn(from, length.likely.toNumber(), wait, shop) ?? []) : [];
  });
  const ofStage = (stage?.stage.parts ?? []).flatMap(({ arrives }) => (arrives === undefined ? [] : (waitEndsOn(from, arrives.likely.toNumber(), waitUnitOf(arrives), shop) ?? [])));
  const due = [...ofOption, ...ofStage];
  const until = due.length === 0 ? undefined : calendar.isoOf(Math.max(...due));
  return until !== undefined && until > today ? { for: 'parts', until } : undefined;
}

/** As long as the plan has the bay taken, from the day on which the work began; a stage that is over waits for a price for what follows. */
function work({ weighed, stage, state: { since }, estimate: { shop } }: Standing, today: string): Waits {
  const days = stage === undefined ? (weighed?.ready.bay.likely.toNumber() ?? 0) : stage.totals.hours.likely.div(workdayOf(shop).likely).toNumber();
  const last = since === undefined || days === 0 ? undefined : calendar.workingDayAfter(calendar.dayOf(since), Math.ceil(days) - 1, shop);
  if (last === undefined) return { for: 'work', until: undefined };
  const planned = calendar.isoOf(last);
  if (planned >= today) return { for: 'work', until: planned };
  return stage === undefined ? { for: 'closing', planned } : { for: 'quote' };
}
