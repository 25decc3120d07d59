import * as vscode from 'vscode';
import type { Desk } from './desk.js';
import type { Problems } from './problems.js';

/** Offers the one-step edit of a problem, found by its code and place and never by its words. */
export class QuickFixes implements vscode.CodeActionProvider {
  static readonly kinds: vscode.CodeActionProviderMetadata = { providedCodeActionKinds: [vscode.CodeActionKind.QuickFix] };

  constructor(private readonly desk: Desk, private readonly problems: Problems) {}

  provideCodeActions({ uri }: vscode.TextDocument, _range: vscode.Range, { diagnostics }: vscode.CodeActionContext): vscode.CodeAction[] {
    const key = uri.toString();
    return this.problems.in(key).flatMap(({ code, range, fix }) => {
      const at = this.desk.positions.range({ uri: key, range });
      const target = fix === undefined ? undefined : this.desk.positions.location(fix.place);
      const diagnostic = diagnostics.find((one) => one.code === code && at !== undefined && one.range.isEqual(at));
      if (fix === undefined || target === undefined || diagnostic === undefined) return [];
      const action = new vscode.CodeAction(fix.title, vscode.CodeActionKind.QuickFix);
      action.diagnostics = [diagnostic];
      action.isPreferred = true;
      action.edit = new vscode.WorkspaceEdit();
      action.edit.replace(target.uri, target.range, fix.text);
      return [action];
    });
  }
}
