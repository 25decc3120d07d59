import * as vscode from 'vscode';
import type { Desk } from '../desk.js';
import type { Key } from '../places.js';

const MOST_FILES = 5_000;
const HIDDEN = '**/{node_modules,.git}/**';

/** Every estimate file of the workspace, those that are not open too. Looked for when first asked, then kept up. */
export class Shelf implements vscode.Disposable {
  private found: Promise<readonly Key[]> | undefined;
  private known: readonly Key[] = [];
  private readonly watcher = vscode.workspace.createFileSystemWatcher('**/*.yard');

  constructor() {
    const again = () => {
      this.found = undefined;
    };
    this.watcher.onDidCreate(again);
    this.watcher.onDidDelete(again);
  }

  /** What has been found so far, without waiting. */
  get keys(): readonly Key[] {
    return this.known;
  }

  async all(): Promise<readonly Key[]> {
    this.found ??= Promise.resolve(vscode.workspace.findFiles('**/*.yard', HIDDEN, MOST_FILES)).then((uris) => uris.map((uri) => uri.toString()).sort());
    this.known = await this.found;
    return this.known;
  }

  /** The estimates that a change in this one may concern, read with all they use. */
  async others(key: Key, desk: Desk): Promise<readonly Key[]> {
    const others = (await this.all()).filter((one) => one !== key);
    for (const one of others) await desk.whole(one);
    return others;
  }

  dispose(): void {
    this.watcher.dispose();
  }
}
