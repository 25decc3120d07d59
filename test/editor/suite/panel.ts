// The comparison panel as a user meets it.
import type { Frame } from 'playwright-core';
import { focusEditor } from '../host/actions.js';
import type { Editor } from '../host/browser.js';
import { patience, retry } from '../host/retry.js';
import { webviewFrame } from '../host/webview.js';

/** Presses a button in the title of the active editor group; its label may go on with a keyboard shortcut. */
export async function pressTitle(editor: Editor, label: string): Promise<void> {
  const title = editor.page.locator('.editor-group-container.active .editor-actions');
  await title.getByRole('button', { name: new RegExp(`^${label}( \\(|$)`) }).click({ timeout: patience });
}

/** Opens the panel from the estimate that is open, wherever the keyboard was before. */
export async function openPanel(editor: Editor): Promise<void> {
  await focusEditor(editor);
  await pressTitle(editor, 'Show comparison');
}

/** The page inside the panel. It is another frame each time it was hidden or moved. */
export async function pageFrame(editor: Editor): Promise<Frame> {
  return await webviewFrame(editor, async (frame) => (await frame.locator('#page h1').count()) > 0);
}

/** Waits until a piece of the page says something. */
export async function waitForText(frame: Frame, selector: string, matches: (text: string) => boolean): Promise<string> {
  return await retry(`${selector} with the expected text`, async () => {
    const text = await frame.locator(selector).first().innerText({ timeout: 1000 });
    return matches(text) ? text : undefined;
  });
}

/** Waits until the page holds what helps to decide, and none of it is an earlier text's. */
export async function waitForLater(frame: Frame): Promise<void> {
  await retry('what helps to decide', async () => {
    const [filled, busy, awaited] = await frame.evaluate<[number, number, number]>(`['[data-filled]', '[aria-busy=true]', 'figure:not(:has(img, .absent))'].map((one) => document.querySelectorAll(one).length)`);
    return filled === 3 && busy === 0 && awaited === 0 ? true : undefined;
  });
}

export const figure = (id: string): string => `[data-figure="${id}"]`;

/** Folds every list of the page, those inside others too. */
export async function foldAll(frame: Frame, state: 'folded' | 'unfolded'): Promise<void> {
  await frame.evaluate(`for (const list of document.querySelectorAll('details')) list.open = ${state === 'unfolded'}`);
}

/** The page once it shows the estimate with this title, as a whole. */
export async function pageTitled(editor: Editor, title: string): Promise<Frame> {
  const spaced = (text: string): string => text.replace(/\s+/g, ' ').trim();
  const frame = await retry(`the page of ${title}`, async () => {
    const found = await pageFrame(editor);
    return spaced(await found.evaluate<string>(`document.querySelector('h1').textContent`)) === spaced(title) ? found : undefined;
  });
  await waitForLater(frame);
  return frame;
}
