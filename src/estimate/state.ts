import { dayOf, isoOf, lastDay } from './days.js';
import type { Estimate } from './types.js';

/** How far a job has come: what its records say, on a given day. */
type StateName = 'draft' | 'quoted' | 'authorised' | 'in-work' | 'closed' | 'expired';

export interface State {
  readonly state: StateName;
  /** The day since when (YYYY-MM-DD), where the records say. */
  readonly since: string | undefined;
  /** The option that was authorised, done, or else quoted last. */
  readonly option: string | undefined;
  /** The last day on which the prices hold, while nothing is authorised. */
  readonly validUntil: string | undefined;
}

/** What a state follows from. */
type JobRecords = Pick<Estimate, 'header' | 'options' | 'quoted' | 'authorised' | 'started' | 'closed'>;

/**
 * The state of a job on a day (YYYY-MM-DD): closed before in work before authorised before expired before quoted
 * before draft. A record that is dated later than that day has not happened yet; one without a date has. A stage
 * that is authorised is not the job.
 */
export function stateOf({ header, options, quoted, authorised, started, closed }: JobRecords, today: string): State {
  const happened = ({ on }: { readonly on: string | undefined }) => on === undefined || on <= today;
  const agreed = authorised.filter((one) => happened(one) && options.some(({ name }) => name === one.for));
  const given = quoted.filter(happened);
  const option = latest(agreed)?.for ?? latest(given)?.for;
  const lasting = { option, validUntil: undefined };
  if (closed !== undefined && happened(closed)) return { ...lasting, state: 'closed', since: closed.on, option: closed.option?.name };
  if (started !== undefined && happened(started)) return { ...lasting, state: 'in-work', since: started.on };
  if (agreed.length > 0) return { ...lasting, state: 'authorised', since: earliest(agreed) };
  const offered = latest(given);
  const from = offered?.on ?? header?.written;
  const validUntil = from === undefined || header?.valid === undefined ? undefined : lastDay(from, header.valid);
  if (validUntil !== undefined && validUntil < today) return { state: 'expired', since: isoOf(dayOf(validUntil) + 1), option, validUntil };
  return { state: offered === undefined ? 'draft' : 'quoted', since: from, option, validUntil };
}

/** The one dated last, and of several on that day the one written last; those without a date count as oldest. */
export function latest<T extends { readonly on: string | undefined }>(records: readonly T[]): T | undefined {
  let found: T | undefined;
  for (const one of records) if (found === undefined || (one.on ?? '') >= (found.on ?? '')) found = one;
  return found;
}

function earliest(records: readonly { readonly on: string | undefined }[]): string | undefined {
  return records.flatMap(({ on }) => on ?? []).sort()[0];
}
