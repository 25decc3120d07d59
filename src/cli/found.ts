import type { CheckFinding } from '../report/index.js';
import type { Diagnostic, LanguageService, Place } from '../service/index.js';
import type { Files, ManyFiles } from './files.js';
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

/**
 * What is wrong in files and in what they use, each problem once. A file is let go of when it is done, so that a
 * thousand of them take no more room than a few; what they share stays.
 */
export function foundIn(names: readonly string[], service: LanguageService, files: ManyFiles): { readonly asked: readonly string[]; readonly found: readonly Found[] } {
  const found: Found[] = [];
  const asked: string[] = [];
  const seen = new Set<string>();
  for (const name of names) {
    const uri = files.open(name);
    asked.push(uri);
    for (const list of service.allDiagnostics(uri).values()) {
      for (const one of list) {
        const key = `${one.uri} ${one.range.start} ${one.range.end} ${one.code}`;
        if (!seen.has(key)) found.push(foundFrom(one, service, files));
        seen.add(key);
      }
    }
    service.forget(uri);
    files.forget(uri);
  }
  return { asked, found };
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
