import * as lsp from 'vscode-languageserver/node.js';
import type { TextDocument } from 'vscode-languageserver-textdocument';
import type { LanguageService } from '../../service/index.js';
import { action, completion, locations, Positions, selectionRange, semanticTokens, symbol, symbolKind, tokenModifiers, tokenTypes, workspaceEdit, type Addresses } from './convert.js';
import { todayOf } from '../today.js';
import type { Client } from './settings.js';
import { keyOf, type Workspace } from './workspace.js';

export const capabilities: lsp.ServerCapabilities = {
  textDocumentSync: { openClose: true, change: lsp.TextDocumentSyncKind.Incremental, save: true },
  completionProvider: { triggerCharacters: [' ', ',', '"'] },
  hoverProvider: true,
  definitionProvider: true,
  referencesProvider: true,
  renameProvider: { prepareProvider: true },
  documentSymbolProvider: true,
  workspaceSymbolProvider: true,
  foldingRangeProvider: true,
  selectionRangeProvider: true,
  documentHighlightProvider: true,
  documentLinkProvider: {},
  inlayHintProvider: true,
  codeLensProvider: {},
  semanticTokensProvider: { legend: { tokenTypes: [...tokenTypes], tokenModifiers: [...tokenModifiers] }, full: true },
  documentFormattingProvider: true,
  documentRangeFormattingProvider: true,
  documentOnTypeFormattingProvider: { firstTriggerCharacter: '\n' },
  codeActionProvider: { codeActionKinds: [lsp.CodeActionKind.QuickFix, lsp.CodeActionKind.Refactor] },
  workspace: { workspaceFolders: { supported: true, changeNotifications: true } },
};

/** An open document that something is asked about. */
interface Asked {
  readonly key: string;
  readonly document: TextDocument;
  readonly positions: Positions;
}

/** Answers every request from the service. */
export function answer(connection: lsp.Connection, service: LanguageService, workspace: Workspace, addresses: Addresses, client: () => Client): void {
  /** A document that is not open has no answer. */
  const on = <P extends { readonly textDocument: lsp.TextDocumentIdentifier }, R>(work: (asked: Asked, params: P) => R) => (params: P): R | null => {
    const key = keyOf(params.textDocument.uri);
    const document = workspace.document(key);
    return document === undefined ? null : work({ key, document, positions: new Positions(document) }, params);
  };
  const at = <P extends lsp.TextDocumentPositionParams, R>(work: (asked: Asked, offset: number, params: P) => R) => on((asked: Asked, params: P) => work(asked, asked.document.offsetAt(params.position), params));
  const others = (key: string) => workspace.estimates().filter((other) => other !== key);
  const refuse = (why: string): never => {
    throw new lsp.ResponseError(lsp.LSPErrorCodes.RequestFailed, why);
  };

  connection.onCompletion(at(({ key, positions }, offset) => service.completions(key, offset, todayOf({})).map((one) => completion(one, positions, client()))));
  connection.onHover(at(({ key, positions }, offset) => {
    const hover = service.hover(key, offset);
    return hover === undefined ? null : { contents: { kind: 'plaintext' as const, value: hover.paragraphs.join('\n\n') }, range: positions.range(hover.range) };
  }));

  connection.onDefinition(at(({ key }, offset) => locations(service.definition(key, offset), addresses)));
  connection.onReferences(at(({ key }, offset, { context }: lsp.ReferenceParams) => {
    const places = service.references(key, offset, others(key));
    if (context.includeDeclaration) return locations(places, addresses);
    const given = service.definition(key, offset);
    return locations(places.filter((one) => !given.some(({ uri, range }) => uri === one.uri && range.start === one.range.start)), addresses);
  }));
  connection.onDocumentHighlight(at(({ key, positions }, offset) => service.highlights(key, offset).map(({ range, gives }) => ({ range: positions.range(range), kind: gives ? lsp.DocumentHighlightKind.Write : lsp.DocumentHighlightKind.Read }))));
  connection.onPrepareRename(at(({ key, positions }, offset) => {
    const found = service.prepareRename(key, offset);
    if (found === undefined) return null;
    return 'refused' in found ? refuse(found.refused) : { range: positions.range(found.range), placeholder: found.name };
  }));
  connection.onRenameRequest(at(({ key }, offset, { newName }: lsp.RenameParams) => {
    const edits = service.rename(key, offset, newName, others(key));
    return 'refused' in edits ? refuse(edits.refused) : workspaceEdit(edits, addresses);
  }));

  connection.onDocumentSymbol(on(({ key, positions }) => service.symbols(key).map((one) => symbol(one, positions))));
  connection.onWorkspaceSymbol(({ query }) => service.workspaceSymbols(query, workspace.estimates()).flatMap(({ name, kind, place }) => locations([place], addresses).map((location) => ({ name, kind: symbolKind(kind), location }))));
  connection.onFoldingRanges(on(({ key }) => service.folding(key).map(({ startLine, endLine, kind }) => ({ startLine, endLine, ...(kind === 'comment' ? { kind: lsp.FoldingRangeKind.Comment } : {}) }))));
  connection.onSelectionRanges(on(({ key, document, positions }, params: lsp.SelectionRangeParams) =>
    params.positions.map((position) => selectionRange(service.selectionRanges(key, document.offsetAt(position)).map((range) => positions.range(range)), position))));
  connection.onDocumentLinks(on(({ key, positions }) => service.links(key).map(({ range, uri }) => ({ range: positions.range(range), target: workspace.shown(uri) }))));

  connection.languages.inlayHint.on(on(({ key, document, positions }, { range }: lsp.InlayHintParams) =>
    service.inlayHints(key, positions.offsets(range)).map(({ offset, label, says }) => ({ position: document.positionAt(offset), label, tooltip: says, paddingLeft: true }))));
  // A lens only says something here: the comparison page belongs to VS Code.
  connection.onCodeLens(on(({ key, positions }) => service.lenses(key).map(({ range, label }) => ({ range: positions.range(range), command: { title: label, command: '' } }))));
  connection.languages.semanticTokens.on((params) => on(({ key, positions }) => semanticTokens(service.semanticTokens(key), positions))(params) ?? { data: [] });

  connection.onDocumentFormatting(on(({ key, positions }) => service.format(key).map((edit) => positions.edit(edit))));
  connection.onDocumentRangeFormatting(on(({ key, positions }, { range }: lsp.DocumentRangeFormattingParams) => service.format(key, positions.offsets(range)).map((edit) => positions.edit(edit))));
  connection.onDocumentOnTypeFormatting(at(({ key, positions }, offset) => service.formatOnType(key, offset).map((edit) => positions.edit(edit))));
  connection.onCodeAction(on(({ key, positions }, { range, context }: lsp.CodeActionParams) =>
    service.actions(key, positions.offsets(range)).flatMap((one) => action(one, context, addresses, client()) ?? [])));
}
