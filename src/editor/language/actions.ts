import * as vscode from 'vscode';
import type { Desk } from '../desk.js';
import { isEstimate } from '../places.js';
import { toWorkspaceEdit } from './edits.js';

/** Offers the edits that mend a problem or carry a line further; they key on codes and places, never on words. */
export class Actions implements vscode.CodeActionProvider {
  static readonly metadata: vscode.CodeActionProviderMetadata = { providedCodeActionKinds: [vscode.CodeActionKind.QuickFix, vscode.CodeActionKind.Refactor] };

  constructor(private readonly desk: Desk) {}

  async provideCodeActions(document: vscode.TextDocument, range: vscode.Range, { diagnostics }: vscode.CodeActionContext): Promise<vscode.CodeAction[]> {
    if (!isEstimate(document)) return [];
    const key = document.uri.toString();
    await this.desk.whole(key);
    // A correction that the problem itself names is the one to take without choosing.
    const sure = new Set(this.desk.service.diagnostics(key).flatMap(({ code, fix }) => (fix === undefined ? [] : [`${code} ${fix.title}`])));
    return this.desk.service.actions(key, { start: document.offsetAt(range.start), end: document.offsetAt(range.end) }).map((one) => {
      const action = new vscode.CodeAction(one.title, one.kind === 'fix' ? vscode.CodeActionKind.QuickFix : vscode.CodeActionKind.Refactor);
      action.isPreferred = sure.has(`${one.code} ${one.title}`);
      action.diagnostics = diagnostics.filter(({ code }) => (typeof code === 'object' ? code.value : code) === one.code);
      action.edit = toWorkspaceEdit(one.edits, this.desk.positions);
      if (one.creates !== undefined) {
        const uri = vscode.Uri.parse(one.creates.uri, true);
        action.edit.createFile(uri, { ignoreIfExists: true, contents: new TextEncoder().encode(one.creates.text) });
      }
      return action;
    });
  }
}
