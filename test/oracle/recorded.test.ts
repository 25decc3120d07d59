import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { Draw } from '../support/random-draw.js';
import { randomEstimate } from '../support/random-estimate.js';
import { PATIENT, runs } from '../support/random-runs.js';
import { expectAuthorised, expectClosed } from './compared-records.js';
import { expectSame } from './compared.js';
import { printed } from './printer.js';
import { randomRecorded, withRecords } from './recorded.js';
import { readText, type Json } from './reader.js';
import { told, texts, type Texts } from './told.js';

describe('records of the job', () => {
  it('room above what was authorised, what is used of it and what is left; hours, money and days of a closing', PATIENT, () => {
    const seen = { authorised: 0, asked: 0, closed: 0, beyond: 0 };
    fc.assert(fc.property(randomRecorded, (text) => {
      const both = expectSame(texts(text));
      seen.authorised += both.tool.authorised.length;
      seen.asked += expectAuthorised(both);
      const closed = expectClosed(texts(text), both);
      if (closed === undefined) return;
      seen.closed++;
      seen.beyond += closed.beyond;
    }), runs(31_220, 120));
    expect(seen.authorised).toBeGreaterThan(80);
    expect(seen.asked).toBeGreaterThan(10);
    expect(seen.closed).toBeGreaterThan(40);
    expect(seen.beyond).toBeGreaterThan(20);
  });

  it('move no quoted figure', PATIENT, () => {
    fc.assert(fc.property(randomEstimate, fc.array(fc.nat({ max: 65_535 }), { minLength: 60, maxLength: 90 }), (text, numbers) => {
      const figures = (of: string) => told(texts(of)).options.map(({ name, figures: all }) => [name, all]);
      expect(figures(withRecords(text, new Draw(numbers)))).toEqual(figures(text));
    }), runs(31_221, 25));
  });
});

/** Kinds that stand well in a file that many estimates share. */
const SHARED = ['shop', 'access', 'labour', 'part', 'sublet', 'fee', 'tool', 'finding'];

/** The same estimate, with some of its lines in two shared files, of which one uses the other. */
function inFiles(records: readonly Json[], draw: Draw): Texts {
  const head: Json = { kind: 'steelyard', version: { low: '1', likely: '1', high: '1' } };
  const use = (title: string): Json => ({ kind: 'use', title });
  const place = new Map(records.map((record) => [record, SHARED.includes(record.kind) ? draw.upTo(2) : 0]));
  const at = (file: number) => records.filter((record) => record.kind !== 'steelyard' && place.get(record) === file);
  return new Map([
    ['job/one.yard', printed([head, use('../shared/work.yard'), ...at(0)])],
    ['shared/work.yard', printed([head, use('prices/shop.yard'), ...at(1)])],
    ['shared/prices/shop.yard', printed([head, ...at(2)])],
  ]);
}

describe('estimates in several files', () => {
  it('lines in shared files that use each other count as if they stood in the estimate', PATIENT, () => {
    fc.assert(fc.property(randomEstimate, fc.array(fc.nat({ max: 65_535 }), { minLength: 20, maxLength: 40 }), (text, numbers) => {
      const split = expectSame(inFiles(readText(text), new Draw(numbers)));
      const whole = told(texts(text));
      const money = (all: typeof whole) => all.options.map(({ name, figures }) => [name, figures['total']?.likely, figures['in-all']?.likely]);
      expect(money(split.tool)).toEqual(money(whole));
    }), runs(31_222, 40));
  });
});
