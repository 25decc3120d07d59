import * as vscode from 'vscode';
import type { LeadsOut } from './links.js';
import { rootOf } from './places.js';

/** A larger file is no picture of a finding. */
const LARGEST = 30_000_000;

/**
 * Pictures of findings, as the page may load them. A file is looked at before its address is given out: it must be a
 * file, lie where the estimate may read, also by its links, and be of a sensible size.
 */
export class Pictures {
  private readonly sources = new Map<string, string | undefined>();

  constructor(private readonly leadsOut: LeadsOut, private readonly changed: () => void) {}

  /** Where the page loads a picture from; undefined where it can't, or not yet. */
  sourceOf(key: string, webview: vscode.Webview): string | undefined {
    if (!this.sources.has(key)) {
      this.sources.set(key, undefined);
      void this.look(vscode.Uri.parse(key, true), webview).catch(() => undefined).then((source) => {
        if (source === undefined) return;
        this.sources.set(key, source);
        this.changed();
      });
    }
    return this.sources.get(key);
  }

  /** Files may have come, gone or changed: they are looked at again when they are next shown. */
  forget(): void {
    this.sources.clear();
  }

  private async look(uri: vscode.Uri, webview: vscode.Webview): Promise<string | undefined> {
    const { type, size, mtime } = await vscode.workspace.fs.stat(uri);
    if ((type & vscode.FileType.File) === 0 || size > LARGEST || (await this.leadsOut(rootOf(uri).root, uri))) return undefined;
    return webview.asWebviewUri(uri).with({ query: `t=${mtime}` }).toString();
  }
}
