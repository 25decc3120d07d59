import * as vscode from 'vscode';
import type { Key } from './places.js';

/** Watches the folders of the files in use, and tells of those that change. */
export class Watch implements vscode.Disposable {
  private readonly watchers = new Map<string, vscode.Disposable>();

  constructor(private readonly changed: (key: Key) => void) {}

  /** From now on the folders of these files are watched, and no others. */
  files(keys: readonly Key[]): void {
    const folders = new Map(keys.map((key) => vscode.Uri.parse(key, true)).filter(({ scheme }) => scheme !== 'untitled').map((uri) => {
      const folder = vscode.Uri.joinPath(uri, '..');
      return [folder.toString(), folder] as const;
    }));
    for (const [key, watcher] of this.watchers) {
      if (folders.has(key)) continue;
      watcher.dispose();
      this.watchers.delete(key);
    }
    for (const [key, folder] of folders) if (!this.watchers.has(key)) this.watchers.set(key, this.watch(folder));
  }

  dispose(): void {
    for (const watcher of this.watchers.values()) watcher.dispose();
  }

  private watch(folder: vscode.Uri): vscode.Disposable {
    const watcher = vscode.workspace.createFileSystemWatcher(new vscode.RelativePattern(folder, '*'));
    const tell = (uri: vscode.Uri) => this.changed(uri.toString());
    watcher.onDidChange(tell);
    watcher.onDidCreate(tell);
    watcher.onDidDelete(tell);
    return watcher;
  }
}
