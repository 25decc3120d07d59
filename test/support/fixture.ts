import { exampleBook } from '../../src/service/book/example-book.js';
import { createLanguageService, resolveWithin, type Diagnostic, type LanguageService, type ServiceHost } from '../../src/service/index.js';

/**
 * A fixture is one or several files in one string:
 *
 * - `--- shop.yard` starts a file; the first needs no such line and is called `estimate.yard`. Words behind the name:
 *   `crlf` (every line ends with CR LF), `bom`, `no-end` (no line end behind the last line), `unread` (not read yet).
 * - A line of carets below a line of source underlines what a diagnostic must mark: `   ^^^^ code`, or
 *   `^^^^ code: part of its text`. `|` instead of carets stands for an empty range.
 * - Characters that nobody can see are spelled out: `\t`, `\u{200b}`, and `\{x*3000}` for one character many times.
 *   Carets count columns of the fixture as it stands.
 * - `# expect total OPTION AMOUNT`, `# expect incomplete OPTION` and `# expect no option` are comments to the tool
 *   and claims to the test.
 */
export interface Fixture {
  readonly files: readonly FixtureFile[];
  readonly claims: readonly string[];
}

export interface FixtureFile {
  readonly name: string;
  readonly heading: string | undefined;
  readonly text: string;
  readonly unread: boolean;
  readonly lines: readonly FixtureLine[];
}

interface FixtureLine {
  /** As it stands in the fixture. */
  readonly shown: string;
  /** Offset in the file's text of each column of `shown`, and one more for its end. */
  readonly offsets: readonly number[];
  readonly marks: readonly Mark[];
}

interface Mark {
  readonly start: number;
  readonly end: number;
  readonly code: string;
  readonly part: string;
}

const ROOT = '/shop';

const markLine = /^(\s*)(\^+|\|) ([a-z][a-z-]*)(?:: (.*))?$/;
const escape = /^\\(?:t|u\{([0-9a-f]+)\}|\{(.)\*(\d+)\})/;

export function readFixture(fixture: string): Fixture {
  const files: FixtureFile[] = [];
  const claims: string[] = [];
  let heading: string | undefined;
  let pending: string[] = [];
  const finish = () => {
    if (heading !== undefined || pending.some((line) => line !== '')) files.push(readFile(heading, pending));
    pending = [];
  };
  for (const line of fixture.replace(/\n$/, '').split('\n')) {
    if (line.startsWith('--- ')) {
      finish();
      heading = line;
      continue;
    }
    if (line.startsWith('# expect ')) claims.push(line.slice('# expect '.length).trim());
    pending.push(line);
  }
  finish();
  return { files, claims };
}

function readFile(heading: string | undefined, lines: readonly string[]): FixtureFile {
  const [name = 'estimate.yard', ...flags] = heading?.slice(4).trim().split(/\s+/) ?? [];
  const end = flags.includes('crlf') ? '\r\n' : '\n';
  const read: { shown: string; offsets: number[]; marks: Mark[] }[] = [];
  let text = flags.includes('bom') ? '\ufeff' : '';
  for (const line of lines) {
    const mark = markLine.exec(line);
    const above = read[read.length - 1];
    if (mark === null || above === undefined) {
      const { plain, offsets } = unescape(line, text.length);
      read.push({ shown: line, offsets, marks: [] });
      text += plain + end;
      continue;
    }
    const [, before = '', carets = '', code = '', part = ''] = mark;
    const from = before.length;
    const to = from + (carets === '|' ? 0 : carets.length);
    const start = above.offsets[from];
    const stop = above.offsets[to];
    if (start === undefined || stop === undefined) throw new Error(`A mark runs past the end of its line:\n${above.shown}\n${line}`);
    above.marks.push({ start, end: stop, code, part });
  }
  if (flags.includes('no-end')) text = text.slice(0, -end.length);
  return { name, heading, text, unread: flags.includes('unread'), lines: read };
}

function unescape(line: string, from: number): { readonly plain: string; readonly offsets: number[] } {
  const offsets: number[] = [];
  let plain = '';
  for (let at = 0; at < line.length;) {
    const found = line[at] === '\\' ? escape.exec(line.slice(at)) : null;
    const [written = line[at] as string, code, repeated, times] = found ?? [];
    for (let i = 0; i < written.length; i++) offsets.push(from + plain.length);
    if (found === null) plain += written;
    else if (code !== undefined) plain += String.fromCodePoint(parseInt(code, 16));
    else if (repeated !== undefined) plain += repeated.repeat(Number(times));
    else plain += '\t';
    at += written.length;
  }
  offsets.push(from + plain.length);
  return { plain, offsets };
}

export function uriOf(name: string): string {
  return `${ROOT}/${name}`;
}

/** Files held in memory. Setting one is what typing in an editor is. */
export class MemoryHost implements ServiceHost {
  private readonly texts = new Map<string, string | undefined>();
  readonly reads: string[] = [];

  set(name: string, text: string): void {
    this.texts.set(uriOf(name), text);
  }

