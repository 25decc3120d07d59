import { createRequire } from 'node:module';
import { describe, expect, test } from 'vitest';
import { comparisonCsv, comparisonHtml, csvColumns } from '../../src/report/export/index.js';
import { widthOf } from '../../src/report/index.js';
import { quoteForm, type Quote } from '../../src/report/quote/index.js';
import { TEXT_WIDTH } from '../../src/report/quote/text-form.js';
import { estimateOf, HOSTILE } from '../support/hostile.js';
import { decisionOf, quotes } from './made.js';

interface Markdown {
  readonly parse: (text: string, env: object) => readonly { readonly type: string; readonly tag: string; readonly children: readonly { readonly type: string; readonly content: string }[] | null }[];
}
/** Comes with a tool of the repository; CommonMark with tables, links found in text, HTML let through. */
const MarkdownIt = createRequire(createRequire(import.meta.url).resolve('@vscode/vsce'))('markdown-it') as new (options: object) => Markdown;
const markdown = new MarkdownIt({ html: true, linkify: true });

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
