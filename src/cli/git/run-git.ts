import { spawnSync } from 'node:child_process';
import { accessSync, constants, statSync } from 'node:fs';
import path from 'node:path';
import { plain } from '../../report/index.js';
import { InputError, LARGEST } from '../files.js';

/** What a run of git gave. */
interface Ran {
  readonly code: number;
  readonly out: Buffer;
  /** What it complained of, in English. */
  readonly err: string;
}

/** Git that takes longer than this, in milliseconds, waits for something that won't come. */
const LONGEST = 20_000;

/**
 * Settings of a repository that would run a program, or reach out of this machine, while something is only read from
 * it. A repository may have come from anyone.
 */
const HARMLESS = ['core.fsmonitor=false', 'core.hooksPath=/dev/null', 'core.pager=cat', 'log.showSignature=false', 'protocol.allow=never', 'submodule.recurse=false'].flatMap((one) => ['-c', one]);

/**
 * Left out of git's environment: programs to run, traces that would stand in the output, and other ways to read paths.
 * What says which repository is meant (GIT_DIR, GIT_INDEX_FILE and the like) stays: a hook is run with it, and only
 * there is the index that is about to be committed.
 */
const LEFT_OUT = /^GIT_(?:EXTERNAL_DIFF|DIFF_OPTS|PAGER|EDITOR|SEQUENCE_EDITOR|ASKPASS|SSH|SSH_COMMAND|PROXY_COMMAND|TRACE.*|GLOB_PATHSPECS|NOGLOB_PATHSPECS|ICASE_PATHSPECS)$|^SSH_ASKPASS$/;

/** Reads something from a repository: no shell, no program of the repository's, no network, nothing written, no question asked. */
export function askGit(args: readonly string[], folder: string): Ran {
  return run([...HARMLESS, '--no-pager', ...args], folder);
}

/** The same where git must succeed: what it left out would be taken for something that isn’t there. */
export function readGit(args: readonly string[], folder: string): Buffer {
  const { code, out, err } = askGit(args, folder);
  if (code !== 0) throw new InputError(`git can’t read the repository at ${plain(folder)}: ${complaint(err)}`);
  return out;
}

/** The first line of what git complained of. */
export function complaint(err: string): string {
  const [line = ''] = err.split('\n');
  return line === '' ? 'it says no more.' : plain(line);
}

/** Has git itself read or write its settings, as they are. */
export function settingsOfGit(args: readonly string[], folder: string): Ran {
  return run(['--no-pager', ...args], folder);
}

function run(args: readonly string[], folder: string): Ran {
  const { status, signal, stdout, stderr, error } = spawnSync(gitProgram(process.env), args, { cwd: folder, env: quiet(process.env), timeout: LONGEST, maxBuffer: LARGEST, windowsHide: true, stdio: ['ignore', 'pipe', 'pipe'] });
  const code = error !== undefined && 'code' in error ? error.code : undefined;
  if (code === 'ETIMEDOUT') throw new InputError(`git took longer than ${LONGEST / 1000} s and was stopped. Nothing was read.`);
  if (code === 'ENOBUFS') throw new InputError(`What git gave is larger than an estimate can be (${LARGEST / 1_000_000} MB).`);
  if (error !== undefined) throw new InputError(`git could not be run: ${error.message}`);
  if (signal !== null) throw new InputError(`git was stopped while it worked (${signal}). Nothing was read; try again.`);
  return { code: status ?? 1, out: stdout, err: stderr.toString('utf8').trim() };
}

function quiet(env: NodeJS.ProcessEnv): NodeJS.ProcessEnv {
  const kept = Object.entries(env).filter(([name]) => !LEFT_OUT.test(name));
  return { ...Object.fromEntries(kept), GIT_OPTIONAL_LOCKS: '0', GIT_TERMINAL_PROMPT: '0', GIT_NO_LAZY_FETCH: '1', GIT_LITERAL_PATHSPECS: '1', LC_ALL: 'C' };
}

/** Git by its whole path: looked for by name alone, some systems would take one that lies in the folder itself. */
function gitProgram(env: NodeJS.ProcessEnv): string {
  const name = process.platform === 'win32' ? 'git.exe' : 'git';
  // On Windows the name may be written Path.
  const folders = (env['PATH'] ?? env['Path'] ?? '').split(path.delimiter).filter((folder) => path.isAbsolute(folder));
  const found = folders.map((folder) => path.join(folder, name)).find(mayRun);
  if (found === undefined) throw new InputError('git was not found on this machine. Install it, or compare two files: steelyard changes OLD.yard NEW.yard');
  return found;
}

function mayRun(file: string): boolean {
  try {
    accessSync(file, constants.X_OK);
    return statSync(file).isFile();
  } catch {
    return false;
  }
}
