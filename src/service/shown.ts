import { visible } from '../report/index.js';
import type { Symbol } from './feature-types.js';
import type { Diagnostic, LanguageService } from './types.js';

/**
 * Editors show what a service says as it is, and a title may hold marks that turn the reading order round, so that one
 * figure looks like another. So in all that is shown whatever can't be seen stands as its code; what is written into
 * files, and what the text is found by, stays as it is.
 */
export function shownPlainly(service: LanguageService): LanguageService {
  return {
    ...service,
    diagnostics: (uri) => service.diagnostics(uri).map(shown),
    allDiagnostics: (uri) => new Map([...service.allDiagnostics(uri)].map(([file, list]) => [file, list.map(shown)])),
    hover: (uri, offset) => {
      const found = service.hover(uri, offset);
      return found === undefined ? undefined : { ...found, paragraphs: found.paragraphs.map(visible) };
    },
    completions: (uri, offset, today) => service.completions(uri, offset, today).map((one) => ({ ...one, label: visible(one.label), detail: optional(one.detail), says: optional(one.says) })),
    actions: (uri, range) => service.actions(uri, range).map((one) => ({ ...one, title: visible(one.title) })),
    symbols: (uri) => service.symbols(uri).map(symbol),
    workspaceSymbols: (query, uris) => service.workspaceSymbols(query, uris).map((one) => ({ ...one, name: visible(one.name) })),
    totalsUsing: (uri, offset) => service.totalsUsing(uri, offset).map((one) => ({ ...one, title: visible(one.title), amount: visible(one.amount) })),
    inlayHints: (uri, range) => service.inlayHints(uri, range).map((one) => ({ ...one, label: visible(one.label), says: visible(one.says) })),
    lenses: (uri) => service.lenses(uri).map((one) => ({ ...one, label: visible(one.label) })),
    status: (uri) => {
      const found = service.status(uri);
      return found === undefined ? undefined : { short: visible(found.short), full: visible(found.full) };
    },
  };
}

/** Its words for people; `message` and `data` are for programs, which find the text by them. */
function shown(one: Diagnostic): Diagnostic {
  return {
    ...one,
    text: visible(one.text),
    related: one.related === undefined ? undefined : { ...one.related, says: visible(one.related.says) },
    fix: one.fix === undefined ? undefined : { ...one.fix, title: visible(one.fix.title) },
  };
}

function symbol(one: Symbol): Symbol {
  return { ...one, name: visible(one.name), detail: visible(one.detail), children: one.children.map(symbol) };
}

function optional(text: string | undefined): string | undefined {
  return text === undefined ? undefined : visible(text);
}
