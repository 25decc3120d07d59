// The panel by axe, in every kind of theme, with all lists folded and unfolded.
import assert from 'node:assert/strict';
import type { Frame } from 'playwright-core';
import { axeOn, type Found } from '../../support/axe.js';
import type { Editor } from '../host/browser.js';
import type { Case } from './cases.js';
import { problemsOf } from './driven.js';
import { foldAll, pageFrame, openPanel, waitForLater } from './panel.js';
import { chooseTheme, themes, type ThemeName } from './themed.js';

export function axeCases(editor: Editor): readonly Case[] {
  return [
    {
      name: 'the panel is there',
      async run() {
        await openPanel(editor);
        await waitForLater(await pageFrame(editor));
      },
    },
    ...(Object.keys(themes) as ThemeName[]).map((theme): Case => ({
      name: `axe finds nothing: ${theme}`,
      async run() {
        await chooseTheme(editor, theme);
        await editor.page.waitForTimeout(400); // colours reach the page after those of the window
        const frame = await pageFrame(editor);
        for (const state of ['folded', 'unfolded'] as const) {
          await foldAll(frame, state);
          const { violations, incomplete, passes } = await axeOn(frame);
          assert.deepEqual(violations, [], state);
          assert.deepEqual(incomplete.filter((one) => !isKnown(one)), [], state);
          assert.ok(passes > 20, `only ${passes} rules had something to look at`);
        }
        for (const { text, ratio } of await frame.evaluate<readonly { readonly text: string; readonly ratio: number }[]>(drawnContrasts)) assert.ok(ratio >= 4.5, `${ratio.toFixed(1)} for “${text}” in a drawing`);
        const ring = await frame.evaluate<number>(focusContrast);
        assert.ok(ring >= 3, `the ring of what has the keyboard stands out by ${ring.toFixed(1)}`);
      },
    })),
    {
      name: 'axe finds nothing while it is shown how a total was made and a figure is tried',
      async run() {
        const frame = await pageFrame(editor);
        await foldAll(frame, 'folded');
        await press(frame, 'true');
        await frame.locator('[data-key="flips"] [data-try]').first().fill('7000');
        await frame.locator('.trials').waitFor();
        await waitForLater(frame);
        const { violations, incomplete } = await axeOn(frame);
        assert.deepEqual([...violations, ...incomplete.filter((one) => !isKnown(one))], []);
        await frame.locator('[data-act="back"]').click();
        await frame.locator('.trials').waitFor({ state: 'detached' });
        await press(frame, 'false');
        await waitForLater(frame);
      },
    },
    {
      name: 'nothing was refused by the page’s policy while axe looked',
      run: () => Promise.resolve(assert.deepEqual(problemsOf(editor), [])),
    },
  ];
}

/** Unfolds how the total was made, or folds it. */
async function press(frame: Frame, expanded: 'true' | 'false'): Promise<void> {
  const button = frame.locator('[data-unfold=".row.total"]');
  if ((await button.getAttribute('aria-expanded')) !== expanded) await button.click();
  await frame.locator(`[data-unfold=".row.total"][aria-expanded="${expanded}"]`).waitFor();
}

/** What axe leaves open, and why that is no fault. */
function isKnown({ id, at }: Found): boolean {
  // A heading over a group of rows has no cells of its own.
  if (id === 'th-has-data-cells') return at.every((one) => /> \.(figures|list):/.test(one));
  // Row names stay in view over figures that have scrolled by, and texts of a drawing stand on it: `looks` measures the
  // contrast of every text of the page, and `drawnContrasts` that of every text of a drawing.
  return id === 'color-contrast' && at.every((one) => /background color could not be determined|too short to determine/.test(one));
}

// These run in the page, and are text because this project's types know no DOM. Contrast as WCAG 2 defines it.
const contrast = `const canvas = new OffscreenCanvas(1, 1).getContext('2d', { willReadFrequently: true });
  const light = (colour) => {
    canvas.fillStyle = colour;
    canvas.fillRect(0, 0, 1, 1);
    const [r, g, b] = [...canvas.getImageData(0, 0, 1, 1).data].map((v) => (v / 255 <= 0.04045 ? v / 255 / 12.92 : ((v / 255 + 0.055) / 1.055) ** 2.4));
    return 0.2126 * r + 0.7152 * g + 0.0722 * b;
  };
  const ground = getComputedStyle(document.body).backgroundColor;
  const against = (colour) => { const [a, b] = [light(ground), light(colour)]; return (Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05); };`;

/** What shows where the keyboard is stands out from its ground by 3 to 1 (WCAG 2.2, 1.4.11). */
const focusContrast = `(() => {
  ${contrast}
  return against(getComputedStyle(document.documentElement).getPropertyValue('--vscode-focusBorder'));
})()`;

/** Texts of drawings are filled, not coloured, and stand on the ground of the page. */
const drawnContrasts = `(() => {
  ${contrast}
  return [...document.querySelectorAll('#page svg :is(text, tspan)')].filter((one) => one.getClientRects().length > 0).map((one) => ({ text: one.textContent.slice(0, 40), ratio: against(getComputedStyle(one).fill) }));
})()`;
