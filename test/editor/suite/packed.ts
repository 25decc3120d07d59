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
import { acceptSuggestion, colourOf, goTo, renameAtCursor, waitForShown } from './language-keys.js';
import { pageFrame, pressTitle } from './panel.js';
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
        await goTo(editor, heron, '|option in-car');
        const colours = await retry('three colours in a line', async () => {
          const found = await Promise.all(['option', 'in-car', '"Pump,'].map((word) => colourOf(editor, /^option.in-car/, word)));
          return new Set(found).size === found.length ? found : undefined;
        });
        assert.equal(colours.length, 3);
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
    { name: 'nothing failed', run: () => Promise.resolve(assert.deepEqual(problemsOf(editor), [])) },
  ];
}
