import * as vscode from 'vscode';
import { resolveWithin } from '../service/index.js';

/** A file as the language service knows it: its address as text. */
export type Key = string;

/** Where a path written in a file leads; undefined where that is outside of what the file may read. */
export function pathFrom(fromKey: Key, written: string): Key | undefined {
  const from = vscode.Uri.parse(fromKey, true);
  const { root, file } = rootOf(from);
  const path = resolveWithin(root.path, file, written);
  return path === undefined ? undefined : root.with({ path }).toString();
}

/**
 * The folder that a file may read from: its workspace folder, or without one only its own. A text that has no place
 * yet is taken to lie at the top of the workspace.
 */
export function rootOf(uri: vscode.Uri): { readonly root: vscode.Uri; readonly file: string } {
  const folder = vscode.workspace.getWorkspaceFolder(uri) ?? (uri.scheme === 'untitled' ? vscode.workspace.workspaceFolders?.[0] : undefined);
  if (uri.scheme === 'untitled' && folder !== undefined) return { root: folder.uri, file: `${folder.uri.path.replace(/(?<!\/)\/+$/, '')}/untitled` };
  return { root: folder?.uri ?? vscode.Uri.joinPath(uri, '..'), file: uri.path };
}

/**
 * Whether a document is an estimate to work on. Old versions shown beside a new one, and other views that only look
 * like files, are not: problems of a past text help nobody.
 */
export function isEstimate({ languageId, uri }: vscode.TextDocument): boolean {
  if (languageId !== 'steelyard') return false;
  return uri.scheme === 'file' || uri.scheme === 'untitled' || (vscode.workspace.workspaceFolders ?? []).some((folder) => folder.uri.scheme === uri.scheme);
}

/** The name of a file for people. */
export function nameOf(key: Key): string {
  const { path } = vscode.Uri.parse(key, true);
  return path.slice(path.lastIndexOf('/') + 1);
}
