import type { InitializeParams } from 'vscode-languageserver/node.js';
import type { Severities } from '../../service/index.js';

/** What the editor at the other end can do; what it doesn't name, it can't. */
export interface Client {
  readonly snippets: boolean;
  readonly creates: boolean;
  readonly watches: boolean;
  readonly configuration: boolean;
  readonly folders: boolean;
  readonly refreshes: { readonly hints: boolean; readonly lenses: boolean; readonly tokens: boolean };
}

export function clientOf({ capabilities }: InitializeParams): Client {
  const { workspace, textDocument } = capabilities;
  const edit = workspace?.workspaceEdit;
  return {
    snippets: textDocument?.completion?.completionItem?.snippetSupport === true,
    creates: edit?.documentChanges === true && edit.resourceOperations?.includes('create') === true,
    watches: workspace?.didChangeWatchedFiles?.dynamicRegistration === true,
    configuration: workspace?.configuration === true,
    folders: workspace?.workspaceFolders === true,
    refreshes: {
      hints: workspace?.inlayHint?.refreshSupport === true,
      lenses: workspace?.codeLens?.refreshSupport === true,
      tokens: workspace?.semanticTokens?.refreshSupport === true,
    },
  };
}

const SEVERITIES: ReadonlySet<unknown> = new Set(['error', 'warning', 'advice', 'off']);

/** `{ severities: { CODE: 'error' | 'warning' | 'advice' | 'off' } }`, alone or below `steelyard`; anything else is passed over. */
export function severitiesIn(settings: unknown): Severities {
  const own = fieldsOf(fieldsOf(settings)['steelyard'] ?? settings);
  return Object.fromEntries(Object.entries(fieldsOf(own['severities'])).filter(([, one]) => SEVERITIES.has(one))) as Severities;
}

function fieldsOf(value: unknown): { readonly [name: string]: unknown } {
  return typeof value === 'object' && value !== null ? (value as { readonly [name: string]: unknown }) : {};
}
