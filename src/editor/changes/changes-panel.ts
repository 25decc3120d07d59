import * as vscode from 'vscode';
import { changesPart, changesTargets } from '../../report/changes/index.js';
import type { Targets } from '../../report/page/index.js';
import { changesBetween, type Side } from '../../service/changes.js';
import { readToEditor, type ToPage } from '../../page/messages.js';
import type { Desk } from '../desk.js';
import { nameOf, type Key } from '../places.js';
import { Positions } from '../positions.js';
import { reveal } from '../reveal.js';
import { shell } from '../shell.js';
import { WhenQuiet } from '../when-quiet.js';
import type { Version } from './versions.js';

interface Shown {
  readonly estimate: Key;
  readonly before: Version;
  readonly after: Version;
}

/** The panel that says what changed between two versions, in money and days. It follows the text while that changes. */
export class ChangesPanel implements vscode.Disposable {
  private panel: vscode.WebviewPanel | undefined;
  private shown: Shown | undefined;
  private made: { readonly markup: string; readonly targets: Targets; readonly after: Side } | undefined;
  private readonly again = new WhenQuiet(() => void this.render());
  private readonly subscriptions: readonly vscode.Disposable[];

  constructor(desk: Desk, private readonly dist: vscode.Uri) {
    this.subscriptions = [desk.onFresh((key) => {
      if (key === this.shown?.estimate && this.panel?.visible === true) this.again.ask('again');
    })];
  }

  /** Shows what changed; answers with why it can't, where it can't. */
  async show(shown: Shown): Promise<string | undefined> {
    this.shown = shown;
    const trouble = await this.make(shown);
    if (trouble !== undefined) return trouble;
    if (this.panel === undefined) this.adopt(vscode.window.createWebviewPanel('steelyard.changes', '', { viewColumn: vscode.ViewColumn.Beside, preserveFocus: true }));
    else this.panel.reveal(undefined, true);
    if (this.panel !== undefined) this.panel.title = `What changed: ${nameOf(shown.estimate)}`;
    this.post();
    return undefined;
  }

  dispose(): void {
    this.again.cancel();
    this.panel?.dispose();
    this.subscriptions.forEach((one) => void one.dispose());
  }

  private adopt(panel: vscode.WebviewPanel): void {
    this.panel = panel;
    panel.webview.options = { enableScripts: true, localResourceRoots: [this.dist], enableCommandUris: false };
    panel.webview.onDidReceiveMessage((data: unknown) => {
      const message = readToEditor(data);
      if (message?.kind === 'ready') this.post();
      else if (message?.kind === 'go' && message.estimate === this.shown?.estimate) void this.goTo(message.figure);
    });
    panel.onDidDispose(() => {
      this.panel = undefined;
      this.shown = undefined;
      this.again.cancel();
    });
    panel.onDidChangeViewState(() => {
      if (panel.visible) this.again.ask('first');
    });
    panel.webview.html = shell(panel.webview, this.dist);
  }

  private async render(): Promise<void> {
    const { shown } = this;
    if (shown !== undefined && (await this.make(shown)) === undefined) this.post();
  }

  /** Works out what changed; answers with why it can't. While it did, another pair of versions may have been asked for. */
  private async make(shown: Shown): Promise<string | undefined> {
    const [before, after] = await Promise.all([shown.before.read(), shown.after.read()]);
    if ('why' in before) return before.why;
    if ('why' in after) return after.why;
    if (shown !== this.shown) return undefined;
    const changes = changesBetween(before, after);
    this.made = { markup: changesPart(changes), targets: changesTargets(changes), after };
    return undefined;
  }

  /** Lines of the new version are shown where they are; what is only in the old one has no place to go to. */
  private async goTo(figure: string): Promise<void> {
    const { made } = this;
    const place = made?.targets.get(figure)?.map((span) => made.after.service.place(span)).find((one) => one !== undefined);
    if (made !== undefined && place !== undefined) await reveal(place.uri, new Positions(made.after.service).range(place), this.panel?.viewColumn);
  }

  private post(): void {
    const { panel, shown, made } = this;
    if (panel?.visible !== true || shown === undefined || made === undefined) return;
    const message: ToPage = { kind: 'show', estimate: shown.estimate, markup: made.markup, kept: { unfolded: [], tried: [] } };
    void panel.webview.postMessage(message);
  }
}
