import path from 'node:path';
import { lstatSync } from 'node:fs';
import { plain } from '../../report/index.js';
import { createLanguageService, type Side } from '../../service/index.js';
import { filesFrom, InputError, STDIN, type Files } from '../files.js';
import type { Terminal } from '../terminal.js';
import { nameThen } from './renames.js';
import { pathIn, repositoryAt, type Repository } from './repository.js';
import { filesIn, inIndex, inRevision } from './snapshot.js';

/** A version of an estimate that was asked for, with the files that it was made from. */
export interface OpenSide {
  readonly side: Side;
  readonly files: Files;
  /** The command that says all that is wrong in it; empty where there is none for it. */
  readonly seeAll: string;
  /** Where its files are: on the disk, or in the repository, by their path from its top. */
  readonly from: 'disk' | 'repository';
}

/** A version by what was written for it: a file, `-`, or `REV:path` as git reads it; an empty REV means the index. */
export function sideNamed(written: string, terminal: Terminal): OpenSide {
  // A file may have a colon in its name, and on Windows has one behind its drive: what is there is meant.
  if (written === STDIN || isThere(written, terminal)) return sideOnDisk(written, terminal);
  const colon = colonIn(written);
  if (colon === undefined) throw new InputError(`There is no file ${plain(written)}. For a file as it was in a commit, write the commit and a colon before it: HEAD:${plain(written)}`);
  const [revision, rest] = [written.slice(0, colon), written.slice(colon + 1)];
  const repository = repositoryAt(terminal.cwd);
  const inside = pathIn(repository, rest);
  if (inside === undefined) throw new InputError(`${plain(rest)} is not a path in this repository. Behind the colon goes a path from its top, or one that starts with ./`);
  return sideInRevision(repository, revision, inside);
}

/** The colon between a revision and a path: the first that isn't inside braces, as in `HEAD@{10:30}:job.yard`. */
function colonIn(written: string): number | undefined {
  let inside = false;
  for (let i = 0; i < written.length; i++) {
    if (written[i] === ':' && !inside) return i;
    if (written[i] === '{') inside = true;
    else if (written[i] === '}') inside = false;
  }
  return undefined;
}

/**
 * Asked of the system as it is written: made shorter first, `HEAD:../../job.yard` would become another file. A link is
 * there, wherever it leads; whoever reads it says why it can't.
 */
function isThere(written: string, { cwd }: Terminal): boolean {
  try {
    return lstatSync(path.isAbsolute(written) ? written : `${cwd}${path.sep}${written}`, { throwIfNoEntry: false }) !== undefined;
  } catch {
    return false;
  }
}

/** A file as it was in a revision, by its name now: where it was renamed since, by its name then. */
export function sideSince(file: string, revision: string, terminal: Terminal): OpenSide {
  const full = path.resolve(terminal.cwd, file);
  // A hook is run with the repository set from outside, and then every folder counts as its top.
  const folder = process.env['GIT_DIR'] === undefined ? path.dirname(full) : terminal.cwd;
  const repository = repositoryAt(folder);
  const inside = pathIn(repository, `./${path.relative(folder, full).split(path.sep).join('/')}`);
  if (inside === undefined) throw new InputError(`${plain(file)} is not in the repository at ${plain(folder)}.`);
  const snapshot = inRevision(repository, revision);
  if (snapshot.entry(inside) !== undefined) return sideInRevision(repository, revision, inside);
  const then = nameThen(repository, revision, inside);
  if (then !== undefined) return sideInRevision(repository, revision, then);
  throw new InputError(`${plain(inside)} is not in ${plain(revision)}: it came later, or has another name there. Name the version to compare with: steelyard changes ${plain(revision)}:OLDNAME ${plain(file)}`);
}

export function sideOnDisk(file: string, terminal: Terminal): OpenSide {
  const files = filesFrom(terminal.cwd, terminal.stdin);
  return opened(file, files, `steelyard check ${file}`, 'disk');
}

function sideInRevision(repository: Repository, revision: string, inside: string): OpenSide {
  const snapshot = revision === '' ? inIndex(repository) : inRevision(repository, revision);
  if (snapshot.entry(inside) === undefined) throw new InputError(notThere(repository, revision, inside));
  return opened(inside, filesIn(snapshot), '', 'repository');
}

function notThere(repository: Repository, revision: string, inside: string): string {
  if (revision === '') return `There is no file ${plain(inside)} in the index, or its merge isn’t finished.`;
  const missing = `There is no file ${plain(inside)} in ${plain(revision)}.`;
  const then = nameThen(repository, revision, inside);
  if (then !== undefined) return `${missing} It was called ${plain(then)} then: write ${plain(revision)}:${plain(then)}`;
  const near = pathIn(repository, `./${inside}`);
  return near !== undefined && near !== inside && inRevision(repository, revision).entry(near) !== undefined ? `${missing} Paths start at the top of the repository: write ${plain(revision)}:${plain(near)}, or ${plain(revision)}:./${plain(inside)}` : missing;
}

function opened(file: string, files: Files, seeAll: string, from: OpenSide['from']): OpenSide {
  const uri = files.open(file);
  return { side: { service: createLanguageService(files.host), uri, name: files.nameOf(uri) }, files, seeAll, from };
}
