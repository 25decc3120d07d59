import * as vscode from 'vscode';
import { ShopBook } from './book.js';
import { ChangesPanel } from './changes/changes-panel.js';
import { WhatChanged } from './changes/what-changed.js';
import { Desk } from './desk.js';
import { EstimatesView } from './estimates-view.js';
import { Hovers } from './hovers.js';
import { Guarded } from './guarded.js';
import type { LeadsOut } from './links.js';
import { ComparisonPanel } from './panel.js';
import { isEstimate } from './places.js';
import { registerManual } from './manual.js';
import { Problems } from './problems.js';
import { writeQuote } from './quote.js';
import { Actions } from './language/actions.js';
import { checkAll } from './language/check-all.js';
import { Completions } from './language/completions.js';
import { Margins, legend } from './language/margins.js';
import { Names } from './language/navigation.js';
import { newEstimate } from './language/new-estimate.js';
import { Shelf } from './language/shelf.js';
import { Status } from './language/status.js';
import { Structure } from './language/structure.js';
import { showTotalsUsing } from './language/totals-using.js';
import { Formatting, PastedRows } from './language/writing.js';

/** Puts the parts together; the same on every host but for how links are followed. */
export function start(context: vscode.ExtensionContext, leadsOut: LeadsOut): void {
  const language: vscode.DocumentSelector = { language: 'steelyard' };
  const shelf = new Shelf();
  const guarded = new Guarded(leadsOut);
  const book = new ShopBook(guarded, shelf.onChanged);
  const desk = new Desk(guarded, () => shelf.keys, () => book.now());
  const problems = new Problems(desk);
  const dist = vscode.Uri.joinPath(context.extensionUri, 'dist');
  const panel = new ComparisonPanel(desk, dist, guarded);
  const changesPanel = new ChangesPanel(desk, dist);
  const whatChanged = new WhatChanged(desk, changesPanel, shelf, guarded);
  context.subscriptions.push(
    desk,
    problems,
    panel,
    shelf,
    book,
    book.onChanged(() => desk.allFresh()),
    changesPanel,
    shelf.onChanged((key) => desk.changedOnDisk(key)),
    new EstimatesView(desk, shelf),
    registerManual(context.extensionUri),
    ...languageFeatures(language, desk, shelf),
    vscode.window.registerWebviewPanelSerializer(ComparisonPanel.type, panel),
    vscode.commands.registerCommand('steelyard.showComparison', (of: unknown, at: unknown) => {
      // A line above the text also says at which figure. The button in a title says of which file; the palette and the keyboard mean the active one.
      const uri = of instanceof vscode.Uri ? of : vscode.window.activeTextEditor?.document.uri;
      const document = vscode.workspace.textDocuments.find((one) => one.uri.toString() === uri?.toString());
      if (document !== undefined && isEstimate(document)) panel.show(document.uri.toString(), typeof at === 'string' ? at : undefined);
    }),
    vscode.commands.registerCommand('steelyard.goToEstimate', () => panel.goToEstimate()),
    vscode.commands.registerCommand('steelyard.newEstimate', () => newEstimate(desk, shelf)),
    vscode.commands.registerCommand('steelyard.showTotalsUsing', () => showTotalsUsing(desk)),
    vscode.commands.registerCommand('steelyard.writeQuote', (of: unknown) => writeQuote(of instanceof vscode.Uri ? of : undefined, desk, guarded, (key) => whatChanged.askVersion(key, 'Which version was authorised?'))),
    vscode.commands.registerCommand('steelyard.whatChanged', (of: unknown) => whatChanged.ask(of instanceof vscode.Uri ? of : undefined)),
    vscode.commands.registerCommand('steelyard.whatChangedSinceCommit', (of: unknown) => whatChanged.sinceLastCommit(of instanceof vscode.Uri ? of : undefined)),
    vscode.commands.registerCommand('steelyard.whatChangedInDifference', () => whatChanged.inDifference()),
    vscode.commands.registerCommand('steelyard.showBook', () => book.show()),
    vscode.commands.registerCommand('steelyard.checkAll', () => checkAll(desk, shelf, problems)),
  );
  desk.start();
}

/** One adapter for each feature of the language service; all are thin. */
function languageFeatures(language: vscode.DocumentSelector, desk: Desk, shelf: Shelf): vscode.Disposable[] {
  const names = new Names(desk, shelf);
  const structure = new Structure(desk, shelf);
  const margins = new Margins(desk);
  const formatting = new Formatting(desk);
  return [
    vscode.languages.registerHoverProvider(language, new Hovers(desk)),
    vscode.languages.registerCompletionItemProvider(language, new Completions(desk, shelf), ...Completions.triggers),
    vscode.languages.registerCodeActionsProvider(language, new Actions(desk), Actions.metadata),
    vscode.languages.registerDefinitionProvider(language, names),
    vscode.languages.registerReferenceProvider(language, names),
    vscode.languages.registerRenameProvider(language, names),
    vscode.languages.registerDocumentHighlightProvider(language, names),
    vscode.languages.registerDocumentSymbolProvider(language, structure),
    vscode.languages.registerWorkspaceSymbolProvider(structure),
    vscode.languages.registerFoldingRangeProvider(language, structure),
    vscode.languages.registerSelectionRangeProvider(language, structure),
    vscode.languages.registerDocumentLinkProvider(language, structure),
    vscode.languages.registerInlayHintsProvider(language, margins),
    vscode.languages.registerCodeLensProvider(language, margins),
    vscode.languages.registerDocumentSemanticTokensProvider(language, margins, legend),
    vscode.languages.registerDocumentFormattingEditProvider(language, formatting),
    vscode.languages.registerDocumentRangeFormattingEditProvider(language, formatting),
    vscode.languages.registerOnTypeFormattingEditProvider(language, formatting, '\n'),
    vscode.languages.registerDocumentPasteEditProvider(language, new PastedRows(desk), PastedRows.metadata),
    margins,
    new Status(desk),
  ];
}
