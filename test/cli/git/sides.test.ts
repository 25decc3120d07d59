import { mkdirSync, symlinkSync } from 'node:fs';
import path from 'node:path';
import { beforeEach, describe, expect, test } from 'vitest';
import { sideNamed, sideSince, type OpenSide } from '../../../src/cli/git/sides.js';
import type { Terminal } from '../../../src/cli/terminal.js';
import { inPassingFolder, job, Repository, shop } from './repository.js';

const { folder } = inPassingFolder();
let made = 0;
let repository: Repository;

beforeEach(() => {
  repository = Repository.at(path.join(folder(), `${++made}`), { 'shop.yard': shop, 'job.yard': job });
});

function terminal(below = '', stdin = ''): Terminal {
  return { cwd: path.join(repository.folder, below), styled: false, stdin: () => stdin, out: () => undefined, err: () => undefined };
}

/** Totals by option. */
function totals({ side }: OpenSide): Record<string, string> {
  return Object.fromEntries(side.service.weighing(side.uri).comparison.options.map(({ option, totals: { total } }) => [option.name, total.likely.toFixed(2)]));
}

const named = (written: string, below = '') => sideNamed(written, terminal(below));
const since = (file: string, revision: string, below = '') => sideSince(file, revision, terminal(below));

describe('each side has its own files', () => {
  test('the shop’s file is read from the same revision', () => {
    repository.commit();
    repository.edit('shop.yard', '100.00 usual', '120.00 usual');
    repository.commit();
    repository.edit('shop.yard', '120.00 usual', '150.00 usual');
    expect(totals(named('HEAD~1:job.yard'))).toEqual({ mend: '280.00', radiator: '1500.00' });
    expect(totals(named('HEAD:job.yard'))).toEqual({ mend: '320.00', radiator: '1600.00' });
    expect(totals(named('job.yard'))).toEqual({ mend: '380.00', radiator: '1750.00' });
    repository.git('add', 'shop.yard');
    repository.edit('shop.yard', '150.00 usual', '200.00 usual');
    expect(totals(named(':job.yard'))).toEqual({ mend: '380.00', radiator: '1750.00' });
  });

  test('a file that could not be read then is a version all the same', () => {
    repository.edit('job.yard', '80.00 new', '1,080.00 new');
    repository.commit();
    repository.edit('job.yard', '1,080.00 new', '80.00 new');
    const { side } = since('job.yard', 'HEAD');
    expect(side.service.weighing(side.uri).problems.filter(({ severity }) => severity === 'error').map(({ code }) => code)).toEqual(['thousands-comma']);
    expect(side.service.weighing(side.uri).comparison.options.map(({ complete }) => complete)).toEqual([false, true]);
  });

  test('an amended commit is the last commit, and what it was before is still there by its identity', () => {
    repository.commit();
    const before = repository.git('rev-parse', 'HEAD').trim();
    repository.edit('job.yard', '80.00 new', '90.00 new');
    repository.git('commit', '--quiet', '--amend', '--all', '--no-edit');
    expect(totals(since('job.yard', 'HEAD'))['mend']).toBe('290.00');
    expect(totals(since('job.yard', before.slice(0, 12)))['mend']).toBe('280.00');
    expect(totals(since('job.yard', 'HEAD@{1}'))['mend']).toBe('280.00');
  });

  test('a link in a revision is followed inside of it, and nowhere else', () => {
    repository.write('shared/prices.yard', shop);
    repository.git('rm', '--quiet', '--force', '--ignore-unmatch', 'shop.yard');
    mkdirSync(path.join(repository.folder, 'out'));
    repository.write('in/job.yard', job);
    symlinkSync('../shared/prices.yard', path.join(repository.folder, 'in/shop.yard'));
    repository.write('out/job.yard', job);
    symlinkSync('../../elsewhere/shop.yard', path.join(repository.folder, 'out/shop.yard'));
    symlinkSync('job.yard', path.join(repository.folder, 'round.yard'));
    repository.git('rm', '--quiet', '--cached', '--ignore-unmatch', 'job.yard');
    repository.commit();
    expect(totals(named('HEAD:in/job.yard'))).toEqual({ mend: '280.00', radiator: '1500.00' });
    const { side } = named('HEAD:out/job.yard');
    expect(side.service.weighing(side.uri).problems.map(({ code }) => code)).toContain('use-missing');
    expect(totals(named('HEAD:round.yard'))).toEqual({ mend: '280.00', radiator: '1500.00' });
  });
});

