import * as vscode from 'vscode';
import { asItems } from '../as-text.js';
import type { Desk } from '../desk.js';
import { isEstimate } from '../places.js';

/** Shows which totals the line under the cursor comes into; choosing one opens the comparison. */
export async function showTotalsUsing(desk: Desk): Promise<void> {
  const editor = vscode.window.activeTextEditor;
  if (editor === undefined || !isEstimate(editor.document)) return;
  const key = editor.document.uri.toString();
  await desk.whole(key);
  const totals = desk.service.totalsUsing(key, editor.document.offsetAt(editor.selection.active));
  const picked = await vscode.window.showQuickPick(
    asItems(totals.map(({ title, amount, option, figure }) => ({ label: `${title}: ${amount}`, description: option, detail: figure, figure }))),
    { placeHolder: totals.length === 0 ? 'This line comes into no total' : 'Totals that this line comes into' },
  );
  if (picked !== undefined) await vscode.commands.executeCommand('steelyard.showComparison', editor.document.uri, picked.figure);
}
