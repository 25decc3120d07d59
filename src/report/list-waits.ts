import type { Estimate, State } from '../estimate/index.js';
import type { Decimal } from '../vocabulary/index.js';
import { calendar, waitEndsOn, type AuthorisedWeighed, type Weighed } from '../weigh/index.js';

/** What an estimate waits for. */
export type Waits =
  /** Nobody was given a price yet. */
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
    case 'in-work': return overrun(one) ?? parts(one, today) ?? work(one, today);
  }
}

function overrun({ standing }: Standing): Waits | undefined {
  return standing !== undefined && standing.complete && standing.mustAsk ? { for: 'authorisation', over: standing.over.likely } : undefined;
}

function parts({ weighed, standing, estimate: { shop } }: Standing, today: string): Waits | undefined {
  const ordered = standing?.authorised.on;
  if (weighed === undefined || ordered === undefined) return undefined;
  const from = calendar.dayOf(ordered);
  const due = weighed.ready.tasks.flatMap(({ task: { kind, length, wait, counts } }) => {
    return kind === 'part' && counts && wait !== undefined ? (waitEndsOn(from, length.likely.toNumber(), wait, shop) ?? []) : [];
  });
  const until = due.length === 0 ? undefined : calendar.isoOf(Math.max(...due));
  return until !== undefined && until > today ? { for: 'parts', until } : undefined;
}

/** As long as the plan has the bay taken, from the day on which the work began. */
function work({ weighed, state: { since }, estimate: { shop } }: Standing, today: string): Waits {
  const days = weighed === undefined ? 0 : Math.ceil(weighed.ready.bay.likely.toNumber());
  const last = since === undefined || days === 0 ? undefined : calendar.workingDayAfter(calendar.dayOf(since), days - 1, shop);
  if (last === undefined) return { for: 'work', until: undefined };
  const planned = calendar.isoOf(last);
  return planned < today ? { for: 'closing', planned } : { for: 'work', until: planned };
}
