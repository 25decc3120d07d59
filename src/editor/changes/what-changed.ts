import * as vscode from 'vscode';
import { asItems, asNotice } from '../as-text.js';
import type { Desk } from '../desk.js';
import type { Shelf } from '../language/shelf.js';
import type { Guarded } from '../guarded.js';
import { isEstimate, nameOf, type Key } from '../places.js';
import type { ChangesPanel } from './changes-panel.js';
import { repositoryOf, type Commit } from './git-extension.js';
import { asItStands, asSaved, asShown, inCommit, type Version } from './versions.js';

const MOST_COMMITS = 100;

/** Asks what an estimate is to be compared with, and shows what changed since. */
export class WhatChanged {
  constructor(private readonly desk: Desk, private readonly panel: ChangesPanel, private readonly shelf: Shelf, private readonly guarded: Guarded) {}

  /** The command in the palette and in the title of an estimate. */
  async ask(of: vscode.Uri | undefined): Promise<void> {
    const key = this.estimateOf(of);
    const before = key === undefined ? undefined : await this.askVersion(key, `What is ${nameOf(key)} compared with?`);
    if (key !== undefined && before !== undefined) await this.show(key, before);
  }

  /** Asks for another version of an estimate, or for another estimate. */
  async askVersion(key: Key, placeHolder: string): Promise<Version | undefined> {
    const items: readonly (vscode.QuickPickItem & { readonly take: () => Promise<Version | undefined> })[] = [
      { iconPath: new vscode.ThemeIcon('git-commit'), label: 'Since the last commit', take: () => Promise.resolve(inCommit(key, 'HEAD', 'the last commit')) },
      { iconPath: new vscode.ThemeIcon('history'), label: 'Since another commit…', take: () => this.pickCommit(key) },
      { iconPath: new vscode.ThemeIcon('save'), label: 'Since it was saved', take: () => Promise.resolve(asSaved(key, this.guarded)) },
      { iconPath: new vscode.ThemeIcon('file'), label: 'From another estimate…', take: () => this.pickFile(key) },
    ];
    return await (await vscode.window.showQuickPick(asItems(items), { placeHolder }))?.take();
  }

  async sinceLastCommit(of: vscode.Uri | undefined): Promise<void> {
    const key = this.estimateOf(of);
    if (key !== undefined) await this.show(key, inCommit(key, 'HEAD', 'the last commit'));
  }

  /** The button on a difference of texts: both sides as they are shown there. */
  async inDifference(): Promise<void> {
    const input = vscode.window.tabGroups.activeTabGroup.activeTab?.input;
    if (!(input instanceof vscode.TabInputTextDiff)) return;
    const [before, after] = await Promise.all([input.original, input.modified].map(async (uri) => await vscode.workspace.openTextDocument(uri)));
    if (before === undefined || after === undefined) return;
    const key = [after, before].find((one) => isEstimate(one))?.uri.toString() ?? after.uri.with({ scheme: 'file', query: '' }).toString();
    const sideOf = (document: vscode.TextDocument, name: string): Version => (document.uri.toString() === key ? asItStands(key, this.desk) : asShown(document, name, key));
    await this.tell(this.panel.show({ estimate: key, before: sideOf(before, 'left'), after: sideOf(after, 'right') }));
  }

  private async show(key: Key, before: Version): Promise<void> {
    await this.tell(this.panel.show({ estimate: key, before, after: asItStands(key, this.desk) }));
  }

  private async tell(outcome: Promise<string | undefined>): Promise<void> {
    const trouble = await outcome;
    if (trouble !== undefined) void vscode.window.showInformationMessage(asNotice(trouble));
  }

  private estimateOf(of: vscode.Uri | undefined): Key | undefined {
    const uri = of ?? vscode.window.activeTextEditor?.document.uri;
    const document = vscode.workspace.textDocuments.find((one) => one.uri.toString() === uri?.toString());
    return document === undefined || !isEstimate(document) ? undefined : document.uri.toString();
  }

  private async pickCommit(key: Key): Promise<Version | undefined> {
    const uri = vscode.Uri.parse(key, true);
    const repository = await repositoryOf(uri);
    if ('why' in repository) {
      void vscode.window.showInformationMessage(asNotice(repository.why));
      return undefined;
    }
    const commits = await repository.log({ maxEntries: MOST_COMMITS, path: uri.fsPath }).catch((): readonly Commit[] => []);
    if (commits.length === 0) {
      void vscode.window.showInformationMessage(asNotice(`${nameOf(key)} is in no commit yet.`));
      return undefined;
    }
    const items = commits.map(({ hash, message, authorDate, authorName }) => ({ label: message.split('\n')[0] ?? '', description: hash.slice(0, 8), detail: [authorDate?.toISOString().slice(0, 10), authorName].filter((one) => one !== undefined).join(', '), hash, name: `${hash.slice(0, 8)} “${message.split('\n')[0] ?? ''}”` }));
    const picked = await vscode.window.showQuickPick(asItems(items), { placeHolder: 'Since which commit?', matchOnDescription: true, matchOnDetail: true });
    return picked === undefined ? undefined : inCommit(key, picked.hash, picked.name);
  }

  private async pickFile(key: Key): Promise<Version | undefined> {
    const items = (await this.shelf.all()).filter((one) => one !== key).map((one) => ({ label: nameOf(one), description: vscode.workspace.asRelativePath(vscode.Uri.parse(one, true)), key: one }));
    const picked = await vscode.window.showQuickPick(asItems(items), { placeHolder: 'From which estimate?', matchOnDescription: true });
    return picked === undefined ? undefined : asItStands(picked.key, this.desk, nameOf(picked.key));
  }
}
