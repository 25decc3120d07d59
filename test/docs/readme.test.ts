import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { run } from '../../src/cli/run.js';
import { expectQuoted } from './quoted.js';

// What README.md says of the samples is what the tool says, and no page of the project has a link that leads nowhere.

const root = path.resolve(import.meta.dirname, '../..');
const samples = path.join(root, 'samples');
const readme = readFileSync(path.join(root, 'README.md'), 'utf8');
const pages = ['README.md', 'DEVELOPERS.md', 'CHANGELOG.md', ...readdirSync(samples).filter((name) => name.endsWith('.md')).map((name) => `samples/${name}`)];

let folder: string;
beforeAll(() => {
  folder = mkdtempSync(path.join(tmpdir(), 'steelyard-readme-'));
});
afterAll(() => rmSync(folder, { recursive: true }));

const outputs = new Map<string, string>();

function weighed(file: string): string {
  let out = outputs.get(file) ?? '';
  if (out === '') run(['weigh', file], '1.2.3', { cwd: samples, styled: false, stdin: () => '', out: (text) => void (out += text), err: () => undefined });
  outputs.set(file, out);
  return out;
}

/** The answer in one paragraph: what stands above the table. */
function verdictOf(file: string): string {
  return (weighed(file).split('\n\n')[1] ?? '').replaceAll('\n', ' ');
}

describe('README.md', () => {
  const quotes = [...readme.matchAll(/^```text weigh (\S+)\n([^]*?)^```$/gm)].map(([, file = '', quote = '']) => ({ file, quote }));

  test('quotes the answer to a sample, whole', () => {
    expect(quotes).toHaveLength(1);
    for (const { file, quote } of quotes) {
      expectQuoted(quote, weighed(file));
      expect(quote.replaceAll('\n', ' ').trim()).toBe(verdictOf(file));
    }
  });

  const rows = [...readme.matchAll(/^\| \[(\S+\.yard)\]\(samples\/\S+\) \| (.+?) \| (.+?) \|$/gm)].map(([, file = '', , answer = '']) => ({ file, answer }));

  test('has every sample', () => {
    expect(rows.map(({ file }) => file).sort()).toEqual(readdirSync(samples).filter((name) => name.endsWith('.yard') && name !== 'shop.yard').sort());
  });

  test.each(rows)('$file: $answer', ({ file, answer }) => {
    const said = [...answer.matchAll(/[\d,]+\.\d\d|\d+ %/g)].map(([figure]) => figure);
    expect(said.length).toBeGreaterThanOrEqual(2);
    for (const figure of said) expect(verdictOf(file)).toMatch(new RegExp(`(?<![\\d,.])${figure.replaceAll('.', '\\.')}`));
  });

  const commands = [...readme.matchAll(/^node dist\/cli\.js (.+?) *(?:#.*)?$/gm)].map(([, command = '']) => command);

  test('has a command of each sort', () => {
    expect([...new Set(commands.map((command) => command.split(' ')[0]))].sort()).toEqual(['check', 'closing', 'export', 'history', 'list', 'quote', 'weigh']);
  });

  // What stands in the output of each, whatever its form.
  const sayings: Readonly<Record<string, RegExp>> = {
    check: /no errors, no warnings/, weigh: /Fit a used engine/, quote: /Fit a used engine|Take the head off to see/, export: /"Fit a used engine"/,
    closing: /Rebuild the head: closed on 2026-10-16/, history: /3 jobs clocked/, list: /dunlin-closed\.yard +rebuild +1,938\.40/,
  };

  test.each(commands)('%s does what it should', (command) => {
    const args = command.split(' ').flatMap((arg) => (arg === 'samples/*.yard' ? readdirSync(samples).filter((name) => name.endsWith('.yard')).map((name) => `samples/${name}`) : [arg]));
    const at = args.indexOf('--output');
    if (at >= 0) args[at + 1] = path.join(folder, args[at + 1] ?? '');
    let out = '';
    const code = run(args, '1.2.3', { cwd: root, styled: false, stdin: () => '', out: (text) => void (out += text), err: () => undefined });
    expect(code).toBe(0);
    expect(at >= 0 ? readFileSync(args[at + 1] as string, 'utf8') : out).toMatch(sayings[args[0] ?? ''] as RegExp);
  });

  test('shows lines that stand in its first sample', () => {
    const plain = (text: string) => text.split('\n').map((line) => line.replace(/#.*/, '').trim().replace(/\s+/g, ' ')).filter((line) => line !== '');
    const shown = plain(/^```\naccess ([^]*?)^```$/m.exec(readme)?.[0].replaceAll('```', '') ?? '');
    expect(shown.length).toBeGreaterThan(15);
    expect(plain(readFileSync(path.join(samples, 'pilgrim-v6.yard'), 'utf8'))).toEqual(expect.arrayContaining(shown));
  });
});

describe('the pages', () => {
  const texts = new Map(pages.map((page) => [page, readFileSync(path.join(root, page), 'utf8')]));

  test('have no link that leads nowhere', () => {
    const links = [...texts].flatMap(([page, text]) => [...text.replace(/^```[^]*?^```$/gm, '').matchAll(/\]\((?!https?:)([^)\s]+)\)/g)].map(([, target = '']) => ({ page, target })));
    expect(links.length).toBeGreaterThan(15);
    expect(links.filter(({ page, target }) => !leads(page, target))).toEqual([]);
  });

  test('speak of files that are there', () => {
    const named = [...texts].flatMap(([page, text]) => [...text.matchAll(/`((?:src|test|samples|schemas)\/[\w./-]+)`/g)].map(([, file = '']) => ({ page, file })));
    expect(named.length).toBeGreaterThan(20);
    expect(named.filter(({ file }) => !existsSync(path.join(root, file)))).toEqual([]);
  });
});

function leads(page: string, target: string): boolean {
  const [file = '', heading] = target.split('#');
  const full = path.resolve(root, path.dirname(page), file === '' ? path.basename(page) : file);
  return existsSync(full) && (heading === undefined || headingsOf(readFileSync(full, 'utf8')).includes(heading));
}

function headingsOf(text: string): string[] {
  return [...text.matchAll(/^#+ (.+)$/gm)].map(([, title = '']) => title.toLowerCase().replace(/[^\w\- ]/g, '').replaceAll(' ', '-'));
}
