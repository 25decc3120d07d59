import * as vscode from 'vscode';
import { parse, type Tree } from '../language/index.js';
import { historyText, wordsOf, type History, type PlacedCase } from '../report/index.js';
import { bookOf, historyOf, mayBeClosed, readClosed, type Book } from '../weigh/index.js';
import type { Guarded } from './guarded.js';
import { inTurns } from './in-turns.js';
import { pathFrom, type Key } from './places.js';

/** Files that are read at the same time. */
const TOGETHER = 16;
/** A run shorter than this, in ms, says nothing of how far it is. */
const QUIET = 1_000;
const HIDDEN = '**/{node_modules,.git}/**';
const MOST_FILES = 20_000;
const LARGEST = 8_000_000;
/** So long after a search of the workspace that failed it is not searched again, in ms. */
const REST = 10_000;
const SETTING = 'steelyard.bookOfTimes';
const SCHEME = 'steelyard-book';

interface Taken {
  readonly cases: readonly PlacedCase[];
  readonly wrong: { readonly line: number | undefined; readonly why: string } | undefined;
  /** False where it could not be read at all. */
  readonly closed: boolean;
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
  /** Files that changed during a run: what was read of them may be of before. */
  private readonly changing = new Set<Key>();
  /** Why the files could not be looked for, and when that was, by `performance.now()`. */
  private failed: { readonly why: string; readonly at: number } | undefined;
  private again: ReturnType<typeof setTimeout> | undefined;
  private readonly changed = new vscode.EventEmitter<undefined>();
  private readonly shown = new vscode.EventEmitter<vscode.Uri>();
  private readonly subscriptions: readonly vscode.Disposable[];

  /** There is another book than before. */
  readonly onChanged = this.changed.event;
  readonly onDidChange = this.shown.event;

  constructor(private readonly guarded: Guarded, onFileChanged: vscode.Event<Key>) {
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
    if (this.reading === undefined || (this.failed !== undefined && performance.now() - this.failed.at > REST)) void this.read();
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
      files: this.files.size, closed: all.filter(([, { closed }]) => closed).length,
      leftOut: all.flatMap(([key, { wrong }]) => (wrong === undefined ? [] : [{ file: shortName(key), ...wrong }])),
    };
    const trouble = this.failed === undefined ? '' : `The files of this workspace could not be looked for, so this is what was read before: ${this.failed.why}\n\n`;
    return pattern() === '' ? `No book of times: the setting ${SETTING} names no files.\n` : trouble + historyText(history);
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
    this.changing.add(changed);
    for (const [key, taken] of this.files) if (key === changed || taken?.uses.includes(changed) === true) this.files.delete(key);
    this.soon();
  }

  /** Reads what is not read yet; one run after the other. A run that fails says why, and the next one reads all the same. */
  private read(): Promise<void> {
    this.failed = undefined;
    this.reading = (this.reading ?? Promise.resolve()).then(() => this.readNew()).catch((error: unknown) => {
      this.failed = { why: wordsOf(error), at: performance.now() };
    });
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
    this.changing.clear();
    const put = (key: Key, taken: Taken | undefined) => {
      // Told of while it was read: the run that this asked for reads it again.
      if (![key, ...(taken?.uses ?? [])].some((one) => this.changing.has(one))) this.files.set(key, taken);
    };
    await inTurns(fresh, TOGETHER, {
      work: async (key) => put(key, await this.take(key, shared)),
      tell: (done) => progress.tell(done),
      failed: (key, error) => put(key, leftOut(error)),
    });
    progress.end();
    const book = bookOf(historyOf([...this.files.values()].flatMap((taken) => taken?.cases ?? [])));
    if (book.size + this.book.size === 0) return;
    this.book = book;
    this.changed.fire(undefined);
  }

  /** What one file adds; nothing where it is not closed, is gone again, or lies elsewhere. */
  private async take(key: Key, shared: Map<Key, Tree | 'missing'>): Promise<Taken | undefined> {
    const found = await this.textOf(key);
    if (found.kind === 'unreadable' || found.kind === 'too-large') return leftOut(found.kind === 'unreadable' ? found.why : 'It is larger than an estimate can be.');
    if (found.kind !== 'read' || !mayBeClosed(found.text)) return undefined;
    const { text } = found;
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
      if (missing.length === 0) return { cases: cases.map((one) => ({ ...one, file: shortName(key) })), wrong, closed: true, uses: [...asked] };
      await Promise.all(missing.map(async (other) => {
        const used = await this.textOf(other);
        shared.set(other, used.kind === 'read' ? parse(other, used.text) : 'missing');
      }));
    }
  }

  private textOf(key: Key): ReturnType<Guarded['text']> {
    return this.guarded.text(vscode.Uri.parse(key, true), LARGEST);
  }
}

/** A file that could not be read is named where the book is shown. */
function leftOut(error: unknown): Taken {
  return { cases: [], wrong: { line: undefined, why: wordsOf(error) }, closed: false, uses: [] };
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