describe('which file is meant', () => {
  test.each([
    ['with a space.yard'], ['"quoted" \'twice\'.yard'], ['line\nbreak.yard'], ['Öl-и-油.yard'], ['-dash.yard'], ['a:b.yard'], ['*.yard'], ['[a].yard'], ['deep er/down/x.yard'],
  ])('a file called %j', (name) => {
    const below = name.includes('/') ? `use "../../shop.yard"` : 'use "shop.yard"';
    repository.write(name, job.replace('use "shop.yard"', below));
    repository.commit();
    repository.write(name, job.replace('use "shop.yard"', below).replace('80.00', '81.00'));
    expect(totals(named(`HEAD:${name}`))['mend']).toBe('280.00');
    expect(totals(named(`:${name}`))['mend']).toBe('280.00');
    expect(totals(since(`./${name}`, 'HEAD'))['mend']).toBe('280.00');
    expect(totals(named(`./${name}`))['mend']).toBe('281.00');
  });

  test('a file that is there wins over a revision and a path', () => {
    repository.commit();
    repository.write('HEAD:job.yard', job.replace('80.00', '70.00'));
    expect(totals(named('HEAD:job.yard'))['mend']).toBe('270.00');
    expect(named('HEAD:job.yard').side.name).toBe('HEAD:job.yard');
    expect(totals(named('HEAD:./job.yard'))['mend']).toBe('280.00');
  });

  test('paths behind the colon go from the top, or from the folder where they start with a dot', () => {
    repository.write('a/b/job.yard', job.replace('shop.yard', '../../shop.yard').replace('80.00', '60.00'));
    repository.commit();
    expect(totals(named('HEAD:job.yard', 'a/b'))['mend']).toBe('280.00');
    expect(totals(named('HEAD:./job.yard', 'a/b'))['mend']).toBe('260.00');
    expect(totals(named('HEAD:../../job.yard', 'a/b'))['mend']).toBe('280.00');
    expect(totals(named(':./job.yard', 'a/b'))['mend']).toBe('260.00');
    expect(named('HEAD:./b/job.yard', 'a').side.name).toBe('HEAD:a/b/job.yard');
    expect(totals(since('b/job.yard', 'HEAD', 'a'))['mend']).toBe('260.00');
    expect(totals(since(path.join(repository.folder, 'a/b/job.yard'), 'HEAD', 'a'))['mend']).toBe('260.00');
  });

  test.each([['HEAD^0'], ['main'], ['v1'], ['v1-annotated'], ['HEAD@{0}'], ['main@{2037-01-01 10:30:00}'], ['HEAD^{/first: one}']])('%s is a revision, colons in it or not', (revision) => {
    repository.commit('The first: one');
    repository.git('tag', 'v1');
    repository.git('tag', '--annotate', '--message', 'One', 'v1-annotated');
    repository.edit('job.yard', '80.00', '85.00');
    expect(totals(named(`${revision}:job.yard`))['mend']).toBe('280.00');
    expect(totals(since('job.yard', revision))['mend']).toBe('280.00');
  });

  test('standard input is a version', () => {
    expect(totals(sideNamed('-', terminal('', job.replace('80.00', '75.00'))))['mend']).toBe('275.00');
  });
});

describe('renames', () => {
  test('a renamed file is compared with what it was called then', () => {
    repository.commit();
    repository.git('mv', 'job.yard', 'E-7.yard');
    repository.edit('E-7.yard', '80.00', '85.00');
    const staged = since('E-7.yard', 'HEAD');
    expect([staged.side.name, totals(staged)['mend']]).toEqual(['HEAD:job.yard', '280.00']);
    repository.commit();
    mkdirSync(path.join(repository.folder, '2026'));
    repository.git('mv', 'E-7.yard', '2026/E-7.yard');
    repository.edit('2026/E-7.yard', '"shop.yard"', '"../shop.yard"');
    repository.commit();
    expect(since('E-7.yard', 'HEAD~1', '2026').side.name).toBe('HEAD~1:E-7.yard');
    expect(since('2026/E-7.yard', 'HEAD~2').side.name).toBe('HEAD~2:job.yard');
  });

  test('one that was much edited besides is followed from commit to commit', () => {
    const long = (seed: number) => `${job}${Array.from({ length: 60 }, (_, i) => `note "Remark ${seed} ${(i * 7919 * seed) % 1009}"\n`).join('')}`;
    repository.write('job.yard', long(1));
    repository.commit();
    repository.git('mv', 'job.yard', 'second.yard');
    repository.commit();
    repository.write('second.yard', long(3));
    repository.commit();
    repository.git('mv', 'second.yard', 'third.yard');
    repository.commit();
    expect(repository.git('diff', '--find-renames', '--name-status', 'HEAD~3', 'HEAD')).not.toContain('R');
    expect(since('third.yard', 'HEAD~3').side.name).toBe('HEAD~3:job.yard');
  });
});

describe('repositories of other shapes', () => {
  test('a linked work tree and a submodule, where .git is a file', () => {
    repository.commit();
    const linked = new Repository(`${repository.folder}-linked`);
    repository.git('worktree', 'add', '--quiet', linked.folder);
    linked.edit('job.yard', '80.00', '88.00');
    linked.commit();
    const inLinked: Terminal = { ...terminal(), cwd: linked.folder };
    expect(totals(sideNamed('HEAD:job.yard', inLinked))['mend']).toBe('288.00');
    expect(totals(sideSince('job.yard', 'main', inLinked))['mend']).toBe('280.00');

    const outer = Repository.at(`${repository.folder}-outer`, { 'job.yard': job, 'shop.yard': shop });
    outer.git('-c', 'protocol.file.allow=always', 'submodule', '--quiet', 'add', repository.folder, 'inner');
    outer.edit('job.yard', '80.00', '10.00');
    outer.commit();
    const inOuter: Terminal = { ...terminal(), cwd: outer.folder };
    expect(totals(sideSince('inner/job.yard', 'HEAD', inOuter))['mend']).toBe('280.00');
    expect(totals(sideNamed('HEAD:job.yard', { ...inOuter, cwd: path.join(outer.folder, 'inner') }))['mend']).toBe('280.00');
  });

  test('a bare repository has revisions to compare', () => {
    repository.commit();
    const bare = `${repository.folder}.git`;
    repository.git('clone', '--quiet', '--bare', '.', bare);
    expect(totals(sideNamed('main:job.yard', { ...terminal(), cwd: bare }))['mend']).toBe('280.00');
  });
});
