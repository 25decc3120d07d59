import { mkdirSync, mkdtempSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { run } from '../../src/cli/run.js';
import { mayStyle } from '../../src/cli/terminal.js';

const root = path.resolve(import.meta.dirname, '../..');
const samples = ['pilgrim-v6', 'tarn-inline', 'kestrel-flat', 'heron-pump'].map((name) => `samples/${name}.yard`);

function steelyard(args: readonly string[], { cwd = root, stdin = '', styled = false } = {}) {
  let out = '';
  let err = '';
  const code = run(args, '1.2.3', { cwd, styled, stdin: () => stdin, out: (text) => void (out += text), err: (text) => void (err += text) });
  return { code, out, err };
}

const schema = (name: string) => new Ajv2020({ strict: false }).compile(JSON.parse(readFileSync(path.join(root, 'schemas', name), 'utf8')) as object);

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
    [['weigh', 'wrong.yard', '--explain', 'rebuild.totl'], 'There is no figure rebuild.totl'],
  ])('2 and one sentence for %j', (args, says) => {
    const { code, out, err } = steelyard(args, { cwd: folder });
    expect({ code, out }).toEqual({ code: 2, out: '' });
    expect(err).toContain(says);
    expect(err).toContain('See: steelyard --help');
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
    expect(fromStdin).toEqual(steelyard(['weigh', 'heron-pump.yard'], { cwd: path.join(root, 'samples') }));
  });

  test.each(samples)('%s: --json of weigh and check keep to their schemas', (sample) => {
    const weighed = JSON.parse(steelyard(['weigh', sample, '--json']).out) as unknown;
    const validWeigh = schema('weigh.schema.json');
    expect(validWeigh(weighed), JSON.stringify(validWeigh.errors)).toBe(true);
    const checked = JSON.parse(steelyard(['check', sample, '--json']).out) as unknown;
    const validCheck = schema('check.schema.json');
    expect(validCheck(checked), JSON.stringify(validCheck.errors)).toBe(true);
    const records = JSON.parse(steelyard(['records', sample]).out) as { file: string; records: unknown }[];
    expect(records.map(({ file }) => file)).toEqual(['samples/shop.yard', sample]);
    const validRecords = schema('estimate.schema.json');
    for (const file of records) expect(validRecords(file.records), JSON.stringify(validRecords.errors)).toBe(true);
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

  test('escapes only where the output may be styled', () => {
    expect(steelyard(['weigh', samples[0] as string]).out).not.toContain('\u001b');
    expect(steelyard(['weigh', samples[0] as string], { styled: true }).out).toContain('\u001b[1m');
    expect(mayStyle({}, true)).toBe(true);
    expect(mayStyle({ NO_COLOR: '1' }, true)).toBe(false);
    expect(mayStyle({ NO_COLOR: '' }, true)).toBe(true);
    expect(mayStyle({}, false)).toBe(false);
    expect(mayStyle({ TERM: 'dumb' }, true)).toBe(false);
  });

  test('control characters of a file never reach the terminal', () => {
    const stdin = 'steelyard 1\nvehicle "Van \u001b[31m\u0007"\n  worth 100\noption a "A \u009b2J\u202e"\n  fee "X" 1.00\n';
    const { out } = steelyard(['weigh', '-'], { stdin });
    expect(out).toContain('‹U+001B›');
     
    expect(out).not.toMatch(/[\u001b\u0007\u009b\u202e]/);
  });
});
