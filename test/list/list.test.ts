import { mkdirSync, mkdtempSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { run } from '../../src/cli/run.js';
import type { ListReport } from '../../src/report/index.js';

const root = path.resolve(import.meta.dirname, '../..');
const valid = new Ajv2020({ strict: false }).compile(JSON.parse(readFileSync(path.join(root, 'schemas/list.schema.json'), 'utf8')) as object);

/** Monday to Friday but for Friday the 25th of December; parts of `used` are there in 3 working days, the work takes two days of the bay. */
const SHOP = `steelyard 1
shop "Bay"
  currency     USD
  workday      8 h
  technicians  1
  closed       saturday, sunday, 2026-12-25
  overrun      10% at most 50.00
  rate bench "Bench" 100.00 usual
`;
const JOB = `steelyard 1
use "shop.yard"
estimate "Knocks when warm"
  written  2026-12-21
  valid    14 d
vehicle "Invented saloon"
labour swap "Swap the engine" 12 h
  uses engine
part engine "Used engine" 800.00 used arrives 3 d
labour look "Look again" 1 h
option used "Fit a used engine"
  do swap
option patch "Patch it"
  do look
`;

const RECORDS: Readonly<Record<string, string>> = {
  'draft.yard': '',
  'quoted.yard': 'quoted 2000.00 for used on 2026-12-22\n',
  'agreed.yard': 'authorised 2000.00 for used on 2026-12-22\n',
  'over.yard': 'authorised 1900.00 for used on 2026-12-22\nstarted on 2026-12-28\n',
  'within.yard': 'authorised 1960.00 for used on 2026-12-22\nstarted on 2026-12-28\n',
  'closed.yard': 'authorised 2000.00 for used on 2026-12-22\nstarted on 2026-12-28\nclosed for used on 2026-12-30\n  billed 1990.00\n',
  'nothing-done.yard': 'closed on 2026-12-23\n',
};

/** Two and a half days of looking, with seals that are there in 2 working days. */
const STAGED = `${JOB}part seals "Seals" 10.00 new arrives 2 d
labour strip "Take it apart" 20 h
  uses seals
stage tear-down "Take it apart and look"
  do strip
quoted 2010.00 for tear-down on 2026-12-21
`;
const LOOKED = `${STAGED}authorised 2010.00 for tear-down on 2026-12-22\n`;
const STAGES: Readonly<Record<string, string>> = {
  'asked.yard': STAGED,
  'looked.yard': LOOKED,
  'dearer.yard': LOOKED.replace('2010.00 for tear-down on 2026-12-22', '1500.00 for tear-down on 2026-12-22'),
  'looking.yard': `${LOOKED}started on 2026-12-28\n`,
  'found.yard': `${LOOKED}started on 2026-12-28\nquoted 4010.00 for used on 2026-12-30\n`,
};

let folder: string;
beforeAll(() => {
  folder = mkdtempSync(path.join(tmpdir(), 'steelyard-list-'));
  const write = (file: string, text: string | Buffer) => {
    mkdirSync(path.dirname(path.join(folder, file)), { recursive: true });
    writeFileSync(path.join(folder, file), text);
  };
  write('jobs/shop.yard', SHOP);
  for (const [file, records] of Object.entries(RECORDS)) write(`jobs/${file}`, JOB + records);
  write('stages/shop.yard', SHOP);
  for (const [file, text] of Object.entries(STAGES)) write(`stages/${file}`, text);
  write('mixed/library.yard', 'steelyard 1\nlabour look "Look again" 1 h\n');
  write('mixed/good.yard', 'steelyard 1\noption a "A"\n  fee "X" 10.00\n');
  write('mixed/header-only.yard', 'steelyard 1\nestimate "Begun"\n');
  write('mixed/in/broken.yard', 'steelyard 1\noption a "A"\n  fee "X" 1,000.00\n  fee "Y" 5.00\n');
  write('mixed/in/latin.yard', Buffer.from([0x23, 0xe9, 0x0a]));
  write('mixed/in/uses-latin.yard', 'steelyard 1\nuse "latin.yard"\noption a "A"\n  fee "X" 10.00\n');
  write('mixed/in/empty.yard', '');
  write('mixed/.hidden/secret.yard', JOB);
  write('mixed/node_modules/other.yard', JOB);
  write('mixed/notes.txt', 'no estimate');
  write('mixed/in/\u001b[31mred\u202e.yard', 'steelyard 1\nestimate "\u0007"\noption a "A"\n  fee "X" 10.00\n');
  symlinkSync(path.join(folder, 'mixed'), path.join(folder, 'mixed/in/round'));
  symlinkSync(path.join(folder, 'jobs/draft.yard'), path.join(folder, 'mixed/link.yard'));
  mkdirSync(path.join(folder, 'empty'));
});
afterAll(() => rmSync(folder, { recursive: true }));

function steelyard(args: readonly string[], cwd: string) {
  let out = '';
  let err = '';
  const code = run(args, '1.2.3', { cwd: path.join(folder, cwd), styled: false, stdin: () => '', out: (text) => void (out += text), err: (text) => void (err += text) });
  return { code, out, err };
}

function reportOf(args: readonly string[], cwd: string): ListReport {
  const report = JSON.parse(steelyard(['list', '--json', ...args], cwd).out) as ListReport;
  expect(valid(report), JSON.stringify(valid.errors)).toBe(true);
  return report;
}

const rowsOn = (today: string) => Object.fromEntries(reportOf(['--today', today], 'jobs').estimates.map((one) => [one.file, one]));

describe('what an estimate waits for', () => {
  // The total of `used`: 12 h at 100.00 and 800.00. Working days after Tuesday the 22nd: 23, 24, 28 (25 is closed).
  test.each([
    ['2026-12-23', 'draft.yard', 'draft', { what: 'quote' }],
    ['2026-12-23', 'quoted.yard', 'quoted', { what: 'answer', until: '2027-01-05' }],
    ['2026-12-23', 'agreed.yard', 'authorised', { what: 'parts', until: '2026-12-28' }],
    ['2026-12-28', 'agreed.yard', 'authorised', { what: 'start' }],
    ['2026-12-23', 'over.yard', 'authorised', { what: 'authorisation', over: '100.00' }],
    ['2026-12-28', 'over.yard', 'in-work', { what: 'authorisation', over: '100.00' }],
    ['2026-12-23', 'within.yard', 'authorised', { what: 'parts', until: '2026-12-28' }],
    ['2026-12-29', 'within.yard', 'in-work', { what: 'work', until: '2026-12-29' }],
    ['2026-12-30', 'within.yard', 'in-work', { what: 'closing', until: '2026-12-29' }],
    ['2026-12-29', 'closed.yard', 'in-work', { what: 'work', until: '2026-12-29' }],
    ['2026-12-30', 'closed.yard', 'closed', null],
    ['2027-01-05', 'quoted.yard', 'quoted', { what: 'answer', until: '2027-01-05' }],
    ['2027-01-06', 'quoted.yard', 'expired', { what: 'new-quote' }],
  ])('on %s %s is %s and waits for %j', (today, file, state, waitsFor) => {
    expect(rowsOn(today)[file]).toMatchObject({ state, waitsFor, whole: true });
  });

  const stagesOn = (today: string) => Object.fromEntries(reportOf(['--today', today], 'stages').estimates.map((one) => [one.file, one]));

  // The look: 20 h at 100.00 and 10.00; every option has it too. Working days: 22, 23, 24, 28, 29, 30, 31.
  test.each([
    ['2026-12-21', 'asked.yard', 'quoted', { what: 'answer', until: '2027-01-04' }],
    ['2027-01-05', 'asked.yard', 'expired', { what: 'new-quote' }],
    ['2026-12-22', 'looked.yard', 'authorised', { what: 'parts', until: '2026-12-24' }],
    ['2026-12-24', 'looked.yard', 'authorised', { what: 'start' }],
    ['2027-02-24', 'looked.yard', 'authorised', { what: 'start' }],
    ['2026-12-24', 'dearer.yard', 'authorised', { what: 'authorisation', over: '510.00' }],
    ['2026-12-28', 'looking.yard', 'in-work', { what: 'work', until: '2026-12-30' }],
    ['2026-12-31', 'looking.yard', 'in-work', { what: 'quote' }],
  ])('of a stage: on %s %s is %s and waits for %j', (today, file, state, waitsFor) => {
    expect(stagesOn(today)[file]).toMatchObject({ state, waitsFor, whole: true, pick: { of: 'stage', name: 'tear-down', title: 'Take it apart and look', by: 'said', amount: '2010.00', amountOf: 'total' } });
  });

  test('what is quoted after a stage, while it stands, waits for the answer, and runs out', () => {
    const pick = { of: 'option', name: 'used', by: 'said', amount: '4010.00' };
    expect(stagesOn('2026-12-30')['found.yard']).toMatchObject({ state: 'in-work', waitsFor: { what: 'answer', until: '2027-01-13' }, pick });
    expect(stagesOn('2027-01-14')['found.yard']).toMatchObject({ state: 'in-work', waitsFor: { what: 'new-quote' }, pick });
  });

  test('the list says that it is a stage', () => {
    const { out } = steelyard(['list', '--today', '2026-12-24'], 'stages');
    expect(out).toMatch(/^ {2}looked\.yard +tear-down \(stage\) +2,010\.00 +3 d +work to begin$/m);
    expect(out).toMatch(/^ {2}asked\.yard +tear-down \(stage\) +2,010\.00 +3 d +the customer’s answer, until 2027-01-04$/m);
  });

  test('the pick is what was said, or else the cheapest; the amount what was billed, or else today’s total', () => {
    const rows = rowsOn('2027-01-15');
    expect(rows['draft.yard']?.pick).toEqual({ of: 'option', name: 'patch', title: 'Patch it', by: 'cheapest', ruledOut: [], amount: '100.00', amountOf: 'total' });
    expect(rows['quoted.yard']?.pick).toEqual({ of: 'option', name: 'used', title: 'Fit a used engine', by: 'said', ruledOut: [], amount: '2000.00', amountOf: 'total' });
    expect(rows['closed.yard']?.pick).toMatchObject({ name: 'used', by: 'said', amount: '1990.00', amountOf: 'billed' });
    expect(rows['nothing-done.yard']).toMatchObject({ state: 'closed', pick: null, waitsFor: null });
  });

  test('the age counts days of the calendar, of a closed one to that day, and is never below nothing', () => {
    const ages = (today: string) => Object.fromEntries(Object.entries(rowsOn(today)).map(([file, { age }]) => [file, age]));
    expect(ages('2027-01-15')).toMatchObject({ 'draft.yard': 25, 'closed.yard': 9, 'nothing-done.yard': 2 });
    expect(ages('2026-12-01')['draft.yard']).toBe(0);
  });
});

describe('a folder', () => {
  test('is told by state, the oldest first, in aligned columns', () => {
    expect(steelyard(['list', '--today', '2026-12-28'], 'jobs')).toEqual({ code: 0, err: '', out: `Draft
  draft.yard         patch (cheapest)    100.00  7 d  a quote

Quoted
  quoted.yard        used              2,000.00  7 d  the customer’s answer, until 2027-01-05

Authorised
  agreed.yard        used              2,000.00  7 d  work to begin

In work
  closed.yard        used              2,000.00  7 d  the work, planned to 2026-12-29
  over.yard          used              2,000.00  7 d  authorisation for 100.00 more
  within.yard        used              2,000.00  7 d  the work, planned to 2026-12-29

Closed
  nothing-done.yard                              2 d

7 estimates: 1 draft, 1 quoted, 1 authorised, 3 in work, 1 closed
` });
  });

  test('shared files, hidden folders, links and other files are not in it; a bad file stops nothing', () => {
    const { estimates, unread } = reportOf(['--today', '2026-12-28'], 'mixed');
    expect(estimates.map(({ file, whole }) => `${file} ${whole}`)).toEqual(['good.yard true', 'header-only.yard true', 'in/\u001b[31mred\u202e.yard true', 'in/broken.yard false']);
    expect(unread.map(({ file }) => file)).toEqual(['in/latin.yard', 'in/uses-latin.yard']);
    const { code, out } = steelyard(['list'], 'mixed');
    expect(code).toBe(1);
    expect(out).toMatch(/in\/broken\.yard +a quote; has lines that can’t be read/); // no amount that would be too low
    expect(out).toContain('Not read\nin/latin.yard is not text in UTF-8.');
    expect(out).not.toMatch(/[\u001b\u202e\u0007]/);
  });

  test('files and folders may be named together; the same file is told once', () => {
    expect(reportOf(['jobs', 'jobs/draft.yard', 'mixed/good.yard'], '.').estimates).toHaveLength(8);
    expect(reportOf(['draft.yard'], 'jobs').estimates.map(({ file }) => file)).toEqual(['draft.yard']);
  });

  test('currencies are told where there are several', () => {
    expect(steelyard(['list', '.', '--today', '2026-12-28'], '.').out).toMatch(/jobs\/draft\.yard .* 100\.00 USD /);
  });

  test('without estimates is no fault', () => {
    expect(steelyard(['list'], 'empty')).toEqual({ code: 0, out: 'No estimates.\n', err: '' });
  });

  test.each([
    [['list', 'nowhere'], 'There is no folder or file nowhere.'],
    [['list', '--today', '2026-02-30'], '--today takes a day such as 2026-11-24, not 2026-02-30.'],
    [['list', '--today', 'soon'], '--today takes a day'],
    [['check', 'draft.yard', '--today', '2026-12-28'], '--today belongs to'],
  ])('2 and one sentence for %j', (args, says) => {
    const { code, out, err } = steelyard(args, 'jobs');
    expect({ code, out }).toEqual({ code: 2, out: '' });
    expect(err).toContain(says);
  });
});
