import { existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { run } from '../../src/cli/run.js';

const root = path.resolve(import.meta.dirname, '../..');
const pilgrim = path.join(root, 'samples/pilgrim-v6.yard');
const golden = (name: string) => readFileSync(path.join(root, 'samples/quotes', name), 'utf8');

let folder: string;
beforeAll(() => {
  folder = mkdtempSync(path.join(tmpdir(), 'steelyard-quote-'));
  writeFileSync(path.join(folder, 'broken.yard'), 'steelyard 1\noption one "One"\n  fee "Tow" 10.00\noption two "Two"\n  part "Pump" 1,250.00 new\n');
  writeFileSync(path.join(folder, 'none.yard'), 'steelyard 1\n');
  writeFileSync(path.join(folder, 'secret.png'), Buffer.from('89504e470d0a1a0a', 'hex'));
  mkdirSync(path.join(folder, 'job'));
  mkdirSync(path.join(folder, 'job', '.git'));
  writeFileSync(path.join(folder, 'job', 'own.png'), Buffer.from('89504e470d0a1a0a01', 'hex'));
  writeFileSync(path.join(folder, 'job', 'large.png'), new Uint8Array(2_000_001));
  symlinkSync(path.join(folder, 'secret.png'), path.join(folder, 'job', 'link.png'));
  const pictures = ['own.png', 'large.png', 'gone.png', 'link.png'].map((one) => `  picture "${one}"\n`).join('');
  writeFileSync(path.join(folder, 'job', 'job.yard'), `steelyard 1\nfinding "Seen"\n${pictures}option one "One"\n  fee "Tow" 10.00\n`);
});
afterAll(() => rmSync(folder, { recursive: true }));

function steelyard(args: readonly string[], cwd = folder) {
  let out = '';
  let err = '';
  const code = run(args, '1.2.3', { cwd, styled: false, stdin: () => '', out: (text) => void (out += text), err: (text) => void (err += text) });
  return { code, out, err };
}

describe('quote', () => {
  test('of the cheapest option, as text, where nothing is said', () => {
    expect(steelyard(['quote', pilgrim])).toEqual({ code: 0, out: golden('pilgrim-v6-used.txt'), err: '' });
    expect(steelyard(['quote', pilgrim, '--option', 'used']).out).toBe(golden('pilgrim-v6-used.txt'));
  });

  test.each([['html', 'pilgrim-v6-used.html'], ['markdown', 'pilgrim-v6-used.md'], ['text', 'pilgrim-v6-used.txt']])('--as %s', (as, file) => {
    expect(steelyard(['quote', pilgrim, '--as', as])).toEqual({ code: 0, out: golden(file), err: '' });
  });

  test.each([['q.html', 'html'], ['q.HTM', 'html'], ['q.md', 'md'], ['q.txt', 'txt'], ['q', 'txt']])('--output %s says the form by its end', (file, end) => {
    expect(steelyard(['quote', pilgrim, '--output', file])).toEqual({ code: 0, out: '', err: `Wrote ${file}\n` });
    expect(readFileSync(path.join(folder, file), 'utf8')).toBe(golden(`pilgrim-v6-used.${end}`));
  });

  test('is not made where a line is missing, and nothing is written', () => {
    const { code, out, err } = steelyard(['quote', 'broken.yard', '--option', 'two', '--output', 'missing.html']);
    expect({ code, out }).toEqual({ code: 1, out: '' });
    expect(err).toContain('No quote was made: Two rests on a line');
    expect(err).toContain('broken.yard:5: There is a comma inside this number.');
    expect(existsSync(path.join(folder, 'missing.html'))).toBe(false);
  });

  test('is made of a whole option beside a broken one where it is named, and says that there is something to mend', () => {
    const { code, out, err } = steelyard(['quote', 'broken.yard', '--option', 'one']);
    expect(code).toBe(1);
    expect(out).toContain('What we propose: One');
    expect(err).toContain('One line could not be read or priced.');
  });

  test('without a name none is made beside a broken option, which might be the cheapest', () => {
    const { code, out, err } = steelyard(['quote', 'broken.yard']);
    expect({ code, out }).toEqual({ code: 1, out: '' });
    expect(err).toContain('No quote was made: Two rests on a line that can’t be read or priced, so which option costs least can’t be told. Mend it first, or name the option to quote with --option.');
    expect(err).toContain('broken.yard:5: There is a comma inside this number.');
  });

  test.each([
    ['a line that nobody knows', 'optoin two "Two"\n  fee "Tow" 5.00\n', 3],
    ['an option without a name', 'option "Two"\n  fee "Tow" 5.00\n', 3],
    ['a finding that rules out a name that nothing has', 'finding "Bores scored"\n  rules out oen\n', 4],
  ])('nor beside %s, which may be an option or speak against one', (_, more, line) => {
    writeFileSync(path.join(folder, 'unread.yard'), `steelyard 1\nshop "S"\n${more}option one "One"\n  fee "Tow" 10.00\n`);
    const { code, out, err } = steelyard(['quote', 'unread.yard']);
    expect({ code, out }).toEqual({ code: 1, out: '' });
    expect(err).toContain(`No quote was made: line ${line} of unread.yard can’t be read. It may be an option, or speak against one`);
    expect(steelyard(['quote', 'unread.yard', '--option', 'one']).out).toContain('What we propose: One');
  });

  test('a slip elsewhere keeps no quote back', () => {
    writeFileSync(path.join(folder, 'elsewhere.yard'), 'steelyard 1\ncoverage "Recall" recal\noption one "One"\n  fee "Tow" 10.00\n');
    const { code, out } = steelyard(['quote', 'elsewhere.yard']);
    expect(code).toBe(1);
    expect(out).toContain('What we propose: One');
  });

  test('never takes an option by itself that a finding rules out, and says so where it is named', () => {
    writeFileSync(path.join(folder, 'against.yard'), 'steelyard 1\nfinding "Bores scored"\n  rules out one\noption one "One"\n  fee "Tow" 10.00\noption two "Two"\n  fee "Tow" 20.00\n');
    const chosen = steelyard(['quote', 'against.yard']);
    expect(chosen).toMatchObject({ code: 0, err: '' });
    expect(chosen.out).toContain('What we propose: Two');
    expect(chosen.out.replace(/\s+/g, ' ')).toContain('One; ruled out: “Bores scored” Total: 10.00');
    const named = steelyard(['quote', 'against.yard', '--option', 'one']);
    expect(named).toMatchObject({ code: 1, err: 'The option that was quoted is ruled out: the finding “Bores scored” speaks against One.\n' });
    expect(named.out).toContain('What we propose: One');
  });

  test('is not made where everything is ruled out and none is named', () => {
    writeFileSync(path.join(folder, 'all.yard'), 'steelyard 1\nfinding "Bores scored"\n  rules out one\noption one "One"\n  fee "Tow" 10.00\n');
    const { code, out, err } = steelyard(['quote', 'all.yard']);
    expect({ code, out }).toEqual({ code: 1, out: '' });
    expect(err).toBe('No quote was made: something was found that speaks against every option: the finding “Bores scored” speaks against One. To quote one all the same, name it with --option.\n');
  });

  test('a name may end as it likes where the form is said', () => {
    expect(steelyard(['quote', pilgrim, '--as', 'text', '--output', 'q.docx'])).toEqual({ code: 0, out: '', err: 'Wrote q.docx\n' });
  });

  test('takes pictures of the workspace only, and says which are not in it', () => {
    const { code, out, err } = steelyard(['quote', 'job/job.yard', '--as', 'html']);
    expect(code).toBe(1);
    expect(out.match(/<img/g)).toHaveLength(1);
    expect(out).toContain(Buffer.from('89504e470d0a1a0a01', 'hex').toString('base64'));
    expect(out).not.toContain(`"data:image/png;base64,${Buffer.from('89504e470d0a1a0a', 'hex').toString('base64')}"`);
    expect(err).toContain('Not in it, and said so in its place: large.png, gone.png, link.png.');
  });

  test.each([
    [['quote', pilgrim, '--option', 'usde'], 'There is no option usde. Did you mean used? The options: rebuild, used, exchange, as-it-stands.'],
    [['quote', 'none.yard'], 'There is no option to quote.'],
    [['quote', pilgrim, '--as', 'pdf'], '--as takes html, text, markdown, not pdf.'],
    [['quote', pilgrim, '--output', 'job/job.yard'], 'is the name of an estimate; nothing was written'],
    [['quote', pilgrim, '--output', 'new.docx'], 'The end of new.docx says no form that can be written here: .html, .htm, .txt, .md. Choose one of these, or say the form with --as html, text, markdown.'],
    [['export', pilgrim, '--output', 'new.xlsx'], '.html, .htm, .csv, .json'],
    [['quote', pilgrim, '--output', 'nowhere/q.html'], 'nowhere/q.html could not be written'],
    [['weigh', pilgrim, '--option', 'used'], '--option belongs to quote.'],
    [['weigh', pilgrim, '--as', 'csv'], '--as belongs to check, quote, export and changes.'],
    [['check', pilgrim, '--as', 'csv'], '--as takes text, json, sarif, not csv.'],
    [['export', pilgrim], 'export needs --as html, csv or json.'],
    [['export', pilgrim, '--as', 'xml'], '--as takes html, csv, json, not xml.'],
    [['quote', pilgrim, '--json'], '--json belongs to check, weigh, export, closing, history, list, records and changes.'],
    [['weigh', pilgrim, '--explain', 'used.total', '--json'], '--explain answers in text; leave out --json.'],
    [['quot', pilgrim], 'Did you mean quote?'],
  ])('2 and one sentence for %j', (args, says) => {
    const { code, out, err } = steelyard(args);
    expect({ code, out }).toEqual({ code: 2, out: '' });
    expect(err).toContain(says);
  });
});

describe('export', () => {
  test('json is what weigh --json prints', () => {
    expect(steelyard(['export', pilgrim, '--as', 'json'])).toEqual(steelyard(['weigh', pilgrim, '--json']));
  });

  test('csv has a row for each line', () => {
    const { code, out } = steelyard(['export', pilgrim, '--as', 'csv']);
    expect(code).toBe(0);
    expect(out.split('\r\n')[0]).toBe('option,option_title,complete,share,kind,name,title,condition,quantity,hours,amount_low,amount,amount_high,currency,ruled_out');
    expect(out).toContain('"used","Fit a used engine",yes,work,part,"","Used engine, 92 000 mi",used,,,1150.00,1350.00,2100.00,USD,\r\n');
  });

  test('html is one page with the same totals, and without the margin of the shop', () => {
    const { code } = steelyard(['export', pilgrim, '--output', 'side.html']);
    const page = readFileSync(path.join(folder, 'side.html'), 'utf8');
    expect(code).toBe(0);
    const json = JSON.parse(steelyard(['weigh', pilgrim, '--json']).out) as { options: { figures: Record<string, { likely: string }>; shopOnly: { total: { likely: string } } }[] };
    const cells = (/<th scope="row">Total<\/th>((?:<td>[^<]*<\/td>)+)/.exec(page)?.[1] ?? '').split(/<\/?td>+/).filter((one) => one !== '').map((one) => one.replaceAll(',', ''));
    expect(cells).toEqual(json.options.map(({ figures }) => figures['total']?.likely));
    const shown = page.replaceAll(',', '');
    for (const { shopOnly } of json.options) expect(shown).not.toContain(`>${shopOnly.total.likely}<`);
    expect(page).not.toMatch(/<script|margin of|https?:/i);
  });
});
