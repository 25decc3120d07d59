import { chmodSync, existsSync, mkdirSync, readdirSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { beforeAll, describe, expect, test, vi } from 'vitest';
import { builtTool } from './tool.js';

// The tool as a process, with what can go wrong around it. What a reader does who has read enough is in test/cli/closed-pipe.test.ts.

vi.setConfig({ testTimeout: 60_000 });
const { folder, run, shell } = builtTool();
const estimate = 'steelyard 1\noption a "A"\n  part "P" 5.00 new\n';
const HELP = 'See: steelyard --help\n';
const inside = (name: string): string => path.join(folder(), name);

beforeAll(() => {
  for (const name of ['good.yard', 'other.yard', 'locked.yard']) writeFileSync(inside(name), estimate);
  chmodSync(inside('locked.yard'), 0);
  writeFileSync(inside('wrong.yard'), 'steelyard 1\npart pump "Pump" 1,250.00 new\n');
  writeFileSync(inside('wide.yard'), Buffer.from(estimate, 'utf16le'));
  writeFileSync(inside('uses-wide.yard'), `steelyard 1\nuse "wide.yard"\n${estimate.slice(12)}`);
  writeFileSync(inside('uses-locked.yard'), `steelyard 1\nuse "locked.yard"\n${estimate.slice(12)}`);
  mkdirSync(inside('shut/in'), { recursive: true });
  writeFileSync(inside('shut/open.yard'), estimate);
  writeFileSync(inside('shut/in/hidden.yard'), estimate);
  chmodSync(inside('shut/in'), 0);
  symlinkSync('circle.yard', inside('circle.yard'));
});

describe('a file that can’t be read: one sentence, and nothing that looks like an answer', () => {
  test.each([
    ['wide.yard', 'wide.yard is text in UTF-16, not in UTF-8. Save it in UTF-8 and try again.\n'],
    ['locked.yard', 'locked.yard may not be read by you. Have its owner let you read it, and try again.\n'],
    ['circle.yard', 'circle.yard is a link that leads round in a circle.\n'],
    ['uses-wide.yard', 'wide.yard is text in UTF-16, not in UTF-8. Save it in UTF-8 and try again.\n'],
    ['uses-locked.yard', 'locked.yard may not be read by you. Have its owner let you read it, and try again.\n'],
  ])('%s', (name, says) => {
    for (const args of [['weigh', name], ['weigh', name, '--json'], ['quote', name], ['export', name, '--as', 'csv'], ['records', name], ['closing', name], ['changes', name, 'good.yard']]) {
      expect(run(args, { asNobody: true }), args.join(' ')).toEqual({ code: 2, out: '', err: `${says}${HELP}` });
    }
  });

  test('a pipe that nobody writes to is not waited for', () => {
    expect(shell('mkfifo -m 644 pipe.yard && $TOOL weigh pipe.yard; code=$?; rm pipe.yard; exit $code')).toEqual({ code: 2, out: '', err: `pipe.yard is not a file.\n${HELP}` });
  });
});

describe('one file that can’t be read among many', () => {
  const names = ['wrong.yard', 'wide.yard', 'locked.yard', 'uses-locked.yard', 'good.yard'];
  const whys = 'wide.yard is text in UTF-16, not in UTF-8. Save it in UTF-8 and try again.\nlocked.yard may not be read by you. Have its owner let you read it, and try again.\nAll else was checked.\n';

  test('check tells what is wrong in the others, which were not read and why, and ends with 2', () => {
    const { code, out, err } = run(['check', ...names], { asNobody: true });
    expect(code).toBe(2);
    expect(out).toContain('wrong.yard:2:18  error  There is a comma inside this number.');
    expect(out).toContain('2 files: 1 error');
    expect(err).toBe(`${whys}${HELP}`);
  });

  test('as data, the report holds the files that were checked; a log for build servers says that it is not whole', () => {
    const { code, out, err } = run(['check', '--json', ...names], { asNobody: true });
    expect({ code, err }).toEqual({ code: 2, err: `${whys}${HELP}` });
    expect(JSON.parse(out)).toMatchObject({ files: ['wrong.yard', 'good.yard'], errors: 1 });
    const log = JSON.parse(run(['check', '--as', 'sarif', ...names], { asNobody: true }).out) as { runs: { invocations: object[] }[] };
    expect(log.runs[0]?.invocations).toEqual([{ executionSuccessful: false, exitCode: 2 }]);
  });

  test('a folder that may not be looked into is told of, and the rest is done', () => {
    const why = 'shut/in may not be read by you. Have its owner let you read it, and try again.';
    const checked = run(['check', 'shut'], { asNobody: true });
    expect(checked).toMatchObject({ code: 2, err: `${why}\nAll else was checked.\n${HELP}` });
    expect(checked.out).toContain('1 file: ');
    const listed = run(['list', 'shut', '--json', '--today', '2026-12-01'], { asNobody: true });
    expect(listed.code).toBe(1);
    expect(JSON.parse(listed.out)).toMatchObject({ unread: [{ file: 'shut/in', why }] });
    const told = run(['history', 'shut', '--json'], { asNobody: true });
    expect(told.code).toBe(1);
    expect(JSON.parse(told.out)).toMatchObject({ files: 1, leftOut: [{ file: 'shut/in', why }] });
  });
});

describe('standard input', () => {
  test.each([
    ['a folder', '$TOOL weigh - < .', 'Standard input is a folder, not a file.\n'],
    ['Latin-1', String.raw`printf 'steelyard 1\n# \351\n' | $TOOL check -`, 'Standard input is not text in UTF-8. Save it in UTF-8 and try again.\n'],
    ['UTF-16', '$TOOL weigh - < wide.yard', 'Standard input is text in UTF-16, not in UTF-8. Save it in UTF-8 and try again.\n'],
    ['without end', 'yes | $TOOL weigh -', 'Standard input is larger than an estimate can be (8 MB).\n'],
  ])('%s: a sentence', (_, line, says) => {
    expect(shell(line)).toEqual({ code: 2, out: '', err: `${says}${HELP}` });
  });

  test('closed is a text with nothing in it', () => {
    expect(shell('$TOOL weigh - <&-')).toEqual(run(['weigh', '-'], { stdin: '' }));
  });
});

describe('an output that can’t be written', () => {
  test('on a full disk says so, wherever it went', () => {
    expect(shell('$TOOL weigh good.yard > /dev/full')).toEqual({ code: 2, out: '', err: 'What was asked for could not be written to the end: the disk is full. Make room on it, or write to another one.\n' });
    expect(run(['export', 'good.yard', '--as', 'csv', '--output', '/dev/full'])).toEqual({ code: 2, out: '', err: `/dev/full could not be written: the disk is full. Make room on it, or write to another one.\n${HELP}` });
  });

  test('on a disk that takes a part of it without a word says so too', () => {
    const whole = run(['weigh', 'good.yard', '--json']).out;
    expect(whole.length).toBeGreaterThan(1024);
    // The system stops a file at 512 bytes or 1 KiB, as a full disk would, and takes what fits; POSIX, ulimit and write.
    const { code, err } = shell(`trap '' XFSZ; ulimit -f 1; $TOOL weigh good.yard --json > part.json`);
    expect({ code, err }).toEqual({ code: 2, err: expect.stringMatching(/^What was asked for could not be written to the end: EFBIG: file too large.*\n$/) as string });
    expect(whole.startsWith(readFileSync(inside('part.json'), 'utf8'))).toBe(true);
    expect(shell('$TOOL weigh good.yard --json > all.json; cat all.json').out).toBe(whole);
    expect(shell('$TOOL weigh good.yard --json >> all.json; cat all.json').out).toBe(whole + whole);
  });

  test('that breaks off half way leaves what was there, and nothing beside it', () => {
    writeFileSync(inside('page.html'), 'an older page');
    const before = readdirSync(folder()).sort();
    // The system stops a file at 512 bytes or 1 KiB, as a full disk would; POSIX, ulimit.
    const { code, err } = shell(`trap '' XFSZ; ulimit -f 1; $TOOL export good.yard --as html --output page.html`);
    expect(code).toBe(2);
    expect(err).toMatch(/^page\.html could not be written: EFBIG: file too large/);
    expect(readFileSync(inside('page.html'), 'utf8')).toBe('an older page');
    expect(readdirSync(folder()).sort()).toEqual(before);
  });

  test('a new one is written whole, with the rights of the old one, through a link that stays inside, and into a pipe', () => {
    writeFileSync(inside('mine.csv'), 'old');
    chmodSync(inside('mine.csv'), 0o640);
    symlinkSync('mine.csv', inside('link.csv'));
    symlinkSync('later.csv', inside('to-come.csv'));
    const text = run(['export', 'good.yard', '--as', 'csv']).out;
    for (const name of ['link.csv', 'to-come.csv']) expect(run(['export', 'good.yard', '--output', name])).toMatchObject({ code: 0, err: `Wrote ${name}\n` });
    expect(readFileSync(inside('mine.csv'), 'utf8')).toBe(text);
    expect(readFileSync(inside('later.csv'), 'utf8')).toBe(text);
    expect(shell('stat -c %a mine.csv; readlink link.csv').out).toBe('640\nmine.csv\n');
    expect(shell('$TOOL export good.yard --as csv --output /dev/stdout | cat').out).toBe(text);
  });

  test('where nobody may write: a sentence', () => {
    mkdirSync(inside('closed'), { mode: 0o555 });
    expect(run(['export', 'good.yard', '--as', 'csv', '--output', 'closed/a.csv'], { asNobody: true })).toEqual({ code: 2, out: '', err: `closed/a.csv could not be written: you may not write there. Choose another folder.\n${HELP}` });
  });

  test('complaints that nobody can hear change nothing of the outcome', () => {
    expect(shell('$TOOL check none.yard 2> /dev/full').code).toBe(2);
    expect(shell('$TOOL check good.yard 2> /dev/full')).toMatchObject({ code: 0, out: expect.stringContaining('1 file: no errors, no warnings') as string });
  });
});

test('a folder that was removed from under the user: a sentence', () => {
  mkdirSync(inside('gone'));
  expect(shell('cd gone && rmdir ../gone && $TOOL check a.yard')).toEqual({ code: 2, out: '', err: 'The folder that you are in is not there any more. Go to another one and try again.\n' });
  expect(existsSync(inside('gone'))).toBe(false);
});

test('pictures that can’t be read are named in the quote, and the quote is made', () => {
  writeFileSync(inside('shown.yard'), 'steelyard 1\nfinding worn "Worn"\n  picture "locked.png"\n  picture "none.png"\noption a "A"\n  because worn\n  part "P" 5.00 new\n');
  writeFileSync(inside('locked.png'), '');
  chmodSync(inside('locked.png'), 0);
  const { code, out, err } = run(['quote', 'shown.yard'], { asNobody: true });
  expect({ code, err }).toEqual({ code: 1, err: 'Not in it, and said so in its place: locked.png, none.png.\n' });
  expect(out).toContain('5.00');
  rmSync(inside('locked.png'));
});
