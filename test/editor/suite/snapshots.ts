// The panel at three widths, from top to bottom: pictures to look at, and what can be checked without eyes. Reduced
// motion is checked where the page is drawn.
import assert from 'node:assert/strict';
import { mkdir } from 'node:fs/promises';
import path from 'node:path';
import type { Frame } from 'playwright-core';
import { shotsDir } from '../host/paths.js';
import { openFile } from '../host/actions.js';
import type { Editor } from '../host/browser.js';
import { retry } from '../host/retry.js';
import type { Case } from './cases.js';
import { foldAll, pageFrame, pageTitled, openPanel } from './panel.js';
import { chooseTheme } from './themed.js';

const widths = [400, 800, 1400] as const;
/** As high as a page may be for one picture. */
const TALLEST = 16_000;

/** `pictures` also writes .vscode-test/shots/panel-WIDTH.png and panel-WIDTH-unfolded.png. */
export function snapshotCases(editor: Editor, pictures: boolean): readonly Case[] {
  const { page } = editor;
  return [
    {
      name: 'the panel is there',
      async run() {
        await chooseTheme(editor, 'light');
        await page.keyboard.press('Control+1');
        await openFile(editor, 'pilgrim-v6.yard');
        await openPanel(editor);
        await pageTitled(editor, 'E-1041 Pilgrim, cylinder 4 has no compression');
        await page.keyboard.press('Control+b');
      },
    },
    ...widths.flatMap((width) => (['folded', 'unfolded'] as const).map((state): Case => ({
      name: `${width} px, ${state}: nothing is cut, nothing overlaps, and the page does not scroll sideways`,
      async run() {
        const frame = await atWidth(editor, width);
        await foldAll(frame, state);
        await frame.evaluate('document.scrollingElement.scrollTo(0, 0)');
        await page.mouse.move(2, 2);
        assert.deepEqual(await frame.evaluate<string[]>(cutOff), []);
        assert.deepEqual(await frame.evaluate<string[]>(overlapping), []);
        if (pictures) await picture(editor, frame, `panel-${width}${state === 'folded' ? '' : '-unfolded'}`);
      },
    }))),
    {
      name: 'figures of a column end at one edge',
      async run() {
        const frame = await pageFrame(editor);
        assert.deepEqual(await frame.evaluate<string[]>(uneven), []);
      },
    },
    {
      name: 'whoever wants less motion has none',
      async run() {
        await page.emulateMedia({ reducedMotion: 'reduce' });
        const frame = await pageFrame(editor);
        assert.equal(await frame.evaluate<boolean>(`matchMedia('(prefers-reduced-motion: reduce)').matches`), true);
        assert.deepEqual(await frame.evaluate<string[]>(moving), []);
        await page.emulateMedia({ reducedMotion: null });
        await page.setViewportSize({ width: 1400, height: 900 });
        await page.keyboard.press('Control+b');
      },
    },
  ];
}

/** Makes the window as wide as the page then is this wide. */
async function atWidth(editor: Editor, width: number): Promise<Frame> {
  const { page } = editor;
  await page.setViewportSize({ width: width + 60, height: 900 });
  return await retry(`a page of ${width} px`, async () => {
    const frame = await pageFrame(editor);
    const now = await frame.evaluate<number>('innerWidth');
    if (now === width) return frame;
    const { width: window = width, height = 900 } = page.viewportSize() ?? {};
    await page.setViewportSize({ width: window + width - now, height });
    await page.waitForTimeout(300);
    return undefined;
  });
}

/** The whole page at once: the window is made as high as that takes, and back. */
async function picture({ page }: Editor, frame: Frame, name: string): Promise<void> {
  const { width, height } = page.viewportSize() ?? { width: 1400, height: 900 };
  const [needed, has] = await frame.evaluate<[number, number]>('[document.scrollingElement.scrollHeight, innerHeight]');
  await page.setViewportSize({ width, height: Math.min(TALLEST, height + Math.max(0, needed - has)) });
  await page.waitForTimeout(400);
  const element = await frame.parentFrame()?.frameElement();
  const box = await element?.boundingBox();
  await mkdir(shotsDir, { recursive: true });
  await page.screenshot({ path: path.join(shotsDir, `${name}.png`), ...(box === null || box === undefined ? {} : { clip: box }) });
  await page.setViewportSize({ width, height });
}

