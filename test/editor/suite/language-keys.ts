// What a writer does with the keyboard, and what then stands in the editor.
import { focusEditor, goToLine } from '../host/actions.js';
import type { Editor } from '../host/browser.js';
import { patience, retry } from '../host/retry.js';

const NO_BREAK = /\u00a0/g;
const focused = '.editor-instance .monaco-editor.focused';

/** The lines in view, top to bottom, as they are shown: with the amounts behind them. */
export async function linesShown({ page }: Editor): Promise<readonly string[]> {
  const lines = await page.locator(`${focused} .view-lines .view-line`).evaluateAll((all) => (all as unknown as { style: { top: string }; textContent: string }[]).map(({ style, textContent }) => ({ top: Number.parseFloat(style.top), text: textContent })));
  return lines.sort((a, b) => a.top - b.top).map(({ text }) => text.replace(NO_BREAK, ' '));
}

export async function waitForShown(editor: Editor, pattern: RegExp): Promise<string> {
  return await retry(`a line like ${pattern.source}`, async () => (await linesShown(editor)).find((line) => pattern.test(line)));
}

/** Puts the cursor at a place that a bar marks in a piece of text; columns may stand as far apart as they like. */
export async function goTo(editor: Editor, text: string, marked: string): Promise<void> {
  const written = (piece: string): string => piece.replace(/[.*+?^${}()[\]\\]/g, '\\$&').replace(/ +/g, ' +');
  const [before = '', after = ''] = marked.split('|');
  const found = [...text.matchAll(new RegExp(`(${written(before)})${written(after)}`, 'g'))];
  const [one] = found;
  if (one === undefined || found.length > 1) throw new Error(`“${marked}” occurs ${found.length} times.`);
  const lines = text.slice(0, one.index + (one[1] ?? '').length).split('\n');
  await goToLine(editor, lines.length, (lines[lines.length - 1] ?? '').length + 1);
}

/** Takes a suggestion: asked for where none shows by itself, chosen with the arrow keys. */
export async function acceptSuggestion(editor: Editor, label: string): Promise<void> {
  const { page } = editor;
  const rows = page.locator('.suggest-widget.visible .monaco-list-row');
  await focusEditor(editor);
  await retry(`${label} among the suggestions`, async () => {
    if ((await rows.count()) === 0) await page.keyboard.press('Control+Space');
    await rows.first().waitFor({ timeout: 3000 });
    for (let i = 0; i < 12; i++) {
      if ((await page.locator('.suggest-widget.visible .monaco-list-row.focused .label-name').innerText({ timeout: 1000 })) === label) return true;
      await page.keyboard.press('ArrowDown');
    }
    // What was offered before all files were known is not asked for again by itself.
    await page.keyboard.press('Escape');
    return undefined;
  });
  await page.keyboard.press('Enter');
}

/** Takes an entry of the list that the editor offers for a problem at the cursor. */
export async function acceptFix(editor: Editor, title: string): Promise<void> {
  const { page } = editor;
  const rows = page.locator('.action-widget .monaco-list-row.action');
  await retry(`${title} among the fixes`, async () => {
    await focusEditor(editor);
    await page.keyboard.press('Control+.');
    await rows.first().waitFor({ timeout: 3000 });
    for (let i = 0; i < 8; i++) {
      if ((await page.locator('.action-widget .monaco-list-row.action.focused').innerText({ timeout: 1000 })).includes(title)) return true;
      await page.keyboard.press('ArrowDown');
    }
    await page.keyboard.press('Escape');
    return undefined;
  });
  await page.keyboard.press('Enter');
}

export async function renameAtCursor(editor: Editor, name: string): Promise<void> {
  const { page } = editor;
  const input = page.locator('.rename-box input.rename-input');
  await retry('the box for the new name', async () => {
    await focusEditor(editor);
    await page.keyboard.press('F2');
    await input.waitFor({ timeout: 3000 });
    return true;
  });
  await input.fill(name);
  await page.keyboard.press('Enter');
  await input.waitFor({ state: 'hidden', timeout: patience });
}

/** The colours of the pieces of a line, which starts with the first of them. */
export async function coloursOf({ page }: Editor, pieces: readonly string[]): Promise<readonly string[]> {
  return await page.evaluate<string[]>(`(() => {
    const pieces = ${JSON.stringify(pieces)};
    const plain = (one) => one.textContent.replaceAll('\u00a0', ' ');
    const line = [...document.querySelectorAll('.editor-instance .view-line')].find((one) => plain(one).startsWith(pieces.slice(0, 2).join(' ')));
    const spans = line === undefined ? [] : [...line.querySelectorAll('span span')];
    return pieces.flatMap((piece) => spans.filter((one) => plain(one).includes(piece)).slice(0, 1)).map((one) => getComputedStyle(one).color);
  })()`);
}
