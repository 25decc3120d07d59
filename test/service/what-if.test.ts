import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, test } from 'vitest';
import { writtenWith } from '../../src/service/index.js';
import { serviceOver, uriOf } from '../support/fixture.js';

const folder = path.resolve(import.meta.dirname, '../../samples');
const texts = Object.fromEntries(readdirSync(folder).filter((name) => name.endsWith('.yard')).map((name) => [name, readFileSync(path.join(folder, name), 'utf8')]));
const jobs = Object.keys(texts).filter((name) => name !== 'shop.yard');

describe('a figure tried without touching the file', () => {
  test.each([
    ['1150 / 1350 / 2100', '1645.57', '1150 / 1645.57 / 2100'],
    ['1150 / 1350 / 2100', '2100.01', '2100.01'],
    ['6.0 / 6.5 / 8.0 h', '7', '6.0 / 7 / 8.0 h'],
    ['6.0/6.5/8.0 h', '9', '9 h'],
    ['132.00', '140', '140'],
    ['8.25%', '9', '9%'],
    ['45 min', '50', '50 min'],
    ['64.30 USD', '70', '70 USD'],
  ])('%s with %s is written %s', (written, value, expected) => {
    const text = `note ${written}`;
    const block = { text } as Parameters<typeof writtenWith>[0]['block'];
    expect(writtenWith({ block, start: 5, end: text.length }, value)).toBe(expected);
  });

  test.each(jobs)('%s: every flip point tried turns the choice, and writing it gives the same', (name) => {
    const { host, service } = serviceOver(texts);
    const uri = uriOf(name);
    const decision = service.decision(uri);
    const before = service.weighing(uri);
    const flips = decision.flips.filter(({ measure, share = 9 }) => measure === 'quoted' && share < 2);
    expect(flips.length).toBeGreaterThan(0);
    for (const flip of flips) {
      const trial = { at: flip.at, value: String(flip.flips) };
      const tried = service.trying(uri, [trial]);
      expect(tried.ranking[0]?.option.name, `${flip.line} ${flip.figure.label} ${flip.way} ${flip.flips}`).toBe(flip.to.name);
      expect(service.trying(uri, [{ at: flip.at, value: String(flip.holds) }]).ranking[0]?.option.name).toBe(before.comparison.ranking[0]?.option.name);
      expect(service.weighing(uri)).toBe(before);
    }
    const [first] = flips;
    if (first === undefined) return;
    const trial = { at: first.at, value: String(first.flips) };
    const tried = service.trying(uri, [trial]);
    const made = service.trialEdit(trial);
    if (made === undefined) throw new Error('no edit');
    const file = Object.keys(texts).find((one) => uriOf(one) === made.uri) as string;
    const text = texts[file] as string;
    host.set(file, text.slice(0, made.edit.range.start) + made.edit.text + text.slice(made.edit.range.end));
    const sums = (of: typeof tried) => of.options.map(({ inAll, totals }) => [inAll.likely.toFixed(), totals.total.low.toFixed(), totals.total.high.toFixed()]);
    expect(sums(service.weighing(uri).comparison)).toEqual(sums(tried));
  });

  test.each(['-5', '1,000', '1e5', '', ' 5', '5; rm', '1234567890123', '0.1234567'])('%s is no figure to try', (value) => {
    const { service } = serviceOver(texts);
    const uri = uriOf('pilgrim-v6.yard');
    const { comparison } = service.weighing(uri);
    const at = service.decision(uri).flips[0]?.at;
    if (at === undefined) throw new Error('no flip');
    expect(service.trialEdit({ at, value })).toBeUndefined();
    expect(service.trying(uri, [{ at, value }])).toBe(comparison);
  });
});
