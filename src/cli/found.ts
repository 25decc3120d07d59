import type { CheckFinding } from '../report/index.js';
import { sameProblem, type Diagnostic, type LanguageService, type Place } from '../service/index.js';
import { InputError, type Files, type ManyFiles } from './files.js';
import { rangeAt } from './positions.js';

/** A problem with all that the forms of the report need, as plain data: the texts and trees may be gone by then. */
export interface Found {
  readonly finding: CheckFinding;
  readonly at: FoundAt;
  readonly related: (FoundAt & { readonly says: string }) | undefined;
  readonly fixAt: FoundAt | undefined;
  /** The text of the lines that the problem stands on. */
  readonly line: string;
}

export interface FoundAt {
  readonly uri: string;
  readonly place: CheckFinding['place'];
}

export interface FoundIn {
  /** The files that were checked, and what they were called when they were asked for. */
  readonly asked: readonly string[];
  readonly checked: readonly string[];
  readonly found: readonly Found[];
  /** Why others could not be, each in a sentence. */
  readonly unread: readonly string[];
}

/**
 * What is wrong in files and in what they use, each problem once. A file is let go of when it is done, so that a
 * thousand of them take no more room than a few; what they share stays.
 */
export function foundIn(names: readonly string[], service: LanguageService, files: ManyFiles): FoundIn {
  const found: Found[] = [];
  const unread: string[] = [];
  const asked: string[] = [];
  const checked: string[] = [];
  const seen = new Set<string>();
  for (const name of names) {
    const uri = opened(name, files, unread);
    if (uri === undefined) continue;
    const lists = diagnosticsOf(uri, service, unread);
    if (lists !== undefined) {
      asked.push(uri);
      checked.push(name);
    }
    for (const one of lists?.flat() ?? []) {
      const key = `${one.uri} ${sameProblem(one)}`;
      if (!seen.has(key)) found.push(foundFrom(one, service, files));
      seen.add(key);
    }
    service.forget(uri);
    files.forget(uri);
  }
  return { asked, checked, found, unread: [...new Set(unread)] };
}

/** Whatever one file is, the others are checked. */
function opened(name: string, files: ManyFiles, unread: string[]): string | undefined {
  return orUnread(() => files.open(name), unread);
}

/** A shared file may turn out to be the one that can't be read. */
function diagnosticsOf(uri: string, service: LanguageService, unread: string[]): (readonly Diagnostic[])[] | undefined {
  return orUnread(() => [...service.allDiagnostics(uri).values()], unread);
}

function orUnread<T>(read: () => T, unread: string[]): T | undefined {
  try {
    return read();
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    unread.push(error.message);
    return undefined;
  }
}

function foundFrom(one: Diagnostic, service: LanguageService, files: Files): Found {
  const textOf = (uri: string) => service.tree(uri)?.text ?? '';
  const at = ({ uri, range }: Place): FoundAt => ({ uri, place: rangeAt(textOf(uri), range) });
  const here = at(one);
  const fixAt = one.fix === undefined ? undefined : at(one.fix.place);
  return {
    finding: {
      file: files.nameOf(one.uri),
      place: here.place,
      code: one.code,
      severity: one.severity,
      ...one.message,
      ...(one.fix === undefined || fixAt === undefined ? {} : { fix: { title: one.fix.title, place: fixAt.place, text: one.fix.text } }),
    },
    at: here,
    related: one.related === undefined ? undefined : { ...at(one.related.place), says: one.related.says },
    fixAt,
    line: linesOf(textOf(one.uri), one.range),
  };
}

function linesOf(text: string, { start, end }: Place['range']): string {
  const stop = text.indexOf('\n', end);
  return text.slice(text.lastIndexOf('\n', start - 1) + 1, stop < 0 ? text.length : stop);
}
