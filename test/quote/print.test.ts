import { readdirSync } from 'node:fs';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import { chromium, type Browser, type Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { quoteForm } from '../../src/report/quote/index.js';
import { findChromium } from '../editor/host/chromium.js';
import { quoteOfText } from './made.js';
import { samplesFolder } from './samples.js';

// Prints quotes with the machine's own browser, where there is one. ISO 216: A4 is 210 × 297 mm; Letter is 8.5 × 11 in.
const browserPath = findChromium();
const folder = path.join(samplesFolder, 'quotes');
const pages = readdirSync(folder).filter((name) => name.endsWith('.html'));
const PAPERS = [['A4', 210, 297], ['Letter', 215.9, 279.4]] as const;
const MM = 96 / 25.4;
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
    const sizes = mediaBoxes(await page.pdf({ format: paper }));
    expect(sizes.length).toBeGreaterThanOrEqual(2);
    expect(sizes.length).toBeLessThanOrEqual(4);
    // Points of 1/72 in, rounded by the printer.
    for (const [w, h] of sizes) expect([Math.abs(w - (width / 25.4) * 72), Math.abs(h - (height / 25.4) * 72)].every((off) => off < 1.5), `${w} × ${h}`).toBe(true);
    expect(await cutOff(page, width - 2 * MARGIN)).toEqual([]);
    expect(await page.evaluate<number>('[...document.images].filter((one) => one.naturalWidth === 0).length')).toBe(0);
    expect(complaints).toEqual([]);
    page.removeAllListeners();
  });

  test.each(PAPERS)('long words, large figures and both directions of writing stay on %s', async (paper, width) => {
    await page.setContent(quoteForm(quoteOfText(LONG, 'one'), 'html'));
    expect(mediaBoxes(await page.pdf({ format: paper })).length).toBeLessThanOrEqual(5);
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

/** Width and height of each page, from the PDF itself (ISO 32000-1, 7.7.3: every page has a MediaBox). */
function mediaBoxes(pdf: Buffer): (readonly [number, number])[] {
  const text = pdf.toString('latin1');
  const sheets = text.match(/\/Type\s*\/Page\b(?!s)[^]*?endobj/g) ?? [];
  return sheets.map((one) => {
    const [, w, h] = /\/MediaBox\s*\[\s*0\s+0\s+([\d.]+)\s+([\d.]+)\s*\]/.exec(one) ?? [];
    return [Number(w), Number(h)] as const;
  });
}

/** Texts that would reach beyond the margins of the paper, or out of the box that holds them. */
async function cutOff(page: Page, widthInMm: number): Promise<string[]> {
  await page.emulateMedia({ media: 'print' });
  await page.setViewportSize({ width: Math.floor(widthInMm * MM), height: 1000 });
  return await page.evaluate<string[]>(CUT_OFF);
}

/** Runs in the page; as text, since nothing here knows the types of a browser. */
const CUT_OFF = `(() => {
  const edge = document.documentElement.clientWidth + 1;
  return [...document.querySelectorAll('body *')].flatMap((one) => {
    const { left, right } = one.getBoundingClientRect();
    const isCut = right > edge || left < -1 || (one.clientWidth > 0 && one.scrollWidth > one.clientWidth + 1);
    return isCut ? [one.tagName + ' ' + (one.textContent ?? '').slice(0, 40) + ' ' + left + ' to ' + right] : [];
  });
})()`;
