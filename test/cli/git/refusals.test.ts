import { chmodSync, existsSync, mkdirSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { beforeAll, describe, expect, test, vi } from 'vitest';
import { builtTool, inPassingFolder, job, Repository, shop } from './repository.js';

const { folder } = inPassingFolder();
const tool = builtTool(folder);
let repository: Repository;

beforeAll(() => {
  repository = Repository.at(path.join(folder(), 'shop'), { 'shop.yard': shop, 'job.yard': job, 'sub/job.yard': job });
  repository.write('latin.yard', '');
  writeFileSync(path.join(repository.folder, 'latin.yard'), Buffer.from([0x23, 0xe9, 0x0a]));
  repository.write('long.yard', `steelyard 1\n${'# filling\n'.repeat(900_000)}`);
  repository.commit();
  repository.write('old.yard', job.replace('80.00', '83.00'));
  repository.commit();
  repository.git('mv', 'old.yard', 'renamed.yard');
  repository.commit();
  repository.write('new.yard', job.replaceAll('pump', 'belt').replace('80.00', '1.00').slice(0, 200));
});

/** What stands in the way is said in a sentence or two, with exit code 2 and nothing on standard output. */
function refused(args: readonly string[], says: string, below = ''): void {
  const { code, out, err } = repository.steelyard(args, { below });
  expect({ code, out }, err).toEqual({ code: 2, out: '' });
  expect(err).toContain(says);
  expect(err.split('\n')).toHaveLength(3);
  expect(err).not.toMatch(/fatal|usage:|\n {4}at /);
}

describe('one clear sentence', () => {
  test.each([
    [['changes'], 'needs a file'],
    [['changes', 'none.yard'], 'There is no file none.yard.'],
    [['changes', 'a', 'b', 'c'], 'one version, or two'],
    [['changes', '-'], 'needs a version to compare standard input with'],
    [['changes', '-', '-'], 'Only one of the two versions can be standard input'],
    [['changes', 'HEAD~1', 'job.yard'], 'There is no file HEAD~1.'],
    [['changes', 'job.yard', '--since', 'nowhere'], 'There is no revision nowhere'],
    [['changes', 'HEAD:job.yard', 'job.yard', '--since', 'HEAD'], '--since goes with one file'],
    [['changes', 'job.yard', '--since', ''], '--since is empty'],
    [['changes', 'job.yard', '--since=--output=/tmp/x'], '--output=/tmp/x is no revision'],
    [['changes', '--', '--output=x:job.yard', 'job.yard'], '--output=x is no revision'],
    [['changes', 'HEAD\n--all:job.yard', 'job.yard'], 'HEAD‹U+000A›--all is no revision'],
    [['changes', 'job.yard', '--since', 'HEAD..HEAD~1'], 'There is no revision HEAD..HEAD~1'],
    [['changes', 'HEAD:none.yard', 'job.yard'], 'There is no file none.yard in HEAD.'],
    [['changes', 'HEAD:sub', 'job.yard'], 'There is no file sub in HEAD.'],
    [['changes', 'HEAD:', 'job.yard'], 'is not a path in this repository'],
    [['changes', 'HEAD:../job.yard', 'job.yard'], 'is not a path in this repository'],
    [['changes', 'HEAD:/etc/hosts', 'job.yard'], 'is not a path in this repository'],
    [['changes', ':none.yard', 'job.yard'], 'in the index'],
    [['changes', '{'.repeat(5000), 'job.yard'], 'There is no file {{{'],
    [['changes', `HEAD${'^{/x:'.repeat(500)}`, 'job.yard'], 'There is no file HEAD^{/x:'],
    [['changes', `HEAD${'~'.repeat(100_000)}:job.yard`, 'job.yard'], 'There is no revision'],
    [['changes', 'HEAD:latin.yard', 'job.yard'], 'HEAD:latin.yard is not text in UTF-8'],
    [['changes', 'HEAD:long.yard', 'job.yard'], 'larger than an estimate can be'],
    [['changes', 'HEAD~1:renamed.yard', 'job.yard'], 'It was called old.yard then: write HEAD~1:old.yard'],
    [['changes', 'new.yard'], 'new.yard is not in HEAD: it came later, or has another name there.'],
    [['changes', 'job.yard', '--as', 'csv'], '--as takes text, html, json'],
    [['changes', 'job.yard', '--json', '--as', 'html'], 'two forms at once'],
    [['weigh', 'job.yard', '--since', 'HEAD'], '--since belongs to changes'],
    [['git', 'totls', 'on'], 'Did you mean totals?'],
    [['git', 'totals'], 'git totals takes on or off.'],
    [['git', 'check', 'of'], 'git check takes on or off.'],
    [['git', 'staged', 'x'], 'git staged takes nothing'],
    [['git', 'text'], 'git text takes one file.'],
  ])('%j', (args, says) => refused(args, says));

  test('a path from the folder where one from the top is meant', () => refused(['changes', 'HEAD:job2.yard', 'job.yard'], 'There is no file job2.yard in HEAD.', 'sub'));

  test('and the other way round', () => {
    repository.write('sub/deep/only.yard', job);
    repository.commit();
    refused(['changes', 'HEAD:only.yard', 'only.yard'], 'write HEAD:sub/deep/only.yard, or HEAD:./only.yard', 'sub/deep');
  });
});

describe('where git has nothing to compare with', () => {
  test('no repository', () => {
    const plain = new Repository(path.join(folder(), 'plain'));
    plain.write('job.yard', job);
    for (const args of [['changes', 'job.yard'], ['changes', 'HEAD:job.yard', 'job.yard'], ['git'], ['git', 'totals', 'on'], ['git', 'check', 'off'], ['git', 'staged']]) {
      const { code, out, err } = plain.steelyard(args);
      expect({ code, out }).toEqual({ code: 2, out: '' });
      expect(err).toBe(`${plain.folder} is not in a git repository.\nSee: steelyard --help\n`);
    }
  });

  test('a repository without a commit', () => {
    const empty = Repository.at(path.join(folder(), 'empty'), { 'job.yard': job, 'shop.yard': shop });
    expect(empty.steelyard(['changes', 'job.yard'])).toMatchObject({ code: 2, err: 'There is no commit yet, so there is nothing to compare with.\nSee: steelyard --help\n' });
  });

  test('a clone of the latest part only', () => {
    const shallow = new Repository(path.join(folder(), 'shallow'));
    repository.git('clone', '--quiet', '--depth=1', `file://${repository.folder}`, shallow.folder);
    const { code, err } = shallow.steelyard(['changes', 'job.yard', '--since', 'HEAD~2']);
    expect(code).toBe(2);
    expect(err).toContain('This clone holds only the latest part of the history; git fetch --unshallow brings the rest.');
  });

  test('a clone without contents fetches none by itself', () => {
    repository.git('config', 'uploadpack.allowFilter', 'true');
    const partial = new Repository(path.join(folder(), 'partial'));
    repository.git('clone', '--quiet', '--no-checkout', '--filter=blob:none', `file://${repository.folder}`, partial.folder);
    partial.write('job.yard', job);
    const { code, err } = partial.steelyard(['changes', 'job.yard']);
    expect(code).toBe(2);
    expect(err).toContain('git has no contents for HEAD:job.yard here');
  });

  test('a bare repository has no index, hooks to put in, or attributes', () => {
    const bare = new Repository(path.join(folder(), 'bare.git'));
    repository.git('clone', '--quiet', '--bare', '.', bare.folder);
    for (const args of [['git'], ['git', 'totals', 'on'], ['git', 'check', 'on'], ['git', 'staged']]) expect(bare.steelyard(args)).toMatchObject({ code: 2, out: '' });
    expect(bare.steelyard(['git', 'staged']).err).toContain('is in a bare repository, which has no files to work on.');
  });
});

describe('git itself', () => {
  test('is not there', () => {
    const { code, out, err } = tool(['changes', 'job.yard'], repository.folder, { PATH: path.join(folder(), 'nowhere') });
    expect({ code, out }).toEqual({ code: 2, out: '' });
    expect(err).toBe('git was not found on this machine. Install it, or compare two files: steelyard changes OLD.yard NEW.yard\nSee: steelyard --help\n');
  });

  test('is never taken from the folder itself', () => {
    const trap = path.join(folder(), 'trap');
    mkdirSync(trap);
    writeFileSync(path.join(trap, 'job.yard'), job);
    writeFileSync(path.join(trap, 'git'), '#!/bin/sh\ntouch ran\n');
    chmodSync(path.join(trap, 'git'), 0o755);
    expect(tool(['changes', 'job.yard'], trap, { PATH: ':.:bin:./' }).err).toContain('git was not found');
    expect(existsSync(path.join(trap, 'ran'))).toBe(false);
  });

  test('does not read a repository that is broken, or that belongs to someone else', () => {
    const broken = Repository.at(path.join(folder(), 'broken'), { 'job.yard': job });
    broken.write('.git/config', '[core\n');
    expect(broken.steelyard(['changes', 'job.yard']).err).toMatch(/^git can’t read the repository at .*: fatal: bad config line 1 in file .git\/config\nSee: steelyard --help\n$/);
    vi.stubEnv('GIT_TEST_ASSUME_DIFFERENT_OWNER', '1');
    expect(repository.steelyard(['changes', 'job.yard']).err).toContain('since it belongs to someone else. If you trust it: git config --global --add safe.directory FOLDER');
    vi.stubEnv('GIT_TEST_ASSUME_DIFFERENT_OWNER', undefined);
  });
});

test('settings of a repository run no program while something is read from it', () => {
  const evil = Repository.at(path.join(folder(), 'evil'), { 'shop.yard': shop, 'job.yard': job });
  evil.commit();
  evil.git('mv', 'job.yard', 'other.yard');
  evil.edit('other.yard', '80.00', '81.00');
  evil.git('add', '.');
  evil.write('.gitattributes', '*.yard diff=trap filter=trap\n');
  const program = path.join(evil.folder, 'trap.sh');
  evil.write('trap.sh', '#!/bin/sh\ntouch "$(dirname "$0")/ran"\ncat\n');
  chmodSync(program, 0o755);
  const hooks = path.join(evil.folder, 'hooks');
  for (const name of ['post-index-change', 'fsmonitor-watchman', 'reference-transaction']) {
    evil.write(`hooks/${name}`, '#!/bin/sh\ntouch "$(dirname "$0")/../ran"\n');
    chmodSync(path.join(hooks, name), 0o755);
  }
  const traps = { 'core.fsmonitor': program, 'core.hooksPath': hooks, 'core.pager': program, 'core.editor': program, 'core.sshCommand': program, 'diff.external': program, 'diff.trap.textconv': program, 'diff.trap.command': program, 'filter.trap.clean': program, 'filter.trap.smudge': program, 'filter.trap.process': program, 'log.showSignature': 'true', 'gpg.program': program, 'pager.log': program, 'interactive.diffFilter': program, 'core.askPass': program, 'credential.helper': program, 'diff.relative': 'true', 'color.ui': 'always' };
  for (const [name, value] of Object.entries(traps)) evil.git('-c', 'core.fsmonitor=false', '-c', 'core.hooksPath=/dev/null', 'config', name, value);
  for (const [name, value] of Object.entries({ GIT_EXTERNAL_DIFF: program, GIT_PAGER: program, GIT_SSH_COMMAND: program, GIT_ASKPASS: program, GIT_TRACE: '1', GIT_GLOB_PATHSPECS: '1' })) vi.stubEnv(name, value);
  const seen = path.join(evil.folder, 'ran');
  for (const args of [['changes', 'HEAD:none.yard', 'other.yard'], ['changes', 'HEAD:other.yard', 'other.yard'], ['changes', 'HEAD:job.yard', ':none.yard'], ['changes', 'other.yard', '--since', 'HEAD~9'], ['git', 'staged'], ['git']]) {
    evil.steelyard(args);
    expect(existsSync(seen), args.join(' ')).toBe(false);
  }
  expect(evil.steelyard(['changes', 'HEAD:other.yard', 'other.yard']).err).toContain('It was called job.yard then');
  for (const name of ['GIT_EXTERNAL_DIFF', 'GIT_PAGER', 'GIT_SSH_COMMAND', 'GIT_ASKPASS', 'GIT_TRACE', 'GIT_GLOB_PATHSPECS']) vi.stubEnv(name, undefined);
  // The traps are live: git without these guards falls into one.
  evil.tryGit('status');
  expect(existsSync(seen)).toBe(true);
});
