import * as vscode from 'vscode';
import type { FileEdits, TextEdit } from '../../service/index.js';
import type { Positions } from '../positions.js';

export function toWorkspaceEdit(edits: FileEdits, positions: Positions): vscode.WorkspaceEdit {
  const made = new vscode.WorkspaceEdit();
  for (const [uri, list] of edits) made.set(vscode.Uri.parse(uri, true), toTextEdits(uri, list, positions));
  return made;
}

export function toTextEdits(uri: string, edits: readonly TextEdit[], positions: Positions): vscode.TextEdit[] {
  return edits.flatMap(({ range, text }) => {
    const at = positions.range({ uri, range });
    return at === undefined ? [] : [vscode.TextEdit.replace(at, text)];
  });
}
