import * as vscode from 'vscode';
import { parse, type Tree } from '../language/index.js';
import { historyText, type History, type PlacedCase } from '../report/index.js';
import { bookOf, historyOf, mayBeClosed, readClosed, type Book } from '../weigh/index.js';
import type { LeadsOut } from './links.js';
import { pathFrom, rootOf, type Key } from './places.js';

/** Files read before others get their turn. */
const AT_ONCE = 16;
/** A run shorter than this, in ms, says nothing of how far it is. */
const QUIET = 1_000;
const HIDDEN = '**/{node_modules,.git}/**';
const MOST_FILES = 20_000;
const LARGEST = 8_000_000;
const SETTING = 'steelyard.bookOfTimes';
const SCHEME = 'steelyard-book';

interface Taken {
  readonly cases: readonly PlacedCase[];
  readonly wrong: { readonly line: number | undefined; readonly why: string } | undefined;
  /** Shared files that it was read with. */
  readonly uses: readonly Key[];
}

/**
 * The shop's own book of times: what its closed estimates took. Nothing is read before something asks for it; then each
 * file once, in the background, and again when it or a file that it uses has changed.
 */
export class ShopBook implements vscode.Disposable, vscode.TextDocumentContentProvider {
  private book: Book = new Map();
  /** What each file adds; nothing where it is not closed. */
  private readonly files = new Map<Key, Taken | undefined>();
  private reading: Promise<void> | undefined;
  private again: ReturnType<typeof setTimeout> | undefined;
  private readonly changed = new vscode.EventEmitter<undefined>();
  private readonly shown = new vscode.EventEmitter<vscode.Uri>();
  private readonly subscriptions: readonly vscode.Disposable[];

  /** There is another book than before. */
  readonly onChanged = this.changed.event;
  readonly onDidChange = this.shown.event;

  constructor(private readonly leadsOut: LeadsOut, onFileChanged: vscode.Event<Key>) {
    this.subscriptions = [
      this.changed, this.shown,
      onFileChanged((key) => this.outOfDate(key)),
      vscode.workspace.registerTextDocumentContentProvider(SCHEME, this),
      vscode.workspace.onDidChangeConfiguration((change) => {
        if (!change.affectsConfiguration(SETTING)) return;
        this.files.clear();
        this.soon();
      }),
    ];
  }

  /** As far as it is read; asking for it has it read. */
  now(): Book {
    if (this.reading === undefined) void this.read();
    return this.book;
  }

  /** The book as a text to read. */
  async show(): Promise<void> {
    await this.read();
    const uri = vscode.Uri.from({ scheme: SCHEME, path: '/Book of times' });
    this.shown.fire(uri);
    await vscode.window.showTextDocument(await vscode.workspace.openTextDocument(uri), { preview: true });
  }

  provideTextDocumentContent(): string {
    const all = [...this.files].flatMap(([key, taken]) => (taken === undefined ? [] : [[key, taken] as const]));
    const history: History = {
      jobs: historyOf(all.flatMap(([, { cases }]) => cases)),
      files: this.files.size, closed: all.length,
      leftOut: all.flatMap(([key, { wrong }]) => (wrong === undefined ? [] : [{ file: shortName(key), ...wrong }])),
    };
    return pattern() === '' ? `No book of times: the setting ${SETTING} names no files.\n` : historyText(history);
  }

  dispose(): void {
    clearTimeout(this.again);
    this.subscriptions.forEach((one) => void one.dispose());
  }

  private soon(): void {
    if (this.reading === undefined) return;
    clearTimeout(this.again);
    this.again = setTimeout(() => void this.read(), 500);
  }

  private outOfDate(changed: Key): void {
    for (const [key, taken] of this.files) if (key === changed || taken?.uses.includes(changed) === true) this.files.delete(key);
    this.soon();
  }

  /** Reads what is not read yet; one run after the other. */
  private read(): Promise<void> {
    this.reading = (this.reading ?? Promise.resolve()).then(() => this.readNew());
    return this.reading;
  }

  private async readNew(): Promise<void> {
    const wanted = pattern();
    const keys = wanted === '' ? [] : (await vscode.workspace.findFiles(wanted, HIDDEN, MOST_FILES)).map(String).sort();
    const gone = [...this.files.keys()].filter((key) => !keys.includes(key));
    const fresh = keys.filter((key) => !this.files.has(key));
    gone.forEach((key) => void this.files.delete(key));
    if (gone.length + fresh.length === 0) return;
    const shared = new Map<Key, Tree | 'missing'>();
    const progress = new Progress(fresh.length);
    for (let i = 0; i < fresh.length; i += AT_ONCE) {
      await Promise.all(fresh.slice(i, i + AT_ONCE).map(async (key) => void this.files.set(key, await this.take(key, shared))));
      progress.tell(i);
      await new Promise((resolve) => setTimeout(resolve, 0));
    }
    progress.end();
    const book = bookOf(historyOf([...this.files.values()].flatMap((taken) => taken?.cases ?? [])));
    if (book.size + this.book.size === 0) return;
    this.book = book;
    this.changed.fire(undefined);
  }

  /** What one file adds; nothing where it is not closed. Whatever it is, the others are read. */
  private async take(key: Key, shared: Map<Key, Tree | 'missing'>): Promise<Taken | undefined> {
    const text = await this.textOf(key).catch(() => undefined);
    if (text === undefined || !mayBeClosed(text)) return undefined;
    const asked = new Set<Key>();
    for (;;) {
      const missing: Key[] = [];
      const { cases, wrong } = readClosed(key, text, {
        treeOf: (other) => {
          asked.add(other);
          const tree = shared.get(other);
          if (tree === undefined) missing.push(other);
          return tree ?? 'missing';
        },
        resolvePath: pathFrom,
      });
      if (missing.length === 0) return { cases: cases.map((one) => ({ ...one, file: shortName(key) })), wrong, uses: [...asked] };
      await Promise.all(missing.map(async (other) => {
        const found = await this.textOf(other).catch(() => undefined);
        shared.set(other, found === undefined ? 'missing' : parse(other, found));
      }));
    }
  }

  private async textOf(key: Key): Promise<string | undefined> {
    const uri = vscode.Uri.parse(key, true);
    const { type, size } = await vscode.workspace.fs.stat(uri);
    if ((type & vscode.FileType.File) === 0 || size > LARGEST || (await this.leadsOut(rootOf(uri).root, uri))) return undefined;
    return await vscode.workspace.decode(await vscode.workspace.fs.readFile(uri), { uri });
  }
}

/** Which files are looked through for closed estimates. */
function pattern(): string {
  return vscode.workspace.getConfiguration().get<string>(SETTING, '**/*.yard').trim();
}

function shortName(key: Key): string {
  return vscode.workspace.asRelativePath(vscode.Uri.parse(key, true));
}

/** How far a run is, in the status bar; nothing of a short one. */
class Progress {
  private readonly begun = performance.now();
  private report: ((done: number) => void) | undefined;
  private done: () => void = () => undefined;

  constructor(private readonly count: number) {}

  tell(done: number): void {
    if (this.report === undefined && performance.now() - this.begun > QUIET) {
      const ended = new Promise<void>((resolve) => (this.done = resolve));
      this.report = () => undefined;
      void vscode.window.withProgress({ location: vscode.ProgressLocation.Window, title: 'Reading the book of times' }, (progress) => {
        this.report = (read) => progress.report({ message: `${read} of ${this.count}` });
        return ended;
      });
    }
    this.report?.(done);
  }

  end(): void {
    this.done();
  }
}
