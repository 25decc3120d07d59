import { diceFor } from './dice.js';
import { inputOf, type Input } from './input.js';
import { through, type Pass, type Shares } from './passes.js';
import { shrunk } from './shrink.js';
import type { Start } from './texts.js';
import { Broken } from './claim.js';

export interface Ask {
  readonly seed: number;
  /** Numbers of the first input and of the one behind the last. */
  readonly from: number;
  readonly to: number;
  readonly starts: readonly Start[];
  readonly shares: Shares;
  /** An input that takes longer is a fault, in milliseconds by the clock: asking the processor is dearer than most inputs. */
  readonly slowest: number;
  /** Milliseconds that making one failing input smaller may take. */
  readonly patience: number;
  /** A new way of failing, as soon as it is made small. */
  readonly found: (failure: Failure) => void;
  readonly progress: (done: number, failures: number) => void;
  /** Asked after each input; true ends the run. */
  readonly stop: () => boolean;
}

/** A way of failing, with the smallest input found that fails so. */
export interface Failure {
  readonly what: string;
  readonly number: number;
  readonly input: Input;
  readonly error: string;
  times: number;
}

export interface Ran {
  readonly inputs: number;
  readonly passes: Readonly<Partial<Record<Pass, number>>>;
  readonly characters: number;
  readonly slowest: { readonly number: number; readonly ms: number };
  readonly failures: readonly Failure[];
}

/** Puts inputs through the product, one after the other, and goes on behind a failure. */
export function runInputs(ask: Ask): Ran {
  const passes: Partial<Record<Pass, number>> = {};
  const failures = new Map<string, Failure>();
  let characters = 0;
  let slowest = { number: -1, ms: 0 };
  let number = ask.from;
  for (; number < ask.to; number++) {
    const { input } = inputOf(ask.seed, number, ask.starts);
    for (const text of input.files.values()) characters += text.length;
    const first = failureOf(input, ask, number, (pass) => void (passes[pass] = (passes[pass] ?? 0) + 1));
    if (first.ms > slowest.ms) slowest = { number, ms: first.ms };
    if (first.what !== undefined) note(first.what, first.error ?? '', input, number);
    ask.progress(number + 1 - ask.from, failures.size);
    if (ask.stop()) {
      number++;
      break;
    }
  }
  return { inputs: number - ask.from, passes, characters, slowest, failures: [...failures.values()] };

  function note(what: string, error: string, input: Input, at: number): void {
    const known = failures.get(what);
    if (known !== undefined) {
      known.times++;
      return;
    }
    const failure: Failure = { what, number: at, error, times: 1, input: shrunk(input, (smaller) => failureOf(smaller, ask, at).what === what, ask.patience) };
    failures.set(what, failure);
    ask.found(failure);
  }
}

interface Went {
  /** In which way it failed; undefined where all held. */
  readonly what: string | undefined;
  readonly error: string | undefined;
  readonly ms: number;
}

function failureOf(input: Input, { seed, shares, slowest }: Ask, number: number, went: (pass: Pass) => void = () => undefined): Went {
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
  return ms > slowest ? { what: 'slow', error: `${ms.toFixed(0)} ms, last in ${pass}`, ms } : { what: undefined, error: undefined, ms };
}

/** Failures with the same claim, or the same message from the same place, are one. */
function nameOf(error: unknown, pass: Pass): string {
  if (error instanceof Broken) return `${pass}: ${error.claim}`;
  if (!(error instanceof Error)) return `${pass}: ${String(error)}`;
  const [, ...frames] = (error.stack ?? '').split('\n');
  return `${pass}: ${error.name}: ${error.message.slice(0, 80)} ${frames[0]?.trim() ?? ''}`;
}
