import type { LanguageService } from '../service/index.js';
import type { Files } from './files.js';

/** A place for people and build servers: lines and columns from 1. */
export interface Position {
  readonly line: number;
  readonly column: number;
}

export function positionAt(text: string, offset: number): Position {
  let line = 1;
  let start = 0;
  for (let end = text.indexOf('\n'); end >= 0 && end < offset; end = text.indexOf('\n', end + 1)) {
    line++;
    start = end + 1;
  }
  return { line, column: offset - start + 1 };
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
