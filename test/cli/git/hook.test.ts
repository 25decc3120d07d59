import { chmodSync, existsSync, mkdirSync, renameSync, statSync, symlinkSync } from 'node:fs';
import path from 'node:path';
import { beforeEach, describe, expect, test } from 'vitest';
import { builtTool, inPassingFolder, job, Repository, shop, type Ran } from './repository.js';

const { folder } = inPassingFolder();
builtTool(folder);
let made = 0;
let repository: Repository;

const bad = job.replace('80.00', '1,080.00');
const hook = '.git/hooks/pre-commit';

beforeEach(() => {
  repository = Repository.at(path.join(folder(), `${++made}`), { 'shop.yard': shop, 'job.yard': job });
  repository.commit();
});

function turn(to: 'on' | 'off'): Ran {
  return repository.steelyard(['git', 'check', to]);
}

const commit = (...args: string[]) => repository.tryGit('commit', '--message', 'Work', ...args);

describe('before a commit what is staged is checked', () => {
  beforeEach(() => void turn('on'));

  test('a bad index is stopped though the work tree is good', () => {
    repository.write('job.yard', bad);
    repository.git('add', 'job.yard');
    repository.write('job.yard', job);
    const { code, err } = commit();
    expect(code).toBe(1);
    expect(err).toContain('job.yard:16:21  error  There is a comma inside this number. [thousands-comma]');
    expect(err).toContain('The commit was stopped: these are errors in what is staged.');
    expect(repository.git('rev-list', '--count', 'HEAD')).toBe('1\n');
    expect(commit('--no-verify').code).toBe(0);
  });

  test('a good index is let through though the work tree is bad', () => {
    repository.edit('job.yard', '80.00', '81.00');
    repository.git('add', 'job.yard');
    repository.write('job.yard', bad);
    expect(commit().code).toBe(0);
    expect(commit('--all').code).toBe(1);
    expect(commit('job.yard').code).toBe(1);
  });

  test('with the shop’s file as it is staged', () => {
    repository.edit('job.yard', '  takes  2.0 h', '  takes  2.0 h\n  class  trimming');
    repository.edit('shop.yard', '  rate mechanical', '  rate trimming "Trim"  90.00\n  rate mechanical');
    repository.git('add', 'job.yard');
    expect(commit()).toMatchObject({ code: 1, err: expect.stringContaining('job.yard:9:10  error') as string });
    repository.git('add', 'shop.yard');
    repository.edit('shop.yard', '  rate trimming "Trim"  90.00\n', '');
    expect(commit().code).toBe(0);
  });

  test('warnings are shown and stop nothing; without any nothing is said; other files count for nothing', () => {
    repository.write('notes.txt', 'a\n');
    repository.edit('job.yard', '  takes  5.0 h', '  takes  5.5 h');
    repository.git('add', '.');
    const quiet = commit();
    expect(quiet.code).toBe(0);
    expect(quiet.err).toBe('');
    repository.write('job.yard', `${job}\npart hose "Hose"  5.00\n`);
    const { code, err } = commit('--all');
    expect(code).toBe(0);
    expect(err).toContain('warning');
    repository.git('rm', '--quiet', 'job.yard');
    expect(commit().code).toBe(0);
  });

  test('odd names, links and text that is none', () => {
    repository.write('sub/-x "y"\nz.yard', bad.replace('shop.yard', '../shop.yard'));
    repository.git('add', '.');
    expect(commit().err).toContain('sub/-x "y"‹U+000A›z.yard:16:21  error');
    repository.write('sub/-x "y"\nz.yard', job.replace('shop.yard', '../shop.yard'));
    symlinkSync('../nowhere.yard', path.join(repository.folder, 'sub/link.yard'));
    repository.git('add', '.');
    expect(commit().code).toBe(0);
  });

  test('the first commit of all, in a linked work tree, and amended', () => {
    const first = Repository.at(`${repository.folder} first`, { 'shop.yard': shop, 'job.yard': bad });
    first.steelyard(['git', 'check', 'on']);
    first.git('add', '.');
    expect(first.tryGit('commit', '--message', 'One').code).toBe(1);
    first.write('job.yard', job);
    first.git('add', '.');
    expect(first.tryGit('commit', '--message', 'One').code).toBe(0);

    const linked = new Repository(`${repository.folder} linked`);
    repository.git('worktree', 'add', '--quiet', '-b', 'linked', linked.folder);
    linked.write('job.yard', bad);
    linked.git('add', '.');
    expect(linked.tryGit('commit', '--message', 'Two').code).toBe(1);
    expect(linked.tryGit('commit', '--amend', '--no-edit').code).toBe(1);
  });

  test('the tool has gone: it says so and stops nothing', () => {
    repository.edit('job.yard', '80.00', '81.00');
    const at = path.join(folder(), 'the shop’s "tool" isn\'t far');
    renameSync(at, `${at} any more`);
    const { code, err } = commit('--all');
    renameSync(`${at} any more`, at);
    expect(code).toBe(0);
    expect(err).toContain('Steelyard has moved, so the staged estimates were not checked.');
  });
});

