import { html, type Html } from '../page/html.js';
import { dateText } from '../page/dates.js';
import { fitted, SIZES, widthOf } from './fit.js';
import { bar, chart, line, rounded, says, WIDTHS, type Frame, type Layout } from './frame.js';
import { dayScale, type DayScale } from './day-scale.js';
import { legend, SAMPLE, type Entry } from './legend.js';
import { filled, patterns, type Fill } from './patterns.js';
import type { Timeline, TimelineRow } from './timeline-rows.js';

interface Measures {
  readonly row: number;
  readonly left: number;
  readonly right: number;
  /** Where the label and the bar stand in a row. */
  readonly label: number;
  readonly bar: number;
  readonly thick: number;
}

/** Titles over their bars where there is little room, and beside them where there is more. */
const MEASURES: Readonly<Record<Layout, Measures>> = {
  narrow: { row: 36, left: 1, right: 359, label: 12, bar: 18, thick: 8 },
  wide: { row: 24, left: 250, right: 582, label: 15.5, bar: 7, thick: 10 },
};

const HEAD = 22;
const WORK: Fill = { look: 'work', pattern: undefined };
const WAIT: Fill = { look: 'wait', pattern: 'rising' };
const CLOSED: Fill = { look: 'closed', pattern: 'dots' };
const CRITICAL = 'critical';

/** The bay plan of an option: a row a task, dates along the top, the critical path as a line and a word. */
export function timeline(plan: Timeline, frame: Frame): Html {
  const measures = MEASURES[frame.layout];
  const { rows, dates, hoursPerDay, finish, ready } = plan;
  const last = rows.reduce((most, { end }) => Math.max(most, end), finish);
  const days = dayScale(dates, hoursPerDay, last, measures.left, measures.right);
  const foot = HEAD + rows.length * measures.row;
  const finishAt = days.endsAt(finish);
  const key = legend(frame, foot + 28, entries(rows, days, frame));
  return chart(frame, {
    kind: 'timeline', height: foot + 28 + key.height,
    says: `Calendar of ${plan.title}`,
    tells: sentence(plan),
    inside: [
      patterns(frame, ['rising', 'dots']), dayLines(days, foot, frame),
      rows.length === 0 ? undefined : line(finishAt, HEAD - 8, finishAt, foot + 18, 'finish'),
      criticalPath(rows, days, measures),
      ...rows.map((row, i) => rowOf(row, days, measures, HEAD + i * measures.row, frame)),
      rows.length === 0 ? undefined : readyText(finishAt, readyWords(ready), foot, measures),
      key.drawn,
    ],
  });
}

function dayLines({ days, gaps }: DayScale, foot: number, frame: Frame): Html {
  return html`<g class="grid">${gaps.map(({ from, to }) => filled(frame, from, to, HEAD - 4, foot - HEAD + 8, CLOSED))}${days.map(({ at, label }) =>
    html`${line(at, HEAD - (label === undefined ? 4 : 8), at, foot + 4, 'guide')}${label === undefined ? undefined : says(at, 10, label, 'small quiet')}`)}</g>`;
}

function rowOf({ title, kind, start, end, critical }: TimelineRow, days: DayScale, { left, label, bar: down, thick }: Measures, top: number, frame: Frame): Html {
  const { layout } = frame;
  const width = WIDTHS[layout];
  const [from, to] = [days.startsAt(start), days.endsAt(end)];
  const y = top + down;
  // The ready day may be the right edge of a narrow chart, so the word follows the title there.
  const room = layout === 'wide' ? left - 12 : width - (critical ? widthOf(CRITICAL) + 12 : 0);
  const name = html`<tspan class="plain">${fitted(title, room, SIZES.text, 'inside')}</tspan>`;
  const word = !critical || layout === 'wide' ? undefined : html`<tspan class="mark" dx="8">${CRITICAL}</tspan>`;
  return html`<g class="${kind}${critical ? ' critical' : ''}">${says(0, top + label, html`${name}${word}`, 'halo')}
${kind === 'wait' ? filled(frame, from, to, y, thick, WAIT) : worked(from, to, days, y, thick, frame)}${critical ? bar(from, to, y + thick + 2, 2, 'path') : undefined}${critical && layout === 'wide' ? says(width, top + label, CRITICAL, 'mark', 'end') : undefined}</g>`;
}

/** Nobody works while the shop is closed: work is drawn in pieces, with a thin line between them. */
function worked(from: number, to: number, { gaps }: DayScale, y: number, thick: number, frame: Frame): Html {
  const inside = gaps.filter((gap) => gap.from > from && gap.to < to);
  const starts = [from, ...inside.map((gap) => gap.to)];
  const ends = [...inside.map((gap) => gap.from), to];
  return html`${inside.length === 0 ? undefined : line(from, y + thick / 2, to, y + thick / 2, 'thread')}${starts.map((start, i) => filled(frame, start, ends[i] as number, y, thick, WORK))}`;
}

/** From the end of each critical task to the next one that begins when it ends. */
function criticalPath(rows: readonly TimelineRow[], days: DayScale, { row: high, bar: down, thick }: Measures): Html {
  const under = (i: number) => HEAD + i * high + down + thick + 3;
  const links = rows.flatMap((one, i) => {
    if (!one.critical) return [];
    const next = rows.findIndex((other, k) => k > i && other.critical && Math.abs(other.start - one.end) < 1e-6);
    const after = rows[next];
    if (after === undefined) return [];
    const [from, to, y] = [days.endsAt(one.end), days.startsAt(after.start), HEAD + next * high + down];
    return [html`<polyline class="path" points="${rounded(from)},${rounded(under(i))} ${rounded(from)},${rounded(y - 3)} ${rounded(to)},${rounded(y - 3)} ${rounded(to)},${rounded(y)}"/>`];
  });
  return html`<g class="links">${links}</g>`;
}

/** On the side of the line where there is more room. */
function readyText(x: number, text: string, foot: number, { left, right }: Measures): Html {
  const end = x - left > (right - left) / 2;
  return says(x + (end ? -6 : 6), foot + 16, text, 'strong halo', end ? 'end' : 'start');
}

function readyWords(ready: string | undefined): string {
  return ready === undefined ? 'ready' : `ready ${dateText(ready)}`;
}

function entries(rows: readonly TimelineRow[], { gaps }: DayScale, frame: Frame): readonly Entry[] {
  const sample = (fill: Fill) => (x: number, y: number) => filled(frame, x, x + SAMPLE, y, 9, fill);
  return [
    ...(rows.some(({ kind }) => kind === 'work') ? [{ name: 'work', sample: sample(WORK) }] : []),
    ...(rows.some(({ kind }) => kind === 'wait') ? [{ name: 'wait', sample: sample(WAIT) }] : []),
    ...(gaps.length > 0 ? [{ name: 'closed', sample: sample(CLOSED) }] : []),
    ...(rows.some(({ critical }) => critical) ? [{ name: 'decides the day', sample: (x: number, y: number) => bar(x, x + SAMPLE, y + 4, 2, 'path') }] : []),
  ];
}

function sentence({ title, rows, ready, finish, hoursPerDay }: Timeline): string {
  if (rows.length === 0) return `${title}: nothing takes time.`;
  const days = Math.ceil(finish / hoursPerDay - 1e-9);
  const path = rows.filter(({ critical }) => critical).map((row) => row.title).join(', then ');
  return `${rows.length} task${rows.length === 1 ? '' : 's'} in ${days} working day${days === 1 ? '' : 's'}, ${readyWords(ready)}.${path === '' ? '' : ` What decides the day: ${path}.`}`;
}
