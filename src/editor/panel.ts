import * as vscode from 'vscode';
import { readPageState, readToEditor, type ToEditor, type ToPage } from '../page/messages.js';
import { ComparisonView } from './comparison-view.js';
import type { Desk } from './desk.js';
import { isEstimate, nameOf, type Key } from './places.js';
import { reveal } from './reveal.js';
import { shell } from './shell.js';
import { WhenQuiet } from './when-quiet.js';

/** The one panel beside the editor. It follows the estimate that is worked on and is made again as its text changes. */
export class ComparisonPanel implements vscode.Disposable, vscode.WebviewPanelSerializer {
  static readonly type = 'steelyard.comparison';
  private panel: vscode.WebviewPanel | undefined;
  private view: ComparisonView | undefined;
  /** Views of estimates that were shown before, with what is tried in them. */
  private readonly views = new Map<Key, ComparisonView>();
  private shown: string | undefined;
  private shownLater: string | undefined;
  /** A figure to bring into view, until a page that is loaded was told. */
  private sought: string | undefined;
  private loaded = false;
  private readonly later = new WhenQuiet(() => this.renderLater());
  private readonly subscriptions: vscode.Disposable[];

  constructor(private readonly desk: Desk, private readonly dist: vscode.Uri) {
    this.subscriptions = [
      desk.onFresh((key) => {
        if (key === this.view?.estimate) this.render();
      }),
      vscode.window.onDidChangeActiveTextEditor((editor) => this.follow(editor)),
    ];
  }

  /** Opens the panel beside the editor, or brings it to the front, at a figure where one is named; the keyboard stays in the text. */
  show(key: Key, figure: string | undefined): void {
    if (this.panel === undefined) {
      this.adopt(vscode.window.createWebviewPanel(ComparisonPanel.type, '', { viewColumn: vscode.ViewColumn.Beside, preserveFocus: true }));
    } else this.panel.reveal(undefined, true);
    this.turnTo(key);
    this.sought = figure;
    this.tellSought();
  }

  /** Back from the panel to the text. */
  async goToEstimate(): Promise<void> {
    if (this.view !== undefined) await reveal(this.view.estimate, undefined, this.panel?.viewColumn);
  }

  /** The panel of an earlier session. */
  deserializeWebviewPanel(panel: vscode.WebviewPanel, state: unknown): Promise<void> {
    const key = keptEstimate(state) ?? activeEstimate();
    if (key === undefined || this.panel !== undefined) panel.dispose();
    else {
      this.adopt(panel);
      this.turnTo(key);
    }
    return Promise.resolve();
  }

  dispose(): void {
    this.later.cancel();
    this.panel?.dispose();
    this.subscriptions.forEach((one) => void one.dispose());
  }

  private adopt(panel: vscode.WebviewPanel): void {
    this.panel = panel;
    panel.webview.options = { enableScripts: true, localResourceRoots: [this.dist], enableCommandUris: false };
    panel.webview.onDidReceiveMessage((data: unknown) => {
      const message = readToEditor(data);
      if (message !== undefined) void this.receive(message);
    });
    panel.onDidDispose(() => {
      this.panel = undefined;
      this.view = undefined;
      this.shown = undefined;
      this.loaded = false;
      this.later.cancel();
      this.desk.keep(undefined);
    });
    panel.onDidChangeViewState(() => {
      if (!panel.visible) this.loaded = false;
    });
    panel.webview.html = shell(panel.webview, this.dist);
  }

  private follow(editor: vscode.TextEditor | undefined): void {
    if (this.panel === undefined || editor === undefined || !isEstimate(editor.document)) return;
    const key = editor.document.uri.toString();
    // Changing a rate in the shop's file is work on the estimate that uses it.
    if (this.view === undefined || !this.desk.usedBy(this.view.estimate).includes(key)) this.turnTo(key);
  }

  private turnTo(key: Key): void {
    if (this.panel === undefined || this.view?.estimate === key) return;
    this.view = this.views.get(key) ?? new ComparisonView(this.desk, key);
    this.views.set(key, this.view);
    this.shown = undefined;
    this.shownLater = undefined;
    this.panel.title = `Comparison: ${nameOf(key)}`;
    this.desk.keep(key);
    void this.renderWhole();
  }

  private async receive(message: ToEditor): Promise<void> {
    if (message.kind === 'ready') {
      this.shown = undefined;
      this.loaded = true;
      await this.renderWhole();
      return;
    }
    const { view } = this;
    if (view === undefined || message.estimate !== view.estimate) return;
    if (message.kind === 'try') {
      if (view.tryValue(message.figure, message.value)) this.showTrials();
      return;
    }
    if (message.kind !== 'go') {
      const edits = view.endTrials();
      if (message.kind === 'write') await this.write(edits);
      this.showTrials();
      return;
    }
    const place = view.placeOf(message.figure);
    if (place !== undefined) await reveal(place.uri, this.desk.positions.range(place), this.panel?.viewColumn);
  }

  /** A figure that is tried is seen as soon as it is worked out. */
  private showTrials(): void {
    this.render();
    this.later.ask('first');
  }

  /** All of what was tried as one edit, which one undo takes back. */
  private async write(edits: ReturnType<ComparisonView['endTrials']>): Promise<void> {
    const whole = new vscode.WorkspaceEdit();
    for (const { place, text } of edits) {
      const range = this.desk.positions.range(place);
      if (range !== undefined) whole.replace(vscode.Uri.parse(place.uri, true), range, text);
    }
    await vscode.workspace.applyEdit(whole);
  }

  private async renderWhole(): Promise<void> {
    const { view } = this;
    if (view !== undefined && (await this.desk.whole(view.estimate)) && view === this.view) this.render();
  }

  /** A hidden page is not told: it is loaded again when it comes into view, and asks. */
  private render(): void {
    if (this.panel === undefined || this.view === undefined || !this.panel.visible) return;
    const markup = this.view.markup();
    // A page that has nothing of the later part yet is not kept waiting for a pause in typing.
    this.later.ask(this.shown === undefined ? 'first' : 'again');
    if (markup !== this.shown) {
      this.shown = markup;
      this.shownLater = undefined;
      this.post({ kind: 'show', estimate: this.view.estimate, markup });
    }
    this.tellSought();
  }

  private renderLater(): void {
    if (this.panel === undefined || this.view === undefined || !this.panel.visible) return;
    const markup = this.view.laterMarkup();
    if (markup === undefined || markup === this.shownLater) return;
    this.shownLater = markup;
    this.post({ kind: 'later', estimate: this.view.estimate, markup });
  }

  private tellSought(): void {
    if (this.sought === undefined || this.view === undefined || !this.loaded || this.shown === undefined) return;
    this.post({ kind: 'seek', estimate: this.view.estimate, figure: this.sought });
    this.sought = undefined;
  }

  private post(message: ToPage): void {
    void this.panel?.webview.postMessage(message);
  }
}

function activeEstimate(): Key | undefined {
  const document = [vscode.window.activeTextEditor, ...vscode.window.visibleTextEditors].find((editor) => editor !== undefined && isEstimate(editor.document))?.document;
  return document?.uri.toString();
}

/** The estimate of an earlier session, where it is one that may be read in this one. */
function keptEstimate(state: unknown): Key | undefined {
  const key = readPageState(state)?.estimate;
  if (key === undefined || !URL.canParse(key)) return undefined;
  const uri = vscode.Uri.parse(key);
  const open = vscode.workspace.textDocuments.some((document) => document.uri.toString() === key);
  return open || uri.scheme === 'file' || vscode.workspace.getWorkspaceFolder(uri) !== undefined ? uri.toString() : undefined;
}
