import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { describe, expect, test } from 'vitest';
import { run } from '../../src/cli/run.js';
import { closingText, type ClosingReport } from '../../src/report/index.js';
import { CLOSED_SHOP, closedEstimate } from '../../src/tools/bench/closed-estimates.js';
import { Decimal } from '../../src/vocabulary/index.js';
import { closingOf, percentOver, type ClosedPart, type Closing } from '../../src/weigh/index.js';
import { serviceOver, uriOf } from '../support/fixture.js';

const root = path.resolve(import.meta.dirname, '../..');

function closing(files: Readonly<Record<string, string>>): { readonly made: Closing; readonly text: string } {
  const { comparison } = serviceOver(files).service.weighing(uriOf('job.yard'));
  const made = closingOf(comparison);
  if (made === undefined) throw new Error('It is not closed.');
  return { made, text: closingText(made, comparison) };
}

const SMALL = `steelyard 1
shop "S"
  currency USD
  workday 8 h
  closed saturday, sunday, 2026-12-08
  rate bench 100.00
  markup 50%
access out "Engine out"
  remove 6 h
  refit 90 min
  part "Seals" 2 at cost 5.00 new
access lifted "Engine raised"
  remove 1 h
labour swap "Swap" 5 h with out
labour drive "Road test" 30 min
part pump "Pump" cost 92.00 new
part hose "Hose" 20.00 new
option used "Used engine"
  do swap, drive
  fit pump, hose
  part "Engine" cost 1000.00 used
    core 150.00
      assemble 1 h
  chance "It leaks" 10%
    labour "Seal it" 2 h
started on 2026-12-01
closed for used on 2026-12-09
  billed 3000.00
`;
const small = (below: string) => closing({ 'job.yard': `${SMALL}${below}` });
const rows = ({ lines }: ClosedPart) => lines.map(({ title, planned, estimated, actual, over }) => [title, planned, estimated?.likely.toFixed(), actual?.likely.toFixed(), over?.likely.toFixed()]);
const sums = ({ estimated, actual, over, beyond, open }: ClosedPart) => [estimated, actual, over, beyond, open].map(({ likely }) => likely.toFixed());

describe('a closing, worked by hand', () => {
  const { made } = small('  clocked swap 6 h\n  clocked out 435 min\n  clocked "Engine: put the core together" 0.5 h\n  clocked "Seal it" 1.5 h\n  paid pump 97.40\n  paid hose 11.00\n  paid "Engine" 950.00\n  paid "Seals" 9.99\n  credited "Engine" 120.00\n');

  test('hours by line: a way in is opened and closed, what nobody clocked is not recorded', () => {
    expect(rows(made.hours)).toEqual([
      ['Engine out: remove and refit', true, '7.5', '7.25', '-0.25'],
      ['Swap', true, '5', '6', '1'],
      ['Road test', true, '0.5', undefined, undefined],
      ['Engine: put the core together', true, '1', '0.5', '-0.5'],
      ['Seal it', false, undefined, '1.5', undefined],
    ]);
    expect(sums(made.hours)).toEqual(['13.5', '13.75', '0.25', '1.5', '0.5']);
    expect(percentOver(made.hours)?.toFixed(2)).toBe('1.85');
  });

  test('money paid beside the cost, where that is known', () => {
    expect(rows(made.paid)).toEqual([
      ['Seals', true, '10', '9.99', '-0.01'],
      ['Pump', true, '92', '97.4', '5.4'],
      ['Hose', true, undefined, '11', undefined],
      ['Engine', true, '1000', '950', '-50'],
    ]);
    expect(sums(made.paid)).toEqual(['1102', '1057.39', '-44.61', '11', '0']);
  });

  // Tue 1 to Wed 9 December 2026, both counted, without Sat 5, Sun 6 and the closed Tue 8: six days.
  test('core money, days and what was billed', () => {
    expect(rows(made.cores)).toEqual([['Engine', true, '150', '120', '-30']]);
    expect(made.days.actual?.likely.toFixed()).toBe('6');
    // Work 1300 + 100 core work; parts 15 + 138 + 20 + 1500; core 150: 3223.
    expect([made.billed.estimated, made.billed.actual, made.billed.over].map((one) => one?.likely.toFixed())).toEqual(['3223', '3000', '-223']);
  });

  test('figures lead back to what they were made from', () => {
    for (const { over } of [...made.hours.lines, ...made.paid.lines]) if (over !== undefined) expect(over.from.map(({ likely }) => likely.toFixed())).toHaveLength(2);
    expect(made.hours.lines[0]?.actual).toMatchObject({ unit: 'hours', step: { kind: 'product', per: 60 } });
  });
});

