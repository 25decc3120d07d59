import { readdirSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, test } from 'vitest';
import { comparisonPage, decisionPart, decisionTargets, decisionView, keepLastGood, targetsOf } from '../../src/report/page/index.js';
import { aboutText, coveredSentence, decisionVerdict, flipSentence, inspectionSentence, namedFigures, shareText, valueText } from '../../src/report/index.js';
import { figuresIn, isWellFormed, sampleTexts, serviceOver, verdictIn } from './estimates.js';

const names = readdirSync(path.resolve(import.meta.dirname, '../../samples')).filter((name) => name.endsWith('.yard') && name !== 'shop.yard');

function partOf(texts: Map<string, string>, uri: string) {
  const service = serviceOver(texts);
  const { comparison, problems } = service.weighing(uri);
  const columns = keepLastGood([], { comparison, problems });
  const decision = service.decision(uri);
  const view = decisionView(decision, columns);
  return { service, decision, comparison, columns, view, targets: decisionTargets(view), markup: decisionPart(view), page: comparisonPage({ comparison, columns, lineOf: () => undefined }) };
}

const escaped = (text: string) => text.replace(/&/g, '&amp;').replace(/"/g, '&quot;').replace(/'/g, '&#39;').replace(/</g, '&lt;');
const sections = (markup: string) => [...markup.matchAll(/<section data-key="([^"]+)"/g)].map(([, key]) => key);
/** A row of a table, as texts of its cells. */
const row = (markup: string, section: string, group: string, key: string) => {
  const from = markup.indexOf(`<section data-key="${section}"`);
  const inside = markup.slice(from, markup.indexOf('</section>', from));
  const body = inside.slice(inside.indexOf(`<tbody data-key="${group}"`));
  const [, cells = ''] = new RegExp(`<tr data-key="${key}"[^>]*>(.*?)</tr>`).exec(body) ?? [];
  return [...cells.matchAll(/<td[^>]*>(.*?)<\/td>/g)].map(([, cell = '']) => cell.replace(/<[^>]*>/g, ''));
};

describe.each(names)('what helps to decide, of %s', (name) => {
  const { decision, comparison, columns, targets, markup, page, service } = partOf(sampleTexts(name), `/${name}`);
  const { money } = comparison;

  test('has the places that the page keeps for it, and no others', () => {
    const places = (of: string) => [...of.matchAll(/<div data-key="([^"]+)" data-later>/g)].map(([, key]) => key);
    expect(places(markup)).toEqual(['verdict', 'decision', 'shop-only']);
    expect(places(page)).toEqual(places(markup));
    expect(page).toContain('<div data-key="decision" data-later></div>');
    expect(verdictIn(markup)).toBe(escaped(decisionVerdict(decision)));
  });

  test('has a section for what the estimate says, and for nothing else', () => {
    const has = (of: (one: (typeof decision.options)[number]) => boolean) => decision.options.some(of);
    expect(sections(markup)).toEqual([
      ...(decision.cases === undefined ? [] : ['sure']),
      ...(decision.flips.length === 0 ? [] : ['flips']),
      ...(decision.inspections.length === 0 ? [] : ['inspect']),
      ...(decision.coverages.length === 0 ? [] : ['coverage']),
      ...(has(({ weighed }) => weighed.ready.tasks.length > 0) ? ['calendar'] : []),
      ...(has(({ monthly, downtime }) => (monthly ?? downtime) !== undefined) ? ['months'] : []),
      ...(has(({ margin }) => margin.by.some(({ cost }) => !cost.likely.isZero())) ? ['shop'] : []),
    ]);
  });

  test('says how sure each option is, rounded', () => {
    if (decision.cases === undefined) return expect(markup).not.toContain('cases, drawn');
    expect(row(markup, 'sure', 'share', 'cheapest')).toEqual(decision.options.map(({ risk }) => shareText(risk?.cheapest ?? NaN)));
    for (const point of ['p10', 'p50', 'p90'] as const) {
      expect(row(markup, 'sure', 'cost', point)).toEqual(decision.options.map(({ risk }) => aboutText(risk?.inAll[point] ?? NaN, money)));
      expect(row(markup, 'sure', 'ready', point)).toEqual(decision.options.map(({ risk }) => risk?.ready?.[point] ?? `${risk?.days[point] ?? NaN} d`));
    }
    expect(row(markup, 'sure', 'cost', 'average')).toEqual(decision.options.map(({ average }) => aboutText(average, money)));
    return undefined;
  });

  test('draws nothing whose numbers are not in a table: one beside it, or its own', () => {
    const tableBeside: Readonly<Record<string, string>> = { 'ways-drawn': 'ways', 'ranges-drawn': 'sure', 'days-drawn': 'sure' };
    for (const [, key = '', drawn = ''] of `${page}${markup}`.matchAll(/<div class="charted" data-key="([^" ]+)">(.*?)<\/div>/gs)) {
      const section = tableBeside[key];
      expect(drawn.includes('<summary>In numbers</summary>'), key).toBe(section === undefined);
      if (section === undefined) continue;
      const table = new RegExp(`<section data-key="${section}".*?</section>`, 's').exec(`${page}${markup}`)?.[0].replace(/<svg.*?<\/svg>/gs, '') ?? '';
      // All that it draws but the points of its head and the words for the first and the second.
      const figures = [...drawn.matchAll(/<text[^>]*>([\d.,-]+(?: [hd])?)<\/text>/g)].map(([, text = '']) => text);
      expect(figures.length, key).toBeGreaterThan(0);
      for (const figure of figures) expect(table, `${figure} of ${key}`).toContain(`>${figure}<`);
    }
  });

  test('lists what the calendar plans, the critical marked by a word', () => {
    for (const [i, { weighed: { ready } }] of decision.options.entries()) {
      const list = new RegExp(`<details data-key="calendar ${columns[i]?.key ?? ''}">.*?</details>`, 's').exec(markup)?.[0] ?? '';
      expect(list.match(/<tr data-key="[^"]+\.task\.\d+"/g) ?? []).toHaveLength(ready.tasks.length);
      expect(list.match(/<td>critical<\/td>/g) ?? []).toHaveLength(ready.tasks.filter(({ critical }) => critical).length);
      for (const { task, from, to } of ready.tasks) for (const text of [task.title, from ?? '', to ?? '']) expect(list).toContain(escaped(text));
    }
  });

  test('says what the terminal says: flips, nearest first and five at most; inspections; coverage', () => {
    const says = [...decision.flips.slice(0, 5).map((flip) => flipSentence(flip, money)), ...decision.inspections.map((one) => inspectionSentence(one, decision.comparison)), ...decision.coverages.map(coveredSentence)];
    expect([...markup.matchAll(/<li data-key="\.[^"]+"><button[^>]*>([^<]*)</g)].map(([, text]) => text)).toEqual(says.map(escaped));
  });

  test('shows named figures as they are', () => {
    const figures = namedFigures(comparison, decision);
    const shown = [...figuresIn(markup)].filter(([id]) => /\.(monthly|downtime|margin(-\w+)?)$/.test(id));
    for (const [id, text] of shown) expect(text, id).toBe(valueText(figures.get(id)!.likely, figures.get(id)!.unit, money));
  });

  test('every figure leads to a line that is there', () => {
    const ids = [...figuresIn(markup).keys()];
    for (const id of ids) expect((targets.get(id) ?? targetsOf(columns, comparison.estimate).get(id) ?? []).flatMap((span) => service.place(span) ?? []).length, id).toBeGreaterThan(0);
    for (const [, id = ''] of markup.matchAll(/data-row="([^"]+)"/g)) expect(ids).toContain(id);
  });

  test('is well formed, without styles or scripts of its own', () => {
    expect(isWellFormed(markup)).toBe(true);
    expect(markup).not.toMatch(/<script|<style|\sstyle=|\son[a-z]+=|javascript:|https?:|undefined|NaN/i);
  });
});

test('the margin of the shop is in its own place at the end, folded up, and nowhere else', () => {
  const { markup, page } = partOf(sampleTexts('pilgrim-v6.yard'), '/pilgrim-v6.yard');
  const before = markup.slice(0, markup.indexOf('data-key="shop-only"'));
  expect(before + page).not.toMatch(/margin/i);
  expect(markup).toMatch(/For the shop’s eyes only<\/h2><details data-key="shop only"><summary>/);
});

test('an option whose line is broken is left out, and the others stay', () => {
  const texts = sampleTexts('pilgrim-v6.yard');
  texts.set('/pilgrim-v6.yard', (texts.get('/pilgrim-v6.yard') ?? '').replace('1150 / 1350 / 2100', '1150 / 1,350 / 2100'));
  const { markup, view } = partOf(texts, '/pilgrim-v6.yard');
  expect(view.columns.map(({ column }) => column.key)).toEqual(['rebuild', 'exchange', 'as-it-stands']);
  expect(row(markup, 'sure', 'share', 'cheapest')).toHaveLength(3);
  expect(isWellFormed(markup)).toBe(true);
});

test('titles stay text here too', () => {
  const hostile = `<img src=x onerror='alert(1)'>&lt;</table><script>`;
  const text = ['steelyard 1', 'shop "S"', '  rate plain "P" 100.00 usual cost 40.00', 'vehicle "V"', '  worth 5000.00', '  unrepaired 900.00', '  downtime 40.00', `access out "${hostile}"`, '  remove 1 / 2 / 4 h', `labour job "${hostile}" 2 h with out`, `  chance c "${hostile}" 20%`, `    part "${hostile}" 700.00 new`, `option one "${hostile}"`, '  do job', '  lasts 24 mo', `  part "${hostile}" 10.00 new arrives 3 d`, `option two "${hostile}"`, '  labour "Other" 5 h', `inspect look "${hostile}" 10.00`, '  finds c 80%', `coverage "${hostile}" recall`, '  built from 2012-06', '  covers one', ''].join('\n');
  const { markup } = partOf(new Map([['/a.yard', text]]), '/a.yard');
  expect(sections(markup)).toEqual(['sure', 'flips', 'inspect', 'coverage', 'calendar', 'months', 'shop']);
  expect(isWellFormed(markup)).toBe(true);
  expect(markup).not.toMatch(/<img|<script|<\/table>&/i);
  expect(markup.split('&lt;img src=x').length).toBeGreaterThan(20);
});
