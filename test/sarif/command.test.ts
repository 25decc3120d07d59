import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { run } from '../../src/cli/run.js';
import { sarifStandard, wrongIn } from './standard.js';

const WRONG = 'steelyard 1\npart pump "Pump" 1,250.00 new\n';
const NAMES = ['plain.yard', 'with space.yard', 'hundred%25.yard', 'Kühler#1.yard', '泵?.yard', 'a:b.yard', 'in/side/deep.yard'];
let folder: string;

beforeAll(() => {
  folder = mkdtempSync(path.join(tmpdir(), 'steelyard-sarif-'));
  for (const place of ['one', 'two/repository']) {
    mkdirSync(path.join(folder, place, 'in/side'), { recursive: true });
    for (const name of NAMES) writeFileSync(path.join(folder, place, name), WRONG);
  }
  mkdirSync(path.join(folder, 'two/repository/.git'));
  writeFileSync(path.join(folder, 'outside.yard'), WRONG);
});
afterAll(() => rmSync(folder, { recursive: true }));

function steelyard(args: readonly string[], cwd: string, stdin = '') {
  let out = '';
  let err = '';
  const code = run(args, '1.2.3', { cwd: path.join(folder, cwd), styled: true, stdin: () => stdin, out: (text) => void (out += text), err: (text) => void (err += text) });
  return { code, out, err };
}

function logOf(args: readonly string[], cwd: string, stdin = '') {
  const { out, code } = steelyard(['check', ...args, '--as', 'sarif'], cwd, stdin);
  const log = sarifStandard.parse(JSON.parse(out));
  expect(wrongIn(log)).toEqual([]);
  expect(out).not.toContain(folder);
  expect(log.runs[0]?.invocations).toEqual([{ executionSuccessful: true, exitCode: code }]);
  return log;
}

const urisOf = (log: ReturnType<typeof logOf>) => (log.runs[0]?.artifacts ?? []).map(({ location }) => location.uri);

describe('addresses of files', () => {
  test('lead back to the file in the way of the URL standard (WHATWG), from whatever base the reader sets', () => {
    const uris = urisOf(logOf(NAMES, 'one'));
    expect(uris.map((uri) => decodeURIComponent(new URL(uri, 'file:///srv/tree/').pathname))).toEqual(NAMES.map((name) => `/srv/tree/${name}`));
  });

  test('count from the top of the repository, wherever in it the tool runs', () => {
    expect(urisOf(logOf(['deep.yard'], 'two/repository/in/side'))).toEqual(['in/side/deep.yard']);
    expect(urisOf(logOf(['../plain.yard'], 'two/repository/in'))).toEqual(['plain.yard']);
  });

  test('outside of it, only the name is told, and no base', () => {
    const log = logOf(['../outside.yard', 'plain.yard'], 'one');
    expect(log.runs[0]?.artifacts.map(({ location: { uri, uriBaseId } }) => [uri, uriBaseId])).toEqual([['outside.yard', undefined], ['plain.yard', '%SRCROOT%']]);
  });

  test('standard input is told as such', () => {
    const log = logOf(['-'], 'one', WRONG);
    expect(log.runs[0]?.artifacts).toMatchObject([{ roles: ['analysisTarget', 'standardStream'], location: { uri: 'stdin.yard' } }]);
    expect(log.runs[0]?.results.length).toBeGreaterThan(0);
  });
});

describe('the command', () => {
  test('the same files give the same bytes wherever they stand', () => {
    const here = steelyard(['check', ...NAMES, '--as', 'sarif'], 'one').out;
    expect(steelyard(['check', ...NAMES, '--as', 'sarif'], 'two/repository').out).toBe(here);
    expect(here).not.toContain('\u001b');
  });

  test('nothing wrong is an empty list beside the file that was looked at; advice is a note and no fault', () => {
    const root = path.relative(folder, path.resolve(import.meta.dirname, '../..'));
    const log = (name: string) => logOf([name], root).runs[0];
    expect(log('samples/shop.yard')).toMatchObject({ results: [], artifacts: [{ location: { uri: 'samples/shop.yard' } }], invocations: [{ exitCode: 0 }] });
    expect(log('samples/pilgrim-v6.yard')?.results.map(({ level }) => level)).toEqual(expect.arrayContaining(['note']));
    expect(log('samples/pilgrim-v6.yard')?.invocations).toEqual([{ executionSuccessful: true, exitCode: 0 }]);
  });

  test('--output writes the log, its end says the form, and text in a file has no colour', () => {
    expect(steelyard(['check', 'plain.yard', '--output', '../log.sarif'], 'one')).toMatchObject({ code: 1, out: '', err: 'Wrote ../log.sarif\n' });
    expect(wrongIn(sarifStandard.parse(JSON.parse(readFileSync(path.join(folder, 'log.sarif'), 'utf8'))))).toEqual([]);
    steelyard(['check', 'plain.yard', '-o', '../log.txt'], 'one');
    expect(readFileSync(path.join(folder, 'log.txt'), 'utf8')).toMatch(/^plain\.yard:2:18 {2}error [^\u001b]*1 file: 1 error/);
  });

  test('a folder and a pattern stand for the estimates that they hold', () => {
    const names = (args: readonly string[]) => (JSON.parse(steelyard(['check', ...args, '--json'], 'one').out) as { files: string[] }).files;
    expect(names(['.']).sort()).toEqual([...NAMES].sort());
    expect(names(['in', 'p*.yard'])).toEqual(['in/side/deep.yard', 'plain.yard']);
    expect(steelyard(['check', 'none.yard'], 'one')).toMatchObject({ code: 2, out: '' });
  });

  test('--json is --as json, and text is what comes without either', () => {
    expect(steelyard(['check', 'plain.yard', '--json'], 'one')).toEqual(steelyard(['check', 'plain.yard', '--as', 'json'], 'one'));
    expect(steelyard(['check', 'plain.yard'], 'one')).toEqual(steelyard(['check', 'plain.yard', '--as', 'text'], 'one'));
  });

  test.each([[['--as', 'xml'], '--as takes text, json, sarif, not xml.'], [['--as', 'sarif', '--json'], 'ask for two forms at once']])('2 for %j', (args, says) => {
    const { code, out, err } = steelyard(['check', 'plain.yard', ...args], 'one');
    expect({ code, out }).toEqual({ code: 2, out: '' });
    expect(err).toContain(says);
  });
});
