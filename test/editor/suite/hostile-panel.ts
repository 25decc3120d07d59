// Texts that want to be more than text, in every title, note and path, in the panel of the real editor.
import assert from 'node:assert/strict';
import { writeFile } from 'node:fs/promises';
import path from 'node:path';
import type { Frame } from 'playwright-core';
import { plain } from '../../../src/report/index.js';
import { estimateWith, fileNameOf, HOSTILE, PICTURE } from '../../support/hostile.js';
import { dangersIn, skeletonOf } from '../../support/skeleton.js';
import { openFile } from '../host/actions.js';
import type { Editor } from '../host/browser.js';
import type { Case } from './cases.js';
import { problemsOf } from './driven.js';
import { pageTitled, openPanel } from './panel.js';
import { cutOff } from './snapshots.js';
import type { Workspace } from './workspace.js';

const harmless = (place: number): string => `place ${place} of many`;
/** A name of a file may hold nearly anything too. */
const nameOf = (turn: number): string => (turn === 0 ? 'turn.yard' : `<img src=x onerror=alert(${turn})> {{${turn}}} &lt;.yard`);

export function hostileCases(editor: Editor, workspace: Workspace): readonly Case[] {
  const { page } = editor;
  const places = [...estimateWith(harmless).matchAll(/place \d+ of many/g)].length;
  const turns = Array.from({ length: Math.ceil(HOSTILE.length / places) }, (_, i) => i * places);
  const textIn = (turn: number) => (place: number): string => HOSTILE[(place + turn) % HOSTILE.length] as string;
  const wrong: string[] = [];
  const shape: string[] = [];
  const shown: number[] = [];
  return [
    {
      name: 'a harmless estimate gives the shape to compare with',
      async run() {
        page.on('dialog', (dialog) => {
          wrong.push(`dialog: ${dialog.message()}`);
          void dialog.dismiss();
        });
        page.on('request', (request) => {
          if (/example\.invalid|\/x(\.png)?$/.test(request.url())) wrong.push(`asked for ${request.url()}`);
        });
        const frame = await shownIn(editor, workspace, 'harmless.yard', estimateWith(harmless), harmless);
        shape.push(...(await frame.evaluate<string[]>(skeletonOf('document.body'))));
        const text = await frame.evaluate<string>('document.body.textContent');
        shown.push(...Array.from({ length: places }, (_, place) => place).filter((place) => text.includes(harmless(place))));
        assert.ok(shape.length > 500 && shown.length > 12, `${shape.length} elements, texts of ${shown.length} places`);
      },
    },
    ...turns.map((turn): Case => ({
      name: `texts ${turn + 1} to ${Math.min(HOSTILE.length, turn + places)} stay text in the panel of ${nameOf(turn)}`,
      async run() {
        const frame = await shownIn(editor, workspace, nameOf(turn), estimateWith(textIn(turn)), textIn(turn));
        assert.deepEqual(await frame.evaluate<string[]>(skeletonOf('document.body')), shape);
        assert.deepEqual(await frame.evaluate<string[]>(dangersIn(`document.getElementById('page')`)), []);
        const text = spaced(await frame.evaluate<string>('document.body.textContent'));
        for (const place of shown) {
          const said = place === PICTURE ? fileNameOf(textIn(turn)(place)) : textIn(turn)(place);
          assert.ok(text.includes(spaced(onDisk(said))), `place ${place}: ${said}`);
        }
        await editor.screenshot(`hostile-${turn}`);
        assert.deepEqual(await frame.evaluate<string[]>(cutOff), []);
      },
    })),
    {
      name: 'nothing asked, nothing was loaded, nothing was refused by the page’s policy',
      run: () => Promise.resolve(assert.deepEqual([...wrong, ...problemsOf(editor)], [])),
    },
  ];
}

async function shownIn(editor: Editor, workspace: Workspace, name: string, estimate: string, textAt: (place: number) => string): Promise<Frame> {
  await writeFile(path.join(workspace.dir, name), estimate);
  await editor.page.keyboard.press('Control+1');
  await openFile(editor, name);
  if (!editor.page.frames().some((frame) => frame.url().includes('/webview/browser/pre/'))) await openPanel(editor);
  return await pageTitled(editor, onDisk(textAt(TITLE)));
}

/** The place of the estimate’s own title. */
const TITLE = 6;

/** As it is shown: what a file in UTF-8 can hold of it, with what can't be seen spelled out. */
function onDisk(text: string): string {
  return plain(new TextDecoder().decode(new TextEncoder().encode(text)));
}

function spaced(text: string): string {
  return text.replace(/\s+/g, ' ').trim();
}
