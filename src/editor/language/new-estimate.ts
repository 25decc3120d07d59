import * as vscode from 'vscode';
import type { Desk } from '../desk.js';
import { rootOf, type Key } from '../places.js';
import { today } from '../today.js';
import type { Shelf } from './shelf.js';

const MOST_READ = 100;

/** Begins a new estimate in an unsaved file, from a starter whose gaps are stepped through with Tab. */
export async function newEstimate(desk: Desk, shelf: Shelf): Promise<void> {
  // The starter uses a shop's file where there is one, and must not take names that it has.
  await Promise.all((await shelf.all().catch(() => [])).slice(0, MOST_READ).map((key) => desk.whole(key)));
  const document = await vscode.workspace.openTextDocument({ language: 'steelyard', content: '' });
  const editor = await vscode.window.showTextDocument(document);
  await editor.insertSnippet(new vscode.SnippetString(desk.service.starter(placeOf(document.uri), today())), new vscode.Position(0, 0));
}

/** Where the file would lie: paths to other files are written from there. */
function placeOf(uri: vscode.Uri): Key {
  const { root, file } = rootOf(uri);
  return root.with({ path: file }).toString();
}
