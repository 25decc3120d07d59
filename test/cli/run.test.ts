import { mkdirSync, mkdtempSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { run } from '../../src/cli/run.js';
import { columnsFor, mayStyle } from '../../src/cli/terminal.js';

const root = path.resolve(import.meta.dirname, '../..');
const samples = ['pilgrim-v6', 'tarn-inline', 'kestrel-flat', 'heron-pump'].map((name) => `samples/${name}.yard`);

const BESIDE = 'The text came in on standard input; what it uses was read from the disk as it is now: shop.yard.\n';

function steelyard(args: readonly string[], { cwd = root, stdin = '', styled = false, width = 0 } = {}) {
  let out = '';
  let err = '';
  const code = run(args, '1.2.3', { cwd, styled, ...(width === 0 ? {} : { width }), stdin: () => stdin, out: (text) => void (out += text), err: (text) => void (err += text) });
  return { code, out, err };
}

const schema = (name: string) => new Ajv2020({ strict: false }).compile(JSON.parse(readFileSync(path.join(root, 'schemas', name), 'utf8')) as object);

const validRecords = new Ajv2020({ strict: false, schemas: [JSON.parse(readFileSync(path.join(root, 'schemas/estimate.schema.json'), 'utf8')) as object] }).compile(JSON.parse(readFileSync(path.join(root, 'schemas/records.schema.json'), 'utf8')) as object);

describe('exit codes', () => {
  let folder: string;
  beforeAll(() => {
    folder = mkdtempSync(path.join(tmpdir(), 'steelyard-cli-'));
    writeFileSync(path.join(folder, 'wrong.yard'), 'steelyard 1\npart pump "Pump" 1,250.00 new\n');
    writeFileSync(path.join(folder, 'warned.yard'), 'steelyard 1\npart pump "Pump" 64.30\n');
    writeFileSync(path.join(folder, 'latin.yard'), Buffer.from([0x23, 0xe9, 0x0a]));
    mkdirSync(path.join(folder, 'inside'));
    mkdirSync(path.join(folder, 'inside', 'folder.yard'));
    writeFileSync(path.join(folder, 'secret.yard'), 'steelyard 1\nshop "Secret"\n');
    symlinkSync(path.join(folder, 'secret.yard'), path.join(folder, 'inside', 'link.yard'));
    writeFileSync(path.join(folder, 'inside', 'uses-link.yard'), 'steelyard 1\nuse "link.yard"\n');
  });
  afterAll(() => rmSync(folder, { recursive: true }));

  test('0 where all is well', () => {
    expect(steelyard(['check', ...samples])).toMatchObject({ code: 0, err: '' });
    for (const sample of samples) expect(steelyard(['weigh', sample]), sample).toMatchObject({ code: 0, err: '' });
    expect(steelyard(['--help'])).toMatchObject({ code: 0, err: '' });
    expect(steelyard(['--version'])).toEqual({ code: 0, out: '1.2.3\n', err: '' });
  });

  test('1 where there is something to mend', () => {
    const { code, out } = steelyard(['check', 'wrong.yard'], { cwd: folder });
    expect(code).toBe(1);
    expect(out).toContain('wrong.yard:2:18  error  There is a comma inside this number. [thousands-comma]');
    expect(out).toContain('1 file: 1 error, no warnings');
    expect(steelyard(['check', 'warned.yard'], { cwd: folder }).code).toBe(1);
    expect(steelyard(['weigh', 'wrong.yard'], { cwd: folder }).code).toBe(1);
  });

  test.each([
    [['weigh'], 'needs a file'],
    [['wiegh', 'x'], 'Did you mean weigh?'],
    [['weigh', 'none.yard'], 'There is no file none.yard.'],
    [['weigh', 'inside/folder.yard'], 'is not a file'],
    [['check', 'latin.yard'], 'not text in UTF-8'],
    [['weigh', 'wrong.yard', 'warned.yard'], 'takes one file'],
    [['check', 'wrong.yard', '--explain', 'x'], '--explain belongs to weigh'],
    [['check', '--nonsense'], 'nonsense'],
    [['weigh', 'wrong.yard', '--jsn'], 'Did you mean --json?'],
    [['weigh', ''], 'The name of a file is empty.'],
    [['check', 'warned.yard', ''], 'The name of a file is empty.'],
    [['list', ''], 'The name of a file is empty.'],
    [['quote', 'wrong.yard', '--option', ''], '--option is empty.'],
    [['export', 'wrong.yard', '--as', 'csv', '--output='], '--output is empty.'],
    [['quote', 'wrong.yard', '--option', 'a', '--option', 'b'], '--option is there more than once'],
    [['export', 'wrong.yard', '--as', 'csv', '-o', '--json'], "Option '-o' argument is ambiguous\nSee: "],
    [['weigh', 'wrong.yard/deeper'], 'There is no file wrong.yard/deeper.'],
    [['check', 'wrong.yard/deeper'], 'There is no folder or file wrong.yard/deeper.'],
    [['list', 'wrong.yard/deeper'], 'There is no folder or file wrong.yard/deeper.'],
    [['lsp', 'warned.yard'], 'steelyard lsp --stdio'],
    [['quote', 'wrong.yard'], 'One line could not be read or priced. The first: wrong.yard:2: There is a comma'],
    [['closing', 'wrong.yard'], 'One line could not be read or priced. The first: wrong.yard:2: There is a comma'],
    [['weigh', 'wrong.yard', '--explain', 'rebuild.totl'], 'There is no figure rebuild.totl'],
  ])('2 and one sentence for %j', (args, says) => {
    const { code, out, err } = steelyard(args, { cwd: folder });
    expect({ code, out }).toEqual({ code: 2, out: '' });
    expect(err).toContain(says);
    expect(err).toContain('See: steelyard --help');
  });

  test('a folder without an estimate is a slip, never a green word over nothing', () => {
    mkdirSync(path.join(folder, 'none', 'deeper'), { recursive: true });
    writeFileSync(path.join(folder, 'none', 'deeper', 'notes.txt'), 'steelyard 1\n');
    const says = 'There is no estimate file (.yard) in none or below it, so nothing was checked there. Name a file, a folder that holds some, or a pattern such as';
    for (const form of [[], ['--json'], ['--as', 'sarif']]) {
      expect(steelyard(['check', 'none', ...form], { cwd: folder })).toMatchObject({ code: 2, out: '', err: expect.stringContaining(says) as string });
    }
    const beside = steelyard(['check', 'secret.yard', 'none'], { cwd: folder });
    expect(beside).toMatchObject({ code: 2, err: expect.stringContaining(says) as string });
    expect(beside.out).toContain('1 file: ');
    expect(beside.err).toContain('All else was checked.');
  });

  test('no command at all shows the help and is a mistake', () => {
    expect(steelyard([])).toMatchObject({ code: 2, out: '' });
  });

  test('a link that leads out of the workspace is not followed', () => {
    const { code, out } = steelyard(['check', 'uses-link.yard'], { cwd: path.join(folder, 'inside') });
    expect(code).toBe(1);
    expect(out).toContain('[use-outside]');
    expect(out).not.toContain('Secret');
  });
});

describe('input and output', () => {
  test('standard input finds the shared files beside it', () => {
    const text = readFileSync(path.join(root, 'samples/heron-pump.yard'), 'utf8');
    const fromStdin = steelyard(['weigh', '-'], { cwd: path.join(root, 'samples'), stdin: text });
    expect(fromStdin).toEqual({ ...steelyard(['weigh', 'heron-pump.yard'], { cwd: path.join(root, 'samples') }), err: BESIDE });
  });

  test('a text from standard input may be of another day than the shared files: which these are is said once', () => {
    const stdin = readFileSync(path.join(root, 'samples/heron-pump.yard'), 'utf8');
    const cwd = path.join(root, 'samples');
    for (const args of [['weigh', '-', '--json'], ['check', '-', '-'], ['quote', '-'], ['export', '-', '--as', 'csv'], ['records', '-'], ['changes', 'heron-pump.yard', '-']]) {
      expect(steelyard(args, { cwd, stdin }), args.join(' ')).toMatchObject({ code: 0, err: BESIDE });
    }
    // Nothing is used, or what is used is not there: nothing was read.
    expect(steelyard(['check', '-'], { cwd, stdin: 'steelyard 1\noption a "A"\n  part "P" 5.00 new\n' }).err).toBe('');
    expect(steelyard(['check', '-'], { cwd, stdin: 'steelyard 1\nuse "nowhere.yard"\n' }).err).toBe('');
    expect(steelyard(['check', 'heron-pump.yard'], { cwd }).err).toBe('');
  });

  test('the same file twice is checked once', () => {
    expect(steelyard(['check', samples[0] as string, `./${samples[0]}`, 'samples/../samples/pilgrim-v6.yard']).out).toMatch(/^1 file: /m);
    expect(steelyard(['check', 'samples', samples[0] as string]).out).toBe(steelyard(['check', 'samples']).out);
  });

  test.each(samples)('%s: --json of weigh and check keep to their schemas', (sample) => {
    const weighed = JSON.parse(steelyard(['weigh', sample, '--json']).out) as unknown;
    const validWeigh = schema('weigh.schema.json');
    expect(validWeigh(weighed), JSON.stringify(validWeigh.errors)).toBe(true);
    const checked = JSON.parse(steelyard(['check', sample, '--json']).out) as unknown;
    const validCheck = schema('check.schema.json');
    expect(validCheck(checked), JSON.stringify(validCheck.errors)).toBe(true);
    const printed = steelyard(['records', sample]).out;
    expect(steelyard(['records', sample, '--json']).out).toBe(printed);
    const records = JSON.parse(printed) as { file: string; records: object[] }[];
    expect(records.map(({ file }) => file)).toEqual(['samples/shop.yard', sample]);
    expect(validRecords(records), JSON.stringify(validRecords.errors)).toBe(true);
    // The wrapper and what is in it are both held.
    for (const wrong of [records[0], [{ ...records[0], lines: 1 }], [{ file: sample }], [{ file: sample, records: [...(records[0]?.records ?? []), { kind: 'engine' }] }]]) expect(validRecords(wrong)).toBe(false);
  });

  test('the text and the JSON show the same totals', () => {
    const { out } = steelyard(['weigh', samples[0] as string]);
    const json = JSON.parse(steelyard(['weigh', samples[0] as string, '--json']).out) as { options: { figures: Record<string, { likely: string }> }[] };
    const shown = /^Total +(.*)$/m.exec(out)?.[1]?.split(/ +/).map((text) => text.replaceAll(',', ''));
    expect(shown).toEqual(json.options.map(({ figures }) => figures['total']?.likely));
  });

  test('--explain unfolds a figure down to lines of the files', () => {
    const { code, out } = steelyard(['weigh', samples[3] as string, '--explain', 'lifted.line.pump']);
    expect(code).toBe(0);
    expect(out.split('\n').slice(0, 3)).toEqual([
      'Coolant pump: replace: 792.00 (726.00 to 1,056.00)  multiplied, rounded; samples/heron-pump.yard:34',
      '  Time with engine-lifted: 6.0 h (5.5 h to 8.0 h)  samples/heron-pump.yard:34',
      '  Mechanical, an hour: 132.00  samples/shop.yard:13',
    ]);
  });

  test('a name that promises another form than the one that is said is refused, and nothing is written', () => {
    const cwd = mkdtempSync(path.join(tmpdir(), 'steelyard-ends-'));
    const file = path.join(root, samples[3] as string);
    writeFileSync(path.join(cwd, 'e.html'), 'an older page');
    for (const [args, end] of [[['export', file, '--as', 'csv'], '.html'], [['export', file, '--json'], '.HTM'], [['quote', file, '--as', 'html'], '.md'], [['check', file, '--as', 'json'], '.sarif'], [['changes', file, file, '--as', 'html'], '.csv']] as const) {
      expect(steelyard([...args, '--output', `e${end}`], { cwd }), end).toMatchObject({ code: 2, out: '', err: expect.stringContaining(`the end of e${end} ask for two forms; nothing was written`) as string });
    }
    expect(readFileSync(path.join(cwd, 'e.html'), 'utf8')).toBe('an older page');
    // Any text may be called one, a log in SARIF is JSON, and an end that promises nothing is taken as it is.
    for (const [args, name] of [[['export', file, '--as', 'csv'], 'e.txt'], [['check', file, '--as', 'sarif'], 'e.json'], [['export', file, '--as', 'csv'], 'e.out'], [['export', file, '--as', 'html'], 'e.HTM']] as const) {
      expect(steelyard([...args, '--output', name], { cwd })).toMatchObject({ code: 0, err: `Wrote ${name}\n` });
    }
    rmSync(cwd, { recursive: true });
  });

  test('escapes only where the output may be styled', () => {
    expect(steelyard(['weigh', samples[0] as string]).out).not.toContain('\u001b');
    expect(steelyard(['weigh', samples[0] as string], { styled: true }).out).toContain('\u001b[1m');
    expect(mayStyle({}, true)).toBe(true);
    expect(mayStyle({ NO_COLOR: '1' }, true)).toBe(false);
    expect(mayStyle({ NO_COLOR: '' }, true)).toBe(true);
    expect(mayStyle({}, false)).toBe(false);
    expect(mayStyle({ TERM: 'dumb' }, true)).toBe(false);
  });

  test('weigh keeps within the columns of a terminal; data are the same whatever it is', () => {
    const sample = samples[0] as string;
    const longest = (text: string) => Math.max(...text.split('\n').map((line) => line.length));
    expect(longest(steelyard(['weigh', sample]).out)).toBeGreaterThan(80);
    expect(longest(steelyard(['weigh', sample], { width: 80 }).out)).toBeLessThanOrEqual(80);
    expect(steelyard(['weigh', sample, '--json'], { width: 50 })).toEqual(steelyard(['weigh', sample, '--json']));
  });

  test('the columns are those that the user prefers, or that the terminal says; none where the output goes elsewhere', () => {
    expect(columnsFor({}, true, 80)).toBe(80);
    expect(columnsFor({ COLUMNS: '60' }, true, 80)).toBe(60);
    // POSIX, XBD 8.3: COLUMNS is a decimal integer above zero.
    for (const COLUMNS of ['', '0', '-5', '6x', '1e2', '7.5', '99999999999']) expect(columnsFor({ COLUMNS }, true, 80), COLUMNS).toBe(80);
    expect(columnsFor({ COLUMNS: '60' }, false, undefined)).toBeUndefined();
    expect(columnsFor({}, true, 0)).toBeUndefined();
    expect(columnsFor({}, true, undefined)).toBeUndefined();
  });

  test('control characters of a file never reach the terminal', () => {
    const stdin = 'steelyard 1\nvehicle "Van \u001b[31m\u0007"\n  worth 100\noption a "A \u009b2J\u202e"\n  fee "X" 1.00\n';
    const { out } = steelyard(['weigh', '-'], { stdin });
    expect(out).toContain('‹U+001B›');
     
    expect(out).not.toMatch(/[\u001b\u0007\u009b\u202e]/);
  });
});
