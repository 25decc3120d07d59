// The panel in every kind of theme, and narrow: screenshots to look at, and what can be checked without eyes.
import assert from 'node:assert/strict';
import { mkdir } from 'node:fs/promises';
import path from 'node:path';
import { repository } from '../host/paths.js';
import { goToLine } from '../host/actions.js';
import type { Editor } from '../host/browser.js';
import type { Case } from './cases.js';
import { problemsOf } from './driven.js';
import { pageFrame, pressTitle, waitForLater } from './panel.js';
import { chooseTheme, themes, type ThemeName } from './themed.js';

const size = { width: 1400, height: 900 };

/** `pictures` also writes the two that the README shows. */
export function looksCases(editor: Editor, pictures: boolean): readonly Case[] {
  return [
    {
      name: 'the panel is there',
      async run() {
        await editor.page.setViewportSize(size);
        await pressTitle(editor, 'Show comparison');
        const frame = await pageFrame(editor);
        await waitForLater(frame);
        for (const key of ['calendar rebuild', 'shop only']) await frame.locator(`details[data-key="${key}"] summary`).click();
        await frame.evaluate('document.scrollingElement.scrollTo(0, 0)');
        await editor.page.keyboard.press('Control+b');
        await goToLine(editor, 118); // the options in view
      },
    },
    ...(Object.keys(themes) as ThemeName[]).map((theme): Case => ({
      name: `text can be read: ${theme}`,
      async run() {
        await chooseTheme(editor, theme);
        await editor.page.mouse.move(700, 880); // away from buttons, which explain themselves under it
        await editor.page.waitForTimeout(400); // colours reach the page after those of the window
        await editor.screenshot(`comparison-${theme}`);
        if (pictures && (theme === 'light' || theme === 'dark')) await picture(editor, theme);
        const frame = await pageFrame(editor);
        for (const { text, ratio } of await frame.evaluate<{ text: string; ratio: number }[]>(contrasts)) assert.ok(ratio >= 4.5, `${ratio.toFixed(1)} for “${text}”`);
        for (const [at, part] of [['[data-key="sure"]', 'below'], ['[data-key="calendar"]', 'calendar'], ['[data-key="months"]', 'months'], ['[data-key="shop"]', 'shop']] as const) {
          await frame.evaluate(`document.querySelector('${at}').scrollIntoView()`);
          await editor.page.waitForTimeout(200);
          await editor.screenshot(`comparison-${theme}-${part}`);
        }
        await frame.evaluate('document.scrollingElement.scrollTo(0, 0)');
      },
    })),
    {
      name: 'narrow, the table scrolls inside itself and keeps its row names',
      async run() {
        await editor.page.setViewportSize({ width: 860, height: 900 });
        const frame = await pageFrame(editor);
        await editor.page.waitForTimeout(300);
        const [page, inside, name] = await frame.evaluate<[number, number, number]>(`(() => {
          const wide = document.querySelector('[data-key="figures"] .wide');
          wide.scrollLeft = 60;
          const name = wide.querySelector('tbody th');
          return [document.scrollingElement.scrollWidth - innerWidth, wide.scrollLeft, name.getBoundingClientRect().left - wide.getBoundingClientRect().left];
        })()`);
        assert.ok(page <= 0, 'the page itself scrolls sideways');
        assert.ok(inside > 0, 'the table does not scroll');
        assert.ok(Math.abs(name) < 1, 'the row names went along');
        await editor.screenshot('comparison-narrow');
        await editor.page.setViewportSize(size);
      },
    },
    {
      name: 'nothing was refused by the page’s policy in any theme',
      run: () => Promise.resolve(assert.deepEqual(problemsOf(editor), [])),
    },
  ];
}

async function picture(editor: Editor, theme: ThemeName): Promise<void> {
  const dir = path.join(repository, 'samples', 'pictures');
  await mkdir(dir, { recursive: true });
  await editor.page.screenshot({ path: path.join(dir, `comparison-${theme}.png`) });
}

// Runs in the page, and is text because this project's types know no DOM. Contrast as WCAG 2 defines it, for each
// text against the nearest ground behind it.
const contrasts = `(() => {
  const canvas = new OffscreenCanvas(1, 1).getContext('2d', { willReadFrequently: true });
  const rgba = (colour) => { canvas.clearRect(0, 0, 1, 1); canvas.fillStyle = colour; canvas.fillRect(0, 0, 1, 1); return [...canvas.getImageData(0, 0, 1, 1).data]; };
  const light = ([r, g, b]) => { const part = (v) => (v / 255 <= 0.04045 ? v / 255 / 12.92 : ((v / 255 + 0.055) / 1.055) ** 2.4); return 0.2126 * part(r) + 0.7152 * part(g) + 0.0722 * part(b); };
  const ground = (element) => { for (let at = element; at !== null; at = at.parentElement) { const colour = rgba(getComputedStyle(at).backgroundColor); if (colour[3] === 255) return colour; } return rgba('Canvas'); };
  const out = [];
  for (const element of document.querySelectorAll('#page *')) {
    const text = [...element.childNodes].filter((node) => node.nodeType === 3).map((node) => node.textContent.trim()).join('');
    if (text === '' || element.closest('.unseen') !== null || element.getClientRects().length === 0) continue;
    const [a, b] = [light(rgba(getComputedStyle(element).color)), light(ground(element))];
    out.push({ text: text.slice(0, 40), ratio: (Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05) });
  }
  return out;
})()`;
