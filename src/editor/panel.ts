import * as vscode from 'vscode';
import { readPageState, readToEditor, type Kept, type ToEditor, type ToPage } from '../page/messages.js';
import { ComparisonView } from './comparison-view.js';
import type { Desk } from './desk.js';
import type { Guarded } from './guarded.js';
import { Pictures } from './pictures.js';
import { isEstimate, nameOf, rootOf, type Key } from './places.js';
import { reveal } from './reveal.js';
import { shell } from './shell.js';
import { WhenQuiet } from './when-quiet.js';

/** Whoever moves quickly through a text is told where he came to rest. */
const REST = 50;

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
  private here = '';
  private resting: ReturnType<typeof setTimeout> | undefined;
  private readonly pictures: Pictures;
  private readonly later = new WhenQuiet(() => this.renderLater());
  private readonly subscriptions: vscode.Disposable[];

  constructor(private readonly desk: Desk, private readonly dist: vscode.Uri, guarded: Guarded) {
    this.pictures = new Pictures(guarded, () => this.render());
    this.subscriptions = [
      desk.onFresh((key) => {
        if (key === this.view?.estimate) this.render();
      }),
      vscode.window.onDidChangeActiveTextEditor((editor) => this.follow(editor)),
      vscode.window.onDidChangeTextEditorSelection(() => this.soonHere()),
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
      this.turnTo(key, readPageState(state));
    }
    return Promise.resolve();
  }

  dispose(): void {
    this.later.cancel();
    clearTimeout(this.resting);
    this.panel?.dispose();
    this.subscriptions.forEach((one) => void one.dispose());
  }

  private adopt(panel: vscode.WebviewPanel): void {
    this.panel = panel;
    panel.webview.options = this.optionsFor(undefined);
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

  private turnTo(key: Key, saved?: Kept): void {
    const { panel } = this;
    if (panel === undefined || this.view?.estimate === key) return;
    const view = this.views.get(key) ?? new ComparisonView(this.desk, key, (uri) => (this.panel === undefined ? { kind: 'absent' } : this.pictures.sourceOf(uri, this.panel.webview)));
    this.views.set(key, view);
    this.view = view;
    this.shown = undefined;
    this.shownLater = undefined;
    panel.title = `Comparison: ${nameOf(key)}`;
    const options = this.optionsFor(key);
    if (String(options.localResourceRoots) !== String(panel.webview.options.localResourceRoots)) panel.webview.options = options;
    this.desk.keep(key);
    void this.renderWhole(saved);
  }

  /** Scripts and style come from the extension; pictures of findings from where the estimate may read. */
  private optionsFor(key: Key | undefined): vscode.WebviewOptions {
    const folders = (vscode.workspace.workspaceFolders ?? []).map(({ uri }) => uri);
    const uri = key === undefined ? undefined : vscode.Uri.parse(key, true);
    const alone = uri === undefined || uri.scheme === 'untitled' || vscode.workspace.getWorkspaceFolder(uri) !== undefined ? [] : [rootOf(uri).root];
    return { enableScripts: true, localResourceRoots: [this.dist, ...folders, ...alone], enableCommandUris: false };
  }

  private async receive(message: ToEditor): Promise<void> {
    if (message.kind === 'ready') {
      this.shown = undefined;
      this.here = '';
      this.loaded = true;
      this.pictures.forget();
      await this.renderWhole();
      return;
    }
    const { view } = this;
    if (view === undefined || message.estimate !== view.estimate) return;
    if (message.kind === 'try') {
      if (view.tryValue(message.figure, message.value)) this.showTrials();
      return;
    }
    if (message.kind === 'unfold' || message.kind === 'fold') {
      view.unfold(message.row, message.kind === 'unfold');
      this.render();
      return;
    }
    if (message.kind !== 'go') {
      const { trials, edits } = view.endTrials();
      if (message.kind === 'write' && !(await this.write(edits))) view.takeUp(trials);
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
  private async write(edits: ReturnType<ComparisonView['endTrials']>['edits']): Promise<boolean> {
    const whole = new vscode.WorkspaceEdit();
    for (const { place, text } of edits) {
      const range = this.desk.positions.range(place);
      if (range !== undefined) whole.replace(vscode.Uri.parse(place.uri, true), range, text);
    }
    return await vscode.workspace.applyEdit(whole);
  }

  private async renderWhole(saved?: Kept): Promise<void> {
    const { view } = this;
    if (view === undefined || !(await this.desk.whole(view.estimate)) || view !== this.view) return;
    if (saved !== undefined) view.restore(saved);
    this.render();
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
      this.post({ kind: 'show', estimate: this.view.estimate, markup, kept: this.view.saved() });
    }
    this.tellSought();
    this.soonHere();
  }

  private renderLater(): void {
    if (this.panel === undefined || this.view === undefined || !this.panel.visible) return;
    const markup = this.view.laterMarkup();
    if (markup === undefined || markup === this.shownLater) return;
    this.shownLater = markup;
    this.post({ kind: 'later', estimate: this.view.estimate, markup });
  }

  private soonHere(): void {
    if (this.panel === undefined || this.resting !== undefined) return;
    this.resting = setTimeout(() => {
      this.resting = undefined;
      this.tellHere();
    }, REST);
  }

  /** The page marks what comes from the line under the cursor; while another file is worked on, it marks nothing. */
  private tellHere(): void {
    const { view, panel } = this;
    const editor = vscode.window.activeTextEditor;
    if (view === undefined || panel?.visible !== true || this.shown === undefined || editor === undefined || editor.document.languageId !== 'steelyard') return;
    const rows = view.rowsAt(editor.document.uri.toString(), editor.document.offsetAt(editor.selection.active));
    const here = rows.join('\n');
    if (here === this.here) return;
    this.here = here;
    this.post({ kind: 'here', estimate: view.estimate, rows });
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
