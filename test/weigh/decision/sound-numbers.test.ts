import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { Decimal } from '../../../src/vocabulary/index.js';
import { decide } from '../../../src/weigh/index.js';
import { readFixture } from '../../support/fixture.js';
import { randomEstimate } from '../../support/random-estimate.js';
import { PATIENT, runs } from '../../support/random-runs.js';
import { oneFile, sampleWithShop, weighFresh, type Files } from './weighing.js';

/** Kept out: what was written, and parts of the comparison that other tests hold. */
const SKIPPED = new Set(['estimate', 'record', 'at', 'option', 'inspection', 'coverage', 'statement', 'task', 'job']);
/** Below 0 only where that is meant: what is left over, what is saved, and prices of options that pay. */
const MAY_BE_NEGATIVE = /worth|margin|net|inAll|perMonth|perHour|perBayDay|average|cases|now|total|given|saved|alone|penalty|refund|from|back|least|mean|p10|p50|p90|likely|low|high|share/i;

/** Every number of a decision, with the way to it; how many there were. */
function expectSound(files: Files): number {
  const { comparison } = weighFresh(files);
  const decision = decide(comparison);
  const seen = new Set<unknown>();
  let numbers = 0;
  const visit = (value: unknown, way: string, key: string) => {
    if (typeof value === 'number') {
      numbers++;
      if (!Number.isFinite(value) || (value < 0 && !MAY_BE_NEGATIVE.test(way))) expect.fail(`${way} is ${value} in\n${[...files.values()].join('\n')}`);
      return;
    }
    if (typeof value !== 'object' || value === null || SKIPPED.has(key) || seen.has(value)) return;
    seen.add(value);
    if (Decimal.isDecimal(value)) {
      numbers++;
      if (!value.isFinite()) expect.fail(`${way} is ${value.toString()} in\n${[...files.values()].join('\n')}`);
      return;
    }
    if (value instanceof Float64Array) return value.forEach((one) => visit(one, way, key));
    for (const [name, inner] of Object.entries(value)) visit(inner, `${way}.${name}`, name);
  };
  visit(decision, 'decision', '');
  for (const { risk, weighed, monthly } of decision.options) {
    const { ready } = weighed;
    const days = [ready.days.low, ready.days.likely, ready.days.high, ready.bay.likely, ready.waiting.likely].map((one) => one.toNumber());
    days.push(ready.finish, ready.gap, ...ready.byChance.map((one) => one.days), ...ready.tasks.flatMap(({ start, end, slack }) => [start, end, slack]));
    if (risk !== undefined) days.push(risk.days.mean, risk.days.p10, risk.days.p50, risk.days.p90, risk.trouble, ...risk.cases.days);
    if (monthly !== undefined) days.push(monthly.months.toNumber());
    const wrong = days.find((one) => !(one >= -1e-9));
    if (wrong !== undefined) expect.fail(`days of ${weighed.option.name}: ${wrong} in\n${[...files.values()].join('\n')}`);
    for (const iso of [ready.date, ready.latest, risk?.ready?.p10, risk?.ready?.p50, risk?.ready?.p90]) if (iso !== undefined) expect(iso).toMatch(/^\d{4,6}-\d\d-\d\d$/);
    if (risk !== undefined) {
      expect(risk.inAll.p10 <= risk.inAll.p50 + 1e-9 && risk.inAll.p50 <= risk.inAll.p90 + 1e-9).toBe(true);
      expect(risk.trouble >= 0 && risk.trouble <= 1 && (risk.cheapest ?? 0) >= 0 && (risk.cheapest ?? 0) <= 1).toBe(true);
    }
  }
  const shares = decision.options.flatMap(({ risk }) => risk?.cheapest ?? []);
  if (shares.length > 0) expect(shares.reduce((sum, one) => sum + one, 0)).toBeCloseTo(1, 9);
  return numbers;
}

