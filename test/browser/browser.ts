// The machine's own browser without an editor, for pages that stand by themselves. Nothing is downloaded; where there is
// no browser, the tests that need one are left out.
import { chromium, type Browser, type Page } from 'playwright-core';
import { afterAll, beforeAll } from 'vitest';
import { findChromium } from '../editor/host/chromium.js';

export const browserPath = findChromium();

export interface Opened {
  readonly page: Page;
  /** What the page asked for, said or complained of; a page that needs nothing but itself does none of it. */
  readonly complaints: string[];
}

/** Puts a page in place of another, whose policy would stay if it were only written over. */
export async function load(page: Page, markup: string): Promise<void> {
  await page.goto('about:blank');
  await page.setContent(markup);
}

/** One page for the tests of a file. */
export function opened(): () => Opened {
  let browser: Browser | undefined;
  let found: Opened | undefined;
  beforeAll(async () => {
    browser = await chromium.launch({ executablePath: browserPath as string, args: ['--no-sandbox', '--disable-gpu', '--host-resolver-rules=MAP * ~NOTFOUND'] });
    const page = await browser.newPage();
    const complaints: string[] = [];
    page.on('console', (message) => void complaints.push(message.text()));
    page.on('pageerror', (error) => void complaints.push(error.message));
    page.on('request', (request) => {
      if (!/^(?:data|about):/.test(request.url())) complaints.push(`asked for ${request.url().slice(0, 100)}`);
    });
    page.on('dialog', (dialog) => {
      complaints.push(`dialog: ${dialog.message()}`);
      void dialog.dismiss();
    });
    found = { page, complaints };
  }, 60_000);
  afterAll(() => browser?.close());
  return () => found as Opened;
}
