import path from 'node:path';
import { describe, expect, test } from 'vitest';
import { EVERY } from '../../src/tools/fuzz/passes.js';
import { inputOf } from '../../src/tools/fuzz/input.js';
import { runInputs, type Plan, type Ran } from '../../src/tools/fuzz/run-inputs.js';
import { shrunk } from '../../src/tools/fuzz/shrink.js';
import { startsBelow } from '../../src/tools/fuzz/texts.js';

const root = path.join(import.meta.dirname, '../..');
const starts = startsBelow(root);
const plan: Plan = { seed: 7, starts, shares: EVERY, slowest: 60_000, patience: 5_000 };
const known: ReadonlySet<string> = new Set();
/** For people: what failed, and with which small input. */
const told = ({ failures }: Ran) => failures.map(({ what, number, input }) => `${what} (input ${number}): ${JSON.stringify([...input.files])} after ${JSON.stringify(input.before)}`);

describe('inputs that nobody wrote', () => {
  test('go through everything', { timeout: 180_000 }, () => {
    const ran = runInputs(plan, { from: 0, to: 60, known });
    expect(told(ran)).toEqual([]);
    expect(ran.passes).toEqual({ text: 60, format: 60, service: 60, edit: 60, features: 60, reports: 60, changes: 60, trials: 60, decision: 60 });
  });

  test('go through what is quick, many of them', { timeout: 180_000 }, () => {
    const ran = runInputs({ ...plan, shares: { format: 100, edit: 20, features: 10, reports: 6, changes: 2, trials: 3, decision: 1 } }, { from: 1000, to: 1500, known });
    expect(told(ran)).toEqual([]);
    expect(ran.inputs).toBe(500);
  });

  test('are the same for the same seed and number, and others for others', () => {
    const text = (seed: number, number: number) => JSON.stringify([...inputOf(seed, number, starts).input.files]);
    expect(text(1, 5)).toBe(text(1, 5));
    expect(new Set([text(1, 5), text(2, 5), text(1, 6)]).size).toBe(3);
  });
});

test('an input that fails is made small', () => {
  const input = { files: new Map([['job.yard', `${'note "x"\n'.repeat(40)}fee bad "F" 1.00\n${'note "y"\n'.repeat(40)}`], ['shop.yard', 'steelyard 1\n']]), name: 'job.yard', before: 'steelyard 1\n' };
  const least = shrunk(input, ({ files }) => files.get('job.yard')?.includes('bad') === true, 10_000);
  expect([...least.files]).toEqual([['job.yard', 'bad']]);
  expect(least.before).toBe('');
});
