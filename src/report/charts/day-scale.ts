import { calendar } from '../../weigh/index.js';

/** Where working hours are drawn, with a gap for the days on which the shop is closed. */
export interface DayScale {
  /** Where a piece of the plan begins: the morning of a day, where it is one. */
  readonly startsAt: (hours: number) => number;
  /** Where it ends: the evening before, not the next morning. */
  readonly endsAt: (hours: number) => number;
  /** The closed times that lie inside, as pieces of the scale. */
  readonly gaps: readonly { readonly from: number; readonly to: number }[];
  /** Where each working day begins, and its date as it is shown; a label only where there is room. */
  readonly days: readonly { readonly at: number; readonly label: string | undefined }[];
}

/** How wide a closed day is against a working one, and at most all of a closed time. */
const CLOSED = 0.35;
const MOST_CLOSED = 1.1;
/** Below this many units a day, closed days are too thin to be seen and are left out. */
const TOO_THIN = 4;
const LABEL = 40;
const MOST_DAYS = 20_000;
const NOISE = 1e-9;

/**
 * @param dates the working days from the first on, as days of the calendar; undefined where no date is known, and then
 * days are numbered.
 * @param last the last hour that is drawn.
 */
export function dayScale(dates: readonly number[] | undefined, hoursPerDay: number, last: number, left: number, right: number): DayScale {
  const count = Math.min(MOST_DAYS, Math.max(1, Math.ceil(last / hoursPerDay - NOISE)));
  const closed = (i: number) => (dates === undefined || i === 0 ? 0 : Math.max(0, (dates[i] ?? 0) - (dates[i - 1] ?? 0) - 1));
  const shares = Array.from({ length: count }, (_, i) => Math.min(MOST_CLOSED, closed(i) * CLOSED));
  const withGaps = (right - left) / (count + shares.reduce((sum, one) => sum + one, 0));
  const thin = withGaps < TOO_THIN;
  const unit = thin ? (right - left) / count : withGaps;
  const begins = new Float64Array(count);
  let x = left;
  for (let i = 0; i < count; i++) {
    if (!thin) x += (shares[i] as number) * unit;
    begins[i] = x;
    x += unit;
  }
  const at = (day: number, share: number) => (begins[day] as number) + Math.min(1, Math.max(0, share)) * unit;
  const within = (hours: number, day: number) => at(Math.min(count - 1, Math.max(0, day)), hours / hoursPerDay - Math.min(count - 1, Math.max(0, day)));
  return {
    startsAt: (hours) => within(hours, Math.floor(hours / hoursPerDay + NOISE)),
    endsAt: (hours) => within(hours, Math.ceil(hours / hoursPerDay - NOISE) - 1),
    gaps: thin ? [] : shares.flatMap((share, i) => (share > 0 ? [{ from: (begins[i] as number) - share * unit, to: begins[i] as number }] : [])),
    days: labelled(begins, dates, unit, right),
  };
}

/** Each day has its label where they fit, else the first after a closed time, and else what fits. */
function labelled(begins: Float64Array, dates: readonly number[] | undefined, unit: number, right: number): DayScale['days'] {
  const afterClosed = (i: number) => dates !== undefined && i > 0 && (dates[i] ?? 0) - (dates[i - 1] ?? 0) > 1;
  const weekly = unit < LABEL && dates !== undefined && begins.some((_, i) => afterClosed(i));
  let next = -Infinity;
  const days: { readonly at: number; readonly label: string | undefined }[] = [];
  begins.forEach((at, i) => {
    const wanted = i === 0 || !weekly || afterClosed(i);
    const fits = wanted && at >= next && (i === 0 || at + LABEL - 6 <= right);
    if (fits) next = at + LABEL;
    const date = dates?.[i];
    const label = date === undefined ? `day ${i + 1}` : calendar.isoOf(date).slice(5);
    if (fits || unit >= 8) days.push({ at, label: fits ? label : undefined });
  });
  return days;
}
