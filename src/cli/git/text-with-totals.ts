import { existsSync, realpathSync } from 'node:fs';
import path from 'node:path';
import { plain } from '../../report/index.js';
import { createLanguageService, type LanguageService } from '../../service/index.js';
import { filesFrom, repositoryOf, STDIN, type Files } from '../files.js';
import { entriesOf } from './repository.js';
import { readGit } from './run-git.js';
import { TOTALS_HEAD, totalsLines } from './totals-lines.js';
import type { Terminal } from '../terminal.js';

/** An old version is looked for in no more folders than this. */
const MOST_FOLDERS = 5000;

/** An estimate, with the shared files that it is priced by. */
interface Opened {
  readonly service: LanguageService;
  readonly uri: string;
  readonly files: Files;
}

/**
 * What git shows in the place of an estimate: its text, and the totals of its options below. Git hands over a file of
 * the work tree by its path, and any other version as a passing copy that only keeps the file's name. Of both the
 * shared files are read as they are now, so that what differs is what the estimate itself changed.
 */
export function printWithTotals(file: string, terminal: Terminal): void {
  const files = filesFrom(terminal.cwd, terminal.stdin);
  const uri = files.open(file);
  const read = files.host.read(uri);
  const text = typeof read === 'string' ? '' : read.text;
  terminal.out(isForEditor(process.env) ? text : [text, ...linesBelow(text, uri, files, terminal)].join(''));
}

/** An editor asks git for the text of a version to work with it, and what it is given must be that text and no more. */
function isForEditor(env: NodeJS.ProcessEnv): boolean {
  return (env['VSCODE_GIT_COMMAND'] ?? '') !== '';
}

function linesBelow(text: string, uri: string, files: Files, terminal: Terminal): string[] {
  const top = realpathSync(repositoryOf(terminal.cwd) ?? terminal.cwd);
  const found = isBelow(top, uri) ? { service: createLanguageService(files.host), uri, files } : asIn(foldersOf(uri, top), text);
  const lines = typeof found === 'string' ? [`${TOTALS_HEAD} are not known here: ${found}`] : totalsOf(found);
  if (lines.length === 0) return [];
  const ended = text === '' || text.endsWith('\n') ? [] : ['\n# The last line of the file has no line end.\n'];
  return [...ended, '\n', ...lines.map((line) => `${line}\n`)];
}

function isBelow(top: string, file: string): boolean {
  return existsSync(file) && realpathSync(file).startsWith(top + path.sep);
}

function totalsOf({ service, uri, files }: Opened): string[] {
  const names = service.uses(uri).map((used) => plain(path.basename(files.nameOf(used))));
  return totalsLines(service.weighing(uri).comparison, names.length === 0 ? '' : `, with ${names.join(', ')} as it is now`);
}

/** The folders that a passing copy may have come from: those where a file of its name is, or else where any estimate is. */
function foldersOf(copy: string, top: string): string[] {
  const tracked = entriesOf(readGit(['ls-files', '-z'], top)).filter((name) => name.endsWith('.yard'));
  // Older versions of git put six letters before the name.
  const names = [path.basename(copy), path.basename(copy).replace(/^[A-Za-z0-9]{6}_/, '')];
  const same = tracked.filter((name) => names.includes(path.posix.basename(name)));
  return [...new Set((same.length > 0 ? same : tracked).map((name) => path.join(top, path.posix.dirname(name))))];
}

/** The text as if it stood in one of these folders, where they all lead to the same shared files; or else why not. */
function asIn(folders: readonly string[], text: string): Opened | string {
  if (folders.length > MOST_FOLDERS) return 'there are too many folders that this version may have come from.';
  const paths = pathsUsed(text);
  const found = new Map<string, string>();
  for (const folder of folders) {
    const { host } = filesFrom(folder, () => text);
    const used = paths.map((written) => host.resolvePath(path.join(folder, 'any.yard'), written));
    if (used.every((file) => file !== undefined && existsSync(file))) found.set(used.join('\n'), folder);
  }
  const [folder, ...others] = found.values();
  if (folder === undefined) return 'the files that this version uses are not where it says, or not there any more.';
  if (others.length > 0) return 'files of this name are in several folders that use different shared files.';
  const files = filesFrom(folder, () => text);
  return { service: createLanguageService(files.host), uri: files.open(STDIN), files };
}

/** The paths behind `use` in a text. */
function pathsUsed(text: string): string[] {
  const paths = new Set<string>();
  createLanguageService({
    read: () => ({ text }),
    resolvePath: (_, written) => {
      paths.add(written);
      return undefined;
    },
  }).uses('any.yard');
  return [...paths];
}
