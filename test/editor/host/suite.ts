// Runs a module's exported `run()` inside the extension host, where `vscode` is the real API. `run()` passes when its
// promise fulfils and fails when it rejects.
import path from 'node:path';
import { setTimeout as delay } from 'node:timers/promises';
import type { Browser, Page } from 'playwright-core';
import { launchBrowser, newPage } from './browser.js';
import { bundleSuite } from './bundle.js';
import { collectConsole } from './console.js';
import { startHost, type Host, type HostOptions } from './host.js';

export interface SuiteOptions extends HostOptions {
  readonly extensionDir: string;
  /** A `.ts` entry is bundled first; a `.js` file is run as it is. */
  readonly testsPath: string;
  /** Absent: one is launched for this run. */
  readonly browser?: Browser;
  readonly timeout?: number;
}

export interface SuiteResult {
  /** 0: `run()` fulfilled. */
  readonly exitCode: number;
  /** What the extension host printed, in order. */
  readonly log: readonly string[];
}

interface Automation {
  readonly finished: Promise<number>;
  readonly log: readonly string[];
}

/** The workbench calls these two by name; it looks for them while it starts. */
async function exposeAutomation(page: Page): Promise<Automation> {
  const log: string[] = [];
  let finish: (code: number) => void = () => undefined;
  const finished = new Promise<number>((resolve) => {
    finish = resolve;
  });
  await page.exposeFunction('codeAutomationLog', (type: string, args: unknown[]) => {
    log.push(`${type}: ${args.map((arg) => (typeof arg === 'string' ? arg : JSON.stringify(arg))).join(' ')}`);
  });
  await page.exposeFunction('codeAutomationExit', (code: number) => finish(code));
  return { finished, log };
}

async function afterTimeout(milliseconds: number, signal: AbortSignal): Promise<never> {
  await delay(milliseconds, undefined, { signal });
  throw new Error(`The suite did not end within ${milliseconds / 1000} s.`);
}

export async function runInHost(options: SuiteOptions): Promise<SuiteResult> {
  const suite = options.testsPath.endsWith('.ts')
    ? await bundleSuite(options.testsPath, options.extensionKind)
    : path.resolve(options.testsPath);
  const host = await startHost(options);
  try {
    if (options.browser !== undefined) return await runOnPage(options.browser, host, suite, options.timeout);
    const browser = await launchBrowser();
    try {
      return await runOnPage(browser, host, suite, options.timeout);
    } finally {
      await browser.close();
    }
  } finally {
    await host.stop();
  }
}

async function runOnPage(browser: Browser, host: Host, suite: string, timeout = 120_000): Promise<SuiteResult> {
  const page = await newPage(browser);
  const output = collectConsole(page);
  const timer = new AbortController();
  try {
    const automation = await exposeAutomation(page);
    await page.goto(host.url([['extensionTestsPath', host.remote(suite)]]), { waitUntil: 'domcontentloaded' });
    const exitCode = await Promise.race([automation.finished, afterTimeout(timeout, timer.signal)]);
    return { exitCode, log: automation.log };
  } catch (error) {
    const seen = output
      .problems()
      .map((entry) => entry.text)
      .join('\n');
    throw new Error(`The suite could not be run.\n${seen}\n${host.output()}`, { cause: error });
  } finally {
    timer.abort();
    await page.context().close();
  }
}
