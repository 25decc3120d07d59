import { chmodSync, mkdirSync, mkdtempSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { afterAll, beforeAll, describe, expect, test, vi } from 'vitest';
import { filesFrom } from '../../src/cli/files.js';
import { history } from '../../src/cli/history.js';
import { run } from '../../src/cli/run.js';
import type { HistoryReport } from '../../src/report/index.js';
import { CLOSED_SHOP, closedEstimate } from '../../src/tools/bench/closed-estimates.js';
import { BENCH } from './closed.js';

const root = path.resolve(import.meta.dirname, '../..');
let folder: string;
const write = (name: string, text: string | Uint8Array) => {
  mkdirSync(path.dirname(path.join(folder, name)), { recursive: true });
  writeFileSync(path.join(folder, name), text);
};

function steelyard(args: readonly string[], cwd = folder) {
  let out = '';
  let err = '';
  const code = run(args, '1.2.3', { cwd, styled: false, stdin: () => '', out: (text) => void (out += text), err: (text) => void (err += text) });
  return { code, out, err };
}

const closing = (hours: number, on: string) => `${BENCH}closed for repair on ${on}\n  clocked head ${hours} h\n`;

beforeAll(() => {
  folder = mkdtempSync(path.join(tmpdir(), 'steelyard-history-'));
  mkdirSync(path.join(folder, '.git'));
  write('shop.yard', CLOSED_SHOP);
  [10, 11, 12, 13, 40].forEach((hours, i) => write(`2026/job-${i}.yard`, closing(hours, `2026-0${i + 1}-10`).replace('"shop.yard"', '"../shop.yard"')));
  write('2026/open.yard', BENCH);
  write('old/job.yard', closing(12, '2020-01-10').replace('"shop.yard"', '"../shop.yard"'));
  write('bad/latin.yard', Buffer.from([0x63, 0xe9, 0x0a]));
  write('bad/broken.yard', `${BENCH}closed for repair on 2026-12-09\n  clocked head twelve\n`.replace('"shop.yard"', '"../shop.yard"'));
  write('bad/hostile.yard', 'steelyard 1\noption a "A"\n  labour "\u001b[31mRed\u202e <b>" 2 h\nclosed for a on 2026-12-09\n  clocked "\u001b[31mRed\u202e <b>" 3 h\n');
  mkdirSync(path.join(folder, 'bad', 'folder.yard'));
  symlinkSync(folder, path.join(folder, 'bad', 'round'));
});
afterAll(() => rmSync(folder, { recursive: true }));

describe('steelyard history', () => {
  test('over a folder: the table, and what stands out', () => {
    const { code, out, err } = steelyard(['history', '2026']);
    expect({ code, err }).toEqual({ code: 0, err: '' });
    expect(out).toBe(`The shop’s own book of times: 1 job clocked 5 times in 6 files, 5 of them closed.

                           times   low  middle  high  of the estimate  spread
head  Rear head, with out      5  10.0    12.0  40.0             1.09  ± 0.09

Hours: one case in ten was below low, one in ten above high. Of the estimate: the middle of what
it took, divided by what was estimated; beside it the middle distance from that.

Far off the others
  2026/job-4.yard:24: Rear head, with out took 40.0 h, 3.64 of the estimate
`);
  });

  test.each([
    [['2026/job-0.yard'], 1, 1], [['2026/job-[0].yard', '2026/job-0.yard'], undefined, 0], [['2026/job-?.yard'], 5, 5], [['2026/*.yard'], 6, 5], [['**/job*.yard'], 6, 6], [['old', '2026'], 7, 6],
    [['old', 'old/job.yard', '**/job.yard'], 1, 1], [['nothing'], undefined, 0], [['nothing/*.yard'], undefined, 0], [['2026/**'], 6, 5],
  ] as const)('%j', (words, files, closed) => {
    const { code, out, err } = steelyard(['history', ...words, '--json']);
    if (files === undefined) expect({ code, out }).toEqual({ code: 2, out: '' });
    else expect(JSON.parse(out)).toMatchObject({ files, closed, leftOut: [] });
    expect(err === '').toBe(files !== undefined);
  });

  test('one bad file never stops it, and is listed with why', () => {
    const { code, out } = steelyard(['history', '.', '--json']);
    const report = JSON.parse(out) as HistoryReport;
    expect(code).toBe(1);
    expect(report.leftOut).toEqual([
      { file: 'bad/broken.yard', line: 24, why: expect.stringMatching(/twelve/) as string },
      { file: 'bad/latin.yard', line: null, why: expect.stringMatching(/not text in UTF-8/) as string },
    ]);
    expect(report.jobs.map(({ key, count }) => [key, count])).toEqual([['labour head with out', 6], [expect.stringContaining('Red'), 1]]);
    expect(steelyard(['history', '.']).out).toMatch(/Left out\n {2}bad\/broken\.yard:24: [^\n]*twelve[^\n]*\n {2}bad\/latin\.yard: /);
  });

  test('what a file says is shown, never obeyed', () => {
    const { out } = steelyard(['history', 'bad/hostile.yard']);
    expect(out).toContain('‹U+001B›[31mRed‹U+202E› <b>');
    expect(out).not.toMatch(/[\u001b\u202e]/);
  });

  test('data has the form of its schema', () => {
    const validate = new Ajv2020({ strict: false }).compile(JSON.parse(readFileSync(path.join(root, 'schemas/history.schema.json'), 'utf8')) as object);
    expect(validate(JSON.parse(steelyard(['history', '.', '--json']).out)), JSON.stringify(validate.errors)).toBe(true);
    expect(validate(JSON.parse(steelyard(['history', 'shop.yard', '--json']).out)), JSON.stringify(validate.errors)).toBe(true);
  });

  test('says so where nothing was clocked', () => {
    expect(steelyard(['history', 'shop.yard'])).toEqual({ code: 0, err: '', out: expect.stringMatching(/^No clocked hours in 1 file, none closed\./) as string });
  });

  test('a file that may not be read is left out', () => {
    const file = path.join(folder, 'old/locked.yard');
    writeFileSync(file, '');
    chmodSync(file, 0);
    const { code, out } = steelyard(['history', 'old', '--json']);
    rmSync(file);
    // Whoever runs this may be allowed to read everything.
    if (process.getuid?.() !== 0) expect({ code, left: (JSON.parse(out) as HistoryReport).leftOut.length }).toEqual({ code: 1, left: 1 });
  });
});

test('texts are let go of, and shared files are read once', () => {
  const texts = new Map([['/w/shop.yard', CLOSED_SHOP]]);
  const place = mkdtempSync(path.join(tmpdir(), 'steelyard-history-many-'));
  for (let i = 0; i < 40; i++) writeFileSync(path.join(place, `job-${i}.yard`), closedEstimate(i + 1));
  const files = filesFrom(place, () => '');
  const reads: string[] = [];
  const held = new Set<string>();
  let most = 0;
  const counting = {
    ...files,
    host: {
      ...files.host,
      resolvePath: () => '/w/shop.yard',
      read: (uri: string) => {
        reads.push(uri);
        if (!texts.has(uri)) held.add(uri);
        most = Math.max(most, held.size);
        const shared = texts.get(uri);
        return shared === undefined ? files.host.read(uri) : { text: shared };
      },
    },
    forget: (uri: string) => {
      held.delete(uri);
      files.forget(uri);
    },
  };
  const shown: string[] = [];
  const clock = vi.spyOn(performance, 'now').mockReturnValue(0);
  expect(history(['.'], true, counting, { cwd: place, styled: false, stdin: () => '', out: () => undefined, err: (text) => void shown.push(text), progress: (text) => void shown.push(text) })).toBe(true);
  clock.mockRestore();
  rmSync(place, { recursive: true });
  expect(shown).toEqual([]); // nobody waits for so short a run
  expect({ most, left: held.size, shop: reads.filter((uri) => uri === '/w/shop.yard').length, all: reads.length }).toEqual({ most: 1, left: 0, shop: 1, all: 41 });
});

test('a long run says how far it is, on one line that is taken away again', () => {
  let now = 0;
  const clock = vi.spyOn(performance, 'now').mockImplementation(() => (now += 90));
  const shown: string[] = [];
  const place = mkdtempSync(path.join(tmpdir(), 'steelyard-history-long-'));
  for (let i = 0; i < 16; i++) writeFileSync(path.join(place, `job-${i}.yard`), '');
  history(['.'], true, filesFrom(place, () => ''), { cwd: place, styled: false, stdin: () => '', out: () => undefined, err: () => undefined, progress: (text) => void shown.push(text) });
  clock.mockRestore();
  rmSync(place, { recursive: true });
  // From one second on, at most five times a second.
  expect(shown).toEqual(['12 files read', '15 files read', '']);
});
