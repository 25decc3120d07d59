import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { EVERY } from '../../src/tools/fuzz/passes.js';
import type { Ran } from '../../src/tools/fuzz/run-inputs.js';
import { runInThreads } from '../../src/tools/fuzz/threads.js';

/** Does as a thread of the run does, with no product: says which numbers it had, never ends at 607, dies at 1300. */
const THREAD = `
import { parentPort, workerData } from 'node:worker_threads';
parentPort.on('message', ({ from, to, known }) => {
  const had = [];
  for (let number = from; number < to; number++) {
    Atomics.store(workerData.at, 0, number - workerData.from);
    if (number === 607) for (;;);
    if (number === 1300) throw new Error('no more');
    had.push(number);
  }
  const failures = known.has('odd') ? [] : [{ what: 'odd', number: from, input: { files: new Map(), name: '', before: '' }, error: '' }];
  parentPort.postMessage({ inputs: had.length, passes: { text: had.length }, characters: had.reduce((sum, one) => sum + one, 0), slowest: { number: from, ms: from }, failed: new Map([['odd', [from]]]), failures });
});
`;

const folder = mkdtempSync(path.join(tmpdir(), 'threads-'));
const script = path.join(folder, 'thread.mjs');
beforeAll(() => writeFileSync(script, THREAD));
afterAll(() => rmSync(folder, { recursive: true }));

const plan = { seed: 1, starts: [{ name: 'a', text: 'steelyard 1\n' }], shares: EVERY, slowest: 1_000, patience: 0 };
const run = (workers: number, seen: (all: Ran, lot: Ran) => void = () => undefined, stop = () => false) => runInThreads({ plan, from: 100, to: 2_100, workers, script, hangs: 1_000, progress: seen, stop });

test.each([1, 3])('%d threads: every input once, and what hangs or dies is told and passed over', { timeout: 30_000 }, async (workers) => {
  const all = await run(workers);
  // The sum of the numbers from 100 to 2099 without the two, each counted once.
  expect(all.characters).toBe(2_199_000 - 607 - 1_300);
  expect(all.inputs).toBe(2_000);
  expect(all.passes).toEqual({ text: 1_998 });
  expect(all.failed.get('it does not end')).toEqual([607]);
  expect(all.failed.get('the thread dies: no more')).toEqual([1_300]);
  expect(all.failures.map(({ what }) => what).sort()).toEqual(['it does not end', 'odd', 'the thread dies: no more']);
  expect(all.failures.find(({ what }) => what === 'it does not end')?.number).toBe(607);
  expect(all.failures.find(({ what }) => what.startsWith('the thread dies'))?.number).toBe(1_300);
});

test('ends when it is told to, with what was done', async () => {
  let lots = 0;
  const all = await run(1, () => void lots++, () => lots >= 1);
  expect(all.inputs).toBe(500);
});
