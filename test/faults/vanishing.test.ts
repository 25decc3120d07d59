import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, beforeEach, expect, test } from 'vitest';
import { check } from '../../src/cli/check.js';
import { filesFrom, InputError, type ManyFiles } from '../../src/cli/files.js';
import { history } from '../../src/cli/history.js';
import { list } from '../../src/cli/list.js';
import type { Terminal } from '../../src/cli/terminal.js';
import type { CheckReport, HistoryReport, ListReport } from '../../src/report/index.js';
import { createLanguageService } from '../../src/service/index.js';

const folder = mkdtempSync(path.join(tmpdir(), 'steelyard-vanishing-'));
afterAll(() => rmSync(folder, { recursive: true }));
const estimate = (price: string): string => `steelyard 1\nestimate "E-1"\n  written 2026-11-24\noption a "A"\n  part "P" ${price} new\n`;

beforeEach(() => {
  for (const name of ['a.yard', 'b.yard', 'c.yard']) writeFileSync(path.join(folder, name), estimate(name === 'c.yard' ? '1,000.00' : '5.00'));
});

/** The files of a run in which one is removed after the folder was listed and before it is read. */
function withoutB(): { readonly files: ManyFiles; readonly terminal: Terminal; readonly said: { out: string } } {
  const said = { out: '' };
  const files = filesFrom(folder, () => '');
  const gone = <T>(file: string, read: (file: string) => T): T => {
    if (path.basename(file) === 'b.yard') rmSync(path.join(folder, 'b.yard'), { force: true });
    return read(file);
  };
  return {
    files: { ...files, open: (file) => gone(file, files.open), host: { ...files.host, read: (file) => gone(file, files.host.read) } },
    terminal: { cwd: folder, styled: false, stdin: () => '', today: '2026-12-01', out: (text) => void (said.out += text), err: () => undefined },
    said,
  };
}

test('a file that goes between the listing and the reading is named by check, and the others are checked', () => {
  const { files, terminal, said } = withoutB();
  expect(() => check(['.'], { as: 'json', output: undefined, version: '1.2.3' }, createLanguageService(files.host), files, terminal)).toThrow(new InputError('There is no file b.yard.\nAll else was checked.'));
  expect(JSON.parse(said.out) as CheckReport).toMatchObject({ files: ['a.yard', 'c.yard'], errors: 1 });
});

test('by the list', () => {
  const { files, terminal, said } = withoutB();
  expect(list(['.'], true, createLanguageService(files.host), files, terminal)).toBe(false);
  const { estimates, unread } = JSON.parse(said.out) as ListReport;
  expect(estimates.map(({ file }) => file)).toEqual(['a.yard', 'c.yard']);
  expect(unread).toEqual([{ file: 'b.yard', why: expect.stringMatching(/^There is no file .*b\.yard\.$/) as string }]);
});

test('and by the history', () => {
  const { files, terminal, said } = withoutB();
  expect(history(['.'], true, files, terminal)).toBe(false);
  expect((JSON.parse(said.out) as HistoryReport).leftOut).toEqual([{ file: 'b.yard', line: null, why: 'The file is not there any more.' }]);
});

test('a shared file that goes while an estimate is worked out is a problem on the line that names it', () => {
  writeFileSync(path.join(folder, 'shop.yard'), 'steelyard 1\nshop "S"\n');
  writeFileSync(path.join(folder, 'uses.yard'), `steelyard 1\nuse "shop.yard"\n${estimate('5.00').slice(12)}`);
  const files = filesFrom(folder, () => '');
  const service = createLanguageService({ ...files.host, read: (file) => {
    if (path.basename(file) === 'shop.yard') rmSync(path.join(folder, 'shop.yard'), { force: true });
    return files.host.read(file);
  } });
  expect(service.diagnostics(files.open('uses.yard')).map(({ code }) => code)).toEqual(['use-missing']);
});
