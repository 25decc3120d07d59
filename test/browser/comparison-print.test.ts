import { describe, expect, test } from 'vitest';
import { comparisonHtml } from '../../src/report/export/index.js';
import { decisionOf } from '../quote/made.js';
import { decisionOfSample, SAMPLES } from '../quote/samples.js';
import { estimateOf } from '../support/hostile.js';
import { cutOff, pageSizes, PAPERS } from '../support/printed.js';
import { browserPath, load, opened } from './browser.js';

/** What the style of the exported page leaves on each side. */
const MARGIN = 14;

describe.skipIf(browserPath === undefined)('the exported comparison', { timeout: 60_000 }, () => {
  const at = opened();

  test.each(SAMPLES.flatMap((name) => PAPERS.map(([paper, width, height]) => [name, paper, width, height] as const)))('of %s prints on %s: whole pages, nothing cut', async (name, paper, width, height) => {
    const { page, complaints } = at();
    await load(page, comparisonHtml(decisionOfSample(name)));
    const sizes = pageSizes(await page.pdf({ format: paper }));
    expect(sizes.length).toBeGreaterThanOrEqual(2);
    expect(sizes.length).toBeLessThanOrEqual(6);
    // Rounded to points by the printer.
    for (const [w, h] of sizes) expect([Math.abs(w - width), Math.abs(h - height)].every((off) => off < 0.53), `${w} × ${h}`).toBe(true);
    expect(await cutOff(page, width - 2 * MARGIN)).toEqual([]);
    expect(complaints.splice(0)).toEqual([]);
  });

  test('long words stay on A4', async () => {
    const { page } = at();
    await load(page, comparisonHtml(decisionOf(estimateOf('Unbroken'.repeat(40)))));
    expect(await cutOff(page, 210 - 2 * MARGIN)).toEqual([]);
  });

  test('is ink on white on paper, also for whoever has dark screens', async () => {
    const { page } = at();
    await load(page, comparisonHtml(decisionOfSample('heron-pump')));
    await page.emulateMedia({ media: 'print', colorScheme: 'dark' });
    expect(await page.evaluate<string[]>(`[getComputedStyle(document.body).color, getComputedStyle(document.body).backgroundColor]`)).toEqual(['rgb(0, 0, 0)', 'rgb(255, 255, 255)']);
  });

  test('a narrow screen needs no scrolling sideways but inside its tables', async () => {
    const { page } = at();
    await load(page, comparisonHtml(decisionOfSample('pilgrim-v6')));
    await page.emulateMedia({ media: 'screen', colorScheme: 'light' });
    await page.setViewportSize({ width: 400, height: 800 });
    expect(await page.evaluate<number>('document.documentElement.scrollWidth')).toBeLessThanOrEqual(400);
  });
});
