// What changed since a commit, in the real editor with its own git; and the workspace's estimates by state.
import assert from 'node:assert/strict';
import type { Frame } from 'playwright-core';
import { focusEditor, goToLine, openFile, runCommand } from '../host/actions.js';
import type { Editor } from '../host/browser.js';
import { readHover } from '../host/reading.js';
import { retry } from '../host/retry.js';
import { webviewFrame } from '../host/webview.js';
import type { Case } from './cases.js';
import { waitForLine } from './driven.js';
import { whereIs } from './expected.js';
import { pressTitle } from './panel.js';
import { nothingFailed, pilgrimIn } from './pilgrim.js';
import type { Workspace } from './workspace.js';

/** The story of one session; each case starts where the one before ended. */
export async function gitDrivenCases(editor: Editor, workspace: Workspace): Promise<readonly Case[]> {
  const { page } = editor;
  const { estimate, text, price, withPrice, retype } = await pilgrimIn(editor, workspace);
  const total = (likely: string) => withPrice(likely)('used.total');
  const changesFrame = async (): Promise<Frame> => await webviewFrame(editor, async (frame) => (await frame.locator('h2', { hasText: 'What changed' }).count()) > 0);
  const says = async (frame: Frame, words: string): Promise<unknown> => await retry(`“${words}” in what changed`, async () => ((await frame.locator('#page').innerText()).includes(words) ? true : undefined));

  return [
    {
      name: 'what changed since the last commit is said in money and days, and follows the typing',
      async run() {
        await retype('1450');
        // git of the editor needs a while to find the repository.
        const frame = await retry('what changed', async () => {
          await runCommand(editor, 'Steelyard: What changed since the last commit');
          return await changesFrame().catch(() => undefined);
        }, 60_000);
        await says(frame, '1350');
        await says(frame, total('1350'));
        await says(frame, total('1450'));
        await focusEditor(editor);
        await retype('1550');
        await says(frame, total('1550'));
        await editor.screenshot('what-changed');
      },
    },
    {
      name: 'a change leads to its line',
      async run() {
        await goToLine(editor, 1);
        const frame = await changesFrame();
        await frame.locator('button', { hasText: 'Used engine, 92 000 mi' }).first().click();
        await waitForLine(editor, price.line);
      },
    },
    {
      name: 'on a difference of texts a button says what it changes',
      async run() {
        // Where the page has the focus, saving saves nothing.
        await retry('the text on the disk', async () => {
          await focusEditor(editor);
          await runCommand(editor, 'File: Save');
          return (await workspace.read(estimate)).includes('1150 / 1550 / 2100') ? true : undefined;
        });
        await runCommand(editor, 'View: Close All Editors');
        await openFile(editor, estimate);
        // git of the editor sees a save only after a while; before that there is no difference to open.
        await retry('the difference', async () => {
          await runCommand(editor, 'Git: Open Changes');
          await page.locator('.monaco-diff-editor').first().waitFor({ timeout: 3000 });
          return true;
        }, 60_000);
        await pressTitle(editor, 'What this difference changes, in money and days');
        const frame = await changesFrame();
        await says(frame, total('1350'));
        await says(frame, total('1550'));
        await editor.screenshot('what-a-difference-changes');
      },
    },
    {
      name: 'an estimate that is in no commit gets a clear word',
      async run() {
        await runCommand(editor, 'View: Close All Editors');
        await workspace.write('new-one.yard', 'steelyard 1\nuse "shop.yard"\nestimate "E-1"\n  written 2026-11-24\noption a "A"\n  part "P" 5.00\n');
        await openFile(editor, 'new-one.yard');
        await runCommand(editor, 'Steelyard: What changed since the last commit');
        await runCommand(editor, 'Notifications: Show Notifications');
        await retry('the word', async () => ((await page.locator('.notifications-center').innerText()).includes('new-one.yard is not in the last commit') ? true : undefined));
        await runCommand(editor, 'Notifications: Clear All Notifications');
      },
    },
    {
      name: 'the estimates of the workspace stand in the explorer by state, and lead to their files',
      async run() {
        await runCommand(editor, 'Explorer: Focus on Estimates View');
        const tree = page.locator('.pane', { hasText: 'Estimates' }).last();
        await retry('the list', async () => {
          const shown = await tree.innerText();
          return shown.includes('E-1041') && shown.includes('Draft') ? true : undefined;
        });
        await editor.screenshot('estimates');
        await tree.locator('.monaco-list-row', { hasText: 'E-1066' }).click();
        await page.locator('.tab.active[data-resource-name="heron-pump.yard"]').waitFor();
      },
    },
    {
      name: 'what closed estimates took is said beside the work, and listed',
      async run() {
        const took = ['1.4', '1.5', '1.7', '1.8', '2.0', '2.6'];
        for (const [i, hours] of took.entries()) {
          await workspace.write(`closed-${i + 1}.yard`, text.replace(/^use .*$/m, `use "shop.yard"\nclosed for used on 2026-11-2${i}\n  clocked pump ${hours} h\n`));
        }
        await openFile(editor, estimate);
        const pump = whereIs(text, 'takes    1.6 h');
        await retry('the hover', async () => {
          await goToLine(editor, pump.line, pump.column + 10);
          return await readHover(editor, (shown) => shown.includes('Your last 6 with engine-out: 1.4 / 1.8 / 2.6 h'));
        }, 60_000);
        await editor.screenshot('book-hover');
        await runCommand(editor, 'Steelyard: Show the book of times');
        await retry('the book', async () => ((await page.locator('.editor-instance .view-lines').last().innerText()).includes('Coolant') ? true : undefined));
        await editor.screenshot('book');
      },
    },
    {
      name: 'the quote of an option is written where the user says',
      async run() {
        await openFile(editor, estimate);
        await runCommand(editor, 'Steelyard: Write quote…');
        const box = page.locator('.quick-input-widget');
        await box.locator('.monaco-list-row', { hasText: 'Fit a used engine' }).first().click();
        await retry('the proposed name', async () => ((await box.locator('input.input').inputValue()).endsWith('/pilgrim-v6-used.html') ? true : undefined));
        await page.keyboard.press('Enter');
        // The editor empties the file first and fills it then; it may be read between the two.
        const written = await retry('the whole quote', async () => {
          const read = await workspace.read('pilgrim-v6-used.html').catch(() => '');
          return read.trimEnd().endsWith('</html>') ? read : undefined;
        });
        assert.match(written, /Fit a used engine/);
        assert.match(written, /data:image\/png;base64/);
        assert.doesNotMatch(written, /<script/i);
      },
    },
    nothingFailed(editor),
  ];
}
