import * as vscode from 'vscode';

/** Whether a file that lies below a folder really is elsewhere, by way of a symbolic link. */
export type LeadsOut = (root: vscode.Uri, file: vscode.Uri) => Promise<boolean>;

/**
 * Where nobody can say where a link leads, none is followed: each step from the folder down to the file must be a
 * folder or file of its own.
 */
export const linksLeadOut: LeadsOut = async (root, file) => {
  const steps = file.path.slice(root.path.replace(/(?<!\/)\/+$/, '').length + 1).split('/');
  for (let i = 1; i <= steps.length; i++) {
    const step = vscode.Uri.joinPath(root, ...steps.slice(0, i));
    const { type } = await vscode.workspace.fs.stat(step);
    if ((type & vscode.FileType.SymbolicLink) !== 0) return true;
  }
  return false;
};
