import { describe, expect, it } from 'vitest';
import { moneyText, verdict } from '../../src/report/index.js';
import type { Weighed } from '../../src/weigh/index.js';
import { readSample, sampleFiles } from './weighed.js';

const samples = sampleFiles.map((file) => ({ file, sample: readSample(file) }));
const estimates = samples.filter(({ sample }) => sample.comparison.options.length > 0);

describe('samples', () => {
  it('there are some, and some of them compare options', () => {
    expect(sampleFiles).toContain('pilgrim-v6.yard');
    expect(estimates.length).toBeGreaterThan(0);
  });

  it.each(samples)('$file checks without errors, alone and in what it uses', ({ sample }) => {
    expect(sample.errors.map((one) => one.text)).toEqual([]);
  });

  describe.each(estimates)('$file', ({ sample: { comparison } }) => {
    it('all options are weighed, and the cheapest stands first', () => {
      expect(comparison.ranking).toHaveLength(comparison.options.length);
      const amounts = comparison.ranking.map((one) => one.inAll.likely.toNumber());
      expect(amounts).toEqual([...amounts].sort((a, b) => a - b));
    });

    it('the verdict names the pick, what it costs and by how much it leads', () => {
      const [first, second] = comparison.ranking as [Weighed, Weighed?];
      const sentence = verdict(comparison);
      expect(sentence).toContain(first.option.title);
      expect(sentence).toContain(moneyText(first.inAll.likely, comparison.money));
      if (second === undefined) return;
      expect(sentence).toContain(second.option.title);
      expect(sentence).toContain(moneyText(second.inAll.likely.minus(first.inAll.likely), comparison.money));
    });

    it('getting in and closing up stand once in each option, as written', () => {
      for (const { option, totals, planned } of comparison.options) {
        const access = totals.lines.filter((line) => line.share === 'access' && line.kind === 'labour');
        expect(new Set(access.map((line) => line.title)).size, option.name).toBe(access.length);
        for (const way of planned.chosen.paid) {
          // What a stage opened is not closed where the vehicle is sold as it stands.
          const isLeft = option.staged?.then === 'left open' && option.staged.ways.includes(way);
          const written = [way.remove, isLeft ? undefined : way.refit].flatMap((time) => (time === undefined ? [] : [time.unit?.word === 'min' ? time.likely.div(60) : time.likely]));
          expect(access.filter((line) => line.name === way.name).map((line) => line.hours?.likely.toFixed())).toEqual(written.map((hours) => hours.toFixed()));
        }
        const paid = planned.chosen.paid.map((way) => way.name);
        expect(access.every((line) => paid.includes(line.name ?? ''))).toBe(true);
      }
    });

    it('an option that pays for getting in has a penalty', () => {
      for (const { penalty, planned } of comparison.options) {
        expect(penalty.money.likely.gte(0)).toBe(true);
        if (planned.chosen.paid.length > 0) expect(penalty.money.likely.gt(0)).toBe(true);
      }
    });
  });
});
