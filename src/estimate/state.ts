import { dayOf, isoOf, lastDay } from './days.js';
import type { Authorised } from './job-types.js';
import type { Estimate } from './types.js';

/** How far a job has come: what its records say, on a given day. */
type StateName = 'draft' | 'quoted' | 'authorised' | 'in-work' | 'closed' | 'expired';

export interface State {
  readonly state: StateName;
  /** The day since when (YYYY-MM-DD), where the records say. */
  readonly since: string | undefined;
  /** The option or stage that was authorised, done, or else quoted last. */
  readonly option: string | undefined;
  /** The last day on which the prices hold, while the customer has not answered. */
  readonly validUntil: string | undefined;
  /** True where work has begun, and an option that was quoted after a stage waits for the customer’s answer. */
  readonly asked?: true;
}

/** What a state follows from. */
type JobRecords = Pick<Estimate, 'header' | 'options' | 'stages' | 'quoted' | 'authorised' | 'started' | 'closed'>;

/**
 * The state of a job on a day (YYYY-MM-DD): closed before in work before authorised before expired before quoted
 * before draft. A record that is dated later than that day has not happened yet; one without a date has. A stage that is
 * authorised is the job until an option is, or until something else is quoted after it: then that offer is open.
 */
export function stateOf(job: JobRecords, today: string): State {
  const { header, started, closed } = job;
  const happened: Happened = ({ on }) => on === undefined || on <= today;
  const offered = latest(job.quoted.filter(happened));
  const agreed = agreedTo(job, happened);
  const holds = agreed.kind === 'option' || agreed.kind === 'stage';
  const option = (holds ? latest(agreed.records) : offered)?.for;
  if (closed !== undefined && happened(closed)) return { state: 'closed', since: closed.on, option: closed.option?.name, validUntil: undefined };
  const from = offered?.on ?? header?.written;
  const validUntil = holds || from === undefined || header?.valid === undefined ? undefined : lastDay(from, header.valid);
  if (started !== undefined && happened(started)) {
    const lasting = { state: 'in-work', since: started.on, option } as const;
    return agreed.kind === 'asked' ? { ...lasting, validUntil, asked: true } : { ...lasting, validUntil: undefined };
  }
  if (holds) return { state: 'authorised', since: earliest(agreed.records), option, validUntil };
  if (validUntil !== undefined && validUntil < today) return { state: 'expired', since: isoOf(dayOf(validUntil) + 1), option, validUntil };
  return { state: offered === undefined ? 'draft' : 'quoted', since: from, option, validUntil };
}

type Happened = (record: { readonly on: string | undefined }) => boolean;

/** What the customer agreed to: options, or else stages; `asked` where something else was quoted after a stage and is not answered yet. */
function agreedTo({ options, stages, quoted, authorised, started }: JobRecords, happened: Happened): { readonly kind: 'option' | 'stage' | 'asked' | 'nothing'; readonly records: readonly Authorised[] } {
  if (authorised.length === 0) return { kind: 'nothing', records: [] };
  const isOf = (all: readonly { readonly name: string | undefined }[]) => (record: { readonly for: string | undefined }) => all.some(({ name }) => name === record.for);
  const told = authorised.filter(happened);
  const ofOptions = told.filter(isOf(options));
  if (ofOptions.length > 0) return { kind: 'option', records: ofOptions };
  const records = told.filter(isOf(stages));
  const last = latest(records);
  if (last === undefined) return { kind: 'nothing', records: [] };
  const asked = latest(quoted.filter((one) => happened(one) && one.for !== last.for && isOf([...options, ...stages])(one)))?.on ?? '';
  const agreed = last.on ?? '';
  // Of one day: it was quoted after the look where work had begun by then.
  const isAfter = asked > agreed || (asked !== '' && asked === agreed && started?.on !== undefined && started.on <= asked);
  return { kind: isAfter ? 'asked' : 'stage', records };
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
