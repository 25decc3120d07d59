// What a user does with the keyboard and the mouse. Each action waits until its effect can be seen.
import type { Editor } from './browser.js';
import { patience, retry } from './retry.js';

export interface Position {
  readonly line: number;
  readonly column: number;
}

const exactly = (text: string): RegExp => new RegExp(`^${text.replace(/[.*+?^${}()|[\]\\]/g, '\\$&')}$`);

/** Runs a command by the title that the command palette shows, "Category: Title". */
export async function runCommand(editor: Editor, title: string): Promise<void> {
  await pick(editor, 'F1', `>${title}`, title);
}

/** Opens a file of the workspace by its name, through "go to file". */
export async function openFile(editor: Editor, name: string): Promise<void> {
  await pick(editor, 'Control+p', name, name);
  await editor.page
    .locator(`.editor-group-container.active .tab.active[data-resource-name="${name}"]`)
    .waitFor({ timeout: patience });
}

async function pick(editor: Editor, key: string, query: string, label: string): Promise<void> {
  const { page } = editor;
  const box = page.locator('.quick-input-widget');
  const entry = box
    .locator('.monaco-list-row')
    .filter({ has: page.locator('.label-name', { hasText: exactly(label) }) });
  // A freshly started editor may drop the key or know the entry only later, so the whole step is repeatable.
  await retry(
    `"${label}" among the entries of ${key}`,
    async () => {
      await page.keyboard.press(key);
      await box.locator('input.input').fill(query, { timeout: 2000 });
      try {
        await entry.first().click({ timeout: 3000 });
        await box.waitFor({ state: 'hidden', timeout: 5000 });
      } catch (error) {
        await page.keyboard.press('Escape');
        throw error;
      }
      return true;
    },
    2 * patience,
  );
}

/** Puts the keyboard into a text editor: the first group's, unless another one has it already. */
export async function focusEditor(editor: Editor): Promise<void> {
  const { page } = editor;
  const focused = page.locator('.editor-group-container .editor-instance .monaco-editor.focused');
  if ((await focused.count()) > 0) return;
  await retry('keyboard focus in a text editor', async () => {
    await page.keyboard.press('Control+1');
    await focused.first().waitFor({ timeout: 1000 });
    return true;
  });
}

/** Types at the cursor, key by key: suggestions and automatic brackets act as they do for a user. */
export async function typeText(editor: Editor, text: string): Promise<void> {
  await focusEditor(editor);
  await editor.page.keyboard.type(text, { delay: 15 });
}

/** Inserts a text at the cursor in one piece, without what single keys would trigger. */
export async function insertText(editor: Editor, text: string): Promise<void> {
  await focusEditor(editor);
  await editor.page.keyboard.insertText(text);
}

export async function goToLine(editor: Editor, line: number, column = 1): Promise<void> {
  const { page } = editor;
  const input = page.locator('.quick-input-widget input.input');
  await retry(`cursor at ${line}:${column}`, async () => {
    await focusEditor(editor);
    await page.keyboard.press('Control+g');
    await input.fill(`:${line}:${column}`, { timeout: 2000 });
    await page.keyboard.press('Enter');
    await input.waitFor({ state: 'hidden', timeout: 2000 });
    await waitForCursor(editor, { line, column }, 2000);
    return true;
  });
}

/** Waits until the status bar, which follows the typing with a delay, shows the cursor at a position. */
export async function waitForCursor(editor: Editor, expected: Position, timeout = patience): Promise<void> {
  const { line, column } = expected;
  await retry(
    `cursor at ${line}:${column} in the status bar`,
    async () => {
      const at = await cursorPosition(editor);
      return at.line === line && at.column === column ? true : undefined;
    },
    timeout,
  );
}

/** Cursor of the active text editor as the status bar shows it now. After a change, use waitForCursor. */
export async function cursorPosition(editor: Editor): Promise<Position> {
  const item = editor.page.locator('[id="status.editor.selection"]');
  const [, line, column] = /Ln (\d+), Col (\d+)/.exec(await item.innerText({ timeout: patience })) ?? [];
  if (line === undefined || column === undefined) throw new Error('The status bar shows no single cursor.');
  return { line: Number(line), column: Number(column) };
}

/** Presses a button in the title of the active editor by its label. */
export async function pressTitleButton(editor: Editor, label: string): Promise<void> {
  const title = editor.page.locator('.editor-group-container.active .editor-actions');
  await title.getByRole('button', { name: label, exact: true }).click({ timeout: patience });
}
