import { diceFor } from './dice.js';
import { inputOf, type Input } from './input.js';
import { through, type Pass, type Shares } from './passes.js';
import { shrunk } from './shrink.js';
import type { Start } from './texts.js';
import { Broken } from './claim.js';

/** What stays the same for all inputs of a run. */
export interface Plan {
  readonly seed: number;
  readonly starts: readonly Start[];
  readonly shares: Shares;
  /** An input that takes longer is a fault, in milliseconds by the clock: asking the processor is dearer than most inputs. */
  readonly slowest: number;
  /** Milliseconds that making one failing input smaller may take. */
  readonly patience: number;
}

/** Some inputs of a run, by their numbers. */
export interface Share {
  readonly from: number;
  /** The number behind the last. */
  readonly to: number;
  /** Ways of failing that were told before: they are counted, not made small again. */
  readonly known: ReadonlySet<string>;
}

/** A way of failing, with the smallest input found that fails so. */
export interface Failure {
  readonly what: string;
  readonly number: number;
  readonly input: Input;
  readonly error: string;
}

/** What came of some inputs, as plain data that goes from one thread to another. */
export interface Ran {
  readonly inputs: number;
  readonly passes: Readonly<Partial<Record<Pass, number>>>;
  readonly characters: number;
  readonly slowest: { readonly number: number; readonly ms: number };
  /** The inputs that failed, by the way in which they did. */
  readonly failed: ReadonlyMap<string, readonly number[]>;
  /** The ways that were not known before. */
  readonly failures: readonly Failure[];
}

/** Puts inputs through the product, one after the other, and goes on behind a failure. `begins` hears of each number. */
export function runInputs(plan: Plan, { from, to, known }: Share, begins: (number: number) => void = () => undefined): Ran {
  const passes: Partial<Record<Pass, number>> = {};
  const failed = new Map<string, number[]>();
  const failures: Failure[] = [];
  let characters = 0;
  let slowest = { number: -1, ms: 0 };
  for (let number = from; number < to; number++) {
    begins(number);
    const { input } = inputOf(plan.seed, number, plan.starts);
    for (const text of input.files.values()) characters += text.length;
    const { what, error, ms } = failureOf(input, plan, number, (pass) => void (passes[pass] = (passes[pass] ?? 0) + 1));
    if (ms > slowest.ms) slowest = { number, ms };
    if (what === undefined) continue;
    if (!known.has(what) && !failed.has(what)) failures.push({ what, number, error, input: shrunk(input, (smaller) => failureOf(smaller, plan, number).what === what, plan.patience) });
    failed.set(what, [...(failed.get(what) ?? []), number]);
  }
  return { inputs: to - from, passes, characters, slowest, failed, failures };
}

/** What came of two lots of inputs together. */
export function together(a: Ran, b: Ran): Ran {
  const passes = { ...a.passes };
  for (const [pass, count] of Object.entries(b.passes) as [Pass, number][]) passes[pass] = (passes[pass] ?? 0) + count;
  const failed = new Map(a.failed);
  for (const [what, numbers] of b.failed) failed.set(what, [...(failed.get(what) ?? []), ...numbers]);
  return {
    inputs: a.inputs + b.inputs, passes, characters: a.characters + b.characters, failed,
    slowest: a.slowest.ms < b.slowest.ms ? b.slowest : a.slowest,
    failures: [...a.failures, ...b.failures.filter(({ what }) => !a.failures.some((one) => one.what === what))],
  };
}

/** What comes of no input at all. */
export const NOTHING: Ran = { inputs: 0, passes: {}, characters: 0, slowest: { number: -1, ms: 0 }, failed: new Map(), failures: [] };

interface Went {
  /** In which way it failed; undefined where all held. */
  readonly what: string | undefined;
  readonly error: string;
  readonly ms: number;
}

function failureOf(input: Input, { seed, shares, slowest }: Plan, number: number, went: (pass: Pass) => void = () => undefined): Went {
  const started = performance.now();
  let pass: Pass = 'text';
  const spent = () => performance.now() - started;
  try {
    // Dice of their own, so that a smaller input is asked at the same places.
    through(input, diceFor(seed, -1 - number), shares, (next) => {
      pass = next;
      went(next);
    });
  } catch (error) {
    return { what: nameOf(error, pass), error: error instanceof Error ? (error.stack ?? error.message) : String(error), ms: spent() };
  }
  const ms = spent();
  return ms > slowest ? { what: 'slow', error: `${ms.toFixed(0)} ms, last in ${pass}`, ms } : { what: undefined, error: '', ms };
}

/** Failures with the same claim, or the same message from the same place, are one. */
function nameOf(error: unknown, pass: Pass): string {
  if (error instanceof Broken) return `${pass}: ${error.claim}`;
  if (!(error instanceof Error)) return `${pass}: ${String(error)}`;
  const [, ...frames] = (error.stack ?? '').split('\n');
  return `${pass}: ${error.name}: ${error.message.slice(0, 80)} ${frames[0]?.trim() ?? ''}`;
}
