// A workspace that its user does not trust: estimates are read and weighed, and nothing of the workspace is run.
import assert from 'node:assert/strict';
import { chmod } from 'node:fs/promises';
import { existsSync } from 'node:fs';
import path from 'node:path';
import { focusEditor, openFile, runCommand } from '../host/actions.js';
import type { Editor } from '../host/browser.js';
import { readProblems } from '../host/reading.js';
import { run } from '../host/process.js';
import { retry } from '../host/retry.js';
import type { Case } from './cases.js';
import { waitForNotice } from './notices.js';
import { nothingFailed, pilgrimIn } from './pilgrim.js';
import type { Workspace } from './workspace.js';

export async function untrustedCases(editor: Editor, workspace: Workspace): Promise<readonly Case[]> {
  const { estimate, isWeighed } = await pilgrimIn(editor, workspace);
  // Whatever has git look at the repository, or runs a hook of it, leaves a mark.
  const mark = path.join(workspace.dir, 'ran');
  await workspace.write('trap.sh', `#!/bin/sh\ntouch '${mark}'\n`);
  await chmod(path.join(workspace.dir, 'trap.sh'), 0o755);
  await run('git', ['config', 'core.fsmonitor', path.join(workspace.dir, 'trap.sh')], { cwd: workspace.dir });

  return [
    {
      name: 'it is in restricted mode, and estimates are checked and weighed',
      async run() {
        await editor.page.locator('.statusbar-item', { hasText: 'Restricted Mode' }).waitFor();
        await focusEditor(editor);
        await readProblems(editor, (found) => found.some(({ code }) => code === 'compression-uneven'));
        await isWeighed();
      },
    },
    {
      name: 'what needs git says why it is not run, and what can be compared without it',
      async run() {
        await focusEditor(editor);
        await runCommand(editor, 'Steelyard: What changed since the last commit');
        await waitForNotice(editor, 'This workspace is in restricted mode, so git is not run in it. Trust it to compare with a commit; another file can be compared as it is.');
      },
    },
    {
      name: 'whatever else is asked for, nothing of the workspace was run',
      async run() {
        await openFile(editor, estimate);
        for (const command of ['Steelyard: Check all estimates of the workspace', 'Steelyard: Show the book of times']) await runCommand(editor, command);
        // The book opens when it has been read, which may be right then: the file is asked for again.
        await retry('the estimate in front', async () => {
          await openFile(editor, estimate);
          return true;
        }, 60_000);
        assert.equal(existsSync(mark), false);
        // The trap is live.
        await run('git', ['status'], { cwd: workspace.dir });
        assert.equal(existsSync(mark), true);
      },
    },
    nothingFailed(editor),
  ];
}
