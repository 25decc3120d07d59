import * as vscode from 'vscode';
import type { Place } from '../../service/index.js';
import type { Desk } from '../desk.js';
import { isEstimate } from '../places.js';
import type { Shelf } from './shelf.js';
import { toWorkspaceEdit } from './edits.js';

/** Definition, references, rename and highlights: where a name is given, and where it is used. */
export class Names implements vscode.DefinitionProvider, vscode.ReferenceProvider, vscode.RenameProvider, vscode.DocumentHighlightProvider {
  constructor(private readonly desk: Desk, private readonly shelf: Shelf) {}

  async provideDefinition(document: vscode.TextDocument, position: vscode.Position): Promise<vscode.Location[]> {
    const key = await this.ready(document);
    return key === undefined ? [] : this.locations(this.desk.service.definition(key, document.offsetAt(position)));
  }

  async provideReferences(document: vscode.TextDocument, position: vscode.Position): Promise<vscode.Location[]> {
    const key = await this.ready(document);
    if (key === undefined) return [];
    const others = await this.shelf.others(key, this.desk);
    return this.locations(this.desk.service.references(key, document.offsetAt(position), others));
  }

  async prepareRename(document: vscode.TextDocument, position: vscode.Position): Promise<{ range: vscode.Range; placeholder: string }> {
    const key = await this.ready(document);
    const found = key === undefined ? undefined : this.desk.service.prepareRename(key, document.offsetAt(position));
    if (found === undefined) throw new Error('There is no name here.');
    if ('refused' in found) throw new Error(found.refused);
    const range = this.desk.positions.range({ uri: document.uri.toString(), range: found.range });
    if (range === undefined) throw new Error('The text has changed; try again.');
    return { range, placeholder: found.name };
  }

  async provideRenameEdits(document: vscode.TextDocument, position: vscode.Position, name: string): Promise<vscode.WorkspaceEdit | undefined> {
    const key = await this.ready(document);
    if (key === undefined) return undefined;
    const others = await this.shelf.others(key, this.desk);
    const edits = this.desk.service.rename(key, document.offsetAt(position), name, others);
    if ('refused' in edits) throw new Error(edits.refused);
    return toWorkspaceEdit(edits, this.desk.positions);
  }

  async provideDocumentHighlights(document: vscode.TextDocument, position: vscode.Position): Promise<vscode.DocumentHighlight[]> {
    const key = await this.ready(document);
    if (key === undefined) return [];
    return this.desk.service.highlights(key, document.offsetAt(position)).flatMap(({ range, gives }) => {
      const at = this.desk.positions.range({ uri: key, range });
      return at === undefined ? [] : [new vscode.DocumentHighlight(at, gives ? vscode.DocumentHighlightKind.Write : vscode.DocumentHighlightKind.Read)];
    });
  }

  private async ready(document: vscode.TextDocument): Promise<string | undefined> {
    if (!isEstimate(document)) return undefined;
    const key = document.uri.toString();
    await this.desk.whole(key);
    return key;
  }

  private locations(places: readonly Place[]): vscode.Location[] {
    return places.flatMap((place) => this.desk.positions.location(place) ?? []);
  }
}
