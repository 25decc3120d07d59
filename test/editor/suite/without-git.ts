// A session without git: what needs it says so, and all else works.
import { focusEditor, runCommand } from '../host/actions.js';
import type { Editor } from '../host/browser.js';
import { retry } from '../host/retry.js';
import { webviewFrame } from '../host/webview.js';
import type { Case } from './cases.js';
import { waitForNotice } from './notices.js';
import { nothingFailed, pilgrimIn } from './pilgrim.js';
import type { Workspace } from './workspace.js';

export async function withoutGitCases(editor: Editor, workspace: Workspace): Promise<readonly Case[]> {
  const { isWeighed, retype, today } = await pilgrimIn(editor, workspace);

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
        await isWeighed();
        await retype('1450');
        await runCommand(editor, 'Steelyard: What changed, in money and days…');
        await editor.page.locator('.quick-input-widget').locator('.monaco-list-row', { hasText: 'Since it was saved' }).click();
        const frame = await webviewFrame(editor, async (one) => (await one.locator('h2', { hasText: 'What changed' }).count()) > 0);
        await retry('what changed', async () => ((await frame.locator('#page').innerText()).includes(today('used.total')) ? true : undefined));
      },
    },
    nothingFailed(editor),
  ];
}