describe('putting the hook in and taking it away', () => {
  test('twice is once, and off restores', () => {
    expect(turn('on').out).toContain('Before each commit the estimates in it are checked from now on');
    expect(statSync(path.join(repository.folder, hook)).mode & 0o111).not.toBe(0);
    const text = repository.read(hook);
    expect(turn('on').out).toContain('nothing was changed');
    expect(repository.read(hook)).toBe(text);
    expect(repository.steelyard(['git']).out).toContain('Check of staged estimates before a commit: on.');
    expect(turn('off').out).toContain('was deleted');
    expect(existsSync(path.join(repository.folder, hook))).toBe(false);
    expect(turn('off')).toMatchObject({ code: 0, out: 'Commits are not checked by Steelyard; nothing was changed.\n' });
  });

  test('a hook by an older copy of the tool is brought up to date, and may be taken away', () => {
    turn('on');
    const text = repository.read(hook);
    repository.write(hook, text.replaceAll('cli.cjs', 'older.cjs'));
    expect(repository.steelyard(['git']).out).toContain('by another copy of Steelyard');
    turn('on');
    expect(repository.read(hook)).toBe(text);
    repository.write(hook, text.replaceAll('cli.cjs', 'older.cjs'));
    expect(turn('off').out).toContain('was deleted');
  });

  test('a hook of others is never touched, and it says what to put in', () => {
    repository.write(hook, '#!/bin/sh\necho mine\n');
    chmodSync(path.join(repository.folder, hook), 0o755);
    const { code, err } = turn('on');
    expect(code).toBe(2);
    expect(err).toContain('and it was left as it is. To check estimates too, put this line into it:\n  \'');
    expect(turn('off').out).toContain('nothing was changed');
    expect(repository.read(hook)).toBe('#!/bin/sh\necho mine\n');

    // The line that it names does what it says.
    const line = err.split('\n').find((one) => one.startsWith("  '")) ?? '';
    repository.write(hook, `#!/bin/sh\necho mine\n${line}\necho after\n`);
    repository.write('job.yard', bad);
    const stopped = commit('--all');
    expect([stopped.code, stopped.err.includes('mine'), stopped.err.includes('after')]).toEqual([1, true, false]);
    expect(repository.steelyard(['git']).out).toContain('Check of staged estimates before a commit: on, by the hook');
    expect(turn('off').out).toContain('A hook of your own calls it: take the line with “git staged” out of');
  });

  test('one that was changed by hand, a link or a folder is left', () => {
    turn('on');
    const changed = `${repository.read(hook)}echo mine\n`;
    repository.write(hook, changed);
    expect(turn('off')).toMatchObject({ code: 2, err: expect.stringContaining('was changed by hand') as string });
    expect(turn('on').code).toBe(2);
    expect(repository.read(hook)).toBe(changed);

    const linked = Repository.at(`${repository.folder} linked hook`, { 'mine.sh': '#!/bin/sh\n' });
    symlinkSync('../../mine.sh', path.join(linked.folder, hook));
    expect(linked.steelyard(['git', 'check', 'on']).code).toBe(2);
    expect(linked.read('mine.sh')).toBe('#!/bin/sh\n');
  });

  test('the folder of hooks that the repository names is used; one outside of it is not written into', () => {
    repository.git('config', 'core.hooksPath', '.hooks');
    turn('on');
    expect(existsSync(path.join(repository.folder, '.hooks/pre-commit'))).toBe(true);
    repository.write('job.yard', bad);
    expect(commit('--all').code).toBe(1);
    turn('off');
    expect(existsSync(path.join(repository.folder, '.hooks/pre-commit'))).toBe(false);

    const shared = path.join(folder(), 'shared hooks');
    mkdirSync(shared, { recursive: true });
    for (const to of [shared, `../${path.basename(shared)}`]) {
      repository.git('config', 'core.hooksPath', to);
      expect(turn('on')).toMatchObject({ code: 2, err: expect.stringContaining('in a folder outside of it, which others may use too (core.hooksPath). Nothing was written.') as string });
    }
    expect(existsSync(path.join(shared, 'pre-commit'))).toBe(false);
  });
});
