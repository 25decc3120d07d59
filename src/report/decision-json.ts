import type { Comparison, Covered, Decided, Flip, InspectionWeighed, Money, Monthly, OptionRisk, SampledFigure, Weighed } from '../weigh/index.js';
import { coveredSentence, flipSentence, inspectionSentence } from './decision-words.js';
import { lineId, taskId } from './figures.js';
import { fixed, type JsonWriter } from './json-writer.js';
import type { WeighReport } from './weigh-schema.js';

type JsonOption = WeighReport['options'][number];

/** How finely sampled and planned figures are told: more would pretend, and may differ from machine to machine. */
const HOURS = 2;
const DAYS = 2;
const SHARE = 3;
const DISTANCE = 4;

export function calendarJson(weighed: Weighed, { points, at }: JsonWriter): JsonOption['calendar'] {
  const { ready } = weighed;
  const hours = (value: number) => fixed(value, HOURS);
  return {
    hoursPerDay: hours(ready.hoursPerDay),
    technicians: ready.technicians,
    days: points(ready.days),
    bay: points(ready.bay),
    waiting: points(ready.waiting),
    ready: ready.date ?? null,
    latest: ready.latest ?? null,
    byChance: ready.byChance.map(({ chance, days, date }) => ({ chance: fixed(chance, 1), days: Math.max(0, days), date: date ?? null })),
    proven: ready.proven,
    gap: hours(ready.gap),
    tasks: ready.tasks.map(({ task, start, end, from, to, technician, slack, critical }, i) => ({
      id: taskId(weighed, i), title: task.title, kind: task.kind,
      start: hours(start), end: hours(end), from: from ?? null, to: to ?? null,
      technician: technician ?? null, slack: hours(slack), critical, counts: task.counts, holdsAll: task.holdsAll,
      ...at(task.at),
    })),
  };
}

export function riskJson(risk: OptionRisk | undefined, cases: number | undefined, { amount, at }: JsonWriter): JsonOption['risk'] {
  if (risk === undefined || cases === undefined) return null;
  const spread = (of: SampledFigure, text: (value: number) => string) => ({ mean: text(of.mean), p10: text(of.p10), p50: text(of.p50), p90: text(of.p90) });
  return {
    cases,
    total: spread(risk.total, amount),
    inAll: spread(risk.inAll, amount),
    days: spread(risk.days, (value) => fixed(value, DAYS)),
    ready: risk.ready ?? null,
    cheapest: risk.cheapest === undefined ? null : fixed(risk.cheapest, SHARE),
    trouble: fixed(risk.trouble, SHARE),
    contributions: risk.contributions.map(({ title, kind, share, at: span }) => ({ title, kind, share: fixed(share, SHARE), ...at(span) })),
  };
}

export function monthlyJson(monthly: Monthly | undefined, { points }: JsonWriter): JsonOption['monthly'] {
  if (monthly === undefined) return null;
  const { months, now, resale, perMonth } = monthly;
  return { months: months.toDecimalPlaces(2).toFixed(), now: points(now), resale: points(resale), perMonth: points(perMonth) };
}

export function shopJson({ weighed, margin }: Decided, { currency: { digits } }: Money, { points }: JsonWriter): JsonOption['shopOnly'] {
  const { lines } = weighed.totals;
  return {
    by: margin.by.map(({ sort, sold, cost, margin: left, unknown }) => ({
      sort, sold: points(sold), cost: points(cost), margin: points(left),
      unknown: unknown.map((line) => ({ id: lineId(weighed, lines.indexOf(line)), title: line.title })),
    })),
    total: points(margin.margin),
    perHour: margin.perHour?.toFixed(digits) ?? null,
    perBayDay: margin.perBayDay?.toFixed(digits) ?? null,
  };
}

export function flipJson(flip: Flip, money: Money, { at }: JsonWriter): WeighReport['flips'][number] {
  const { figure, line, way, holds, flips, to, share, measure } = flip;
  // A likelihood is a crossing of two lines, and ends nowhere; others are searched in steps of a hundredth.
  const value = (one: number) => fixed(one, 2);
  return {
    line, label: figure.label, ...at(flip.at), unit: figure.unit, value: figure.likely.toFixed(),
    way, holds: value(holds), flips: value(flips), to: to.name, share: share === undefined ? null : fixed(share, DISTANCE), measure,
    sentence: flipSentence(flip, money),
  };
}

export function inspectionJson(one: InspectionWeighed, comparison: Comparison, { points, amount, at }: JsonWriter): WeighReport['inspections'][number] {
  const { inspection, price, worth, net, perfectWorth, verdict, choose, results } = one;
  return {
    name: inspection.name, title: inspection.title, ...at(inspection.at),
    price: points(price), worth: amount(worth), net: amount(net), perfectWorth: amount(perfectWorth), verdict, choose,
    results: results.map((result) => ({ shows: [...result.shows], chance: fixed(result.chance, SHARE), choose: result.choose ?? null, changes: result.changes })),
    sentence: inspectionSentence(one, comparison),
  };
}

export function coverageJson(covered: Covered, { at }: JsonWriter): WeighReport['coverages'][number] {
  const { coverage, answer, reasons, options } = covered;
  return {
    title: coverage.title, ...at(coverage.at), sort: coverage.sort ?? null, answer,
    conditions: reasons.map(({ condition, holds }) => ({ condition, holds })),
    options: [...options],
    sentence: coveredSentence(covered),
  };
}
