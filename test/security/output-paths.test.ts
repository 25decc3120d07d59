import { spawnSync } from 'node:child_process';
import { closeSync, existsSync, linkSync, mkdirSync, mkdtempSync, openSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { run } from '../../src/cli/run.js';

const ESTIMATE = 'steelyard 1\noption one "One"\n';
let folder: string;
beforeEach(() => {
  folder = mkdtempSync(path.join(tmpdir(), 'steelyard-out-'));
  writeFileSync(path.join(folder, 'job.yard'), `steelyard 1\nuse "shop.txt"\noption one "One"\n`);
  writeFileSync(path.join(folder, 'shop.txt'), '\ufeff\r\n# of the shop\r\nsteelyard 1\r\nshop "Bench"\r\n');
  writeFileSync(path.join(folder, 'old.html'), '<p>an older page</p>');
});
afterEach(() => rmSync(folder, { recursive: true }));

function written(output: string, cwd = folder) {
  let err = '';
  const code = run(['export', cwd === folder ? 'job.yard' : 'one.yard', '--as', 'html', '--output', output], '1.2.3', { cwd, styled: false, stdin: () => '', out: () => undefined, err: (text) => void (err += text) });
  return { code, err };
}

const estimates: readonly (readonly [string, string, () => void])[] = [
  ['the estimate itself', 'job.yard', () => undefined],
  ['by another way to it', './none/../job.yard', () => undefined],
  ['in other letters', 'JOB.YARD', () => undefined],
  ['one that isn’t there yet', 'new.yard', () => undefined],
  ['with the ends that some systems drop', 'job.yard.', () => undefined],
  ['with a space that some systems drop', 'job.yard ', () => undefined],
  ['a stream that some systems keep beside it', 'job.yard::$DATA', () => undefined],
  ['through a link', 'link.html', () => symlinkSync('job.yard', path.join(folder, 'link.html'))],
  ['through a link to a link', 'far.html', () => {
    symlinkSync('job.yard', path.join(folder, 'near.html'));
    symlinkSync('near.html', path.join(folder, 'far.html'));
  }],
  ['through a link to one that isn’t there yet', 'link.html', () => symlinkSync('new.yard', path.join(folder, 'link.html'))],
  ['through a folder that is a link', 'way/job.yard', () => symlinkSync('.', path.join(folder, 'way'))],
  ['by a second name of the same file', 'second.html', () => linkSync(path.join(folder, 'job.yard'), path.join(folder, 'second.html'))],
  ['a shared file of another ending', 'shop.txt', () => undefined],
];

test.each(estimates)('nothing is written over an estimate: %s', (_, output, prepare) => {
  prepare();
  const before = ['job.yard', 'shop.txt'].map((file) => readFileSync(path.join(folder, file), 'utf8'));
  const { code, err } = written(output);
  expect({ code, err }).toEqual({ code: 2, err: expect.stringContaining('nothing was written') as unknown });
  expect(['job.yard', 'shop.txt'].map((file) => readFileSync(path.join(folder, file), 'utf8'))).toEqual(before);
  expect(existsSync(path.join(folder, 'new.yard'))).toBe(false);
});

test('a file that is no estimate is written over, new ones are made, and what can’t be written is said in a sentence', () => {
  expect(written('old.html')).toEqual({ code: 0, err: 'Wrote old.html\n' });
  expect(readFileSync(path.join(folder, 'old.html'), 'utf8')).toMatch(/^<!DOCTYPE html>/);
  expect(written('job.yard.html').code).toBe(0);
  writeFileSync(path.join(folder, 'words.txt'), 'A steelyard 1 is a balance.\n');
  expect(written('words.txt').code).toBe(0);
  mkdirSync(path.join(folder, 'a folder'));
  for (const output of ['a folder', 'none/page.html', 'old.html/page.html', 'x'.repeat(5_000), 'a\u0000b']) expect(written(output), JSON.stringify(output.slice(0, 20))).toEqual({ code: 2, err: expect.stringMatching(/could not be written/) as unknown });
  expect(written('')).toEqual({ code: 2, err: expect.stringMatching(/^--output is empty\./) as unknown });
});

test('what looks as if it lay in the folder is not written where a link leads out of it', () => {
  const work = path.join(folder, 'work');
  mkdirSync(work);
  writeFileSync(path.join(work, 'one.yard'), ESTIMATE);
  symlinkSync('../old.html', path.join(work, 'link.html'));
  symlinkSync('../none.html', path.join(work, 'none.html'));
  symlinkSync('..', path.join(work, 'way'));
  symlinkSync('real.html', path.join(work, 'inside.html'));
  for (const output of ['link.html', 'none.html', 'way/page.html', 'way/old.html']) expect(written(output, work), output).toEqual({ code: 2, err: expect.stringContaining('is a link that leads out of this folder; nothing was written') as unknown });
  expect(readFileSync(path.join(folder, 'old.html'), 'utf8')).toBe('<p>an older page</p>');
  expect(existsSync(path.join(folder, 'none.html')) || existsSync(path.join(folder, 'page.html'))).toBe(false);
  for (const output of ['inside.html', '../beside.html', path.join(folder, 'whole.html')]) expect(written(output, work).code, output).toBe(0);
  // In a repository its top counts.
  mkdirSync(path.join(folder, '.git'));
  for (const output of ['link.html', 'way/page.html']) expect(written(output, work).code, output).toBe(0);
});

test('a pipe in the place of a file is written into and not waited for', () => {
  spawnSync('mkfifo', [path.join(folder, 'pipe')]);
  // Opened for both, a pipe has a reader, so that the write does not wait either.
  const open = openSync(path.join(folder, 'pipe'), 'r+');
  expect(written('pipe').code).toBe(0);
  closeSync(open);
});

test('the text of an estimate is known by its first line', () => {
  for (const text of [ESTIMATE, `\ufeff${ESTIMATE}`, `# by hand\n\n  \n${ESTIMATE}`, 'steelyard\t2\n', 'steelyard 1']) {
    writeFileSync(path.join(folder, 'any.html'), text);
    expect(written('any.html').code, JSON.stringify(text)).toBe(2);
  }
});
