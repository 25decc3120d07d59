import * as lsp from 'vscode-languageserver/node.js';

import { TextDocument } from 'vscode-languageserver-textdocument';
import { createLanguageService, type SemanticToken } from '../../service/index.js';
import { action, completion, diagnostic, Positions, symbol, symbolKind, workspaceEdit, type PositionsOf } from './convert.js';
import { Workspace } from './workspace.js';

const TOKEN_TYPES: readonly SemanticToken['type'][] = ['access', 'labour', 'part', 'sublet', 'fee', 'tool', 'finding', 'option', 'rate', 'unknown'];
const TOKEN_MODIFIERS = ['declaration', 'deprecated'];

/** `steelyard lsp --stdio`: the language service for any editor that speaks the Language Server Protocol. */
export function serve(input: NodeJS.ReadableStream, output: NodeJS.WritableStream, version: string): void {
  const connection = lsp.createConnection(input, output);
  const documents = new lsp.TextDocuments(TextDocument);
  const workspace = new Workspace(documents);
  const service = createLanguageService(workspace.host);

  const positionsOf: PositionsOf = (uri) => {
    const open = documents.get(uri);
    const text = open === undefined ? service.tree(uri)?.text : undefined;
    return open !== undefined ? new Positions(open) : text === undefined ? undefined : new Positions(TextDocument.create(uri, 'steelyard', 0, text));
  };
  /** Runs a request on an open document; a document that is not open has no answer. */
  const on = <P extends { readonly textDocument: { readonly uri: string } }, R>(work: (uri: string, positions: Positions, document: TextDocument, params: P) => R) => (params: P): R | null => {
    const document = documents.get(params.textDocument.uri);
    return document === undefined ? null : work(document.uri, new Positions(document), document, params);
  };
  const locations = (places: readonly { readonly uri: string; readonly range: { readonly start: number; readonly end: number } }[]): lsp.Location[] => places.flatMap(({ uri, range }) => {
    const positions = positionsOf(uri);
    return positions === undefined ? [] : [{ uri, range: positions.range(range) }];
  });
  const others = (uri: string) => workspace.estimates().filter((other) => other !== uri);

  connection.onInitialize(({ workspaceFolders }) => {
    workspace.setRoots((workspaceFolders ?? []).map(({ uri }) => uri));
    return { capabilities: capabilities(), serverInfo: { name: 'steelyard', version } };
  });

  const publish = (uri: string) => {
    const document = documents.get(uri);
    if (document === undefined) return;
    const positions = new Positions(document);
    void connection.sendDiagnostics({ uri, version: document.version, diagnostics: service.diagnostics(uri).map((one) => diagnostic(one, positions, positionsOf)) });
  };
  const publishUsersOf = (changed: string) => documents.all().filter(({ uri }) => uri === changed || service.uses(uri).includes(changed)).forEach(({ uri }) => publish(uri));
  documents.onDidChangeContent(({ document }) => publishUsersOf(document.uri));
  documents.onDidClose(({ document }) => {
    void connection.sendDiagnostics({ uri: document.uri, diagnostics: [] });
    workspace.changed(document.uri);
    service.forget(document.uri);
    publishUsersOf(document.uri);
  });
  connection.onDidChangeWatchedFiles(({ changes }) => changes.forEach(({ uri }) => {
    workspace.changed(uri);
    publishUsersOf(uri);
  }));

  connection.onCompletion(on((uri, positions, document, { position }: lsp.CompletionParams) => service.completions(uri, document.offsetAt(position)).map((one) => completion(one, positions))));
  connection.onHover(on((uri, positions, document, { position }: lsp.HoverParams) => {
    const hover = service.hover(uri, document.offsetAt(position));
    return hover === undefined ? null : { contents: { kind: 'plaintext' as const, value: hover.paragraphs.join('\n\n') }, range: positions.range(hover.range) };
  }));
  connection.onDefinition(on((uri, _, document, { position }: lsp.DefinitionParams) => locations(service.definition(uri, document.offsetAt(position)))));
  connection.onReferences(on((uri, _, document, { position }: lsp.ReferenceParams) => locations(service.references(uri, document.offsetAt(position), others(uri)))));
  connection.onPrepareRename(on((uri, positions, document, { position }: lsp.PrepareRenameParams) => {
    const found = service.prepareRename(uri, document.offsetAt(position));
    if (found === undefined) return null;
    if ('refused' in found) throw new lsp.ResponseError(lsp.ErrorCodes.InvalidRequest, found.refused);
    return { range: positions.range(found.range), placeholder: found.name };
  }));
  connection.onRenameRequest(on((uri, _, document, { position, newName }: lsp.RenameParams) => {
    const edits = service.rename(uri, document.offsetAt(position), newName, others(uri));
    if ('refused' in edits) throw new lsp.ResponseError(lsp.ErrorCodes.InvalidRequest, edits.refused);
    return workspaceEdit(edits, positionsOf);
  }));
  connection.onDocumentSymbol(on((uri, positions) => service.symbols(uri).map((one) => symbol(one, positions))));
  connection.onWorkspaceSymbol(({ query }) => service.workspaceSymbols(query, workspace.estimates()).flatMap(({ name, kind, place }) => locations([place]).map((location) => ({ name, kind: symbolKind(kind), location }))));
  connection.onFoldingRanges(on((uri) => service.folding(uri).map(({ startLine, endLine, kind }) => ({ startLine, endLine, ...(kind === 'comment' ? { kind: lsp.FoldingRangeKind.Comment } : {}) }))));
  connection.onSelectionRanges(on((uri, positions, document, params: lsp.SelectionRangeParams) => params.positions.map((position) => {
    const ranges = service.selectionRanges(uri, document.offsetAt(position)).map((range) => positions.range(range));
    return ranges.reduceRight<lsp.SelectionRange | undefined>((parent, range) => (parent === undefined ? { range } : { range, parent }), undefined) ?? { range: { start: position, end: position } };
  })));
  connection.onDocumentHighlight(on((uri, positions, document, { position }: lsp.DocumentHighlightParams) => service.highlights(uri, document.offsetAt(position)).map(({ range, gives }) => ({ range: positions.range(range), kind: gives ? lsp.DocumentHighlightKind.Write : lsp.DocumentHighlightKind.Read }))));
  connection.onDocumentLinks(on((uri, positions) => service.links(uri).map(({ range, uri: target }) => ({ range: positions.range(range), target }))));
  connection.languages.inlayHint.on(on((uri, _, document, { range }: lsp.InlayHintParams) => service.inlayHints(uri, { start: document.offsetAt(range.start), end: document.offsetAt(range.end) }).map((one) => ({ position: document.positionAt(one.offset), label: one.label, tooltip: one.says, paddingLeft: true }))));
  connection.languages.semanticTokens.on(({ textDocument }) => tokens(textDocument.uri));
  connection.onDocumentFormatting(on((uri, positions) => service.format(uri).map((edit) => positions.edit(edit))));
  connection.onDocumentRangeFormatting(on((uri, positions, document, { range }: lsp.DocumentRangeFormattingParams) => service.format(uri, { start: document.offsetAt(range.start), end: document.offsetAt(range.end) }).map((edit) => positions.edit(edit))));
  connection.onDocumentOnTypeFormatting(on((uri, positions, document, { position }: lsp.DocumentOnTypeFormattingParams) => service.formatOnType(uri, document.offsetAt(position)).map((edit) => positions.edit(edit))));
  connection.onCodeAction(on((uri, _, document, { range, context }: lsp.CodeActionParams) => service.actions(uri, { start: document.offsetAt(range.start), end: document.offsetAt(range.end) }).map((one) => action(one, context.diagnostics, positionsOf))));

  documents.listen(connection);
  connection.listen();

  function tokens(uri: string): lsp.SemanticTokens {
    const document = documents.get(uri);
    const data: number[] = [];
    let line = 0;
    let character = 0;
    for (const one of document === undefined ? [] : service.semanticTokens(uri)) {
      const start = (document as TextDocument).positionAt(one.range.start);
      data.push(start.line - line, start.line === line ? start.character - character : start.character, one.range.end - one.range.start, TOKEN_TYPES.indexOf(one.type), (one.gives ? 1 : 0) | (one.unused ? 2 : 0));
      ({ line, character } = start);
    }
    return { data };
  }
}

function capabilities(): lsp.ServerCapabilities {
  return {
    textDocumentSync: lsp.TextDocumentSyncKind.Incremental,
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
    semanticTokensProvider: { legend: { tokenTypes: [...TOKEN_TYPES], tokenModifiers: TOKEN_MODIFIERS }, full: true },
    documentFormattingProvider: true,
    documentRangeFormattingProvider: true,
    documentOnTypeFormattingProvider: { firstTriggerCharacter: '\n' },
    codeActionProvider: { codeActionKinds: [lsp.CodeActionKind.QuickFix, lsp.CodeActionKind.Refactor] },
  };
}
