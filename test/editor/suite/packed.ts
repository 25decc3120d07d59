// What a user really gets: the packed extension, installed into a clean editor without anything of the tests in it.
import assert from 'node:assert/strict';
import path from 'node:path';
import type { Frame } from 'playwright-core';
import { goToLine, openFile, runCommand, typeText } from '../host/actions.js';
import type { Editor } from '../host/browser.js';
import { repository } from '../host/paths.js';
import { run } from '../host/process.js';
import { readProblems } from '../host/reading.js';
import { retry } from '../host/retry.js';
import type { Case } from './cases.js';
import { problemsOf } from './driven.js';
import { acceptSuggestion, coloursOf, goTo, renameAtCursor, waitForShown } from './language-keys.js';
import { pageFrame, pressTitle } from './panel.js';
import type { Workspace } from './workspace.js';

/** Packs as `npm run package` does, so that no older package is tested. */
export async function makePackage(): Promise<string> {
  const out = path.join(repository, 'dist', 'editor-test');
  await run('node', ['src/tools/run.mjs', 'src/tools/package/main.ts', '--out', out], { cwd: repository });
  return path.join(out, 'steelyard.vsix');
}

export async function packedCases(editor: Editor, workspace: Workspace): Promise<readonly Case[]> {
  const heron = await workspace.read('heron-pump.yard');
  /** What the editor's own script says of work that was cut off while its window was loaded anew. */
  const cutOff = new Set<string>();
  return [
    {
      name: 'colours the text',
      async run() {
        await openFile(editor, 'heron-pump.yard');
        await goTo(editor, heron, '|option in-car');
        const pieces = ['option', 'in-car', '"Pump,'];
        await retry('three colours in a line', async () => (new Set(await coloursOf(editor, pieces)).size === pieces.length ? true : undefined));
      },
    },
    {
      name: 'completes a line by keyboard',
      async run() {
        await goTo(editor, heron, 'uses pump, belt, coolant|');
        await typeText(editor, ', oil');
        await acceptSuggestion(editor, 'oil-filter');
        await waitForShown(editor, /uses +pump, belt, coolant, oil-filter/);
      },
    },
    {
      name: 'shows a problem',
      async run() {
        await goToLine(editor, 3);
        await typeText(editor, 'note 11h');
        const problems = await readProblems(editor, (found) => found.some(({ severity }) => severity === 'error'));
        assert.equal(problems.find(({ severity }) => severity === 'error')?.line, 3);
        await goToLine(editor, 3);
        await editor.page.keyboard.press('Shift+End');
        await editor.page.keyboard.press('Delete');
      },
    },
    {
      name: 'renames a name',
      async run() {
        await goTo(editor, heron, 'part |belt');
        await renameAtCursor(editor, 'drive-belt');
        await waitForShown(editor, /^part drive-belt/);
        await waitForShown(editor, /uses +pump, drive-belt, coolant/);
      },
    },
    {
      name: 'opens the comparison',
      async run() {
        await pressTitle(editor, 'Show comparison');
        const frame = await pageFrame(editor);
        assert.match(await frame.locator('#page').innerText(), /Pump, engine raised off one mount/);
        await editor.screenshot('packed');
      },
    },
    {
      name: 'what is tried and unfolded is there again after the window was loaded anew',
      async run() {
        const { page } = editor;
        const pump = '[data-try][data-today="88.00"]';
        const parts = '[data-unfold=".row.parts"]';
        const total = async (frame: Frame): Promise<string> => await frame.locator('[data-figure$=".total"]').first().innerText();
        const before = await pageFrame(editor);
        const written = await total(before);
        await before.locator(parts).click();
        await before.locator('tr.how summary', { hasText: 'Coolant pump' }).first().click();
        await before.locator('tr.how summary', { hasText: 'Price from cost' }).first().click();
        const field = before.locator(pump).first();
        await field.fill('120.00');
        const tried = await retry('another total', async () => ((await total(before)) === written ? undefined : await total(before)));
        await runCommand(editor, 'File: Save');
        await page.waitForTimeout(500); // the page keeps its state once per frame, and the editor writes it soon after
        const said = editor.console.all().length;
        await runCommand(editor, 'Developer: Reload Window');
        const after = await retry('the page', async () => {
          const frame = await pageFrame(editor).catch(() => undefined);
          return frame === undefined || frame === before ? undefined : frame;
        }, 60_000);
        for (const { text } of editor.console.all().slice(said)) if (/ERR .*workbench\.js/s.test(text) && !/steelyard|policy/i.test(text)) cutOff.add(text);
        await retry('the total with what is tried', async () => ((await total(after)) === tried ? true : undefined));
        assert.equal(await after.locator(parts).getAttribute('aria-expanded'), 'true');
        assert.equal(await after.locator(pump).first().inputValue(), '120.00');
        await editor.screenshot('packed-again');
        await after.locator('[data-act="back"]').click();
        await retry('the total of the file', async () => ((await total(after)) === written ? true : undefined));
      },
    },
    { name: 'nothing failed', run: () => Promise.resolve(assert.deepEqual(problemsOf(editor).filter((one) => !cutOff.has(one)), [])) },
  ];
}
