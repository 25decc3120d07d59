import { plain } from '../../report/index.js';
import { InputError } from '../files.js';
import { askGit, complaint } from './run-git.js';

/** No revision is written in more letters. */
const LONGEST = 1_000;

/** A repository, seen from a folder in it. */
export interface Repository {
  /** The folder that git is run in. */
  readonly folder: string;
  /** That folder from the top of the repository, with a slash at its end; empty at the top. */
  readonly prefix: string;
}

/** The repository that holds a folder. Throws InputError where there is none that git would read. */
export function repositoryAt(folder: string): Repository {
  const { code, out, err } = askGit(['rev-parse', '--show-prefix'], folder);
  if (code === 0) return { folder, prefix: withoutLineEnd(out) };
  throw new InputError(whyNone(plain(folder), err));
}

function whyNone(folder: string, err: string): string {
  if (/dubious ownership/.test(err)) return `git does not read the repository at ${folder}, since it belongs to someone else. If you trust it: git config --global --add safe.directory FOLDER`;
  if (/not a git repository/i.test(err)) return `${folder} is not in a git repository.`;
  return `git can’t read the repository at ${folder}: ${complaint(err)}`;
}

/** The top folder of the work tree. Throws InputError in a bare repository, which has none. */
export function topOf({ folder }: Repository): string {
  const { code, out } = askGit(['rev-parse', '--show-toplevel'], folder);
  if (code !== 0) throw new InputError(`${plain(folder)} is in a bare repository, which has no files to work on.`);
  return withoutLineEnd(out);
}

/**
 * The identity of the tree that a revision means. Throws InputError where it means none; nothing that could be read as
 * an option reaches git.
 */
export function treeIdOf(repository: Repository, revision: string): string {
  if (revision === '' || revision.startsWith('-') || /[\u0000-\u001f\u007f]/.test(revision)) throw new InputError(`${plain(revision)} is no revision. Write a commit, branch or tag, as in HEAD~1.`);
  // git reads a chain of steps by going deeper with each, and some ten thousand stop it.
  if (revision.length > LONGEST) throw new InputError(whyUnknown(repository, revision));
  const { code, out } = askGit(['rev-parse', '--verify', '--quiet', '--end-of-options', `${revision}^{tree}`], repository.folder);
  const id = withoutLineEnd(out);
  // `^HEAD` is no mistake to git, and stands for all but a commit.
  if (code === 0 && !id.startsWith('^')) return id;
  throw new InputError(whyUnknown(repository, revision));
}

function whyUnknown({ folder }: Repository, revision: string): string {
  const asked = (...args: string[]) => withoutLineEnd(askGit(args, folder).out);
  if (revision === 'HEAD') return 'There is no commit yet, so there is nothing to compare with.';
  if (asked('rev-parse', '--is-shallow-repository') === 'true') return `There is no revision ${plain(revision)} here. This clone holds only the latest part of the history; git fetch --unshallow brings the rest.`;
  return `There is no revision ${plain(revision)} in this repository.`;
}

/**
 * A path as git reads it behind a revision: from the top of the repository, or from the folder where it starts with
 * `./` or `../`. Undefined where it leads out of the repository or is no path.
 */
export function pathIn({ prefix }: Repository, written: string): string | undefined {
  if (written === '' || /^[/\\]|\u0000/.test(written)) return undefined;
  const steps: string[] = [];
  for (const step of `${/^\.\.?(?:\/|$)/.test(written) ? prefix : ''}${written}`.split('/')) {
    if (step === '' || step === '.') continue;
    if (step !== '..') steps.push(step);
    else if (steps.pop() === undefined) return undefined;
  }
  return steps.length === 0 ? undefined : steps.join('/');
}

/** A path from the top, as seen from the folder that git is run in. */
export function fromFolder({ prefix }: Repository, path: string): string {
  return `${'../'.repeat(prefix.split('/').length - 1)}${path}`;
}

/** What git printed, without the one line end that it put behind it: a path may itself end with one. */
function withoutLineEnd(out: Buffer): string {
  return out.toString('utf8').replace(/\r?\n$/, '');
}

/** A list that git printed with a NUL behind each entry. */
export function entriesOf(out: Buffer): string[] {
  return out.toString('utf8').split('\0').filter((entry) => entry !== '');
}