  setUnread(name: string): void {
    this.texts.set(uriOf(name), undefined);
  }

  remove(name: string): void {
    this.texts.delete(uriOf(name));
  }

  readonly read: ServiceHost['read'] = (uri) => {
    this.reads.push(uri);
    if (!this.texts.has(uri)) return 'missing';
    const text = this.texts.get(uri);
    return text === undefined ? 'unknown' : { text };
  };

  readonly resolvePath: ServiceHost['resolvePath'] = (from, path) => resolveWithin(ROOT, from, path);

  /** Every picture is there but one of this name. */
  readonly exists = (uri: string): boolean => !uri.endsWith('/missing.png');

  /** The book that the example of its check stands on; a test may put another in its place. */
  book: NonNullable<ServiceHost['book']> = exampleBook;
}

/** A service over the files of a fixture, or over plain texts by name. */
export function serviceOver(files: readonly Pick<FixtureFile, 'name' | 'text' | 'unread'>[] | Readonly<Record<string, string>>): { readonly host: MemoryHost; readonly service: LanguageService } {
  const host = new MemoryHost();
  const list = Array.isArray(files) ? (files as readonly FixtureFile[]) : Object.entries(files as Readonly<Record<string, string>>).map(([name, text]) => ({ name, text, unread: false }));
  for (const { name, text, unread } of list) if (unread) host.setUnread(name); else host.set(name, text);
  return { host, service: createLanguageService(host) };
}

/** What a fixture gets wrong: the fixture as it is and as the service would have it, equal where all holds. */
export interface Checked {
  readonly wanted: string;
  readonly found: string;
}

/** Runs the service over a fixture, first file first, and sets what it says against the marks and claims. */
export function check(fixture: string): Checked {
  const { files, claims } = readFixture(fixture);
  const { service } = serviceOver(files);
  const first = files[0];
  if (first === undefined) throw new Error('A fixture needs a file.');
  const byFile = service.allDiagnostics(uriOf(first.name));
  const wanted: string[] = [];
  const found: string[] = [];
  for (const file of files) {
    if (file.heading !== undefined) wanted.push(file.heading);
    if (file.heading !== undefined) found.push(file.heading);
    const diagnostics = [...(byFile.get(uriOf(file.name)) ?? [])];
    for (const line of file.lines) {
      wanted.push(line.shown, ...line.marks.map((mark) => markText(line, mark.start, mark.end, mark.code, mark.part)).sort());
      found.push(line.shown, ...takeLine(line, diagnostics).map((one) => markText(line, one.range.start, one.range.end, one.code, saidPart(line, one))).sort());
    }
    for (const one of diagnostics) found.push(`!! ${one.range.start}–${one.range.end} ${one.code}: on no line of ${file.name}`);
  }
  for (const [uri, list] of byFile) {
    if (!files.some((file) => uriOf(file.name) === uri)) found.push(...list.map((one) => `!! ${one.code} in ${uri}`));
  }
  const { comparison } = service.weighing(uriOf(first.name));
  for (const claim of claims) {
    const [what, name = ''] = claim.split(/\s+/);
    const weighed = comparison.options.find(({ option }) => option.name === name);
    wanted.push(claim);
    if (what === 'no') found.push(comparison.options.length === 0 ? claim : `${comparison.options.length} options`);
    else if (weighed === undefined) found.push(`no option ${name}`);
    else if (!weighed.complete) found.push(`incomplete ${name}`);
    else found.push(`total ${name} ${weighed.totals.total.likely.toFixed(comparison.money.currency.digits)}`);
  }
  return { wanted: wanted.join('\n'), found: found.join('\n') };
}

/** Takes the diagnostics that lie on a line out of the list. */
function takeLine(line: FixtureLine, diagnostics: Diagnostic[]): Diagnostic[] {
  const from = line.offsets[0] as number;
  const to = line.offsets[line.offsets.length - 1] as number;
  const here = diagnostics.filter(({ range }) => range.start >= from && range.end <= to);
  for (const one of here) diagnostics.splice(diagnostics.indexOf(one), 1);
  return here;
}

/** The part of the message that the fixture asks for, or all of it where that is not in it. */
function saidPart(line: FixtureLine, { range, code, text }: Diagnostic): string {
  const mark = line.marks.find((one) => one.start === range.start && one.end === range.end && one.code === code);
  return mark !== undefined && text.includes(mark.part) ? mark.part : text;
}

function markText(line: FixtureLine, start: number, end: number, code: string, part: string): string {
  const from = line.offsets.lastIndexOf(start) < 0 ? 0 : line.offsets.indexOf(start);
  const to = line.offsets.indexOf(end);
  const exact = line.offsets.includes(start) && line.offsets.includes(end);
  const under = start === end ? '|' : '^'.repeat(Math.max(1, to - from));
  return `${' '.repeat(from)}${under} ${code}${part === '' ? '' : `: ${part}`}${exact ? '' : ` (${start}–${end}, inside one character)`}`;
}
