import * as lsp from 'vscode-languageserver/node.js';
import type { TextDocument } from 'vscode-languageserver-textdocument';
import type { Action, Completion, Diagnostic, FileEdits, Symbol, TextEdit } from '../../service/index.js';

/** Turns offsets into the protocol's lines and characters; one for each text. */
export class Positions {
  constructor(private readonly document: TextDocument) {}

  range(range: { readonly start: number; readonly end: number }): lsp.Range {
    return { start: this.document.positionAt(range.start), end: this.document.positionAt(range.end) };
  }

  edit(edit: TextEdit): lsp.TextEdit {
    return { range: this.range(edit.range), newText: edit.text };
  }
}

/** The positions of any file the service knows. */
export type PositionsOf = (uri: string) => Positions | undefined;

const severities = { error: lsp.DiagnosticSeverity.Error, warning: lsp.DiagnosticSeverity.Warning, advice: lsp.DiagnosticSeverity.Information } as const;

export function diagnostic(one: Diagnostic, positions: Positions, of: PositionsOf): lsp.Diagnostic {
  const related = one.related === undefined ? undefined : of(one.related.place.uri);
  return {
    range: positions.range(one.range),
    severity: severities[one.severity],
    code: one.code,
    source: 'Steelyard',
    message: one.text,
    ...(one.related === undefined || related === undefined ? {} : { relatedInformation: [{ location: { uri: one.related.place.uri, range: related.range(one.related.place.range) }, message: one.related.says }] }),
  };
}

const completionKinds: Readonly<Record<Completion['kind'], lsp.CompletionItemKind>> = {
  kind: lsp.CompletionItemKind.Keyword, fact: lsp.CompletionItemKind.Property, choice: lsp.CompletionItemKind.EnumMember, unit: lsp.CompletionItemKind.Unit,
  name: lsp.CompletionItemKind.Reference, snippet: lsp.CompletionItemKind.Snippet, file: lsp.CompletionItemKind.File, figure: lsp.CompletionItemKind.Value,
};

export function completion(one: Completion, positions: Positions): lsp.CompletionItem {
  return {
    label: one.label,
    kind: completionKinds[one.kind],
    sortText: String(one.order).padStart(5, '0'),
    textEdit: positions.edit(one.edit),
    insertTextFormat: one.snippet ? lsp.InsertTextFormat.Snippet : lsp.InsertTextFormat.PlainText,
    ...(one.detail === undefined ? {} : { detail: one.detail }),
    ...(one.says === undefined ? {} : { documentation: one.says }),
  };
}

const symbolKinds: Readonly<Record<Symbol['kind'], lsp.SymbolKind>> = {
  file: lsp.SymbolKind.File, shop: lsp.SymbolKind.Module, vehicle: lsp.SymbolKind.Object, finding: lsp.SymbolKind.Event, access: lsp.SymbolKind.Interface, labour: lsp.SymbolKind.Method,
  part: lsp.SymbolKind.Field, sublet: lsp.SymbolKind.Package, fee: lsp.SymbolKind.Number, tool: lsp.SymbolKind.Constant, option: lsp.SymbolKind.Class, other: lsp.SymbolKind.Key,
};

export function symbol(one: Symbol, positions: Positions): lsp.DocumentSymbol {
  return {
    name: one.name === '' ? '(no name)' : one.name,
    detail: one.detail,
    kind: symbolKinds[one.kind],
    range: positions.range(one.range),
    selectionRange: positions.range(one.nameRange),
    children: one.children.map((child) => symbol(child, positions)),
  };
}

export function symbolKind(kind: Symbol['kind']): lsp.SymbolKind {
  return symbolKinds[kind];
}

export function workspaceEdit(edits: FileEdits, of: PositionsOf): lsp.WorkspaceEdit {
  const changes: { [uri: string]: lsp.TextEdit[] } = {};
  for (const [uri, list] of edits) {
    const positions = of(uri);
    if (positions !== undefined) changes[uri] = list.map((edit) => positions.edit(edit));
  }
  return { changes };
}

export function action(one: Action, context: readonly lsp.Diagnostic[], of: PositionsOf): lsp.CodeAction {
  const mended = context.filter((other) => other.code === one.code);
  const { changes } = workspaceEdit(one.edits, of);
  const creating: lsp.WorkspaceEdit = one.creates === undefined ? { ...(changes === undefined ? {} : { changes }) } : {
    documentChanges: [
      { kind: 'create', uri: one.creates.uri, options: { ignoreIfExists: true } },
      { textDocument: { uri: one.creates.uri, version: null }, edits: [{ range: { start: { line: 0, character: 0 }, end: { line: 0, character: 0 } }, newText: one.creates.text }] },
    ],
  };
  return { title: one.title, kind: one.kind === 'fix' ? lsp.CodeActionKind.QuickFix : lsp.CodeActionKind.Refactor, diagnostics: mended, edit: creating };
}
