// `node src/tools/run.mjs test/quote/in-editor.ts`: writes a quote in the real editor, by keyboard, from the command to
// the file on disk. Needs a build (`npm run build`) and what the editor tests install.
import assert from 'node:assert/strict';
import { existsSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { runCommand } from '../editor/host/actions.js';
import { launchBrowser, openEditor } from '../editor/host/browser.js';
import { startHost } from '../editor/host/host.js';
import { repository } from '../editor/host/paths.js';
import { readNotifications } from '../editor/host/reading.js';
import { retry } from '../editor/host/retry.js';
import { copySamples } from '../editor/suite/workspace.js';

const workspace = await copySamples();
const host = await startHost({ workspace: workspace.dir, extensionDir: repository });
const browser = await launchBrowser();
try {
  const editor = await openEditor(browser, host, { openFile: 'pilgrim-v6.yard', viewport: { width: 1400, height: 900 } });
  const { page } = editor;
  await runCommand(editor, 'Steelyard: Write quote…');
  const row = page.locator('.quick-input-list .monaco-list-row', { hasText: 'Fit a used engine' });
  await row.waitFor();
  assert.match(await row.innerText(), /5,858\.59 USD/);
  await editor.screenshot('quote-pick');
  await row.click();
  const target = path.join(workspace.dir, 'pilgrim-v6-used.html');
  const name = page.locator('.quick-input-box input');
  await retry('the save dialog', async () => ((await name.inputValue()).endsWith('pilgrim-v6-used.html') ? true : undefined));
  await editor.screenshot('quote-save');
  await page.keyboard.press('Enter');
  await retry('the file', async () => Promise.resolve(existsSync(target) ? true : undefined));
  await retry('all of the file', async () => Promise.resolve(readFileSync(target, 'utf8') === readFileSync(path.join(repository, 'samples/quotes/pilgrim-v6-used.html'), 'utf8') ? true : undefined));
  await readNotifications(editor, (texts) => texts.some((text) => text.includes('Wrote pilgrim-v6-used.html.')));
  console.log('ok    a quote is written from the editor, the same bytes as the terminal’s');
  await editor.close();
} finally {
  await browser.close();
  await host.stop();
  await workspace.remove();
}
