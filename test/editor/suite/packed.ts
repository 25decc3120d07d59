// What a user really gets: the packed extension, installed into a clean editor without anything of the tests in it.
import assert from 'node:assert/strict';
import { existsSync } from 'node:fs';
import path from 'node:path';
import { goToLine, openFile, typeText } from '../host/actions.js';
import type { Editor } from '../host/browser.js';
import { repository } from '../host/paths.js';
import { readProblems } from '../host/reading.js';
import { retry } from '../host/retry.js';
import type { Case } from './cases.js';
import { problemsOf } from './driven.js';
import { acceptSuggestion, colourOf, lineText, renameAtCursor } from './language-keys.js';
import { pageFrame, pressTitle } from './panel.js';
import { whereIs } from './expected.js';
import type { Workspace } from './workspace.js';

export const packed = path.join(repository, 'dist', 'steelyard.vsix');

export function requirePacked(): string {
  if (!existsSync(packed)) throw new Error(`${path.relative(repository, packed)} is missing: run "npm run package" first.`);
  return packed;
}

export async function packedCases(editor: Editor, workspace: Workspace): Promise<readonly Case[]> {
  const heron = await workspace.read('heron-pump.yard');
  return [
    {
      name: 'colours the text',
      async run() {
        await openFile(editor, 'heron-pump.yard');
        await retry('two colours', async () => ((await colourOf(editor, 'option')) !== (await colourOf(editor, '"Pump,')) ? true : undefined)).catch(async () => {
          await goToLine(editor, whereIs(heron, 'option in-car').line);
          assert.notEqual(await colourOf(editor, 'option'), await colourOf(editor, 'in-car'));
        });
      },
    },
    {
      name: 'completes a line by keyboard',
      async run() {
        await goToLine(editor, whereIs(heron, 'caution  coolant').line);
        await editor.page.keyboard.press('End');
        await typeText(editor, ', ele');
        await acceptSuggestion(editor, 'electric');
        await retry('the line', async () => (/caution\s+coolant, electric/.test(await lineText(editor)) ? true : undefined));
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
        const { line, column } = whereIs(heron, 'part belt');
        await goToLine(editor, line, column + 6);
        await renameAtCursor(editor, 'drive-belt');
        await retry('the new name', async () => ((await lineText(editor)).includes('part drive-belt') ? true : undefined));
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
    { name: 'nothing failed', run: () => Promise.resolve(assert.deepEqual(problemsOf(editor), [])) },
  ];
}
