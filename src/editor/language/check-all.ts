import * as vscode from 'vscode';
import type { Desk } from '../desk.js';
import type { Problems } from '../problems.js';
import type { Shelf } from './shelf.js';

/** Checks every estimate of the workspace, those that are not open too, once and on request. */
export async function checkAll(desk: Desk, shelf: Shelf, problems: Problems): Promise<void> {
  const keys = await shelf.all();
  await vscode.window.withProgress({ location: vscode.ProgressLocation.Window, title: 'Checking estimates', cancellable: false }, async (progress) => {
    for (const [i, key] of keys.entries()) {
      await desk.whole(key);
      problems.showUnopened(key);
      progress.report({ message: `${i + 1} of ${keys.length}` });
    }
  });
}