describe('what is not recorded', () => {
  test('is never nothing: not by line, nor in sum, nor in words', () => {
    const { made, text } = small('  clocked swap 5 h\n');
    expect(made.hours.lines.filter(({ actual }) => actual === undefined)).toHaveLength(3);
    expect(made.paid.lines.every(({ actual, over }) => actual === undefined && over === undefined)).toBe(true);
    expect(sums(made.hours)).toEqual(['5', '5', '0', '0', '9']);
    expect(text).toContain('8 lines were not recorded');
    expect(text).not.toMatch(/Paid where|Core money back:/);
    expect(text.match(/not recorded$/gm)?.length).toBe(8);
  });

  test('days and bill too', () => {
    const { made } = closing({ 'job.yard': SMALL.replace('started on 2026-12-01\n', '').replace('  billed 3000.00\n', '') });
    expect([made.days.actual, made.days.over, made.billed.actual, made.billed.over]).toEqual([undefined, undefined, undefined, undefined]);
  });

  test('nor are days told where the job ends before it starts', () => {
    expect(closing({ 'job.yard': SMALL.replace('started on 2026-12-01', 'started on 2026-12-10') }).made.days.actual).toBeUndefined();
  });
});

test('a part whose cost to the shop is not written is not said to be free', () => {
  const { text } = small('  paid hose 11.00\n');
  expect(text).toMatch(/^ {2}Hose +cost not written +11\.00$/m);
  expect(text).not.toContain('no cost');
});

test('another way in than the planned one is said', () => {
  const { made, text } = closing({ 'job.yard': `${SMALL.replace('5 h with out', '5 h with out\n  takes 6 h with lifted')}  clocked swap 6 h\n  clocked out 8 h\n` });
  expect(made.weighed.planned.chosen.paid.map(({ name }) => name)).toEqual(['lifted']);
  expect([made.otherWays.taken, made.otherWays.left].map((ways) => ways.map(({ name }) => name))).toEqual([['out'], ['lifted']]);
  expect(text).toContain('Engine out: clocked, though the estimate plans with Engine raised.');
});

describe('on generated estimates', () => {
  const all = Array.from({ length: 40 }, (_, i) => closing({ 'job.yard': closedEstimate(i + 1), 'shop.yard': CLOSED_SHOP }).made);
  const total = (list: readonly (Decimal | undefined)[]) => exact(list.reduce<Decimal>((sum, one) => (one === undefined ? sum : sum.plus(one)), new Decimal(0)));
  // Minutes as hours may not end; money always does.
  const exact = (value: Decimal) => value.toDecimalPlaces(20).toFixed();

  test('lines add up to their sums, to the cent', () => {
    for (const made of all) {
      for (const part of [made.hours, made.paid, made.cores]) {
        expect(exact(part.estimated.likely.plus(part.open.likely))).toBe(total(part.lines.map(({ estimated }) => estimated?.likely)));
        expect(exact(part.actual.likely.plus(part.beyond.likely))).toBe(total(part.lines.map(({ actual }) => actual?.likely)));
        expect(exact(part.over.likely)).toBe(total(part.lines.map(({ over }) => over?.likely)));
        for (const { estimated, actual, over } of part.lines) expect(over === undefined).toBe(estimated === undefined || actual === undefined);
      }
    }
  });

  test('hours are those of the quote, and every record is shown once', () => {
    for (const made of all) {
      expect(made.hours.estimated.likely.plus(made.hours.open.likely).toFixed()).toBe(made.weighed.totals.hours.likely.toFixed());
      expect(made.hours.lines.filter(({ actual }) => actual !== undefined)).toHaveLength(made.closed.clocked.length);
      expect(made.paid.lines.filter(({ actual }) => actual !== undefined)).toHaveLength(made.closed.paid.length);
    }
  });
});

const file = path.join(import.meta.dirname, 'pilgrim-v6.yard');

test('names and titles of a closing stand in one column', () => {
  const { service } = serviceOver({ 'job.yard': readFileSync(file, 'utf8') });
  expect(service.format(uriOf('job.yard'))).toEqual([]);
});