describe('no number of a decision is infinite, none at all, or a negative day', () => {
  it.each(['pilgrim-v6.yard', 'heron-pump.yard', 'kestrel-flat.yard', 'tarn-inline.yard'])('sample %s', (file) => {
    expect(expectSound(sampleWithShop(file))).toBeGreaterThan(500);
  });

  it('100 random estimates', PATIENT, () => {
    let numbers = 0;
    fc.assert(fc.property(randomEstimate, (text) => void (numbers += expectSound(oneFile(text)))), runs(9601, 100));
    expect(numbers).toBeGreaterThan(20_000);
  });

  const wrong = path.resolve(import.meta.dirname, '../../corpus/err');
  it('every wrong file of the corpus', PATIENT, () => {
    const files = readdirSync(wrong).filter((file) => file.endsWith('.yard.txt'));
    for (const file of files) {
      const { files: all } = readFixture(readFileSync(path.join(wrong, file), 'utf8'));
      expect(() => expectSound(new Map(all.filter(({ unread }) => !unread).map(({ name, text }) => [name, text]))), file).not.toThrow();
    }
    expect(files.length).toBeGreaterThan(10);
  });

  it('random estimates with a figure made 0, 100 or a million', PATIENT, () => {
    const drawn = fc.record({ text: randomEstimate, at: fc.nat({ max: 5000 }), to: fc.constantFrom('0', '100', '1000000', '0.000001') });
    let numbers = 0;
    fc.assert(fc.property(drawn, ({ text, at, to }) => {
      const found = [...text.matchAll(/(?<![\w."-])\d+(?:\.\d+)?(?![\w-])/g)].slice(1);
      const one = found[at % Math.max(1, found.length)];
      if (one !== undefined) numbers += expectSound(oneFile(`${text.slice(0, one.index)}${to}${text.slice(one.index + one[0].length)}`));
    }), runs(9602, 80));
    expect(numbers).toBeGreaterThan(10_000);
  });

  const nothing = 'steelyard 1\nestimate "E"\n  start 2026-11-30\n  interest 0%\nshop "S"\n  workday %DAY%\n  rate bench 0.00 cost 0.00\n  markup 0%\n  tax levy 0% on parts, labour\n  fee "F" 0% of labour cap 0.00\nvehicle "V"\n  worth 0.00\n  unrepaired 0.00\n  downtime 0.00\naccess out "Out"\n  remove 0 h\n  refit 0 h\n  chance "Way" %P%\n    labour "W" 0 h with out\nlabour job "Job"\n  takes 0 / 0 / 0 h with out\n  apart after 0 h\n  chance all "All" %P%\n    part "X" 0.00 new arrives 0 d\noption one "One"\n  do job\n  part "P" 0 at 0.00 rebuilt arrives 0 d\n    core 0.00 due 0 d\n      assemble 0 h\n  lasts 1 mo\n  resale 0.00\noption two "Two"\n  lasts 0 mo\noption three "Three"\n  labour "L" 0 / 0 / 5 h\n  chance more "More" %P% comeback\n    do job\ninspect look "Look" 0.00 0 h\n  finds all 0%\n  finds more 100% wrongly 100%\n';
  it.each(['0%', '100%', '50%'].flatMap((percent) => ['8 h', '0 h', '0.01 h'].map((day) => [percent, day] as const)))('all figures nothing, chances of %s, a working day of %s', (percent, day) => {
    expect(expectSound(oneFile(nothing.replaceAll('%P%', percent).replace('%DAY%', day)))).toBeGreaterThan(100);
  });

  it('an option of nothing, options without any work, a shop that is always closed', () => {
    const texts = [
      'steelyard 1\noption one "One"\n', 'steelyard 1\nshop "S"\n',
      'steelyard 1\nestimate "E"\n  start 2026-11-30\nshop "S"\n  rate bench 1.00\n  closed monday, tuesday, wednesday, thursday, friday, saturday, sunday\noption one "One"\n  labour "W" 1 / 2 / 3 h\n  part "P" 1.00 new arrives 1 wk\n',
      'steelyard 1\nshop "S"\n  rate bench 1.00\n  closed monday, tuesday, wednesday, thursday, friday, saturday, sunday\noption one "One"\n  labour "W" 1 h\n  part "P" 1.00 new arrives 1 mo\n',
    ];
    for (const text of texts) expect(expectSound(oneFile(text)), text).toBeGreaterThanOrEqual(0);
  });
});
