import { readFileSync } from 'node:fs';
import path from 'node:path';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { randomEstimate } from '../support/random-estimate.js';
import { PATIENT, runs } from '../support/random-runs.js';
import { randomStaged } from '../support/random-stage.js';
import { workingDayAfter } from './day-walk.js';
import { bayTime, earliestEnd, steps } from './earliest.js';
import { piecesOf } from './pieces.js';
import { whole } from './rational.js';
import { readFiles } from './reader.js';
import { told, texts, type Texts, type ToldOption } from './told.js';
import { oracle, type Oracle, type OracleOption } from './totals.js';

interface Seen {
  exact: number;
  /** Where more than one piece of work could come first, so that the order counts. */
  ordered: number;
  open: number;
}

/** The end, the number of days and the date of an option, held against every order of its work. */
function expectEarliest(option: OracleOption, own: Oracle, tool: ToldOption, seen: Seen): void {
  const plan = option.best.find(({ ways }) => [...ways].sort().join() === [...tool.ways.chosen.ways].sort().join());
  if (plan === undefined) return;
  const time = bayTime(own);
  const found = earliestEnd(piecesOf(own, option, plan), time);
  const ends = tool.calendar.tasks.filter(({ counts }) => counts).map(({ end }) => Number(end));
  const end = Math.max(0, ...ends);
  const hours = found.end / steps(whole(1n));
  // Hours are told to the hundredth.
  const HUNDREDTH = 0.0051;
  if (found.kind === 'at least') {
    seen.open++;
    expect(end, option.name).toBeGreaterThan(hours - HUNDREDTH);
    return;
  }
  seen.exact++;
  if (found.work > 2) seen.ordered++;
  expect(end, option.name).toBeGreaterThan(hours - HUNDREDTH);
  expect(end - hours, option.name).toBeLessThan((tool.calendar.proven ? 0 : Number(tool.calendar.gap)) + HUNDREDTH);
  if (!tool.calendar.proven) return;
  const days = Math.ceil(found.end / time.day);
  expect(tool.calendar.days.likely, option.name).toBe(String(days));
  if (time.start !== undefined) expect(tool.calendar.ready, option.name).toBe(workingDayAfter(time.shop, time.start, Math.max(0, days - 1)));
}

function expectDays(files: Texts, seen: Seen): void {
  const [main = ''] = files.keys();
  const own = oracle(readFiles(main, (name) => files.get(name) as string));
  const { options } = told(files);
  own.options.forEach((option, i) => expectEarliest(option, own, options[i] as ToldOption, seen));
}

describe('the day on which it is ready equals the earliest of every order of the work', () => {
  it.each(['heron-pump.yard', 'tarn-inline.yard', 'kestrel-flat.yard', 'osprey-tear-down.yard', 'pilgrim-v6.yard'])('sample %s', (file) => {
    const samples = path.resolve(import.meta.dirname, '../../samples');
    const seen: Seen = { exact: 0, ordered: 0, open: 0 };
    expectDays(new Map([file, 'shop.yard'].map((name) => [name, readFileSync(path.join(samples, name), 'utf8')])), seen);
    expect(seen.exact).toBeGreaterThan(0);
  });

  it.each([['random estimates', randomEstimate, 150, 250, 40], ['estimates with stages', randomStaged, 60, 90, 20]] as const)('%s', PATIENT, (_, arbitrary, count, exact, ordered) => {
    const seen: Seen = { exact: 0, ordered: 0, open: 0 };
    fc.assert(fc.property(arbitrary, (text) => expectDays(texts(text), seen)), runs(90_116, count));
    expect(seen.exact).toBeGreaterThan(exact);
    expect(seen.ordered).toBeGreaterThan(ordered);
    expect(seen.open).toBeLessThan(seen.exact / 10);
  });
});
