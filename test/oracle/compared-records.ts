/** Authorisations and closings, both answers side by side. */
import { expect } from 'vitest';
import { daysTold } from './after.js';
import { planLike, type Both } from './compared.js';
import { compare, fromDigits, minus, rounded } from './rational.js';
import type { Written } from './reader.js';
import { closingOf, otherWays, roomOf, type ClosedSums } from './records.js';
import { toldClosing, type Texts, type ToldOption } from './told.js';
import type { OracleOption, OraclePlan } from './totals.js';

const digitsOf = (text: string) => fromDigits(text);
const same = (text: string, value: ReturnType<typeof fromDigits>) => compare(digitsOf(text), value) === 0;

/** How many must be asked for. */
export function expectAuthorised({ tool, own }: Both): number {
  let asked = 0;
  const totals = new Map([...own.stages.map(({ name, total }) => [name, total[1]] as const), ...own.options.map((one, i) => [one.name, planLike(one, tool.options[i] as ToldOption)?.total[1]] as const)]);
  // Once the job is closed, what was billed for what was done is held against what was authorised for it.
  const closed = own.prices.all.find(({ kind }) => kind === 'closed');
  const billed = closed?.['billed'] === undefined ? undefined : rounded(digitsOf((closed['billed'] as Written).likely), own.prices.digits, 'half-up');
  const ours = [...totals].flatMap(([name, total]) => (total === undefined ? [] : (roomOf(own, name, closed?.['for'] === name ? (billed ?? total) : total) ?? [])));
  expect(tool.authorised.map((one) => `${one.for}, ${one.earlier}`)).toEqual(ours.map((one) => `${one.for}, ${one.earlier}`));
  tool.authorised.forEach((one, i) => {
    const room = ours[i] as (typeof ours)[number];
    const pairs = [[one.amount, room.amount], [one.room, room.room], [one.over, room.over], [one.roomUsed, room.used], [one.roomLeft, room.left], [one.aboveRoom, room.beyond]] as const;
    expect(pairs.map(([figure, value]) => same(figure.likely, value)), one.sentence).toEqual(pairs.map(() => true));
    if (one.mustAsk !== null) expect(one.mustAsk).toBe(room.beyond.n > 0n);
    expect(one.against).toBe(closed === undefined ? 'today' : one.for === closed['for'] && billed !== undefined ? 'billed' : null);
    if (closed !== undefined) expect([one.mustAsk, one.since]).toEqual([null, null]);
    if (one.mustAsk === true) asked++;
  });
  return asked;
}

/** How many lines were recorded beyond the estimate; undefined where nothing is closed. */
export function expectClosed(files: Texts, { tool, own }: Both): { readonly beyond: number } | undefined {
  const closed = own.prices.all.find(({ kind }) => kind === 'closed');
  const report = toldClosing(files);
  expect(report === undefined).toBe(closed === undefined);
  if (closed === undefined || report === undefined) return undefined;
  const at = own.options.findIndex(({ name }) => name === closed['for']);
  const option = tool.options[at] as ToldOption;
  const plan = planLike(own.options[at] as OracleOption, option) as OraclePlan;
  const found = closingOf(own, plan, closed, daysTold(option.calendar));
  for (const [part, sums] of [[report.hours, found.hours], [report.paid, found.paid], [report.cores, found.cores]] as const) expectSums(part, sums);
  expect(report.days.actual).toBe(found.days === undefined ? null : String(found.days));
  expect(report.days.estimated).toBe(option.calendar.days.likely);
  expect(report.billed.estimated).toBe(option.figures['total']?.likely);
  const other = otherWays(own, plan, closed);
  if (other !== undefined) expect([[...report.otherWays.taken].sort(), [...report.otherWays.left].sort()]).toEqual([[...other.taken].sort(), [...other.left].sort()]);
  return { beyond: found.hours.beyondLines + found.paid.beyondLines + found.cores.beyondLines };
}

function expectSums(told: { readonly [of in 'estimated' | 'actual' | 'over' | 'beyond' | 'open']: string }, own: ClosedSums): void {
  // Hours that have no end are told to the millionth.
  const near = (text: string, value: ReturnType<typeof fromDigits>) => expect(Math.abs(Number(text) - Number(value.n) / Number(value.d))).toBeLessThan(0.000_002);
  for (const key of ['estimated', 'actual', 'beyond', 'open'] as const) near(told[key], own[key]);
  near(told.over, minus(own.actual, own.estimated));
}
