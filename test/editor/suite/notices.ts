// What the editor tells its user in notifications.
import { runCommand } from '../host/actions.js';
import type { Editor } from '../host/browser.js';
import { retry } from '../host/retry.js';

/** Waits until a notification says something, and puts all of them away. */
export async function waitForNotice(editor: Editor, words: string): Promise<void> {
  await runCommand(editor, 'Notifications: Show Notifications');
  const centre = editor.page.locator('.notifications-center');
  await retry(`the notice “${words}”`, async () => {
    const said = (await centre.innerText()).replace(/\s+/g, ' ');
    return said.includes(words) ? true : undefined;
  });
  await runCommand(editor, 'Notifications: Clear All Notifications');
}
