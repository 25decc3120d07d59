import * as vscode from 'vscode';
import type { Completion } from '../../service/index.js';
import type { Desk } from '../desk.js';
import { isEstimate } from '../places.js';
import { today } from '../today.js';
import type { Shelf } from './shelf.js';

const kinds: Readonly<Record<Completion['kind'], vscode.CompletionItemKind>> = {
  kind: vscode.CompletionItemKind.Keyword, fact: vscode.CompletionItemKind.Property, choice: vscode.CompletionItemKind.EnumMember, unit: vscode.CompletionItemKind.Unit,
  name: vscode.CompletionItemKind.Reference, snippet: vscode.CompletionItemKind.Snippet, file: vscode.CompletionItemKind.File, figure: vscode.CompletionItemKind.Value,
  day: vscode.CompletionItemKind.Value,
};

/** Offers what can stand at the cursor, in the service's order. */
export class Completions implements vscode.CompletionItemProvider {
  static readonly triggers = [' ', ',', '"'];

  constructor(private readonly desk: Desk, private readonly shelf: Shelf) {}

  async provideCompletionItems(document: vscode.TextDocument, position: vscode.Position): Promise<vscode.CompletionList> {
    if (!isEstimate(document)) return new vscode.CompletionList();
    const key = document.uri.toString();
    const [, complete] = await Promise.all([this.desk.whole(key), this.shelf.soon()]);
    const items = this.desk.service.completions(key, document.offsetAt(position), today()).map((one) => this.item(one, key, document));
    // While files are looked for, the editor asks again at the next letter, and does not go on with a list without them.
    return new vscode.CompletionList(items, !complete);
  }

  private item(one: Completion, key: string, document: vscode.TextDocument): vscode.CompletionItem {
    const item = new vscode.CompletionItem(one.label, kinds[one.kind]);
    item.insertText = one.snippet ? new vscode.SnippetString(one.edit.text) : one.edit.text;
    const range = this.desk.positions.range({ uri: key, range: one.edit.range });
    if (range !== undefined) {
      item.range = range;
      item.filterText = foundBy(one, document.getText(range));
    }
    item.keepWhitespace = true;
    item.sortText = String(one.order).padStart(5, '0');
    if (one.detail !== undefined) item.detail = one.detail;
    if (one.says !== undefined) item.documentation = one.says;
    return item;
  }
}

/** The editor filters by what stands at the range: a title in quotes there, or a date that is to be another, must not hide the offer. */
function foundBy({ kind, label, edit }: Completion, standing: string): string {
  if (kind === 'day') return `${standing} ${label} ${edit.text}`.trimStart();
  return standing.startsWith('"') ? `"${label}` : label;
}
