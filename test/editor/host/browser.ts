// Opens the editor of a host in Chromium and waits until it can be used.
import { mkdir } from 'node:fs/promises';
import path from 'node:path';
import { chromium, type Browser, type Page } from 'playwright-core';
import { requireChromium } from './chromium.js';
import { collectConsole, type ConsoleLog } from './console.js';
import type { Host, PayloadEntry } from './host.js';
import { shotsDir } from './paths.js';
import { forgetUnsaved, writeSettings, type Settings, type Theme } from './settings.js';

export interface OpenOptions {
  /** Absolute path, or relative to the workspace. */
  readonly openFile?: string;
  readonly theme?: Theme;
  readonly settings?: Settings;
  readonly viewport?: { readonly width: number; readonly height: number };
  readonly payload?: readonly PayloadEntry[];
}

export interface Editor {
  readonly page: Page;
  readonly host: Host;
  readonly console: ConsoleLog;
  /** Writes .vscode-test/shots/NAME.png and returns its path. */
  screenshot(name: string): Promise<string>;
  close(): Promise<void>;
}

const flags = [
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
  // Tests stay on this machine, also where a network is reachable.
  '--host-resolver-rules=MAP * ~NOTFOUND, EXCLUDE 127.0.0.1, EXCLUDE localhost',
];

/** One browser serves many editors; each gets storage of its own. */
export async function launchBrowser(): Promise<Browser> {
  return await chromium.launch({ executablePath: requireChromium(), args: flags });
}

/** A page for `host` with nothing loaded yet, for callers that have to prepare it first. */
export async function newPage(browser: Browser, viewport = { width: 1280, height: 800 }): Promise<Page> {
  const context = await browser.newContext({ viewport });
  return await context.newPage();
}

export async function openEditor(browser: Browser, host: Host, options: OpenOptions = {}): Promise<Editor> {
  const theme: Settings = options.theme === undefined ? {} : { 'workbench.colorTheme': options.theme };
  await writeSettings(host.userDataDir, { ...theme, ...options.settings });
  await forgetUnsaved(host.userDataDir);
  const page = await newPage(browser, options.viewport);
  const log = collectConsole(page);
  const payload = [...(options.payload ?? [])];
  if (options.openFile !== undefined)
    payload.push(['openFile', host.remote(path.resolve(host.workspace, options.openFile))]);
  try {
    await page.goto(host.url(payload), { waitUntil: 'domcontentloaded' });
    await waitUntilReady(page, options.openFile !== undefined);
  } catch (error) {
    await screenshot(page, 'failed-open');
    await page.context().close();
    throw new Error(`The editor did not become ready (see failed-open.png).\n${host.output()}`, { cause: error });
  }
  return {
    page,
    host,
    console: log,
    screenshot: (name) => screenshot(page, name),
    close: () => page.context().close(),
  };
}

/** The editor marks its own progress; "restored" and "extensions loaded" are what a user waits for, too. */
async function waitUntilReady(page: Page, withFile: boolean): Promise<void> {
  const timeout = 60_000;
  const reached = (mark: string): string => `performance.getEntriesByName('code/${mark}').length > 0`;
  await page.locator('.monaco-workbench').waitFor({ timeout });
  await page.waitForFunction(`${reached('didStartWorkbench')} && ${reached('didLoadExtensions')}`, undefined, {
    timeout,
  });
  if (withFile) await page.locator('.editor-instance .monaco-editor .view-line').first().waitFor({ timeout });
}

async function screenshot(page: Page, name: string): Promise<string> {
  await mkdir(shotsDir, { recursive: true });
  const file = path.join(shotsDir, `${name}.png`);
  await page.screenshot({ path: file });
  return file;
}
