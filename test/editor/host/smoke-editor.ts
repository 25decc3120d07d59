// The part of the self-test that uses an editor as a person does.
import assert from 'node:assert/strict';
import type { Browser } from 'playwright-core';
import {
  cursorPosition,
  goToLine,
  insertText,
  openFile,
  pressTitleButton,
  runCommand,
  typeText,
  waitForCursor,
} from './actions.js';
import { openEditor, type Editor } from './browser.js';
import { startHost } from './host.js';
import { readHover, readNotifications, readProblems } from './reading.js';
import { step } from './smoke-step.js';
import type { Throwaway } from './throwaway.js';
import { webviewFrame } from './webview.js';

async function useEditor(editor: Editor): Promise<void> {
  await step('read problems', async () => {
    const [problem, ...others] = await readProblems(editor);
    assert.deepEqual(problem, {
      file: 'a.yard',
      severity: 'error',
      message: 'first line\nsecond line',
      line: 2,
      column: 5,
      source: 'smoke',
      code: 'S1',
    });
    assert.equal(others.length, 0);
  });
  await step('go to a line and type', async () => {
    await goToLine(editor, 3, 6);
    await typeText(editor, ' typed');
    await insertText(editor, ' WRONG');
    await waitForCursor(editor, { line: 3, column: 18 });
    assert.deepEqual(await cursorPosition(editor), { line: 3, column: 18 });
    const problems = await readProblems(editor, (found) => found.length === 2);
    assert.deepEqual(
      problems.map(({ line, column }) => [line, column]),
      [
        [2, 5],
        [3, 13],
      ],
    );
  });
  await step('hover', () => readHover(editor, (text) => text.includes('hover of the self-test')));
  await step('webview through the title button', async () => {
    await pressTitleButton(editor, 'Smoke: Open Panel');
    const frame = await webviewFrame(
      editor,
      async (candidate) => (await candidate.locator('h1').innerText({ timeout: 500 })) === 'scripted 42',
    );
    await frame.locator('button').click();
    await readNotifications(editor, (texts) => texts.some((text) => text.includes('sent from the page')));
  });
  await step('open another file, run a command by name', async () => {
    await openFile(editor, 'b.yard');
    await runCommand(editor, 'Smoke: Open Panel');
  });
}

export async function checkEditor(browser: Browser, { extensionDir, workspace }: Throwaway): Promise<void> {
  const host = await step('start the host', () => startHost({ workspace, extensionDir }));
  try {
    const editor = await step('open the editor', () =>
      openEditor(browser, host, { openFile: 'a.yard', theme: 'Default Light Modern' }),
    );
    try {
      await useEditor(editor);
    } finally {
      console.log(await editor.screenshot('smoke'));
    }
    assert.deepEqual(editor.console.problems(), []);
    await editor.close();

    const dark = await step('open it again in high contrast', () =>
      openEditor(browser, host, { openFile: 'b.yard', theme: 'Default High Contrast' }),
    );
    console.log(await dark.screenshot('smoke-high-contrast'));
    assert.equal(await dark.page.locator('.tab').count(), 1, 'the first session left an editor open');
    await dark.close();
  } finally {
    await step('stop the host', () => host.stop());
  }
}
