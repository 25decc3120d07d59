import * as vscode from 'vscode';
import { asStatus } from '../as-text.js';
import type { Desk } from '../desk.js';
import { isEstimate } from '../places.js';

/** Beside the language's name in the status bar: the cheapest way out and its margin. */
export class Status implements vscode.Disposable {
  private readonly item = vscode.languages.createLanguageStatusItem('steelyard.pick', { language: 'steelyard' });
  private readonly subscriptions: vscode.Disposable[];

  constructor(private readonly desk: Desk) {
    this.item.name = 'Steelyard';
    this.item.command = { command: 'steelyard.showComparison', title: 'Show comparison' };
    this.subscriptions = [
      this.item,
      desk.onFresh((key) => {
        if (key === activeKey()) this.show();
      }),
      vscode.window.onDidChangeActiveTextEditor(() => this.show()),
    ];
  }

  dispose(): void {
    this.subscriptions.forEach((one) => void one.dispose());
  }

  private show(): void {
    if (vscode.window.activeTextEditor === undefined) return; // the panel has the keyboard: the pick stays
    const key = activeKey();
    const status = key === undefined ? undefined : this.desk.service.status(key);
    this.item.text = asStatus(status?.short ?? 'No options yet');
    this.item.detail = asStatus(status?.full ?? 'Write an option line to compare ways out.');
  }
}

function activeKey(): string | undefined {
  const document = vscode.window.activeTextEditor?.document;
  return document !== undefined && isEstimate(document) ? document.uri.toString() : undefined;
}