test('a name in a closing is renamed with its line', () => {
  const text = SMALL.concat('  clocked swap 6 h\n  paid pump 97.40\n');
  const { service } = serviceOver({ 'job.yard': text });
  const edits = service.rename(uriOf('job.yard'), text.indexOf('labour swap') + 8, 'change-over', []);
  expect('refused' in edits ? edits : [...edits.values()].flat().map(({ range }) => text.slice(text.lastIndexOf('\n', range.start) + 1, range.end))).toEqual(['labour swap', '  do swap', '  clocked swap']);
});

describe('steelyard closing', () => {
  function steelyard(args: readonly string[], cwd = root) {
    let out = '';
    let err = '';
    const code = run(args, '1.2.3', { cwd, styled: false, stdin: () => '', today: '2026-11-29', out: (text) => void (out += text), err: (text) => void (err += text) });
    return { code, out, err };
  }
  const written = (text: string, use: (folder: string) => void) => {
    const folder = mkdtempSync(path.join(tmpdir(), 'steelyard-closing-'));
    writeFileSync(path.join(folder, 'job.yard'), text);
    use(folder);
    rmSync(folder, { recursive: true });
  };

  test('of a sample, as written down', () => {
    const { code, out, err } = steelyard(['closing', file]);
    const golden = path.join(import.meta.dirname, 'pilgrim-v6.txt');
    if (process.env['UPDATE_GOLDEN'] === '1') writeFileSync(golden, out);
    expect({ code, err, out }).toEqual({ code: 0, err: '', out: readFileSync(golden, 'utf8') });
  });

  test('as data, in the form of its schema, null where nothing was recorded', () => {
    const report = JSON.parse(steelyard(['closing', file, '--json']).out) as ClosingReport;
    const validate = new Ajv2020({ strict: false }).compile(JSON.parse(readFileSync(path.join(root, 'schemas/closing.schema.json'), 'utf8')) as object);
    expect(validate(report), JSON.stringify(validate.errors)).toBe(true);
    expect(report.hours.lines.find(({ name }) => name === 'pump')).toMatchObject({ estimated: '1.6', actual: null, over: null, percent: null, with: ['engine-out'] });
    expect(report.hours).toMatchObject({ lines: [{ name: 'engine-out', estimated: '14', actual: '15.2', over: '1.2', percent: '8.6', at: { line: 40 } }, ...Array.from({ length: 6 }, () => expect.anything() as unknown)] });
  });

  test('says what to write where a job is not closed, or for nothing: a line of this estimate, on this day', () => {
    // Nothing is authorised in it, and the used engine is the cheapest.
    expect(steelyard(['closing', 'samples/pilgrim-v6.yard'])).toEqual({ code: 2, out: '', err: expect.stringMatching(/is not closed yet\. .* closed for used on 2026-11-29\n/) as string });
    const open = SMALL.slice(0, SMALL.indexOf('closed for'));
    written(`${open}option dear "Dear"\n  fee "Fee" 9000.00\n`, (folder) => expect(steelyard(['closing', 'job.yard'], folder).err).toContain('closed for used on 2026-11-29'));
    written(`${open}option dear "Dear"\n  fee "Fee" 9000.00\nauthorised 9000.00 for dear on 2026-11-02\n`, (folder) => expect(steelyard(['closing', 'job.yard'], folder).err).toContain('closed for dear on 2026-11-29'));
    written('steelyard 1\n', (folder) => expect(steelyard(['closing', 'job.yard'], folder)).toMatchObject({ code: 2, err: expect.stringContaining('job.yard has no option') as string }));
    written(SMALL.replace('closed for used on', 'closed on'), (folder) => expect(steelyard(['closing', 'job.yard'], folder)).toMatchObject({ code: 2, err: expect.stringMatching(/closed without an option that is in it.*: closed for used on 2026-12-09\n/) as string }));
  });

  test('says which line could not be read', () => {
    written(`${SMALL}  clocked swap 6\n`, (folder) => expect(steelyard(['closing', 'job.yard'], folder)).toMatchObject({ code: 1, err: expect.stringMatching(/One line could not be read.*job\.yard:29/) as string }));
  });

  test('what a file says is shown, never obeyed', () => {
    written(SMALL.replace('"Swap"', '"\u001b[2JSwap"').replace('"Used engine"', '"\u202eUsed"'), (folder) => {
      const { out } = steelyard(['closing', 'job.yard'], folder);
      expect(out).toContain('‹U+001B›[2JSwap');
      expect(out).not.toMatch(/[\u001b\u202e]/);
    });
  });
});
