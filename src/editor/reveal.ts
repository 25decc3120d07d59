import * as vscode from 'vscode';
import type { Key } from './places.js';

/** Shows a file, with the cursor at a place, where it is open already, and else never on top of the panel. */
export async function reveal(key: Key, at: vscode.Range | undefined, panelColumn: vscode.ViewColumn | undefined): Promise<void> {
  const editor = await vscode.window.showTextDocument(vscode.Uri.parse(key, true), { viewColumn: columnOf(key) ?? freeColumn(panelColumn), preview: false });
  if (at === undefined) return;
  editor.selection = new vscode.Selection(at.start, at.start);
  editor.revealRange(at, vscode.TextEditorRevealType.InCenterIfOutsideViewport);
}

function columnOf(key: Key): vscode.ViewColumn | undefined {
  const visible = vscode.window.visibleTextEditors.find(({ document }) => document.uri.toString() === key);
  const holds = (tab: vscode.Tab) => tab.input instanceof vscode.TabInputText && tab.input.uri.toString() === key;
  return visible?.viewColumn ?? vscode.window.tabGroups.all.find(({ tabs }) => tabs.some(holds))?.viewColumn;
}

function freeColumn(panelColumn: vscode.ViewColumn | undefined): vscode.ViewColumn {
  const beside = vscode.window.visibleTextEditors.find(({ viewColumn }) => viewColumn !== undefined && viewColumn !== panelColumn)?.viewColumn;
  return beside ?? (panelColumn === vscode.ViewColumn.One ? vscode.ViewColumn.Beside : vscode.ViewColumn.One);
}
