import { parentPort, Worker, workerData } from 'node:worker_threads';
import { inputOf } from './input.js';
import { NOTHING, runInputs, together, type Plan, type Ran, type Share } from './run-inputs.js';

/** Inputs that a thread gets at once: some seconds of work. */
const AT_ONCE = 500;

/** Much of what an input makes is dropped at once; with room for it less is carried over, which is a tenth of the time. */
const ROOM = { maxYoungGenerationSizeMb: 64, maxOldGenerationSizeMb: 1_500 };

export interface Run {
  readonly plan: Plan;
  readonly from: number;
  readonly to: number;
  readonly workers: number;
  /** The script that calls `serveInputs` when it runs in a thread. */
  readonly script: string;
  /** An input at which a thread stands for so long will never answer, in milliseconds by the clock. */
  readonly hangs: number;
  /** After each lot: what came of all so far, and of this one. */
  readonly progress: (all: Ran, lot: Ran) => void;
  /** Asked before each lot; true ends the run. */
  readonly stop: () => boolean;
}

interface Setting {
  readonly plan: Plan;
  /** The number of the input that the thread is at, less `from`. */
  readonly at: Int32Array;
  readonly from: number;
}

type Lot = Omit<Share, 'known'>;

/**
 * Shares the inputs out among threads, a lot at a time. Input N of a seed is the same whichever thread has it. A thread
 * that stands still or dies is ended and told as a failure of the input that it was at; the rest of its lot goes on.
 */
export async function runInThreads(run: Run): Promise<Ran> {
  let all = NOTHING;
  let next = run.from;
  const left: Lot[] = [];
  const lot = (): Lot | undefined => {
    if (run.stop()) return undefined;
    const before = left.pop();
    if (before !== undefined || next >= run.to) return before;
    const from = next;
    next = Math.min(run.to, from + AT_ONCE);
    return { from, to: next };
  };
  const done = (ran: Ran) => {
    all = together(all, ran);
    run.progress(all, ran);
  };
  const known = () => new Set(all.failed.keys());
  const goesOn = async (): Promise<void> => {
    for (let given = lot(); given !== undefined; given = lot()) {
      const lost = await oneThread(run, given, lot, known, done);
      if (lost === undefined) return;
      const { at, rest, why } = lost;
      const { input } = inputOf(run.plan.seed, at, run.plan.starts);
      done({ ...NOTHING, inputs: 1, failed: new Map([[why, [at]]]), failures: [{ what: why, number: at, input, error: '' }] });
      left.push(...rest.filter(({ from, to }) => from < to));
    }
  };
  await Promise.all(Array.from({ length: run.workers }, goesOn));
  return all;
}

/** A thread that was ended: at which input, and what of its lot is still to do. */
interface Lost {
  readonly at: number;
  readonly rest: readonly Lot[];
  readonly why: string;
}

/** One thread, until there are no more lots or it is ended. */
function oneThread({ plan, script, from, hangs }: Run, first: Lot, lot: () => Lot | undefined, known: () => ReadonlySet<string>, done: (ran: Ran) => void): Promise<Lost | undefined> {
  const at = new Int32Array(new SharedArrayBuffer(4));
  const thread = new Worker(script, { workerData: { plan, at, from } satisfies Setting, resourceLimits: ROOM });
  let given = first;
  const give = (next: Lot) => {
    given = next;
    Atomics.store(at, 0, next.from - from);
    thread.postMessage({ ...next, known: known() } satisfies Share);
  };
  return new Promise((resolve) => {
    let seen = { at: -1, since: performance.now() };
    const watch = setInterval(() => {
      const now = Atomics.load(at, 0);
      if (now !== seen.at) seen = { at: now, since: performance.now() };
      else if (performance.now() - seen.since > hangs) end('it does not end');
    }, Math.min(1_000, hangs / 4));
    const end = (why?: string) => {
      clearInterval(watch);
      thread.removeAllListeners();
      void thread.terminate();
      const number = from + Atomics.load(at, 0);
      resolve(why === undefined ? undefined : { at: number, why, rest: [{ from: given.from, to: number }, { from: number + 1, to: given.to }] });
    };
    thread.on('message', (ran: Ran) => {
      done(ran);
      const next = lot();
      if (next === undefined) end();
      else give(next);
    });
    thread.on('error', (error: Error) => end(`the thread dies: ${error.message}`));
    give(first);
  });
}

/** In a thread: runs what it is given until it is ended. */
export function serveInputs(): void {
  const { plan, at, from } = workerData as Setting;
  parentPort?.on('message', (share: Share) => parentPort?.postMessage(runInputs(plan, share, (number) => void Atomics.store(at, 0, number - from))));
}
