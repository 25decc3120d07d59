import * as vscode from 'vscode';
import { createLanguageService, type LanguageService } from '../service/index.js';
import type { Book } from '../weigh/index.js';
import { Coalesced } from './coalesce.js';
import type { Guarded } from './guarded.js';
import { isEstimate, pathFrom, type Key } from './places.js';
import { Positions } from './positions.js';
import { severitiesWanted } from './language/severities.js';
import { Seen } from './seen.js';
import { Texts } from './texts.js';
import { Watch } from './watch.js';

/** Whoever changes a file while it is looked at is given so many chances to be done with it. */
const MOST_TRIES = 5;

/**
 * The estimates being worked on, and the language service over them. Says when one is to be looked at again: its own
 * text changed, or that of a file it uses. Files it uses are read before anything is said about it.
 */
export class Desk implements vscode.Disposable {
  readonly service: LanguageService;
  readonly positions: Positions;
  private readonly texts: Texts;
  private readonly watch = new Watch((key) => this.changedOnDisk(key));
  private readonly uses = new Map<Key, readonly Key[]>();
  private readonly seen: Seen;
  /** The pictures of the findings of each estimate on the desk. */
  private readonly pictures = new Map<Key, readonly Key[]>();
  private readonly kept = new Set<Key>();
  private readonly fresh = new vscode.EventEmitter<Key>();
  private readonly gone = new vscode.EventEmitter<Key>();
  private readonly refreshes = new Coalesced<Key>((key) => this.refresh(key));
  private readonly subscriptions: vscode.Disposable[];

  /** An estimate is read, with all it uses, and may be looked at. Comes again after each change. */
  readonly onFresh = this.fresh.event;
  /** An estimate was closed. */
  readonly onGone = this.gone.event;

  constructor(guarded: Guarded, files: () => readonly Key[], book: () => Book) {
    this.texts = new Texts(guarded);
    this.seen = new Seen(async (key) => (await guarded.look(vscode.Uri.parse(key, true), Infinity)).kind === 'file', (picture) => this.pictureChanged(picture));
    this.service = createLanguageService({
      read: (key) => this.texts.read(key),
      whyMissing: (key) => this.texts.whyMissing(key),
      resolvePath: (from, written) => {
        const key = pathFrom(from, written);
        return key !== undefined && this.texts.isOutside(key) ? undefined : key;
      },
      exists: (key) => this.seen.isThere(key),
      files,
      book,
    });
    this.positions = new Positions(this.service);
    this.service.configure({ severities: severitiesWanted() });
    this.subscriptions = [
      this.fresh, this.gone, this.texts, this.watch, this.refreshes,
      vscode.workspace.onDidOpenTextDocument((document) => this.opened(document)),
      vscode.workspace.onDidChangeTextDocument(({ document, contentChanges }) => {
        if (contentChanges.length > 0) this.changed(document.uri.toString());
      }),
      vscode.workspace.onDidCloseTextDocument(({ uri }) => this.closed(uri.toString())),
      vscode.workspace.onDidChangeWorkspaceFolders(() => this.allAgain()),
      vscode.workspace.onDidChangeConfiguration((change) => {
        if (!change.affectsConfiguration('steelyard.severities')) return;
        this.service.configure({ severities: severitiesWanted() });
        this.allAgain();
      }),
    ];
  }

  /** Takes up what is open already. */
  start(): void {
    vscode.workspace.textDocuments.forEach((document) => this.opened(document));
  }

  /** Keeps an estimate fresh although no editor may show it; undoes the last call. */
  keep(key: Key | undefined): void {
    const before = [...this.kept];
    this.kept.clear();
    if (key !== undefined) {
      this.kept.add(key);
      if (!this.uses.has(key)) this.refreshes.ask(key);
    }
    for (const one of before) if (one !== key && !isOpen(one)) this.drop(one);
  }

  /** Reads the files that an estimate needs; true once it is whole. */
  async whole(key: Key): Promise<boolean> {
    await this.texts.fetch(key);
    for (let waits = this.service.waitsFor(key); waits.length > 0; waits = this.service.waitsFor(key)) {
      await Promise.all(waits.map((one) => this.texts.fetch(one)));
    }
    return typeof this.texts.read(key) !== 'string';
  }

