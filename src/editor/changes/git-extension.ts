import * as vscode from 'vscode';

/** What is used of the editor's own git, by its public interface of form 1. */
export interface Repository {
  readonly rootUri: vscode.Uri;
  readonly state: { readonly HEAD?: { readonly commit?: string } };
  /** The text of a file in a commit; an empty one means the index. */
  show(ref: string, path: string): Promise<string>;
  /** Rejects with the code `UnknownPath` where there is no such file. */
  getObjectDetails(ref: string, path: string): Promise<unknown>;
  log(options: { readonly maxEntries: number; readonly path: string }): Promise<readonly Commit[]>;
  diffWith(ref: string): Promise<readonly { readonly uri: vscode.Uri; readonly originalUri: vscode.Uri; readonly renameUri: vscode.Uri | undefined }[]>;
}

export interface Commit {
  readonly hash: string;
  readonly message: string;
  readonly authorDate?: Date;
  readonly authorName?: string;
}

interface Git {
  readonly state: 'uninitialized' | 'initialized';
  readonly onDidChangeState: vscode.Event<unknown>;
  getRepository(uri: vscode.Uri): Repository | null;
  openRepository?(root: vscode.Uri): Promise<Repository | null>;
}

/** Why there is no repository to ask, as a sentence. */
export interface NoRepository {
  readonly why: string;
}

/** git looks for repositories when it starts; it has found those of the workspace long before. */
const PATIENCE = 8_000;

/** The repository that a file is in. */
export async function repositoryOf(uri: vscode.Uri): Promise<Repository | NoRepository> {
  if (uri.scheme === 'untitled') return { why: 'This estimate is not a file yet: save it first.' };
  if (!vscode.workspace.isTrusted) return { why: 'This workspace is in restricted mode, so git is not run in it. Trust it to compare with a commit; another file can be compared as it is.' };
  const extension = vscode.extensions.getExtension<{ readonly enabled: boolean; getAPI(version: 1): Git }>('vscode.git');
  if (extension === undefined) return { why: 'This editor has no git at work; another file or the saved text can be compared.' };
  const exports = await Promise.resolve(extension.activate()).catch(() => undefined);
  if (exports?.enabled !== true) return { why: 'git is not installed on this machine, or is switched off in the settings (git.enabled).' };
  const git = exports.getAPI(1);
  await started(git);
  const repository = git.getRepository(uri) ?? (await Promise.resolve(git.openRepository?.(vscode.Uri.joinPath(uri, '..'))).catch(() => null)) ?? git.getRepository(uri);
  return repository ?? { why: 'This file is in no git repository.' };
}

async function started(git: Git): Promise<void> {
  if (git.state === 'initialized') return;
  const waiting: vscode.Disposable[] = [];
  await new Promise<void>((resolve) => {
    waiting.push(git.onDidChangeState(() => {
      if (git.state === 'initialized') resolve();
    }));
    setTimeout(resolve, PATIENCE);
  });
  waiting.forEach((one) => void one.dispose());
}

/** The file in a commit, under the name that it had there. */
export async function nameThen(repository: Repository, ref: string, uri: vscode.Uri): Promise<vscode.Uri | undefined> {
  const moved = (await repository.diffWith(ref).catch(() => [])).find((one) => one.uri.toString() === uri.toString() || one.renameUri?.toString() === uri.toString());
  return moved === undefined || moved.originalUri.toString() === uri.toString() ? undefined : moved.originalUri;
}
