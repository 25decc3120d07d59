// The panel by keyboard alone: in the order of the page, seen at every stop, in and out again.
import assert from 'node:assert/strict';
import type { Frame } from 'playwright-core';
import { cursorPosition, goToLine } from '../host/actions.js';
import type { Editor } from '../host/browser.js';
import { retry } from '../host/retry.js';
import type { Case } from './cases.js';
import { problemsOf } from './driven.js';
import { whereIs } from './expected.js';
import { figure, foldAll, pageFrame, openPanel, waitForLater } from './panel.js';
import type { Workspace } from './workspace.js';

const estimate = 'pilgrim-v6.yard';

/** One element that takes the keyboard: its place among them in the page, and whether it looked different with the keyboard in it. */
interface Stop {
  readonly index: number;
  readonly what: string;
  readonly seen: boolean;
  readonly inView: boolean;
}

export async function keyboardCases(editor: Editor, workspace: Workspace): Promise<readonly Case[]> {
  const { page } = editor;
  const text = await workspace.read(estimate);
  return [
    {
      name: 'the panel is there, and the keyboard comes into it',
      async run() {
        await openPanel(editor);
        const frame = await pageFrame(editor);
        await waitForLater(frame);
        await foldAll(frame, 'unfolded');
        await intoPage(editor, frame);
      },
    },
    {
      name: 'Tab stops at everything that can be pressed or typed in, in the order of the page, and shows where it is; then it leaves',
      async run() {
        const frame = await pageFrame(editor);
        const count = await frame.evaluate<number>(watch);
        assert.ok(count > 100, `only ${count} elements take the keyboard`);
        for (let i = 0; i < count + 2; i++) await page.keyboard.press('Tab');
        const stops = await frame.evaluate<Stop[]>('window.stops');
        assert.deepEqual(stops.filter(({ seen }) => !seen).map(({ what }) => what), [], 'looks the same with the keyboard in it');
        assert.deepEqual(stops.filter(({ inView }) => !inView).map(({ what }) => what), [], 'out of view with the keyboard in it');
        assert.deepEqual(stops.map(({ index }) => index), Array.from({ length: count }, (_, i) => i));
        assert.equal(await hasKeyboard(frame), false, 'the keyboard is still in the page after its last element');
        console.log(`      ${count} stops`);
      },
    },
    {
      name: 'Shift and Tab go back the same way',
      async run() {
        const frame = await pageFrame(editor);
        await frame.evaluate(`window.stops = []; document.querySelectorAll('#page summary')[1].focus()`);
        const from = (await frame.evaluate<Stop[]>('window.stops'))[0]?.index ?? 0;
        for (let i = 0; i < from; i++) await page.keyboard.press('Shift+Tab');
        assert.deepEqual((await frame.evaluate<Stop[]>('window.stops')).map(({ index }) => index), Array.from({ length: from + 1 }, (_, i) => from - i));
      },
    },
    {
      name: 'Enter and Space fold lists; Enter and Space on a figure lead to its line',
      async run() {
        const frame = await pageFrame(editor);
        const list = frame.locator('[data-key="lines"] details').first();
        await list.locator('summary').first().focus();
        for (const [key, open] of [['Enter', false], ['Space', true], ['Enter', false], ['Space', true]] as const) {
          await page.keyboard.press(key);
          assert.equal(await frame.evaluate<boolean>(`document.querySelector('[data-key="lines"] details').open`), open, `${key} folds`);
        }
        for (const [key, id, line] of [['Enter', 'rebuild.outside', 'sublet head-work'], ['Space', 'used.in-all', 'option used']] as const) {
          await goToLine(editor, 1);
          await intoPage(editor, frame);
          await frame.locator(figure(id)).first().focus();
          await page.keyboard.press(key);
          await retry(`the cursor on the line of ${id}`, async () => ((await cursorPosition(editor)).line === whereIs(text, line).line ? true : undefined));
        }
      },
    },
    {
      name: 'nothing failed on the way',
      run: () => Promise.resolve(assert.deepEqual(problemsOf(editor), [])),
    },
  ];
}

/** By a press on the page’s title, which is no control, and so to the top of the order. */
async function intoPage({ page }: Editor, frame: Frame): Promise<void> {
  await frame.evaluate('document.scrollingElement.scrollTo(0, 0)');
  await frame.locator('h1').click();
  await retry('the keyboard in the page', async () => ((await hasKeyboard(frame)) ? true : undefined));
  await page.waitForTimeout(50);
}

async function hasKeyboard(frame: Frame): Promise<boolean> {
  return await frame.evaluate<boolean>('document.hasFocus()');
}

// Runs in the page, and is text because this project's types know no DOM. Every element that takes the keyboard, with
// its looks without it, against which they are held once it has it.
const watch = `(() => {
  const looks = (one) => { const { outlineStyle, outlineWidth, outlineColor, boxShadow, borderColor } = getComputedStyle(one); return outlineStyle === 'none' || outlineWidth === '0px' ? ['', boxShadow, borderColor].join() : [outlineStyle, outlineWidth, outlineColor, boxShadow, borderColor].join(); };
  const all = [...document.querySelectorAll('#page :is(button, summary, input, select, textarea, a[href], [tabindex="0"])')].filter((one) => one.tabIndex >= 0 && one.getClientRects().length > 0 && !one.disabled);
  const before = new Map(all.map((one) => [one, looks(one)]));
  window.stops = [];
  document.addEventListener('focusin', ({ target }) => {
    const { top, bottom } = target.getBoundingClientRect();
    const what = target.tagName + ' ' + (target.dataset.figure ?? target.dataset.try ?? target.textContent.trim().slice(0, 40));
    window.stops.push({ index: all.indexOf(target), what, seen: looks(target) !== before.get(target), inView: bottom > 0 && top < innerHeight });
  });
  return all.length;
})()`;
