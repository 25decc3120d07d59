import * as vscode from 'vscode';
import { nameOf, type Key } from '../places.js';
import type { Repository } from './git-extension.js';

/** git failed at something else than that a file isn't there; the message is for people. */
export class GitTrouble extends Error {}

/** The text of a file in a commit, or in the index where `ref` is empty; undefined where it has none there. Throws GitTrouble where git failed. */
export async function textIn(repository: Repository, ref: string, key: Key): Promise<string | undefined> {
  const { fsPath } = vscode.Uri.parse(key, true);
  try {
    return await repository.show(ref, fsPath);
  } catch (error) {
    if (await isAbsent(repository, ref, fsPath)) return undefined;
    throw new GitTrouble(`git could not read ${nameOf(key)}: ${wordsOf(error)}`);
  }
}

/** The commit that a name stands for now; undefined for the index, and where nobody says. */
export function commitOf(repository: Repository, ref: string): string | undefined {
  return ref === 'HEAD' ? repository.state.HEAD?.commit : /^[0-9a-f]{40,64}$/.test(ref) ? ref : undefined;
}

/** Asking for a text fails in the same words where there is none and where git stumbles; asking for the file itself doesn't. */
async function isAbsent(repository: Repository, ref: string, path: string): Promise<boolean> {
  try {
    await repository.getObjectDetails(ref, path);
    return false;
  } catch (error) {
    return typeof error === 'object' && error !== null && 'gitErrorCode' in error && error.gitErrorCode === 'UnknownPath';
  }
}

/** The first line of what git itself said, or of what the editor says of it. */
function wordsOf(error: unknown): string {
  const stderr = typeof error === 'object' && error !== null && 'stderr' in error && typeof error.stderr === 'string' ? error.stderr : '';
  const said = stderr.trim() === '' && error instanceof Error ? error.message : stderr;
  return said.trim().split('\n')[0] || 'it says no more.';
}
