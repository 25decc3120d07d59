// What else a reader does on the comparison's page: unfolds figures, tries them there, sees where he is in the text.
import assert from 'node:assert/strict';
import { goToLine, openFile, runCommand } from '../host/actions.js';
import type { Editor } from '../host/browser.js';
import { retry } from '../host/retry.js';
import type { Case } from './cases.js';
import { moneyIn, whereIs } from './expected.js';
import { figure, pageFrame, pressTitle, waitForLater, waitForText } from './panel.js';
import { problemsOf } from './driven.js';
import type { Workspace } from './workspace.js';

const estimate = 'pilgrim-v6.yard';

/** The story of one session; each case starts where the one before ended. */
export async function pageDrivenCases(editor: Editor, workspace: Workspace): Promise<readonly Case[]> {
  const { page } = editor;
  const text = await workspace.read(estimate);
  const shop = await workspace.read('shop.yard');
  const withRate = (rate: string) => moneyIn({ [estimate]: text, 'shop.yard': shop.replace('132.00 usual', `${rate} usual`) }, estimate);
  const row = '[data-unfold=".row.labour"]';
  const rateField = 'tr.how [data-key="used"] [data-try][data-today="132.00"]';

  return [
    {
      name: 'a picture of a finding is shown on the page, and nothing is loaded from elsewhere',
      async run() {
        await pressTitle(editor, 'Show comparison');
        const frame = await pageFrame(editor);
        await waitForLater(frame);
        await retry('the picture', async () => {
          await frame.evaluate(`document.querySelector('figure img')?.scrollIntoView()`);
          return (await frame.evaluate<number>(`document.querySelector('figure img')?.naturalWidth ?? 0`)) > 100 ? true : undefined;
        });
        await editor.screenshot('finding');
      },
    },
    {
      name: 'the line under the cursor is marked on the page, also from a line below it, and nothing moves',
      async run() {
        const frame = await pageFrame(editor);
        await frame.locator('[data-key="lines"] details', { hasText: 'Fit a used engine' }).locator('summary').first().click();
        const marked = async (): Promise<readonly string[]> => await frame.evaluate<string[]>(`[...document.querySelectorAll('.here')].map((one) => one.innerText.split('\\n')[0])`);
        const scroll = await frame.evaluate<number>('document.scrollingElement.scrollTop');
        await goToLine(editor, whereIs(text, 'takes    1.6 h').line);
        await retry('the mark', async () => ((await marked()).some((one) => one.startsWith('Coolant pump: replace')) ? true : undefined));
        assert.equal(await frame.locator('[data-key="lines"] details[open] .here [aria-current="location"]').isVisible(), true);
        await editor.screenshot('here');
        await goToLine(editor, whereIs(text, 'finding burnt-valve').line);
        await retry('the mark of the finding', async () => ((await marked()).join().startsWith('Exhaust valve 4 burnt') ? true : undefined));
        await goToLine(editor, whereIs(text, '# Ways in').line);
        await retry('no mark', async () => ((await marked()).length === 0 ? true : undefined));
        assert.equal(await frame.evaluate<number>('document.scrollingElement.scrollTop'), scroll);
      },
    },
    {
      name: 'a row unfolds into how its figures were made; a rate is tried there, by typing, by arrow keys and by dragging',
      async run() {
        const frame = await pageFrame(editor);
        await frame.locator(row).focus();
        await page.keyboard.press('Enter');
        const swap = frame.locator('tr.how [data-key="used"] details', { hasText: 'Swap engine' }).first();
        await swap.locator('summary').click();
        const field = swap.locator('[data-try][data-today="132.00"]');
        await field.fill('140.00');
        const shows = async (rate: string): Promise<unknown> => await waitForText(frame, figure('used.total'), (shown) => shown === withRate(rate)('used.total'));
        await shows('140.00');
        assert.match(await frame.locator('.trying').innerText(), /“Mechanical” \(an hour\) 140.00 instead of 132.00/);
        await field.press('ArrowUp');
        await shows('141.00');
        // What is no figure is told beside the field; Escape goes back to what was tried.
        await field.fill('abc');
        const word = swap.locator('.no-figure');
        assert.equal(await word.innerText(), 'no figure; as in 132.00, or Esc');
        await field.press('Escape');
        assert.deepEqual([await field.inputValue(), await word.count()], ['141.00', 0]);
        await field.fill('1,140.00');
        await shows('1140.00');
        await field.fill('141.00');
        await shows('141.00');
        const handle = await swap.locator('.try:has([data-today="132.00"]) .handle').boundingBox();
        if (handle === null) throw new Error('no handle');
        await page.mouse.move(handle.x + 4, handle.y + 4);
        await page.mouse.down();
        await page.mouse.move(handle.x + 4 - 44, handle.y + 4, { steps: 4 });
        await page.mouse.up();
        await shows('130.00');
        await waitForLater(frame);
        await editor.screenshot('derivation');
        // The panel is hidden, and comes back as it was.
        await page.keyboard.press('Control+2');
        await openFile(editor, 'shop.yard');
        await runCommand(editor, 'View: Close Editor');
        const again = await pageFrame(editor);
        await waitForText(again, figure('used.total'), (shown) => shown === withRate('130.00')('used.total'));
        assert.equal(await again.locator(rateField).first().inputValue(), '130.00');
        await again.locator('[data-act="back"]').click();
        await waitForText(again, figure('used.total'), (shown) => shown === withRate('132.00')('used.total'));
        assert.equal(await again.locator(rateField).first().inputValue(), '132.00');
        await again.locator(row).click();
        await retry('the row folded', async () => ((await again.locator('tr.how').count()) === 0 ? true : undefined));
      },
    },
    {
      name: 'nothing was refused by the page’s policy, and nothing failed',
      run: () => Promise.resolve(assert.deepEqual(problemsOf(editor), [])),
    },
  ];
}
