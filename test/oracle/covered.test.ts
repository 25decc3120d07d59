import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { randomEstimate } from '../support/random-estimate.js';
import { PATIENT, runs } from '../support/random-runs.js';
import { comesBack, coresOf, downtimeOf, givenUp, inspectionPrice, marginOf, monthlyOf, NO_DAYS, openOf } from './after.js';
import { BESIDE, MOVES, MOVES_NOTHING, POINTS_ONLY, type Answer } from './covered.js';
import { workingDayAfter } from './day-walk.js';
import { bayTime, earliestEnd } from './earliest.js';
import { KINDS } from './kinds.js';
import { piecesOf } from './pieces.js';
import { less } from './prices.js';
import { printed } from './printer.js';
import { randomRecorded } from './recorded.js';
import { closingOf, roomOf } from './records.js';
import { readText, type Json } from './reader.js';
import { told, texts } from './told.js';
import { oracle } from './totals.js';

/** Everything that is worked out for one sort of answer, as text. What can't be worked out at all is another answer. */
function answer(records: readonly Json[], of: Answer): string {
  try {
    return JSON.stringify(worked(records, of), (_, value: unknown) => (typeof value === 'bigint' ? String(value) : value));
  } catch {
    return 'nothing can be worked out';
  }
}

function worked(records: readonly Json[], of: Answer): unknown {
  const own = oracle(records);
  const { options, stages, prices } = own;
  const time = bayTime(own);
  if (of === 'days') {
    return options.map((option) => {
      const found = option.best[0] && earliestEnd(piecesOf(own, option, option.best[0]), time);
      return found && [found.end, time.start && workingDayAfter(time.shop, time.start, Math.ceil(found.end / time.day))];
    });
  }
  if (of === 'job') {
    const closed = records.find(({ kind }) => kind === 'closed');
    return [
      [...options.map(({ name, best }) => [name, best[0]?.total[1]] as const), ...stages.map(({ name, total }) => [name, total[1]] as const)].map(([name, total]) => total !== undefined && roomOf(own, name, total)),
      closed === undefined ? [] : options.filter(({ name }) => name === closed['for']).map(({ name, best: [plan] }) => plan && [name, closingOf(own, plan, closed, NO_DAYS)]),
    ];
  }
  return [
    prices.digits, stages,
    options.map((option) => {
      const [plan] = option.best;
      if (plan === undefined) return option.name;
      const net = less(plan.total, comesBack(own, option, plan, NO_DAYS));
      return [
        plan.total, plan.tax, plan.access, plan.hours, option.stand.total, option.free[0]?.total, net, givenUp(own, option), marginOf(plan), monthlyOf(own, option, net),
        coresOf(own, plan, NO_DAYS).map(({ refund, taxBack, deadline }) => [refund, taxBack, deadline]), openOf(own, option, plan), downtimeOf(own, '2027-03-01', 3),
      ];
    }),
    records.filter(({ kind }) => kind === 'inspect').map((one) => inspectionPrice(own, one)),
  ];
}

/** The records with every line of a kind changed, wherever it stands. */
function changed(records: readonly Json[], kind: string, change: (record: Json) => Json): Json[] {
  return records.map((record) => {
    const below = Object.entries(record).map(([key, value]) => [key, isLines(value) ? changed(value, kind, change) : value] as const);
    const whole = Object.fromEntries(below) as unknown as Json;
    return record.kind === kind ? change(whole) : whole;
  });
}

function isLines(value: unknown): value is readonly Json[] {
  return Array.isArray(value) && value.every((one) => typeof one === 'object' && one !== null && 'kind' in one);
}

const without = (records: readonly Json[], kind: string, slot: string) => changed(records, kind, (record) => Object.fromEntries(Object.entries(record).filter(([key]) => key !== slot)) as unknown as Json);
const rows = Object.entries(MOVES).flatMap(([kind, slots]) => Object.entries(slots).map(([slot, of]) => [kind, slot, of] as const));

describe('what is covered', () => {
  it('is every line and slot there is', () => {
    for (const [word, { slots, below }] of Object.entries(KINDS)) {
      if (word in BESIDE) continue;
      const all = [...Object.values(slots.led).map(({ key }) => key), ...(slots.counted === undefined ? [] : [slots.counted]), ...Object.values(slots.figures), ...slots.words.map(({ key }) => key), ...below];
      const listed = [...Object.keys(MOVES[word] ?? {}), ...Object.keys(MOVES_NOTHING[word] ?? {}), ...(POINTS_ONLY[word] ?? [])];
      expect([...listed].sort(), word).toEqual([...new Set(all)].sort());
    }
  });

  // Half of them with stages, authorisations or a closing. The product is held against the same answers in the other tests of this folder.
  const cases = [...fc.sample(randomRecorded, { seed: 55_001, numRuns: 260 }), ...fc.sample(randomEstimate, { seed: 55_002, numRuns: 120 })].map(readText);
  const known = new Map<string, string>();
  const answerOf = (at: number, of: Answer) => {
    const key = `${at} ${of}`;
    const found = known.get(key) ?? answer(cases[at] as readonly Json[], of);
    known.set(key, found);
    return found;
  };

  it.each(rows)('%s: %s moves %s, in random estimates', PATIENT, (kind, slot, of) => {
    let moved = 0;
    for (let at = 0; at < cases.length && moved < 2; at++) {
      const records = cases[at] as readonly Json[];
      if (!JSON.stringify(records).includes(`"${slot}"`)) continue;
      const other = without(records, kind, slot);
      if (JSON.stringify(other) !== JSON.stringify(records) && answer(other, of) !== answerOf(at, of)) moved++;
    }
    expect(moved).toBe(2);
  });

  it('nothing else moves a figure that the product tells', PATIENT, () => {
    fc.assert(fc.property(randomRecorded, (text) => {
      const records = readText(text);
      const more = Object.entries(MOVES_NOTHING).reduce((all, [kind, slots]) => changed(all, kind, (record) => ({ ...slots, ...record })), records);
      const figures = (of: readonly Json[]) => told(texts(printed(of))).options.map(({ name, figures: all, calendar }) => [name, all, calendar.ready]);
      expect(figures(more)).toEqual(figures(records));
    }), runs(55_003, 40));
  });
});
