import * as vscode from 'vscode';
import type { PictureSource } from '../report/page/index.js';
import type { Guarded } from './guarded.js';

/** A larger file is no picture of a finding. */
const LARGEST = 30_000_000;

/**
 * Pictures of findings, as the page may load them. A file is looked at before its address is given out: it must be a
 * file, lie where the estimate may read, also by its links, and be of a sensible size.
 */
export class Pictures {
  private readonly sources = new Map<string, PictureSource>();

  constructor(private readonly guarded: Guarded, private readonly changed: () => void) {}

  /** What the page loads for a picture; the first time it is asked for, that is not known yet. */
  sourceOf(key: string, webview: vscode.Webview): PictureSource {
    const known = this.sources.get(key);
    if (known !== undefined) return known;
    const awaited: PictureSource = { kind: 'awaited' };
    this.sources.set(key, awaited);
    void this.look(vscode.Uri.parse(key, true), webview).then((address) => {
      if (this.sources.get(key) !== awaited) return;
      this.sources.set(key, address === undefined ? { kind: 'absent' } : { kind: 'shown', address });
      this.changed();
    });
    return awaited;
  }

  /** Files may have come, gone or changed: they are looked at again when they are next shown. */
  forget(): void {
    this.sources.clear();
  }

  private async look(uri: vscode.Uri, webview: vscode.Webview): Promise<string | undefined> {
    const looked = await this.guarded.look(uri, LARGEST);
    return looked.kind === 'file' ? webview.asWebviewUri(uri).with({ query: `t=${looked.mtime}` }).toString() : undefined;
  }
}
