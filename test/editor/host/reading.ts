// What a user reads off the editor: problems, the explanation under the cursor, messages.
import type { Editor } from './browser.js';
import { focusEditor, runCommand } from './actions.js';
import { patience, retry } from './retry.js';

export interface ShownProblem {
  readonly file: string;
  readonly severity: 'error' | 'warning' | 'info';
  readonly message: string;
  readonly line: number;
  readonly column: number;
  readonly source: string;
  readonly code: string;
}

type RawProblem = Omit<ShownProblem, 'line' | 'column'> & { readonly where: string };

// Runs in the page, and is text because this project's types know no DOM. A file's row precedes those of its problems.
const readRows = `(() => {
  let file = '';
  const out = [];
  const rows = [...document.querySelectorAll('.markers-panel .tree-container .monaco-list-rows > .monaco-list-row')];
  rows.sort((a, b) => Number(a.dataset.index) - Number(b.dataset.index));
  for (const row of rows) {
    const text = (selector) => [...row.querySelectorAll(selector)].map((e) => e.textContent).join('\\n');
    if (row.getAttribute('aria-level') === '1') { file = text('.label-name'); continue; }
    if (row.querySelector('.marker-icon') === null) continue;
    const severity = ['error', 'warning', 'info'].find((s) => row.querySelector('.codicon-' + s) !== null) ?? 'info';
    out.push({ file, severity, message: text('.marker-message'), where: text('.marker-line'), source: text('.marker-source'), code: text('.marker-code') });
  }
  return out;
})()`;

function parse({ where, ...rest }: RawProblem): ShownProblem {
  const [, line, column] = /(\d+)\D+(\d+)/.exec(where) ?? [];
  return { ...rest, line: Number(line), column: Number(column) };
}

/**
 * Problems that the Problems panel shows, once `enough` accepts them; checking takes a moment after each change. The
 * list draws only rows in view: a test with many problems maximizes the panel first.
 */
export async function readProblems(
  editor: Editor,
  enough: (problems: readonly ShownProblem[]) => boolean = (problems) => problems.length > 0,
): Promise<readonly ShownProblem[]> {
  await runCommand(editor, 'Problems: Focus on Problems View');
  await editor.page.locator('.markers-panel').waitFor({ timeout: patience });
  return await retry('the expected problems in the panel', async () => {
    const rows: RawProblem[] = await editor.page.evaluate(readRows);
    const problems = rows.map(parse);
    return enough(problems) ? problems : undefined;
  });
}

/**
 * Text of the hover at the cursor, opened by keyboard, once `enough` accepts it: problems are in it at once, what
 * extensions add comes later.
 */
export async function readHover(
  editor: Editor,
  enough: (text: string) => boolean = (text) => text !== '',
): Promise<string> {
  const { page } = editor;
  // What the workbench says of a tab or button under the mouse is a hover too, but none at the cursor.
  const hover = page.locator('.monaco-hover:not(.hidden):not(.workbench-hover) .monaco-hover-content');
  await focusEditor(editor);
  const text = await retry('the expected hover at the cursor', async () => {
    if ((await hover.count()) === 0) {
      await page.keyboard.press('Control+k');
      await page.keyboard.press('Control+i');
      await hover.first().waitFor({ timeout: 3000 });
    }
    const shown = (await hover.allInnerTexts()).join('\n');
    return enough(shown) ? shown : undefined;
  });
  await page.keyboard.press('Escape');
  return text;
}

/**
 * Messages that wait behind the bell, once `enough` accepts them. An editor under automation never pops them up, so
 * they are read from the list that the bell opens.
 */
export async function readNotifications(
  editor: Editor,
  enough: (messages: readonly string[]) => boolean = (messages) => messages.length > 0,
): Promise<readonly string[]> {
  await runCommand(editor, 'Notifications: Show Notifications');
  const messages = await retry('the expected notifications', async () => {
    const shown = await editor.page.locator('.notifications-center .notification-list-item-message').allInnerTexts();
    return enough(shown) ? shown : undefined;
  });
  await runCommand(editor, 'Notifications: Hide Notifications');
  return messages;
}
