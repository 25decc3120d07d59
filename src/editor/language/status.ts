import * as vscode from 'vscode';
import { wordsOf } from '../../report/index.js';
import { asStatus } from '../as-text.js';
import type { Desk } from '../desk.js';
import { isEstimate, type Key } from '../places.js';

const NOTHING = { short: 'No options yet', full: 'Write an option line to compare ways out.' };

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
    const { short, full } = key === undefined ? NOTHING : this.statusOf(key);
    this.item.text = asStatus(short);
    this.item.detail = asStatus(full);
  }

  /** A pick from before must not stand there as today's: where working it out threw, that is what is said. */
  private statusOf(key: Key): typeof NOTHING {
    try {
      return this.desk.service.status(key) ?? NOTHING;
    } catch (error) {
      return { short: 'not worked out', full: `Working out the figures stopped with “${wordsOf(error)}”. Please report it.` };
    }
  }
}

function activeKey(): string | undefined {
  const document = vscode.window.activeTextEditor?.document;
  return document !== undefined && isEstimate(document) ? document.uri.toString() : undefined;
}
