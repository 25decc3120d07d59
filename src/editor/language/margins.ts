import * as vscode from 'vscode';
import type { SemanticToken } from '../../service/index.js';
import { asLabel } from '../as-text.js';
import type { Desk } from '../desk.js';
import { isEstimate, type Key } from '../places.js';

/** What the extension colours beyond the grammar; the manifest maps each to scopes that themes know. */
const types: readonly SemanticToken['type'][] = ['access', 'labour', 'part', 'sublet', 'fee', 'tool', 'finding', 'option', 'rate', 'unknown'];
export const legend = new vscode.SemanticTokensLegend(types.map((type) => `estimate-${type}`), ['declaration']);

/** Around an amount, so that it is not read as one of the figures of its line, on whatever ground a theme puts it. */
const GAP = '\u00a0';

/**
 * Amounts behind lines, totals above options, colours of names. The editor asks again by itself when the text of an
 * estimate changes; only a change in a file that it uses must be told.
 */
export class Margins implements vscode.InlayHintsProvider, vscode.CodeLensProvider, vscode.DocumentSemanticTokensProvider, vscode.Disposable {
  private readonly fresh = new vscode.EventEmitter<void>();
  private readonly subscriptions: vscode.Disposable[];
  readonly onDidChangeInlayHints = this.fresh.event;
  readonly onDidChangeCodeLenses = this.fresh.event;
  readonly onDidChangeSemanticTokens = this.fresh.event;
  private readonly versions = new Map<Key, number>();

  constructor(private readonly desk: Desk) {
    this.subscriptions = [
      this.fresh,
      desk.onFresh((key) => this.lookAt(key)),
      desk.onGone((key) => void this.versions.delete(key)),
      vscode.workspace.onDidChangeConfiguration((change) => {
        if (change.affectsConfiguration('steelyard')) this.fresh.fire();
      }),
    ];
  }

  async provideInlayHints(document: vscode.TextDocument, range: vscode.Range): Promise<vscode.InlayHint[]> {
    if (!isEstimate(document) || !isOn('amounts', document)) return [];
    const key = document.uri.toString();
    await this.desk.whole(key);
    return this.desk.service.inlayHints(key, { start: document.offsetAt(range.start), end: document.offsetAt(range.end) }).map(({ offset, label, says }) => {
      const hint = new vscode.InlayHint(document.positionAt(offset), GAP + label + GAP);
      hint.paddingLeft = true;
      hint.tooltip = says;
      return hint;
    });
  }

  async provideCodeLenses(document: vscode.TextDocument): Promise<vscode.CodeLens[]> {
    if (!isEstimate(document) || !isOn('totals', document)) return [];
    const key = document.uri.toString();
    await this.desk.whole(key);
    return this.desk.service.lenses(key).flatMap(({ range, label, figure }) => {
      const at = this.desk.positions.range({ uri: key, range });
      return at === undefined ? [] : [new vscode.CodeLens(at, { title: asLabel(label), command: 'steelyard.showComparison', arguments: figure === undefined ? [document.uri] : [document.uri, figure], tooltip: 'Show the comparison' })];
    });
  }

  async provideDocumentSemanticTokens(document: vscode.TextDocument): Promise<vscode.SemanticTokens> {
    const builder = new vscode.SemanticTokensBuilder(legend);
    if (!isEstimate(document)) return builder.build();
    const key = document.uri.toString();
    const { version } = document;
    await this.desk.whole(key);
    // Colours of a later text would be put onto the text that was asked about. This word makes the editor ask again.
    if (document.version !== version) throw new Error('busy');
    for (const one of this.desk.service.semanticTokens(key)) {
      const at = this.desk.positions.range({ uri: key, range: one.range });
      if (at !== undefined) builder.push(at, `estimate-${one.type}`, one.gives ? ['declaration'] : []);
    }
    return builder.build();
  }

  dispose(): void {
    this.subscriptions.forEach((one) => void one.dispose());
  }

  private lookAt(key: Key): void {
    const shown = vscode.window.visibleTextEditors.find(({ document }) => document.uri.toString() === key)?.document;
    if (shown === undefined) return;
    if (this.versions.get(key) === shown.version) this.fresh.fire();
    this.versions.set(key, shown.version);
  }
}

function isOn(setting: 'amounts' | 'totals', document: vscode.TextDocument): boolean {
  return vscode.workspace.getConfiguration('steelyard.show', document).get<boolean>(setting) !== false;
}
