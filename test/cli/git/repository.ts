import { spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, readFileSync, realpathSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { build } from 'esbuild';
import { afterAll, beforeAll, vi } from 'vitest';
import { run } from '../../../src/cli/run.js';
import type { Terminal } from '../../../src/cli/terminal.js';

/** Settings of the machine and of a surrounding hook are not to be seen. */
const ENVIRONMENT: Readonly<Record<string, string | undefined>> = {
  GIT_CONFIG_GLOBAL: '/dev/null', GIT_CONFIG_SYSTEM: '/dev/null', GIT_CONFIG_NOSYSTEM: '1', GIT_CEILING_DIRECTORIES: tmpdir(),
  GIT_AUTHOR_NAME: 'Writer', GIT_AUTHOR_EMAIL: 'writer@example.org', GIT_COMMITTER_NAME: 'Writer', GIT_COMMITTER_EMAIL: 'writer@example.org',
  GIT_DIR: undefined, GIT_WORK_TREE: undefined, GIT_INDEX_FILE: undefined, GIT_PREFIX: undefined, VSCODE_GIT_COMMAND: undefined, NO_COLOR: '1', GIT_PAGER: 'cat',
};

/** Real repositories in a passing folder, for all tests of a file; called before they are defined. */
export function inPassingFolder(): { readonly folder: () => string } {
  let folder = '';
  vi.setConfig({ testTimeout: SLOW });
  beforeAll(() => {
    for (const [name, value] of Object.entries(ENVIRONMENT)) vi.stubEnv(name, value);
    folder = realpathSync(mkdtempSync(path.join(tmpdir(), 'steelyard-git-')));
  });
  afterAll(() => {
    vi.unstubAllEnvs();
    vi.resetConfig();
    rmSync(folder, { recursive: true, force: true });
  });
  return { folder: () => folder };
}

/** Time for a test that starts git and the tool several times, on a busy machine; in milliseconds. */
const SLOW = 60_000;

export interface Ran {
  readonly code: number | null;
  readonly out: string;
  readonly err: string;
}

/** A repository and what is done in it. */
export class Repository {
  constructor(readonly folder: string) {}

  /** A new one, with the files given, not yet committed. */
  static at(folder: string, files: Readonly<Record<string, string>> = {}): Repository {
    mkdirSync(folder, { recursive: true });
    const made = new Repository(folder);
    made.git('init', '--quiet', '--initial-branch=main');
    for (const [name, text] of Object.entries(files)) made.write(name, text);
    return made;
  }

  write(name: string, text: string): void {
    mkdirSync(path.dirname(path.join(this.folder, name)), { recursive: true });
    writeFileSync(path.join(this.folder, name), text);
  }

  read(name: string): string {
    return readFileSync(path.join(this.folder, name), 'utf8');
  }

  /** Replaces a piece of a file that must be there. */
  edit(name: string, from: string, to: string): void {
    const before = this.read(name);
    if (!before.includes(from)) throw new Error(`${name} does not hold ${from}`);
    this.write(name, before.replace(from, to));
  }

  /** Runs git, which must succeed. */
  git(...args: string[]): string {
    const { code, out, err } = this.tryGit(...args);
    if (code !== 0) throw new Error(`git ${args.join(' ')}: ${err}${out}`);
    return out;
  }

  tryGit(...args: string[]): Ran {
    const { status, stdout, stderr } = spawnSync('git', args, { cwd: this.folder, env: process.env, encoding: 'utf8' });
    return { code: status, out: stdout, err: stderr };
  }

  commit(message = 'Work'): void {
    this.git('add', '--all');
    this.git('commit', '--quiet', '--message', message);
  }

  /** Runs a command of the terminal tool here, in this process. */
  steelyard(args: readonly string[], { below = '', stdin = '' } = {}): Ran {
    let out = '';
    let err = '';
    const terminal: Terminal = { cwd: path.join(this.folder, below), styled: false, stdin: () => stdin, out: (text) => void (out += text), err: (text) => void (err += text) };
    return { code: run(args, '1.2.3', terminal), out, err };
  }
}

/**
 * The tool as it is shipped, built once for a file of tests, since git calls it by itself. Its folder has spaces and
 * quotes in its name. Commands that are run in this process take it for the program that they are.
 */
export function builtTool(folder: () => string): (args: readonly string[], cwd: string, env?: NodeJS.ProcessEnv) => Ran {
  const root = path.resolve(import.meta.dirname, '../../..');
  const program = () => path.join(folder(), 'the shop’s "tool" isn\'t far', 'cli.cjs');
  const [, usual = ''] = process.argv;
  beforeAll(async () => {
    process.argv[1] = program();
    await build({ entryPoints: [path.join(root, 'src/cli/main.ts')], outfile: program(), bundle: true, platform: 'node', format: 'cjs', target: 'node20', logLevel: 'silent' });
  }, SLOW);
  afterAll(() => void (process.argv[1] = usual));
  return (args, cwd, env = process.env) => {
    const { status, stdout, stderr } = spawnSync(process.execPath, [program(), ...args], { cwd, env, encoding: 'utf8' });
    return { code: status, out: stdout, err: stderr };
  };
}

export const shop = `steelyard 1

shop "Corner Bay Garage"
  currency  USD
  workday   8 h

  rate mechanical "Mechanical"  100.00 usual
`;

/** Mending costs 280.00, the radiator 1,500.00. */
export const job = `steelyard 1
use "shop.yard"

estimate "E-7  Coolant pump weeps"
  start  2026-11-30

labour pump "Coolant pump: replace"
  takes  2.0 h

labour swap "Radiator: swap"
  takes  5.0 h

option mend "Replace the pump"
  do        pump
  warranty  12 mo
  part      "Pump"  80.00 new

option radiator "Fit a radiator too"
  do        swap
  warranty  3 mo
  part      "Radiator"  1000.00 new
`;
