// A session without git: what needs it says so, and all else works.
import assert from 'node:assert/strict';
import { focusEditor, runCommand, typeText, goToLine } from '../host/actions.js';
import type { Editor } from '../host/browser.js';
import { retry } from '../host/retry.js';
import { webviewFrame } from '../host/webview.js';
import type { Case } from './cases.js';
import { problemsOf } from './driven.js';
import { moneyIn, whereIs } from './expected.js';
import { figure, openPanel, pageFrame, waitForText } from './panel.js';
import { waitForNotice } from './notices.js';
import type { Workspace } from './workspace.js';

const estimate = 'pilgrim-v6.yard';

export async function withoutGitCases(editor: Editor, workspace: Workspace): Promise<readonly Case[]> {
  const { page } = editor;
  const text = await workspace.read(estimate);
  const figures = moneyIn({ [estimate]: text, 'shop.yard': await workspace.read('shop.yard') }, estimate);

  return [
    {
      name: 'what needs git says that it is off, and where it is switched on',
      async run() {
        await focusEditor(editor);
        await runCommand(editor, 'Steelyard: What changed since the last commit');
        await waitForNotice(editor, 'git is not installed on this machine, or is switched off in the settings (git.enabled).');
      },
    },
    {
      name: 'estimates are weighed, and compared with what was saved, without it',
      async run() {
        await openPanel(editor);
        await waitForText(await pageFrame(editor), figure('used.total'), (shown) => shown === figures('used.total'));
        const price = whereIs(text, '1150 / 1350 / 2100');
        await goToLine(editor, price.line, price.column + '1150 / '.length);
        for (let i = 0; i < 4; i++) await page.keyboard.press('Shift+ArrowRight');
        await typeText(editor, '1450');
        await runCommand(editor, 'Steelyard: What changed, in money and days…');
        const box = page.locator('.quick-input-widget');
        await box.locator('.monaco-list-row', { hasText: 'Since it was saved' }).click();
        const frame = await webviewFrame(editor, async (one) => (await one.locator('h2', { hasText: 'What changed' }).count()) > 0);
        await retry('what changed', async () => ((await frame.locator('#page').innerText()).includes(figures('used.total')) ? true : undefined));
      },
    },
    { name: 'nothing failed', run: () => Promise.resolve(assert.deepEqual(problemsOf(editor), [])) },
  ];
}
