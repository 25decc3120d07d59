import * as vscode from 'vscode';

const COMMAND = 'steelyard.explainProblem';

/** What the code of a problem leads to: its section of the manual. */
export function explaining(code: string): vscode.Uri {
  return vscode.Uri.parse(`command:${COMMAND}?${encodeURIComponent(JSON.stringify([code]))}`);
}

/** Opens the manual that comes with the extension at the section of a problem. */
export function registerManual(extension: vscode.Uri): vscode.Disposable {
  return vscode.commands.registerCommand(COMMAND, async (code: unknown) => {
    const manual = vscode.Uri.joinPath(extension, 'schemas', 'manual.md');
    const section = typeof code === 'string' && /^[a-z]+(-[a-z]+)*$/.test(code) ? manual.with({ fragment: code }) : manual;
    await vscode.commands.executeCommand('markdown.showPreviewToSide', section);
  });
}
