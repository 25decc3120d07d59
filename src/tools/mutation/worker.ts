import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import path from 'node:path';
import vm from 'node:vm';
import { expect, vi } from 'vitest';
import type * as FastCheck from 'fast-check';
import type { Instrumented } from './instrument.js';
import type { Answer, Asked, Passed, Timed } from './messages.js';
import { keyOf } from './killers.js';
import { Modules } from './modules.js';
import { steady } from './steady.js';
import { Suite, type Collected } from './suite.js';

/** The milliseconds of the processor that a step gets with a mutant on, beside five times what its test took without. */
const PATIENCE = 2_000;

/** By the clock it gets so many times more: other work on the machine kills no mutant. */
const SHARED = 8;

/** So many switches on the way through one test are a loop without an end. */
const MOST_SWITCHES = 10_000_000;

class TooLong extends Error {}

/** The machine was too busy to tell. */
class Unclear extends Error {}

/** Runs tests in this process, as the other end asks. */
export function work(root: string, instrumentedFolder: string): void {
  let onId = '';
  let switches = 0;
  const slowAlone = new Set<string>();
  const passed = new Map<string, Set<string>>();
  /** The one file whose mutants are in the code; all of them while measuring. */
  let meant: string | undefined;

  const instead = new Map<string, object>();
  instead.set('fast-check', steady(createRequire(path.join(root, 'package.json'))('fast-check') as typeof FastCheck));
  const modules = new Modules(root, instead, (file) => (meant === undefined || meant === file ? instrumented(file)?.source : undefined), (file) => {
    const seen = new Set<string>();
    if (meant !== undefined) return { isOn, passed: () => undefined };
    passed.set(file, seen);
    return {
      isOn: () => false,
      // Not by rest parameters: this is called at every step of what is measured.
      passed: function (): void {
        // eslint-disable-next-line prefer-rest-params
        for (let i = 0; i < arguments.length; i++) seen.add(arguments[i] as string);
      },
    };
  });

  function isOn(id: string): boolean {
    if (++switches > MOST_SWITCHES) throw new TooLong();
    return id === onId;
  }

  function passedSince(): string[] {
    const found: string[] = [];
    for (const [file, ids] of passed) {
      for (const id of ids) found.push(`${file}#${id}`);
      ids.clear();
    }
    return found;
  }

  function instrumented(file: string): Instrumented | undefined {
    if (!file.startsWith('src/')) return undefined;
    try {
      return JSON.parse(readFileSync(path.join(instrumentedFolder, `${file.replaceAll('/', '-')}.json`), 'utf8')) as Instrumented;
    } catch {
      return undefined;
    }
  }

  function collect(file: string): Suite {
    const suite = new Suite();
    instead.set('vitest', { ...suite.words(), expect, vi });
    modules.load(file);
    return suite;
  }

  async function run(suite: Suite, test: Collected, limit: number): Promise<void> {
    const { before, run: itself, after } = suite.stepsOf(test);
    const steps = [...before, itself, ...after];
    for (const step of steps) await within(limit, step);
  }

  async function measure(file: string): Promise<Passed> {
    meant = undefined;
    modules.forget(() => true);
    passed.clear();
    const suite = collect(file);
    const all = passedSince();
    const tests: (Timed & { passes: readonly string[] })[] = [];
    const failing: string[] = [];
    for (const test of suite.tests.values()) {
      passedSince();
      const started = performance.now();
      try {
        await run(suite, test, 120_000);
        tests.push({ file, name: test.name, ms: performance.now() - started, passes: passedSince() });
      } catch (error) {
        failing.push(`${test.name}: ${String(error).split('\n')[0] ?? ''}`);
      }
    }
    for (const step of suite.ending()) await step();
    return { file, tests, all, failing };
  }

  /** Whether a test takes too long by itself with no mutant on: it waits for what another test of its file works out otherwise. */
  async function isSlowAnyway(test: Timed): Promise<boolean> {
    onId = '';
    switches = 0;
    modules.forget(() => true);
    const suite = collect(test.file);
    try {
      await run(suite, suite.tests.get(test.name) as Collected, PATIENCE + 5 * test.ms);
      return false;
    } catch {
      slowAlone.add(keyOf(test));
      return true;
    }
  }

  async function attempt({ mutant, tests }: Asked & { ask: 'try' }): Promise<Answer> {
    if (meant !== mutant.file) {
      const before = meant;
      modules.compileAnew((file) => before === undefined || file === before || file === mutant.file);
      meant = mutant.file;
    }
    modules.forget(() => true);
    onId = mutant.id;
    const suites = new Map<string, Suite>();
    let now: Timed | undefined;
    try {
      for (const test of tests) {
        if (slowAlone.has(keyOf(test))) continue;
        now = test;
        report({ say: 'busy' });
        switches = 0;
        try {
          const suite = suites.get(test.file) ?? (await collectWithin(test.file));
          suites.set(test.file, suite);
          const collected = suite.tests.get(test.name);
          // Rows of a table may be made from the sources: with the mutant on there may be others.
          if (collected !== undefined) await run(suite, collected, PATIENCE + 5 * test.ms);
        } catch (error) {
          if (!(error instanceof Unclear) && !(error instanceof TooLong && (await isSlowAnyway(test)))) throw error;
          modules.forget(() => true);
          suites.clear();
          onId = mutant.id;
        }
      }
      for (const suite of suites.values()) for (const step of suite.ending()) await step();
      return { say: 'tried', end: 'survived' };
    } catch (error) {
      return { say: 'tried', end: error instanceof TooLong ? 'too long' : 'killed', by: now === undefined ? '' : keyOf(now), why: String(error).split('\n')[0] ?? '' };
    } finally {
      onId = '';
    }
  }

  async function collectWithin(file: string): Promise<Suite> {
    const made: Suite[] = [];
    await within(PATIENCE, () => void made.push(collect(file)));
    return made[0] as Suite;
  }

  const report = (answer: Answer) => process.send?.(answer);
  process.on('message', (asked: Asked) => {
    void (async () => {
      if (asked.ask === 'measure') report({ say: 'measured', passed: await measure(asked.file).catch((error: unknown) => unreadable(asked.file, error)) });
      else report(await attempt(asked));
    })();
  });
}

/** A test file that can't be read: by a mistake of its own, or of the instrumenter in what it imports. */
function unreadable(file: string, error: unknown): Passed {
  return { file, tests: [], all: [], failing: [`the whole file: ${String(error).slice(0, 500)}`] };
}

const script = new vm.Script('globalThis.__step()');

/** What a step does before it first waits is cut off after so many milliseconds; the rest is the other end's to watch. */
async function within(limit: number, step: () => unknown): Promise<void> {
  (globalThis as { __step?: unknown }).__step = step;
  const began = process.cpuUsage();
  let made: unknown;
  try {
    made = script.runInThisContext({ timeout: Math.ceil(SHARED * limit) });
  } catch (error) {
    if ((error as { code?: string }).code !== 'ERR_SCRIPT_EXECUTION_TIMEOUT') throw error;
    const { user, system } = process.cpuUsage(began);
    throw (user + system) / 1000 >= limit ? new TooLong() : new Unclear();
  }
  await made;
}
