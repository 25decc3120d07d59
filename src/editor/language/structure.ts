import * as vscode from 'vscode';
import type { Symbol } from '../../service/index.js';
import type { Desk } from '../desk.js';
import { isEstimate } from '../places.js';
import type { Shelf } from './shelf.js';

const kinds: Readonly<Record<Symbol['kind'], vscode.SymbolKind>> = {
  file: vscode.SymbolKind.File, shop: vscode.SymbolKind.Module, vehicle: vscode.SymbolKind.Object, finding: vscode.SymbolKind.Event, access: vscode.SymbolKind.Interface, labour: vscode.SymbolKind.Method,
  part: vscode.SymbolKind.Field, sublet: vscode.SymbolKind.Package, fee: vscode.SymbolKind.Number, tool: vscode.SymbolKind.Constant, option: vscode.SymbolKind.Class, other: vscode.SymbolKind.Key,
};

/** The outline, folds, growing selections, links to used files, and names of the whole workspace. */
export class Structure implements vscode.DocumentSymbolProvider, vscode.WorkspaceSymbolProvider, vscode.FoldingRangeProvider, vscode.SelectionRangeProvider, vscode.DocumentLinkProvider {
  constructor(private readonly desk: Desk, private readonly shelf: Shelf) {}

  async provideDocumentSymbols(document: vscode.TextDocument): Promise<vscode.DocumentSymbol[]> {
    if (!isEstimate(document)) return [];
    const key = document.uri.toString();
    await this.desk.whole(key);
    return this.desk.service.symbols(key).flatMap((one) => this.symbol(one, key) ?? []);
  }

  async provideWorkspaceSymbols(query: string): Promise<vscode.SymbolInformation[]> {
    const keys = await this.shelf.all();
    for (const key of keys) await this.desk.whole(key);
    return this.desk.service.workspaceSymbols(query, keys).flatMap(({ name, kind, place }) => {
      const location = this.desk.positions.location(place);
      return location === undefined ? [] : [new vscode.SymbolInformation(name, kinds[kind], '', location)];
    });
  }

  provideFoldingRanges(document: vscode.TextDocument): vscode.FoldingRange[] {
    return this.desk.service.folding(document.uri.toString()).map(({ startLine, endLine, kind }) => new vscode.FoldingRange(startLine, endLine, kind === 'comment' ? vscode.FoldingRangeKind.Comment : undefined));
  }

  provideSelectionRanges(document: vscode.TextDocument, positions: readonly vscode.Position[]): vscode.SelectionRange[] {
    const key = document.uri.toString();
    return positions.map((position) => {
      const ranges = this.desk.service.selectionRanges(key, document.offsetAt(position)).flatMap((range) => this.desk.positions.range({ uri: key, range }) ?? []);
      const whole = ranges.reduceRight<vscode.SelectionRange | undefined>((parent, range) => new vscode.SelectionRange(range, parent), undefined);
      return whole ?? new vscode.SelectionRange(new vscode.Range(position, position));
    });
  }

  provideDocumentLinks(document: vscode.TextDocument): vscode.DocumentLink[] {
    const key = document.uri.toString();
    return this.desk.service.links(key).flatMap(({ range, uri }) => {
      const at = this.desk.positions.range({ uri: key, range });
      return at === undefined ? [] : [new vscode.DocumentLink(at, vscode.Uri.parse(uri, true))];
    });
  }

  private symbol(one: Symbol, key: string): vscode.DocumentSymbol | undefined {
    const range = this.desk.positions.range({ uri: key, range: one.range });
    const name = this.desk.positions.range({ uri: key, range: one.nameRange });
    if (range === undefined || name === undefined) return undefined;
    // The editor refuses an empty name and a name outside of its line.
    const made = new vscode.DocumentSymbol(one.name === '' ? '(no name)' : one.name, one.detail, kinds[one.kind], range, range.contains(name) ? name : range);
    made.children = one.children.flatMap((child) => this.symbol(child, key) ?? []);
    return made;
  }
}
