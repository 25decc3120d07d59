import { hoursShown } from '../../report/index.js';
import type { BookEntry } from '../../weigh/index.js';

/** Low, middle and high as they would be written: `5.9 / 7.1 / 10.4 h`. */
export function threeFigures({ hours }: BookEntry): string {
  const [low, middle, high] = [hours.low, hours.middle, hours.high].map(hoursShown);
  return low === middle && middle === high ? `${middle} h` : `${low} / ${middle} / ${high} h`;
}

/** How many cases the figures are of. */
export function lastWords({ count, few }: BookEntry): string {
  return few ? `your last ${count}, which are few` : `your last ${count}`;
}

/** What a hover says: `Your last 9 with engine-out: 5.9 / 7.1 / 10.4 h; …`. */
export function bookSentence(entry: BookEntry): string {
  const { job, few, ratio } = entry;
  const ways = job.ways.length === 0 ? '' : ` with ${job.ways.join(', ')}`;
  const what = job.kind === 'access' ? ', opened and closed' : ways;
  const of = ratio === undefined || few ? '' : `; in the middle ${ratio.middle.toFixed(2)} of what was estimated`;
  return `Your last ${entry.count}${what}: ${threeFigures(entry)}${of}.${few ? ' These are few.' : ''}`;
}
