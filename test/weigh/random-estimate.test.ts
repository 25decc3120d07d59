import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { randomEstimate } from '../support/random-estimate.js';
import { PATIENT, runs } from '../support/random-runs.js';
import { read } from './weighed.js';

describe('random estimates', () => {
  it('check without errors, and all their options are weighed', PATIENT, () => {
    fc.assert(fc.property(randomEstimate, (text) => {
      const { errors, comparison } = read(text);
      expect(errors.map((one) => one.text)).toEqual([]);
      expect(comparison.options.every(({ complete }) => complete)).toBe(true);
      expect(comparison.ranking.length).toBe(comparison.options.filter(({ option }) => option.ruledOutBy.length === 0).length);
    }), runs(1, 60));
  });
});
