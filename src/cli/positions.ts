import type { CheckFinding } from '../report/index.js';
import type { LanguageService, Place } from '../service/index.js';
import type { Files } from './files.js';

/** A place for people and build servers: lines and columns from 1. A byte order mark is no column. */
export interface Position {
  readonly line: number;
  readonly column: number;
}

export function positionAt(text: string, offset: number): Position {
  let line = 1;
  let start = text.charCodeAt(0) === 0xfeff ? 1 : 0;
  for (let end = text.indexOf('\n'); end >= 0 && end < offset; end = text.indexOf('\n', end + 1)) {
    line++;
    start = end + 1;
  }
  return { line, column: Math.max(1, offset - start + 1) };
}

/** A range in lines and columns; the end column is the one after the last character. */
export function rangeAt(text: string, { start, end }: Place['range']): CheckFinding['place'] {
  const last = positionAt(text, end);
  return { ...positionAt(text, start), endLine: last.line, endColumn: last.column };
}

/** Where a span stands, as file name, line and column. */
export function placesOf(service: LanguageService, files: Files) {
  return (span: Parameters<LanguageService['place']>[0]) => {
    const place = service.place(span);
    const tree = place === undefined ? undefined : service.tree(place.uri);
    if (place === undefined || tree === undefined) return undefined;
    return { file: files.nameOf(place.uri), ...positionAt(tree.text, place.range.start) };
  };
}
