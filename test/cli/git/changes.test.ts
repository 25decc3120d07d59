import { copyFileSync, existsSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { Ajv2020 } from 'ajv/dist/2020.js';
import * as z from 'zod';
import { beforeEach, describe, expect, test, vi } from 'vitest';
import { changesReport, type ChangesReport } from '../../../src/report/changes/index.js';
import { inPassingFolder, job, Repository, shop } from './repository.js';

const { folder } = inPassingFolder();
const valid = new Ajv2020({ strict: false }).compile(z.toJSONSchema(changesReport()));
let made = 0;
let repository: Repository;

beforeEach(() => {
  repository = Repository.at(path.join(folder(), `${++made}`), { 'shop.yard': shop, 'job.yard': job });
  repository.commit();
});

function report(...args: string[]): ChangesReport {
  const { code, out, err } = repository.steelyard(['changes', ...args, '--json']);
  expect({ code, err }).toEqual({ code: 0, err: '' });
  const found = JSON.parse(out) as ChangesReport;
  expect(valid(found), JSON.stringify(valid.errors)).toBe(true);
  return found;
}

/** What each change moves in the totals, and the totals of both versions. */
function money({ changes, follows, options }: ChangesReport) {
  return {
    changes: changes.map(({ sort, before, after, effects }) => [sort, (after ?? before)?.title, Object.fromEntries(effects.map(({ option, total }) => [option, total]))]),
    follows: follows.map(({ sort }) => sort),
    totals: Object.fromEntries(options.map(({ name, before, after }) => [name, [before?.total, after?.total]])),
  };
}

describe('steelyard changes', () => {
  test('since the last commit, another commit, and between two versions', () => {
    repository.edit('job.yard', '80.00', '90.00');
    const first = { changes: [['moved', 'Pump', { mend: '10.00' }]], follows: [], totals: { mend: ['280.00', '290.00'], radiator: ['1500.00', '1500.00'] } };
    expect(money(report('job.yard'))).toEqual(first);
    expect(report('job.yard').before.name).toBe('HEAD:job.yard');
    repository.commit();
    expect(money(report('job.yard')).changes).toEqual([]);
    expect(money(report('job.yard', '--since', 'HEAD~1'))).toEqual(first);
    expect(money(report('HEAD~1:job.yard', 'HEAD:job.yard'))).toEqual(first);
    const back = money(report('HEAD:job.yard', 'HEAD~1:job.yard'));
    expect(back).toEqual({ changes: [['moved', 'Pump', { mend: '-10.00' }]], follows: [], totals: { mend: ['290.00', '280.00'], radiator: ['1500.00', '1500.00'] } });
  });

  test('each side uses its own shop', () => {
    repository.edit('shop.yard', '100.00 usual', '110.00 usual');
    repository.commit();
    const found = report('job.yard', '--since', 'HEAD~1');
    expect(money(found).totals).toEqual({ mend: ['280.00', '300.00'], radiator: ['1500.00', '1550.00'] });
    const places = [...found.changes.map(({ before, after }) => [before?.at, after?.at]), ...found.options.map(({ before, after }) => [before?.at, after?.at])].flat();
    for (const place of places) expect(place?.file).toMatch(/^(?:HEAD~1:)?(?:shop|job)\.yard$/);
    expect(money(report('HEAD~1:job.yard', 'HEAD~1:job.yard')).changes).toEqual([]);
  });

  test('a renamed file, standard input, the index and a file beside', () => {
    repository.git('mv', 'job.yard', 'E-7.yard');
    repository.edit('E-7.yard', '80.00', '84.00');
    expect(money(report('E-7.yard')).changes).toEqual([['moved', 'Pump', { mend: '4.00' }]]);
    expect(money(report(':E-7.yard', 'E-7.yard')).changes).toEqual([['moved', 'Pump', { mend: '4.00' }]]);
    const { out } = repository.steelyard(['changes', 'HEAD:job.yard', '-', '--json'], { stdin: job.replace('80.00', '81.00') });
    expect((JSON.parse(out) as ChangesReport).after.name).toBe('standard input');
    expect(money(JSON.parse(out) as ChangesReport).totals['mend']).toEqual(['280.00', '281.00']);
    repository.write('copy.yard', job);
    expect(money(report('copy.yard', 'E-7.yard')).totals['mend']).toEqual(['280.00', '284.00']);
  });

  test('1 where a version has lines that can’t be read; the rest is told all the same', () => {
    repository.edit('job.yard', '80.00', '1,080.00');
    repository.commit();
    repository.write('job.yard', job.replace('1000.00', '1200.00'));
    const { code, out, err } = repository.steelyard(['changes', 'job.yard']);
    expect(code).toBe(1);
    expect(out).toContain('Radiator');
    expect(out).toContain('+200.00');
    expect(err).toBe('One line could not be read or priced. The first: HEAD:job.yard:16: There is a comma inside this number.\n');
    const other = repository.steelyard(['changes', 'job.yard', 'HEAD:job.yard']);
    expect(other.code).toBe(1);
  });

  test('a version that is no estimate at all', () => {
    repository.write('job.yard', 'nothing of the kind\n');
    const { code, out } = repository.steelyard(['changes', 'job.yard']);
    expect(code).toBe(1);
    expect(out).not.toBe('');
  });

  test('as text without styles, as a page, into a file', () => {
    repository.edit('job.yard', '80.00', '90.00');
    const { code, out } = repository.steelyard(['changes', 'job.yard']);
    expect(code).toBe(0);
    expect(out).toContain('+10.00');
    expect(out).not.toContain('\u001b');
    expect(repository.steelyard(['changes', 'job.yard', '--output', 'changes.html'])).toEqual({ code: 0, out: '', err: 'Wrote changes.html\n' });
    expect(readFileSync(path.join(repository.folder, 'changes.html'), 'utf8')).toMatch(/^<!DOCTYPE html>[^]*Content-Security-Policy/);
    expect(repository.steelyard(['changes', 'job.yard', '--output', 'changes.yard']).code).toBe(2);
    expect(existsSync(path.join(repository.folder, 'changes.yard'))).toBe(false);
  });

  test('in a hook, where git says which repository and which index are meant', () => {
    repository.write('sub/job.yard', job.replace('shop.yard', '../shop.yard'));
    repository.commit();
    repository.edit('sub/job.yard', '80.00', '82.00');
    repository.git('add', '.');
    const other = path.join(repository.folder, '.git', 'other-index');
    copyFileSync(path.join(repository.folder, '.git', 'index'), other);
    repository.git('reset', '--quiet');
    repository.edit('sub/job.yard', '82.00', '89.00');
    vi.stubEnv('GIT_DIR', path.join(repository.folder, '.git'));
    vi.stubEnv('GIT_INDEX_FILE', other);
    const found = [report('sub/job.yard'), report('HEAD:sub/job.yard', ':sub/job.yard')].map((one) => money(one).changes);
    vi.stubEnv('GIT_DIR', undefined);
    vi.stubEnv('GIT_INDEX_FILE', undefined);
    expect(found).toEqual([[['moved', 'Pump', { mend: '9.00' }]], [['moved', 'Pump', { mend: '2.00' }]]]);
  });
});
