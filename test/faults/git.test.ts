import { chmodSync, existsSync, mkdirSync, rmSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { beforeAll, describe, expect, test, vi } from 'vitest';
import { inPassingFolder, job, Repository, shop } from '../cli/git/repository.js';
import { builtTool } from './tool.js';

// A git that fails in the middle. One that isn't there, and repositories that it doesn't read, are in test/cli/git/refusals.test.ts.

const { folder } = inPassingFolder();
const { shell } = builtTool();
let repository: Repository;
let realGit: string;

beforeAll(() => {
  repository = Repository.at(path.join(folder(), 'shop'), { 'shop.yard': shop, 'job.yard': job });
  repository.commit();
  repository.write('job.yard', job.replace('80.00', '1,080.00'));
  repository.git('add', '.');
  realGit = (process.env['PATH'] ?? '').split(path.delimiter).map((one) => path.join(one, 'git')).find((one) => existsSync(one)) ?? '';
});

/** Runs the tool with a git that does `instead` where it is called for `what`, and else its work. */
function withGit(what: string, instead: string, args: readonly string[]) {
  const place = path.join(folder(), 'failing');
  mkdirSync(place, { recursive: true });
  writeFileSync(path.join(place, 'git'), `#!/bin/sh\nfor word in "$@"; do if test "$word" = '${what}'; then ${instead}; fi; done\nexec '${realGit}' "$@"\n`);
  chmodSync(path.join(place, 'git'), 0o755);
  vi.stubEnv('PATH', `${place}${path.delimiter}${process.env['PATH'] ?? ''}`);
  try {
    return repository.steelyard(args);
  } finally {
    vi.unstubAllEnvs();
    rmSync(place, { recursive: true });
  }
}

const BROKEN = "echo 'fatal: the object store is damaged' >&2; echo 'hint: more words' >&2; exit 128";
const MUTE = 'exit 3';
const KILLED = 'kill -9 $$';
const HELP = 'See: steelyard --help\n';

describe('a git that fails half way: a sentence that says so, and never an answer from what it left out', () => {
  test.each([
    ['ls-tree', ['changes', 'job.yard']],
    ['ls-tree', ['changes', 'HEAD:job.yard', 'job.yard']],
    ['ls-files', ['changes', ':job.yard', 'job.yard']],
    ['diff-index', ['git', 'staged']],
    ['ls-files', ['git', 'staged']],
    ['check-attr', ['git']],
    ['check-attr', ['git', 'totals', 'on']],
  ])('at %s, in %j', (what, args) => {
    const place = repository.folder;
    expect(withGit(what, BROKEN, args)).toEqual({ code: 2, out: '', err: `git can’t read the repository at ${place}: fatal: the object store is damaged\n${HELP}` });
    expect(withGit(what, MUTE, args)).toEqual({ code: 2, out: '', err: `git can’t read the repository at ${place}: it says no more.\n${HELP}` });
    expect(withGit(what, KILLED, args)).toEqual({ code: 2, out: '', err: `git was stopped while it worked (SIGKILL). Nothing was read; try again.\n${HELP}` });
  });

  test('staged estimates with errors are not let through by it', () => {
    expect(repository.steelyard(['git', 'staged'])).toMatchObject({ code: 1, err: expect.stringContaining('The commit was stopped') as string });
  });

  test('at the contents of a file', () => {
    expect(withGit('cat-file', BROKEN, ['changes', 'job.yard'])).toEqual({ code: 2, out: '', err: `git has no contents for HEAD:job.yard here: this clone left them out, or the repository is damaged.\n${HELP}` });
    expect(withGit('cat-file', KILLED, ['changes', 'job.yard']).err).toContain('git was stopped while it worked');
  });

  test('at the question where its hooks are', () => {
    expect(withGit('--git-path', BROKEN, ['git', 'check', 'on'])).toEqual({ code: 2, out: '', err: `git did not say where its hooks are: fatal: the object store is damaged\n${HELP}` });
    expect(existsSync(path.join(repository.folder, '.git/hooks/pre-commit'))).toBe(false);
  });

  test('at the settings of the repository: nothing else is written either', () => {
    expect(withGit('--replace-all', BROKEN, ['git', 'totals', 'on'])).toEqual({ code: 2, out: '', err: `git could not change the repository’s settings: fatal: the object store is damaged\n${HELP}` });
    expect(existsSync(path.join(repository.folder, '.gitattributes'))).toBe(false);
  });

  test('two files are compared without it', () => {
    repository.write('old.yard', job);
    expect(withGit('--show-prefix', BROKEN, ['changes', 'old.yard', 'old.yard']).code).toBe(0);
    rmSync(path.join(repository.folder, 'old.yard'));
  });
});

test('where the attributes of the repository can’t be written to the end, they stay as they were', () => {
  const attributes = `# filling\n`.repeat(2_000);
  repository.write('.gitattributes', attributes);
  // The system stops a file at 4 or 8 KiB, as a full disk would; POSIX, ulimit.
  const { code, out, err } = shell(`trap '' XFSZ; ulimit -f 8; $TOOL git totals on`, { cwd: repository.folder });
  expect({ code, out, err }).toEqual({ code: 2, out: '', err: expect.stringMatching(/^\.gitattributes could not be written: EFBIG: file too large/) as string });
  expect(repository.read('.gitattributes')).toBe(attributes);
  repository.git('config', '--remove-section', 'diff.steelyard');
  rmSync(path.join(repository.folder, '.gitattributes'));
});
