import { createRequire } from 'node:module';
import { describe, expect, test } from 'vitest';
import { comparisonCsv, comparisonHtml, csvColumns } from '../../src/report/export/index.js';
import { widthOf } from '../../src/report/index.js';
import { quoteForm, type Quote } from '../../src/report/quote/index.js';
import { TEXT_WIDTH } from '../../src/report/quote/text-form.js';
import { decisionOf, quotes } from './made.js';

interface Markdown {
  readonly parse: (text: string, env: object) => readonly { readonly type: string; readonly tag: string; readonly children: readonly { readonly type: string; readonly content: string }[] | null }[];
}
/** Comes with a tool of the repository; CommonMark with tables, links found in text, HTML let through. */
const MarkdownIt = createRequire(createRequire(import.meta.url).resolve('@vscode/vsce'))('markdown-it') as new (options: object) => Markdown;
const markdown = new MarkdownIt({ html: true, linkify: true });

/** Texts that want to be more than text. What a text in a file can't hold (line ends) is spelled out by its reader. */
const HOSTILE: readonly string[] = [
  '<script>alert(1)</script>',
  '</title></style></head><img src=x onerror=alert(1)>',
  '"><svg onload=alert(1)>',
  "' onmouseover='alert(1)",
  '<!-- never closed',
  '&lt;b&gt; &amp; &#x3c;',
  ']]><![CDATA[',
  '# A heading',
  '- a list', '+ a list', '1. a list', '1) a list', '=====', '---', '***',
  '[a link](javascript:alert(1))', '![a picture](http://example.invalid/x.png)', '<http://example.invalid>', 'http://example.invalid', 'www.example.invalid', 'someone@example.invalid',
  '| a | cell |', '`code` ``` ~~~', '**bold** _thin_ ~~gone~~', '> quoted', '$x^2$', '[^1]', '\\| \\',
  '=HYPERLINK("http://example.invalid";"x")', '+1+1', '-1+1', '@SUM(1)', '＝1+1', '  =1+1', '\t=1',
  'x'.repeat(300), `${'very '.repeat(60)}long`, '漢'.repeat(120),
  'עברית ואז 123', 'نص عربي ١٢٣', 'turned \u202e round \u202c', 'isolates \u2067 open', 'zero\u200bwidth\ufeff',
  'bell \u0007 escape \u001b[31m', 'e\u0301\u0301\u0301 marks', '🔧 wrench',
].map((one) => one.replace(/[\r\n]/g, ' '));

const quoted = (text: string) => `"${text.replaceAll('\\', '\\\\').replaceAll('"', '\\"')}"`;

/** An estimate in which every text is the same; the same lines with a harmless one give the shape to compare with. */
function estimateOf(text: string): string {
  const q = quoted(text);
  return `steelyard 1
shop ${q}
  address ${q}
  phone ${q}
  currency USD
  rate bench ${q} 100.00 usual
  tax levy ${q} 7% on parts, labour
  fee ${q} 5.00
estimate ${q}
  written 2026-11-24
  valid 14 d
vehicle ${q}
finding seen ${q}
  picture ${quoted(`p/${text.replace(/[\\/:\t]/g, '')}.png`)}
access open ${q}
  remove 1 / 2 / 3 h
  sublet ${q} 20.00
labour job ${q} 2 h with open
  because seen
  chance crack ${q} 10%
    part ${q} 30.00 used
labour extra ${q} 1 h with open
part unit ${q} 400.00 rebuilt
  core 50.00 due 30 d
    keeps ${q} less 5.00
consider extra
coverage ${q} recall
note ${q}
option one ${q}
  do job
  fit unit
  leaves out ${q}
  harvest ${q} 10.00
  note ${q}
option two ${q}
  do job
`;
}

