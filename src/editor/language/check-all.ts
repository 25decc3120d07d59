import * as vscode from 'vscode';
import { asNotice } from '../as-text.js';
import type { Desk } from '../desk.js';
import { inTurns } from '../in-turns.js';
import { nameOf, type Key } from '../places.js';
import type { Problems } from '../problems.js';
import type { Shelf } from './shelf.js';

/** Checks every estimate of the workspace, those that are not open too, once and on request. */
export async function checkAll(desk: Desk, shelf: Shelf, problems: Problems): Promise<void> {
  const keys = await shelf.anew();
  const failed: Key[] = [];
  await vscode.window.withProgress({ location: vscode.ProgressLocation.Window, title: 'Checking estimates', cancellable: false }, async (progress) => {
    await inTurns(keys, 1, {
      work: async (key) => {
        if (!(await desk.whole(key))) failed.push(key);
        await desk.looked(key, () => problems.showUnopened(key));
      },
      tell: (done) => progress.report({ message: `${done} of ${keys.length}` }),
      failed: (key) => void failed.push(key),
    });
  });
  if (failed.length > 0) void vscode.window.showWarningMessage(asNotice(`Not checked, since they could not be read: ${failed.map(nameOf).join(', ')}`));
}
