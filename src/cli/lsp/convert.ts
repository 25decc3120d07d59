import * as lsp from 'vscode-languageserver/node.js';
import type { TextDocument } from 'vscode-languageserver-textdocument';
import { withDefaults, type Action, type Completion, type Diagnostic, type FileEdits, type Place, type SemanticToken, type Symbol, type TextEdit } from '../../service/index.js';
import type { Client } from './settings.js';

/** Turns offsets into the protocol's lines and characters; one for each text. */
export class Positions {
  constructor(private readonly document: TextDocument) {}

  range(range: { readonly start: number; readonly end: number }): lsp.Range {
    return { start: this.document.positionAt(range.start), end: this.document.positionAt(range.end) };
  }

  offsets(range: lsp.Range): { readonly start: number; readonly end: number } {
    return { start: this.document.offsetAt(range.start), end: this.document.offsetAt(range.end) };
  }

  edit(edit: TextEdit): lsp.TextEdit {
    return { range: this.range(edit.range), newText: edit.text };
  }
}

/** Any file the service knows: its positions, and its address as the editor spells it. */
export interface Addresses {
  readonly positions: (key: string) => Positions | undefined;
  readonly shown: (key: string) => string;
}

export function locations(places: readonly Place[], { positions, shown }: Addresses): lsp.Location[] {
  const known = new Map<string, Positions | undefined>();
  return places.flatMap(({ uri, range }) => {
    if (!known.has(uri)) known.set(uri, positions(uri));
    const found = known.get(uri);
    return found === undefined ? [] : [{ uri: shown(uri), range: found.range(range) }];
  });
}

const severities = { error: lsp.DiagnosticSeverity.Error, warning: lsp.DiagnosticSeverity.Warning, advice: lsp.DiagnosticSeverity.Information } as const;

export function diagnostic(one: Diagnostic, positions: Positions, addresses: Addresses): lsp.Diagnostic {
  const related = one.related === undefined ? [] : locations([one.related.place], addresses).map((location) => ({ location, message: one.related?.says ?? '' }));
  return {
    range: positions.range(one.range),
    severity: severities[one.severity],
    code: one.code,
    source: 'Steelyard',
    message: one.text,
    ...(related.length === 0 ? {} : { relatedInformation: related }),
  };
}

const completionKinds: Readonly<Record<Completion['kind'], lsp.CompletionItemKind>> = {
  kind: lsp.CompletionItemKind.Keyword, fact: lsp.CompletionItemKind.Property, choice: lsp.CompletionItemKind.EnumMember, unit: lsp.CompletionItemKind.Unit,
  name: lsp.CompletionItemKind.Reference, snippet: lsp.CompletionItemKind.Snippet, file: lsp.CompletionItemKind.File, figure: lsp.CompletionItemKind.Value,
  day: lsp.CompletionItemKind.Value,
};

/** An editor without tab stops gets the text with their defaults. */
export function completion(one: Completion, positions: Positions, { snippets }: Client): lsp.CompletionItem {
  const stops = one.snippet && snippets;
  return {
    label: one.label,
    kind: completionKinds[one.kind],
    sortText: String(one.order).padStart(5, '0'),
    textEdit: positions.edit(one.snippet && !snippets ? { ...one.edit, text: withDefaults(one.edit.text) } : one.edit),
    // A day is looked for by its label or by its digits.
    ...(one.kind === 'day' ? { filterText: `${one.label} ${one.edit.text}` } : {}),
    insertTextFormat: stops ? lsp.InsertTextFormat.Snippet : lsp.InsertTextFormat.PlainText,
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

/** From the smallest range to the largest, as the protocol chains them. */
export function selectionRange(ranges: readonly lsp.Range[], at: lsp.Position): lsp.SelectionRange {
  return ranges.reduceRight<lsp.SelectionRange | undefined>((parent, range) => (parent === undefined ? { range } : { range, parent }), undefined) ?? { range: { start: at, end: at } };
}

export const tokenTypes: readonly SemanticToken['type'][] = ['access', 'labour', 'part', 'sublet', 'fee', 'tool', 'finding', 'option', 'rate', 'unknown'];
export const tokenModifiers: readonly string[] = ['declaration', 'deprecated'];

/** Each token by its distance from the one before. */
export function semanticTokens(found: readonly SemanticToken[], positions: Positions): lsp.SemanticTokens {
  const data: number[] = [];
  let before: lsp.Position = { line: 0, character: 0 };
  for (const one of found) {
    const { start } = positions.range(one.range);
    data.push(start.line - before.line, start.line === before.line ? start.character - before.character : start.character, one.range.end - one.range.start, tokenTypes.indexOf(one.type), (one.gives ? 1 : 0) | (one.unused ? 2 : 0));
    before = start;
  }
  return { data };
}

export function workspaceEdit(edits: FileEdits, addresses: Addresses): lsp.WorkspaceEdit {
  return { changes: Object.fromEntries(changesOf(edits, addresses)) };
}

function changesOf(edits: FileEdits, { positions, shown }: Addresses): [string, lsp.TextEdit[]][] {
  return [...edits].flatMap(([key, list]): [string, lsp.TextEdit[]][] => {
    const found = positions(key);
    return found === undefined ? [] : [[shown(key), list.map((edit) => found.edit(edit))]];
  });
}

/** Undefined where the action makes a file and the editor can't. */
export function action(one: Action, context: lsp.CodeActionContext, addresses: Addresses, { creates }: Client): lsp.CodeAction | undefined {
  if (one.creates !== undefined && !creates) return undefined;
  const kind = one.kind === 'fix' ? lsp.CodeActionKind.QuickFix : lsp.CodeActionKind.Refactor;
  if (context.only !== undefined && !context.only.some((asked) => kind === asked || kind.startsWith(`${asked}.`))) return undefined;
  const diagnostics = one.code === undefined ? [] : context.diagnostics.filter(({ code }) => code === one.code);
  return { title: one.title, kind, ...(diagnostics.length === 0 ? {} : { diagnostics }), edit: one.creates === undefined ? workspaceEdit(one.edits, addresses) : creating(one.creates, one.edits, addresses) };
}

function creating({ uri, text }: NonNullable<Action['creates']>, edits: FileEdits, addresses: Addresses): lsp.WorkspaceEdit {
  const start = { line: 0, character: 0 };
  const write = (to: string, list: lsp.TextEdit[]): lsp.TextDocumentEdit => ({ textDocument: { uri: to, version: null }, edits: list });
  return {
    documentChanges: [
      { kind: 'create', uri, options: { ignoreIfExists: true } },
      write(uri, [{ range: { start, end: start }, newText: text }]),
      ...changesOf(edits, addresses).map(([to, list]) => write(to, list)),
    ],
  };
}
