import * as vscode from 'vscode';
import { changesPart, changesTargets } from '../../report/changes/index.js';
import { wordsOf } from '../../report/index.js';
import { changesBetween, type Side } from '../../service/index.js';
import { readToEditor, type ToPage } from '../../page/messages.js';
import type { Desk } from '../desk.js';
import { nameOf, type Key } from '../places.js';
import { Positions } from '../positions.js';
import { reveal } from '../reveal.js';
import { shell } from '../shell.js';
import { WhenQuiet } from '../when-quiet.js';
import type { NoRepository } from './git-extension.js';
import type { Version } from './versions.js';

interface Asked {
  readonly estimate: Key;
  readonly before: Version;
  readonly after: Version;
}

interface Made {
  readonly changes: ReturnType<typeof changesBetween>;
  readonly after: Side;
  /** Why it is of before, where it is. */
  readonly outdated?: string;
}

/** The panel that says what changed between two versions, in money and days. It follows the text while that changes. */
export class ChangesPanel implements vscode.Disposable {
  private panel: vscode.WebviewPanel | undefined;
  /** What the page shows: both versions could be read. */
  private shown: { readonly asked: Asked; readonly made: Made } | undefined;
  /** How many pairs were asked for, and how often one was made anew; an answer that was overtaken is dropped. */
  private pairs = 0;
  private rounds = 0;
  private readonly again = new WhenQuiet(() => void this.render());
  private readonly subscriptions: readonly vscode.Disposable[];

  constructor(desk: Desk, private readonly dist: vscode.Uri) {
    this.subscriptions = [desk.onFresh((key) => {
      if (key === this.shown?.asked.estimate && this.panel?.visible === true) this.again.ask('again');
    })];
  }

  /** Shows what changed; answers with why it can't, where it can't. Then what was shown before stays. */
  async show(asked: Asked): Promise<string | undefined> {
    const pair = ++this.pairs;
    const made = await makeOf(asked);
    if ('why' in made) return made.why;
    if (pair !== this.pairs) return undefined;
    this.shown = { asked, made };
    if (this.panel === undefined) this.adopt(vscode.window.createWebviewPanel('steelyard.changes', '', { viewColumn: vscode.ViewColumn.Beside, preserveFocus: true }));
    else this.panel.reveal(undefined, true);
    if (this.panel !== undefined) this.panel.title = `What changed: ${nameOf(asked.estimate)}`;
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
      else if (message?.kind === 'go' && message.estimate === this.shown?.asked.estimate) void this.goTo(message.figure);
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

  /** Makes the same pair anew. Where it can't be read any more, the page keeps what it has and says so. */
  private async render(): Promise<void> {
    const before = this.shown;
    if (before === undefined) return;
    const round = ++this.rounds;
    const made = await makeOf(before.asked);
    if (round !== this.rounds || this.shown?.asked !== before.asked) return;
    this.shown = { asked: before.asked, made: 'why' in made ? { ...before.made, outdated: made.why } : made };
    this.post();
  }

  /** Lines of the new version are shown where they are; what is only in the old one has no place to go to. */
  private async goTo(figure: string): Promise<void> {
    if (this.shown === undefined) return;
    const { changes, after: { service } } = this.shown.made;
    const place = changesTargets(changes).get(figure)?.map((span) => service.place(span)).find((one) => one !== undefined);
    if (place !== undefined) await reveal(place.uri, new Positions(service).range(place), this.panel?.viewColumn);
  }

  private post(): void {
    const { panel, shown } = this;
    if (panel?.visible !== true || shown === undefined) return;
    const { asked, made } = shown;
    const message: ToPage = { kind: 'show', estimate: asked.estimate, markup: changesPart(made.changes, made.outdated), kept: { unfolded: [], tried: [] } };
    void panel.webview.postMessage(message);
  }
}

/** Works out what changed, or why it can't be. Whatever a version fails at is told, never dropped. */
async function makeOf({ before, after }: Asked): Promise<Made | NoRepository> {
  try {
    const [old, now] = await Promise.all([before.read(), after.read()]);
    if ('why' in old) return old;
    if ('why' in now) return now;
    return { changes: changesBetween(old, now), after: now };
  } catch (error) {
    return { why: `What changed could not be worked out: ${wordsOf(error)}` };
  }
}
