// What fails around the editor: files that go or can't be read, the page's process and the extension's, each killed.
import assert from 'node:assert/strict';
import { rm } from 'node:fs/promises';
import path from 'node:path';
import { setTimeout as delay } from 'node:timers/promises';
import type { Frame } from 'playwright-core';
import { focusEditor, goToLine, openFile, runCommand, typeText } from '../host/actions.js';
import type { Editor } from '../host/browser.js';
import { collectConsole } from '../host/console.js';
import { readHover, readProblems } from '../host/reading.js';
import { patience, retry } from '../host/retry.js';
import type { Case } from './cases.js';
import { moneyIn, whereIs } from './expected.js';
import { figure, openPanel, pageFrame, waitForLater, waitForText } from './panel.js';
import type { Workspace } from './workspace.js';

const estimate = 'pilgrim-v6.yard';
/** The editor writes what it is to know after a crash some seconds later; in ms. */
const WRITTEN = 10_000;

/** The story of one session; each case starts where the one before ended. */
export async function faultCases(first: Editor, workspace: Workspace): Promise<readonly Case[]> {
  let editor = first;
  const text = await workspace.read(estimate);
  const shop = await workspace.read('shop.yard');
  const price = whereIs(text, '1150 / 1350 / 2100');
  const today = moneyIn({ [estimate]: text, 'shop.yard': shop }, estimate);
  const edited = text.replace('1150 / 1350 / 2100', '1150 / 1450 / 2100');
  const after = moneyIn({ [estimate]: edited, 'shop.yard': shop }, estimate);
  const tried = moneyIn({ [estimate]: edited, 'shop.yard': shop.replace('132.00 usual', '140.00 usual') }, estimate);
  const field = 'tr.how [data-key="used"] [data-try][data-today="132.00"]';
  const shows = async (frame: Frame, id: string, amount: string): Promise<unknown> => await waitForText(frame, figure(id), (shown) => shown === amount);

  /** The page as it was left: a row unfolded, and a rate tried in it. Its frame is looked for each time: the one that is thrown away may still be there. */
  const isAsItWas = async (): Promise<void> => {
    await retry('the page as it was left', async () => {
      const frame = await pageFrame(editor);
      const total = await frame.locator(figure('used.total')).first().innerText({ timeout: 1000 });
      const rate = await frame.locator(field).first().inputValue({ timeout: 1000 });
      return total === tried('used.total') && rate === '140.00' ? true : undefined;
    }, 2 * patience);
  };

  return [
    {
      name: 'an estimate that is deleted on the disk while it is open keeps its text, its panel follows it, and it can be saved again',
      async run() {
        await openPanel(editor);
        await shows(await pageFrame(editor), 'used.total', today('used.total'));
        await rm(path.join(workspace.dir, estimate));
        // Older editors call two tabs active, one in each group.
        await editor.page.locator('.tab.active .label-name', { hasText: estimate }).first().waitFor();
        await goToLine(editor, price.line, price.column + '1150 / '.length);
        for (let i = 0; i < 4; i++) await editor.page.keyboard.press('Shift+ArrowRight');
        await typeText(editor, '1450');
        await shows(await pageFrame(editor), 'used.total', after('used.total'));
        await runCommand(editor, 'File: Save');
        await retry('the file', async () => ((await workspace.read(estimate).catch(() => '')) === edited ? true : undefined));
      },
    },
    {
      name: 'the page’s document is thrown away: the page comes back as it was',
      async run() {
        const frame = await pageFrame(editor);
        await waitForLater(frame);
        await frame.locator('[data-unfold=".row.labour"]').click();
        const swap = frame.locator('tr.how [data-key="used"] details', { hasText: 'Swap engine' }).first();
        await swap.locator('summary').click();
        await swap.locator('[data-try][data-today="132.00"]').fill('140.00');
        await isAsItWas();
        await runCommand(editor, 'Developer: Reload Webviews');
        await isAsItWas();
      },
    },
    {
      name: 'the window’s process is killed, and with it the page’s: opened again, text that was not saved and the panel are as they were',
      async run() {
        await goToLine(editor, 1);
        await editor.page.keyboard.press('End');
        await editor.page.keyboard.press('Enter');
        await typeText(editor, '# not saved');
        await delay(WRITTEN);
        const { page, host } = editor;
        const context = page.context();
        const crashed = page.waitForEvent('crash');
        const session = await context.newCDPSession(page);
        void session.send('Page.crash').catch(() => undefined);
        await crashed;
        const again = await context.newPage();
        editor = { ...editor, page: again, console: collectConsole(again) };
        await again.setViewportSize({ width: 1400, height: 900 });
        await again.goto(host.url(), { waitUntil: 'domcontentloaded' });
        await again.locator('.view-line', { hasText: '# not saved' }).waitFor({ timeout: 60_000 });
        await isAsItWas();
      },
    },
    {
      name: 'files in other encodings: with a mark they are read; one that is no text is a problem on the line that names it',
      async run() {
        const wide = 'steelyard 1\nshop "Über"\n  currency USD\n  rate plain "Plain" 100.00 usual\n';
        await workspace.writeBytes('wide.yard', Buffer.concat([Buffer.from([0xff, 0xfe]), Buffer.from(wide, 'utf16le')]));
        await workspace.writeBytes('zeros.yard', Buffer.alloc(2_000));
        await workspace.write('mixed.yard', 'steelyard 1\nuse "wide.yard"\nuse "zeros.yard"\noption one "One"\n  labour "Work" 2 h\n');
        await openFile(editor, 'mixed.yard');
        const problems = await readProblems(editor, (found) => found.some(({ severity }) => severity === 'error'));
        assert.deepEqual(problems.filter(({ severity }) => severity === 'error').map(({ line, code }) => [line, code]), [[3, 'use-missing']]);
        await goToLine(editor, 5, 12);
        assert.match(await readHover(editor, (shown) => shown.includes('200.00')), /200\.00/);
      },
    },
    {
      name: 'the process that extensions run in is killed: in the next one the problems are known and the panel is as it was',
      async run() {
        await openFile(editor, estimate);
        await isAsItWas();
        await delay(WRITTEN);
        const before = editor.host.extensionHosts();
        assert.notEqual(before.length, 0);
        for (const pid of before) process.kill(pid, 'SIGKILL');
        await retry('its end', () => Promise.resolve(editor.host.extensionHosts().some((pid) => before.includes(pid)) ? undefined : true));
        // An editor that tries out an extension's sources starts no other by itself; loading the window anew does.
        await runCommand(editor, 'Developer: Reload Window');
        await retry('another extension host', () => Promise.resolve(editor.host.extensionHosts().length > 0 ? true : undefined), 60_000);
        await isAsItWas();
        await openFile(editor, estimate);
        await focusEditor(editor);
        await readProblems(editor, (found) => found.some(({ code }) => code === 'compression-uneven'));
        await openPanel(editor);
        await isAsItWas();
      },
    },
  ];
}