  /** Looks which pictures of an estimate are there, so that what is then said of it is whole. */
  async looked(key: Key, say: () => void, tries = MOST_TRIES): Promise<void> {
    await this.whole(key);
    const pictures = this.picturesOf(key);
    let isRead = true;
    await this.seen.whenKnown(pictures, () => {
      // Told meanwhile that it changed, as of a file written a moment ago, its text is let go of: nothing could be said of it.
      isRead = this.texts.isKnown(key) && this.service.waitsFor(key).length === 0;
      if (!isRead && tries > 1) return;
      // Of one that nobody works on, nobody hears that a picture is missing after all.
      if (pictures.length > 0 && !this.uses.has(key)) this.service.forget(key);
      say();
    });
    if (!isRead && tries > 1) await this.looked(key, say, tries - 1);
  }

  /** An estimate was read only to be looked at once; nothing of it is kept where nobody works on it. */
  letGo(key: Key): void {
    if (this.uses.has(key) || isOpen(key)) return;
    this.service.forget(key);
    this.texts.forget(key);
  }

  /** Other files that an estimate on the desk was made from. */
  usedBy(key: Key): readonly Key[] {
    return this.uses.get(key) ?? [];
  }

  /** A file changed on disk. What is open in an editor stays as it stands there. */
  changedOnDisk(key: Key): void {
    if ([...this.pictures.values()].some((all) => all.includes(key))) void this.seen.again(key);
    if (isOpen(key)) return;
    // A link that led out is not among the files used; whoever is open may have meant it.
    const estimates = this.texts.isOutside(key) ? [...this.uses.keys()] : undefined;
    this.texts.forget(key);
    estimates?.forEach((one) => this.again(one));
    this.changed(key);
  }

  dispose(): void {
    this.subscriptions.forEach((one) => void one.dispose());
  }

  private opened(document: vscode.TextDocument): void {
    const key = document.uri.toString();
    this.changed(key);
    if (isEstimate(document)) this.refreshes.ask(key);
  }

  private changed(key: Key): void {
    for (const [estimate, used] of this.uses) if (estimate === key || used.includes(key)) this.refreshes.ask(estimate);
  }

  private closed(key: Key): void {
    this.changed(key);
    if (!this.kept.has(key)) this.drop(key);
  }

  private drop(key: Key): void {
    this.refreshes.cancel(key);
    if (!this.uses.delete(key)) return;
    this.pictures.delete(key);
    this.service.forget(key);
    this.watchAgain();
    this.gone.fire(key);
  }

  /** Something that all of them rest on has changed. */
  allFresh(): void {
    for (const key of [...this.uses.keys()]) this.refreshes.ask(key);
  }

  private allAgain(): void {
    for (const key of [...this.uses.keys()]) this.again(key);
  }

  private again(key: Key): void {
    this.service.forget(key);
    this.refreshes.ask(key);
  }

  private pictureChanged(picture: Key): void {
    for (const [estimate, pictures] of this.pictures) if (pictures.includes(picture)) this.again(estimate);
  }

  private picturesOf(key: Key): readonly Key[] {
    try {
      return this.service.weighing(key).resolved.estimate.findings.flatMap(({ pictures }) => pictures.flatMap(({ uri }) => uri ?? []));
    } catch {
      return []; // that weighing stopped is told where problems are
    }
  }

  private async refresh(key: Key): Promise<void> {
    if (!this.uses.has(key)) this.uses.set(key, []);
    await this.whole(key);
    if (!this.uses.has(key)) return; // closed while its files were read
    this.uses.set(key, this.service.uses(key));
    this.takePictures(key);
    this.watchAgain();
    this.fresh.fire(key);
  }

  /**
   * From now on an estimate hears of these pictures. Who asked before, such as for fixes of a text that was changed a
   * moment ago, was told of new ones that they are there: that is not kept.
   */
  private takePictures(key: Key): void {
    const before = this.pictures.get(key) ?? [];
    const pictures = this.picturesOf(key);
    this.pictures.set(key, pictures);
    if (pictures.some((one) => !before.includes(one))) this.service.forget(key);
  }

  private watchAgain(): void {
    const pictures = new Set([...this.pictures.values()].flat());
    this.seen.keepOnly(pictures);
    this.watch.files([...[...this.uses].flatMap(([key, used]) => [key, ...used]), ...pictures]);
  }
}

function isOpen(key: Key): boolean {
  return vscode.workspace.textDocuments.some(({ uri }) => uri.toString() === key);
}
