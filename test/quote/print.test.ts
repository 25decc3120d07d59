import { readdirSync } from 'node:fs';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import { chromium, type Browser, type Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { quoteForm } from '../../src/report/quote/index.js';
import { findChromium } from '../editor/host/chromium.js';
import { cutOff, pageSizes, PAPERS } from '../support/printed.js';
import { quoteOfText } from './made.js';
import { samplesFolder } from './samples.js';

// Prints quotes with the machine's own browser, where there is one.
const browserPath = findChromium();
const folder = path.join(samplesFolder, 'quotes');
const pages = readdirSync(folder).filter((name) => name.endsWith('.html'));
const MARGIN = 16;

const LONG = `steelyard 1
shop "${'Garage'.repeat(30)}"
  address "${'Long street name '.repeat(12)}"
  locale ar-EG
  currency USD
  rate bench 100.00 usual
estimate "${'x'.repeat(400)}"
  written 2026-11-24
vehicle "נוסע 3.0 ${'ארוך '.repeat(30)}"
finding "${'Unbroken'.repeat(60)}"
option one "${'Fit '.repeat(60)}"
  labour "${'Work'.repeat(80)}" 1 / 20 / 300 h
  chance "${'Crack'.repeat(60)}" 10%
    part "${'Casting'.repeat(40)}" 123456789.00 used
  part "Engine" 987654321.00 used
option two "${'Other'.repeat(40)}"
  part "Engine" 1234567.00 rebuilt
`;

describe.skipIf(browserPath === undefined)('printed', { timeout: 60_000 }, () => {
  let browser: Browser;
  let page: Page;
  beforeAll(async () => {
    browser = await chromium.launch({ executablePath: browserPath as string, args: ['--no-sandbox'] });
    page = await browser.newPage();
  }, 60_000);
  afterAll(() => browser.close());

  test.each(pages.flatMap((name) => PAPERS.map(([paper, width, height]) => [name, paper, width, height] as const)))('%s on %s', async (name, paper, width, height) => {
    const complaints: string[] = [];
    const listen = (text: string) => void complaints.push(text);
    page.on('console', (message) => listen(message.text()));
    page.on('requestfailed', (request) => listen(request.url().slice(0, 100)));
    await page.goto(pathToFileURL(path.join(folder, name)).href);
    const sizes = pageSizes(await page.pdf({ format: paper }));
    expect(sizes.length).toBeGreaterThanOrEqual(2);
    expect(sizes.length).toBeLessThanOrEqual(4);
    // Rounded to points by the printer.
    for (const [w, h] of sizes) expect([Math.abs(w - width), Math.abs(h - height)].every((off) => off < 0.53), `${w} × ${h}`).toBe(true);
    expect(await cutOff(page, width - 2 * MARGIN)).toEqual([]);
    expect(await page.evaluate<number>('[...document.images].filter((one) => one.naturalWidth === 0).length')).toBe(0);
    expect(complaints).toEqual([]);
    page.removeAllListeners();
  });

  test.each(PAPERS)('long words, large figures and both directions of writing stay on %s', async (paper, width) => {
    await page.setContent(quoteForm(quoteOfText(LONG, 'one'), 'html'));
    expect(pageSizes(await page.pdf({ format: paper })).length).toBeLessThanOrEqual(5);
    expect(await cutOff(page, width - 2 * MARGIN)).toEqual([]);
  });

  test('a narrow screen needs no scrolling sideways', async () => {
    await page.emulateMedia({ media: 'screen' });
    await page.setViewportSize({ width: 400, height: 800 });
    await page.goto(pathToFileURL(path.join(folder, pages[0] as string)).href);
    expect(await page.evaluate<number>('document.documentElement.scrollWidth')).toBeLessThanOrEqual(400);
  });

  test('no script runs and nothing is loaded, even if markup came in', async () => {
    const html = quoteForm(quoteOfText('steelyard 1\noption one "One"\n  fee "Tow" 1.00\n'), 'html');
    const asked: string[] = [];
    await page.route('**/*', async (route) => {
      asked.push(route.request().url());
      await route.abort();
    });
    await page.setContent(html.replace('</main>', '<script>document.title = "ran"</script><img src="http://example.invalid/x.png"><p style="color: red" id="styled">x</p></main>'));
    expect(await page.title()).not.toBe('ran');
    expect(await page.evaluate<string>('getComputedStyle(document.getElementById("styled")).color')).not.toBe('rgb(255, 0, 0)');
    expect(asked).toEqual([]);
    await page.unroute('**/*');
  });
});
