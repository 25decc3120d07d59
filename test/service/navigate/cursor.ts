import { readFixture, serviceOver, uriOf, type MemoryHost } from '../../support/fixture.js';
import type { FileEdits, LanguageService, Place } from '../../../src/service/index.js';

/** Files of a fixture with their cursors taken out: `$0` stands where the cursor is. */
export interface AtCursor {
  readonly host: MemoryHost;
  readonly service: LanguageService;
  readonly uri: string;
  readonly offset: number;
  /** The other files of the fixture. */
  readonly others: readonly string[];
  readonly texts: Readonly<Record<string, string>>;
}

export function atCursor(fixture: string): AtCursor {
  const { files } = readFixture(fixture);
  const texts: Record<string, string> = {};
  let found: { uri: string; offset: number } | undefined;
  for (const { name, text } of files) {
    const at = text.indexOf('$0');
    if (at >= 0) found = { uri: uriOf(name), offset: at };
    texts[name] = text.replace('$0', '');
  }
  if (found === undefined) throw new Error('A fixture needs a cursor: $0');
  const { uri, offset } = found;
  return { ...serviceOver(texts), uri, offset, texts, others: Object.keys(texts).map(uriOf).filter((one) => one !== uri) };
}

/** A place as `file:line: «the words there»`. */
export function said(texts: Readonly<Record<string, string>>, { uri, range }: Place): string {
  const name = uri.slice(uri.lastIndexOf('/') + 1);
  const text = texts[name] as string;
  return `${name}:${text.slice(0, range.start).split('\n').length}: ${text.slice(range.start, range.end)}`;
}

/** The texts after the edits. */
export function edited(texts: Readonly<Record<string, string>>, edits: FileEdits): Record<string, string> {
  const out: Record<string, string> = { ...texts };
  for (const [uri, list] of edits) {
    const name = uri.slice(uri.lastIndexOf('/') + 1);
    out[name] = [...list].sort((a, b) => b.range.start - a.range.start).reduce((text, { range, text: put }) => text.slice(0, range.start) + put + text.slice(range.end), out[name] as string);
  }
  return out;
}