// These run in the page, and are text because this project's types know no DOM.

/** What reaches beyond the page or out of what holds it, but for what scrolls inside itself. */
export const cutOff = `(() => {
  const edge = document.documentElement.clientWidth + 1;
  const scrolls = (one) => one.closest('.wide') !== null;
  return [
    ...(document.scrollingElement.scrollWidth > edge ? ['the page: ' + document.scrollingElement.scrollWidth] : []),
    ...[...document.querySelectorAll('#page *:not(svg *)')].filter((one) => one.getClientRects().length > 0 && one.closest('.unseen') === null).flatMap((one) => {
      const { left, right } = one.getBoundingClientRect();
      const beyond = !scrolls(one) && (right > edge || left < -1);
      const cut = !one.classList.contains('wide') && one.clientWidth > 0 && one.scrollWidth > one.clientWidth + 1 && !(one instanceof HTMLInputElement) && getComputedStyle(one).overflowX !== 'visible';
      return beyond || cut ? [one.tagName + ' ' + (one.textContent ?? '').trim().slice(0, 40) + ' ' + Math.round(left) + ' to ' + Math.round(right)] : [];
    }),
    ...[...document.querySelectorAll('#page svg text')].filter((one) => one.getClientRects().length > 0).flatMap((one) => {
      const { left, right } = one.getBoundingClientRect();
      const box = one.closest('svg').getBoundingClientRect();
      return left < box.left - 2 || right > box.right + 2 ? ['text in a drawing: ' + one.textContent.slice(0, 60) + ' ' + Math.round(left - box.left) + ' to ' + Math.round(right - box.left) + ' of ' + Math.round(box.width)] : [];
    }),
  ];
})()`;

/** Texts of a drawing that lie over each other. */
const overlapping = `[...document.querySelectorAll('#page svg')].filter((one) => one.getClientRects().length > 0).flatMap((svg) => {
  const texts = [...svg.querySelectorAll('text')].map((one) => ({ says: one.textContent, box: one.getBoundingClientRect() })).filter(({ box }) => box.width > 0);
  return texts.flatMap(({ says, box }, i) => texts.slice(i + 1).flatMap((other) => {
    const across = Math.min(box.right, other.box.right) - Math.max(box.left, other.box.left);
    const down = Math.min(box.bottom, other.box.bottom) - Math.max(box.top, other.box.top);
    return across > 1 && down > 4 ? [says.slice(0, 40) + ' / ' + other.says.slice(0, 40)] : [];
  }));
})`;

/** Columns of figures whose texts don't end at the same place. */
const uneven = `[...document.querySelectorAll('#page table.figures')].flatMap((table) => {
  const ends = new Map();
  for (const button of table.querySelectorAll('tbody tr:not(.how) > td > button:first-child')) {
    const cell = button.parentElement;
    const range = document.createRange();
    range.selectNodeContents(button);
    ends.set(cell.cellIndex, [...(ends.get(cell.cellIndex) ?? []), range.getBoundingClientRect().right]);
  }
  return [...ends].filter(([, all]) => Math.max(...all) - Math.min(...all) > 1).map(([column, all]) => table.caption?.textContent + ', column ' + column + ': ' + [...new Set(all.map(Math.round))].join(' '));
})`;

/** What moves by itself. */
const moving = `[...document.querySelectorAll('*')].flatMap((one) => {
  const { animationName, animationDuration, transitionDuration, transitionProperty, scrollBehavior } = getComputedStyle(one);
  const seconds = (text) => Math.max(...text.split(',').map((part) => parseFloat(part)));
  return (animationName !== 'none' && seconds(animationDuration) > 0) || (seconds(transitionDuration) > 0 && transitionProperty !== 'none') || scrollBehavior === 'smooth' ? [one.tagName + ' ' + one.className] : [];
})`;
