import * as vscode from 'vscode';
import type { ServiceHost } from '../service/index.js';
import type { Guarded } from './guarded.js';
import type { Key } from './places.js';

type Found = ReturnType<ServiceHost['read']>;

/** A larger file is no estimate; the language has its own message for one that is too long. */
const LARGEST = 16_000_000;

/**
 * The texts that the language service reads from: what is open in an editor as it stands there, all else as it was
 * last read. The service never waits; whoever uses it asks for a file to be read first.
 */
export class Texts implements vscode.Disposable {
  private readonly open = new Map<Key, { document: vscode.TextDocument; version: number; text: string }>();
  private readonly onDisk = new Map<Key, Found>();
  private readonly outside = new Set<Key>();
  /** Why files that are there have no text, each as the end of a sentence that starts with its name. */
  private readonly unreadable = new Map<Key, string>();
  /** Files that are being read; one that changes meanwhile is not among them any more. */
  private readonly reading = new Map<Key, Promise<void>>();
  private readonly subscriptions: vscode.Disposable[];

  constructor(private readonly guarded: Guarded) {
    vscode.workspace.textDocuments.forEach((document) => this.hold(document));
    this.subscriptions = [
      vscode.workspace.onDidOpenTextDocument((document) => this.hold(document)),
      vscode.workspace.onDidCloseTextDocument(({ uri }) => {
        this.open.delete(uri.toString());
        this.forget(uri.toString());
      }),
    ];
  }

  read(key: Key): Found {
    const held = this.open.get(key);
    if (held === undefined) return this.onDisk.get(key) ?? 'unknown';
    if (held.version !== held.document.version) {
      held.version = held.document.version;
      held.text = held.document.getText();
    }
    return held;
  }

  /** True where a file turned out to lie outside, by way of a link. */
  isOutside(key: Key): boolean {
    return this.outside.has(key);
  }

  /** Why a file that is there is read as missing. */
  whyMissing(key: Key): string | undefined {
    return this.unreadable.get(key);
  }

  isKnown(key: Key): boolean {
    return this.open.has(key) || this.onDisk.has(key) || this.outside.has(key);
  }

  /** Reads a file, unless it is known already. Never fails: a file that can't be read is missing. */
  async fetch(key: Key): Promise<void> {
    // What was told to have changed while it was read is read again: else it would be taken for what it was before.
    while (!this.isKnown(key)) await (this.reading.get(key) ?? this.begin(key));
  }

  /** Something happened to a file that is not open: it is to be read again. */
  forget(key: Key): void {
    this.onDisk.delete(key);
    this.outside.delete(key);
    this.unreadable.delete(key);
    this.reading.delete(key);
  }

  dispose(): void {
    this.subscriptions.forEach((one) => void one.dispose());
  }

  private hold(document: vscode.TextDocument): void {
    this.open.set(document.uri.toString(), { document, version: -1, text: '' });
  }

  private begin(key: Key): Promise<void> {
    const reading = this.guarded.text(vscode.Uri.parse(key, true), LARGEST).then((found) => {
      if (this.reading.get(key) !== reading) return;
      this.reading.delete(key);
      if (this.open.has(key)) return;
      if (found.kind === 'outside') this.outside.add(key);
      else this.onDisk.set(key, found.kind === 'read' ? found : 'missing');
      if (found.kind === 'unreadable') this.unreadable.set(key, `could not be read: ${found.why}`);
      if (found.kind === 'too-large') this.unreadable.set(key, 'is larger than an estimate can be.');
    });
    this.reading.set(key, reading);
    return reading;
  }
}