const plainDecision = decisionOf(estimateOf('plain words'));
const plainShape = quotes(plainDecision)[0] as Quote;
const tags = (page: string) => page.replace(/<style>[^]*?<\/style>/, '').match(/<[^>]*>/g)?.map((tag) => tag.replace(/"[^"]*"/g, '""'));
/** The blocks of a Markdown text, and whether anything in them is a link, a picture or markup. */
const parsed = (text: string) => {
  const tokens = markdown.parse(text, {});
  return {
    blocks: tokens.map(({ type, tag }) => `${type} ${tag}`),
    inline: new Set(tokens.flatMap(({ children }) => (children ?? []).map(({ type }) => type)).filter((type) => type !== 'text' && type !== 'text_special')),
  };
};

test('the corpus reaches every place of a quote', () => {
  for (const form of ['html', 'text', 'markdown'] as const) {
    expect(quoteForm(plainShape, form).split('plain words').length - 1, form).toBeGreaterThan(25);
  }
});

describe.each(HOSTILE.map((text) => [JSON.stringify(text.slice(0, 40)), text] as const))('%s', (_, text) => {
  const decision = decisionOf(estimateOf(text));
  const quote = quotes(decision)[0] as Quote;

  test('is text in the page: its tags are those of a harmless one', () => {
    const page = quoteForm(quote, 'html');
    expect(tags(page)).toEqual(tags(quoteForm(plainShape, 'html')));
    expect(page).not.toMatch(/<script|<iframe|<object|<link|<base|javascript:[^<]*"|https?:\/\/[^<]*" |[\u0000-\u0008\u000b-\u001f\u202a-\u202e\u2066-\u2069]/i);
    expect(page).toMatch(/default-src 'none'; img-src data:; style-src 'sha256-/);
    expect(tags(comparisonHtml(decision))).toEqual(tags(comparisonHtml(plainDecision)));
  });

  test('keeps plain text within its columns and says nothing to a terminal', () => {
    const out = quoteForm(quote, 'text');
    expect(out.split('\n').filter((line) => widthOf(line) > TEXT_WIDTH)).toEqual([]);
    expect(out).not.toMatch(/[\u0000-\u0009\u000b-\u001f\u007f-\u009f\u200b-\u200f\u202a-\u202e\u2066-\u2069\ufeff]/);
  });

  test('is text in Markdown: the same blocks, no link, no markup', () => {
    const found = parsed(quoteForm(quote, 'markdown'));
    const wanted = parsed(quoteForm(plainShape, 'markdown'));
    expect(found.blocks).toEqual(wanted.blocks);
    expect([...found.inline].filter((type) => !wanted.inline.has(type))).toEqual([]);
  });

  test('is one cell of the CSV, and no formula', () => {
    const rows = readCsv(comparisonCsv(decision.comparison));
    const shape = readCsv(comparisonCsv(plainDecision.comparison));
    expect(rows[0]).toEqual(Object.keys(csvColumns));
    expect(rows.map((row) => row.length)).toEqual(shape.map((row) => row.length));
    for (const cell of rows.flat()) expect(cell).not.toMatch(/^\s*[=+\-@＝＋－＠]|^[\t\r]/);
    const at = Object.keys(csvColumns).indexOf('amount');
    expect(rows.map((row) => row[at])).toEqual(shape.map((row) => row[at]));
  });
});

/** A reader by RFC 4180, written from the grammar in its section 2: rows end with CR LF, quotes are doubled. */
function readCsv(text: string): string[][] {
  const rows: string[][] = [];
  let at = 0;
  while (at < text.length) {
    const row: string[] = [];
    for (;;) {
      const found = /(?:"((?:[^"]|"")*)"|([^",\r\n]*))(,|\r\n)/y;
      found.lastIndex = at;
      const [whole, inQuotes, bare, end] = found.exec(text) ?? [];
      if (whole === undefined) throw new Error(`no cell at ${at}: ${text.slice(at, at + 60)}`);
      row.push(inQuotes?.replaceAll('""', '"') ?? bare ?? '');
      at += whole.length;
      if (end === '\r\n') break;
    }
    rows.push(row);
  }
  return rows;
}

test('the lines of the CSV add up to the totals', () => {
  const { comparison } = plainDecision;
  const rows = readCsv(comparisonCsv(comparison)).slice(1);
  const at = Object.keys(csvColumns).indexOf('amount');
  for (const { option, totals } of comparison.options) {
    const cents = rows.filter((row) => row[0] === option.name).reduce((sum, row) => sum + Math.round(Number(row[at]) * 100), 0);
    expect(cents).toBe(totals.total.likely.times(100).toNumber());
  }
});
