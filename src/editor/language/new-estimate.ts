import * as vscode from 'vscode';
import type { Desk } from '../desk.js';
import type { Shelf } from './shelf.js';

/** Begins a new estimate in an unsaved file, from a starter whose gaps are stepped through with Tab. */
export async function newEstimate(desk: Desk, shelf: Shelf): Promise<void> {
  await shelf.all();
  const document = await vscode.workspace.openTextDocument({ language: 'steelyard', content: '' });
  const editor = await vscode.window.showTextDocument(document);
  await editor.insertSnippet(new vscode.SnippetString(desk.service.starter(document.uri.toString())), new vscode.Position(0, 0));
}
