import * as vscode from 'vscode';
import { ProblemsByFile, type Diagnostic } from '../service/index.js';
import type { Desk } from './desk.js';
import { explaining } from './manual.js';
import { isEstimate, type Key } from './places.js';

const severities: Readonly<Record<Diagnostic['severity'], vscode.DiagnosticSeverity>> = {
  error: vscode.DiagnosticSeverity.Error,
  warning: vscode.DiagnosticSeverity.Warning,
  advice: vscode.DiagnosticSeverity.Information,
};

/** Shows the problems of open estimates, each in the file where it is. */
export class Problems implements vscode.Disposable {
  private readonly collection = vscode.languages.createDiagnosticCollection('steelyard');
  private readonly problems = new ProblemsByFile();
  private readonly said = new Map<Key, string>();
  private readonly subscriptions: vscode.Disposable[];

  constructor(private readonly desk: Desk) {
    this.subscriptions = [
      this.collection,
      desk.onFresh((key) => this.put(key, isOpenEstimate(key) ? desk.service.allDiagnostics(key) : undefined)),
      desk.onGone((key) => this.put(key, undefined)),
    ];
  }

  /** Shows the problems of an estimate that is not open, until it is opened and closed again, or checked anew. */
  showUnopened(estimate: Key): void {
    if (!isOpenEstimate(estimate)) this.put(estimate, this.desk.service.allDiagnostics(estimate));
  }

  /** What is shown in a file. */
  in(file: Key): readonly Diagnostic[] {
    return this.problems.in(file);
  }

  dispose(): void {
    this.subscriptions.forEach((one) => void one.dispose());
  }

  private put(estimate: Key, files: ReadonlyMap<Key, readonly Diagnostic[]> | undefined): void {
    for (const file of this.problems.put(estimate, files)) {
      const shown = this.in(file).flatMap((one) => this.shown(one));
      // Whoever listens is told only of what is new: an estimate is looked at again more often than it changes.
      const said = JSON.stringify(shown);
      if (said === (this.said.get(file) ?? '[]')) continue;
      this.said.set(file, said);
      this.collection.set(vscode.Uri.parse(file, true), shown);
    }
  }

  private shown(diagnostic: Diagnostic): vscode.Diagnostic[] {
    const { positions } = this.desk;
    const range = positions.range({ uri: diagnostic.uri, range: diagnostic.range });
    if (range === undefined) return [];
    const shown = new vscode.Diagnostic(range, diagnostic.text, severities[diagnostic.severity]);
    shown.source = 'Steelyard';
    shown.code = { value: diagnostic.code, target: explaining(diagnostic.code) };
    // The editor fades what nothing uses.
    if (diagnostic.code === 'unused-line') shown.tags = [vscode.DiagnosticTag.Unnecessary];
    const related = diagnostic.related === undefined ? undefined : positions.location(diagnostic.related.place);
    if (related !== undefined) shown.relatedInformation = [new vscode.DiagnosticRelatedInformation(related, diagnostic.related?.says ?? '')];
    return [shown];
  }
}

function isOpenEstimate(key: Key): boolean {
  return vscode.workspace.textDocuments.some((document) => document.uri.toString() === key && isEstimate(document));
}
