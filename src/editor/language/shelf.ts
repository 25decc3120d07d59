import * as vscode from 'vscode';
import type { Desk } from '../desk.js';
import type { Key } from '../places.js';

const MOST_FILES = 5_000;
/** Milliseconds that a list of suggestions may wait for the names of files. */
const SOON = 80;
const HIDDEN = '**/{node_modules,.git}/**';

/** Every estimate file of the workspace, those that are not open too. Looked for when first asked, then kept up. */
export class Shelf implements vscode.Disposable {
  private found: Promise<readonly Key[]> | undefined;
  private known: readonly Key[] = [];
  private readonly watcher = vscode.workspace.createFileSystemWatcher('**/*.yard');
  private readonly changes = new vscode.EventEmitter<Key>();

  /** A file came, went, or changed on disk: one that was read once may not be used as it was then. */
  readonly onChanged = this.changes.event;

  constructor() {
    const again = (uri: vscode.Uri) => {
      this.found = undefined;
      this.changes.fire(uri.toString());
    };
    this.watcher.onDidCreate(again);
    this.watcher.onDidDelete(again);
    this.watcher.onDidChange((uri) => this.changes.fire(uri.toString()));
  }

  /** What has been found so far, without waiting. */
  get keys(): readonly Key[] {
    return this.known;
  }

  async all(): Promise<readonly Key[]> {
    const found = this.found ??= Promise.resolve(vscode.workspace.findFiles('**/*.yard', HIDDEN, MOST_FILES)).then((uris) => uris.map((uri) => uri.toString()).sort());
    try {
      this.known = await found;
    } catch (error) {
      // Whoever asks next has it looked for again.
      if (this.found === found) this.found = undefined;
      throw error;
    }
    return this.known;
  }

  /** Looks for the files once more: who asks for all in so many words means those that came a moment ago as well. */
  anew(): Promise<readonly Key[]> {
    this.found = undefined;
    return this.all();
  }

  /** Looks for the files, but lets nobody wait who types: in a large workspace what is not found yet is not offered. False where it may not be all. */
  async soon(): Promise<boolean> {
    const found = this.all().then(() => true, () => false);
    return await Promise.race([found, new Promise<false>((resolve) => setTimeout(() => resolve(false), SOON))]);
  }

  /** The estimates that a change in this one may concern, read with all they use. */
  async others(key: Key, desk: Desk): Promise<readonly Key[]> {
    const read: Key[] = [];
    for (const one of await this.all()) if (one !== key && (await desk.whole(one))) read.push(one);
    return read;
  }

  dispose(): void {
    this.watcher.dispose();
    this.changes.dispose();
  }
}
