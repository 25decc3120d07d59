import './no-eval.js';
import * as vscode from 'vscode';
import { Desk } from './desk.js';
import { Hovers } from './hovers.js';
import type { LeadsOut } from './links.js';
import { ComparisonPanel } from './panel.js';
import { isEstimate } from './places.js';
import { Problems } from './problems.js';
import { QuickFixes } from './quick-fixes.js';

/** Puts the parts together; the same on every host but for how links are followed. */
export function start(context: vscode.ExtensionContext, leadsOut: LeadsOut): void {
  const language: vscode.DocumentSelector = { language: 'steelyard' };
  const desk = new Desk(leadsOut);
  const problems = new Problems(desk);
  const panel = new ComparisonPanel(desk, vscode.Uri.joinPath(context.extensionUri, 'dist'));
  context.subscriptions.push(
    desk,
    problems,
    panel,
    vscode.languages.registerHoverProvider(language, new Hovers(desk)),
    vscode.languages.registerCodeActionsProvider(language, new QuickFixes(desk, problems), QuickFixes.kinds),
    vscode.window.registerWebviewPanelSerializer(ComparisonPanel.type, panel),
    vscode.commands.registerCommand('steelyard.showComparison', (of: unknown) => {
      // The button in a title says of which file; the palette and the keyboard mean the active one.
      const uri = of instanceof vscode.Uri ? of : vscode.window.activeTextEditor?.document.uri;
      const document = vscode.workspace.textDocuments.find((one) => one.uri.toString() === uri?.toString());
      if (document !== undefined && isEstimate(document)) panel.show(document.uri.toString());
    }),
    vscode.commands.registerCommand('steelyard.goToEstimate', () => panel.goToEstimate()),
  );
  desk.start();
}
