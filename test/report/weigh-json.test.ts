import { readdirSync } from 'node:fs';
import path from 'node:path';
import { Ajv2020 } from 'ajv/dist/2020.js';
import * as z from 'zod';
import { describe, expect, test } from 'vitest';
import { decisionVerdict, flipSentence, namedFigures, weighJson, weighReport, type PlaceOf } from '../../src/report/index.js';
import type { LanguageService } from '../../src/service/index.js';
import { sampleTexts, serviceOver } from '../page/estimates.js';

const names = readdirSync(path.resolve(import.meta.dirname, '../../samples')).filter((name) => name.endsWith('.yard') && name !== 'shop.yard');
const schema = new Ajv2020({ strict: false }).compile(z.toJSONSchema(weighReport(), { target: 'draft-2020-12' }));

function placesOf(service: LanguageService, texts: ReadonlyMap<string, string>): PlaceOf {
  return (span) => {
    const place = service.place(span);
    if (place === undefined) return undefined;
    const before = (texts.get(place.uri) ?? '').slice(0, place.range.start).split('\n');
    return { file: place.uri.slice(1), line: before.length, column: (before[before.length - 1] ?? '').length + 1 };
  };
}

function reportOf(texts: ReadonlyMap<string, string>, uri: string) {
  const service = serviceOver(new Map(texts));
  const decision = service.decision(uri);
  return { service, decision, report: weighJson(decision, placesOf(service, texts)) };
}

describe.each(names)('%s', (name) => {
  const texts = sampleTexts(name);
  const { decision, report } = reportOf(texts, `/${name}`);

  test('keeps to its schema', () => {
    expect(schema(report), JSON.stringify(schema.errors)).toBe(true);
    expect(JSON.parse(JSON.stringify(report))).toEqual(report);
  });

  test('is the same, byte for byte, when it is made anew', () => {
    expect(JSON.stringify(reportOf(texts, `/${name}`).report)).toBe(JSON.stringify(report));
  });

  test('says what the decision says', () => {
    expect(report.verdict).toBe(decisionVerdict(decision));
    expect(report.flips.map(({ sentence }) => sentence)).toEqual(decision.flips.map((flip) => flipSentence(flip, decision.comparison.money)));
    expect(report.options.map((one) => one.name)).toEqual(decision.options.map(({ weighed }) => weighed.option.name));
    expect(report.options.filter(({ written }) => !written).map((one) => one.name)).toEqual(decision.comparison.estimate.vehicle?.unrepaired === undefined ? [] : ['as-it-stands']);
  });

  test('shares lie between none and all, points rise, and shares of the cheapest add up', () => {
    const whole = report.options.flatMap(({ risk }) => risk ?? []);
    for (const { cheapest, trouble, inAll, total, days } of whole) {
      for (const share of [cheapest ?? '0', trouble]) expect(Number(share) >= 0 && Number(share) <= 1).toBe(true);
      for (const { p10, p50, p90 } of [inAll, total, days]) expect(Number(p10) <= Number(p50) && Number(p50) <= Number(p90)).toBe(true);
    }
    if (whole.length > 0) expect(whole.reduce((sum, { cheapest }) => sum + Number(cheapest ?? 0), 0)).toBeCloseTo(1, 2);
  });

  test('the calendar: tasks fit in their days, the last that counts ends it, and each is a named figure', () => {
    const figures = namedFigures(decision.comparison, decision);
    for (const { calendar } of report.options) {
      const end = Math.max(0, ...calendar.tasks.filter(({ counts }) => counts).map(({ end: to }) => Number(to)));
      if (calendar.tasks.length > 0) expect(Math.ceil(end / Number(calendar.hoursPerDay) - 1e-6)).toBe(Number(calendar.days.likely));
      for (const { id, start, end: to, slack, critical, from, to: day } of calendar.tasks) {
        expect(figures.has(id)).toBe(true);
        expect(Number(start)).toBeLessThanOrEqual(Number(to));
        if (critical) expect(slack).toBe('0.00');
        if (from !== null && day !== null) expect(from <= day).toBe(true);
      }
    }
  });

  test('the margin adds up and is under a key that says whom it is for', () => {
    const figures = namedFigures(decision.comparison, decision);
    for (const { name: option, shopOnly, figures: quoted } of report.options) {
      for (const { sort, sold, cost, margin } of shopOnly.by) {
        expect(Number(margin.likely)).toBeCloseTo(Number(sold.likely) - Number(cost.likely), 6);
        expect(figures.get(`${option}.margin-${sort}`)?.likely.toFixed(2)).toBe(margin.likely);
      }
      expect(Number(shopOnly.total.likely)).toBeCloseTo(shopOnly.by.reduce((sum, { margin }) => sum + Number(margin.likely), 0), 6);
      expect(Object.keys(quoted).filter((key) => key.startsWith('margin'))).toEqual([]);
    }
  });
});

/** The cheapest option is asked for again with the figure written anew: nothing of the search is used. */
test('each flip of a quoted figure is one: the text with that value chooses another option, with the value before it not', () => {
  const name = 'pilgrim-v6.yard';
  const texts = sampleTexts(name);
  const { service, decision, report } = reportOf(texts, `/${name}`);
  let checked = 0;
  decision.flips.forEach((flip, i) => {
    const told = report.flips[i] as (typeof report.flips)[number];
    const place = service.place(flip.at);
    if (flip.measure === 'average' || place === undefined) return;
    const text = texts.get(place.uri) as string;
    const written = text.slice(place.range.start, place.range.end);
    const unit = /[a-z%]+$/.exec(written)?.[0] ?? '';
    const pickWith = (value: string) => {
      const changed = new Map(texts).set(place.uri, `${text.slice(0, place.range.start)}${value}${unit === '%' ? '%' : unit === '' ? '' : ` ${unit}`}${text.slice(place.range.end)}`);
      return serviceOver(changed).weighing(`/${name}`).comparison.ranking[0]?.option.name;
    };
    expect(pickWith(told.holds), `${told.line}, ${told.label}: ${told.holds}`).toBe(report.pick);
    expect(pickWith(told.flips), `${told.line}, ${told.label}: ${told.flips}`).toBe(told.to);
    checked++;
  });
  expect(checked).toBeGreaterThan(15);
}, 30_000);

test.each([
  ['no options', 'steelyard 1\n'],
  ['no date, no currency', 'steelyard 1\nshop "S"\n  rate plain 100.00\noption one "One"\n  labour "Work" 1 / 2 / 4 h\noption two "Two"\n  labour "Other" 3 h\n'],
  ['a broken line', 'steelyard 1\noption one "One"\n  labour "Work" 2h\noption two "Two"\n  part "P" 10.00 new\n'],
])('%s: keeps to the schema', (_, text) => {
  const { report } = reportOf(new Map([['/a.yard', text]]), '/a.yard');
  expect(schema(report), JSON.stringify(schema.errors)).toBe(true);
});
