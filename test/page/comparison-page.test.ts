import { readdirSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, test } from 'vitest';
import { closingTargets, comparisonPage, keepLastGood, targetsOf } from '../../src/report/page/index.js';
import { namedFigures, valueText, verdict } from '../../src/report/index.js';
import { figuresIn, isWellFormed, sampleTexts, serviceOver, verdictIn } from './estimates.js';

const names = readdirSync(path.resolve(import.meta.dirname, '../../samples')).filter((name) => name.endsWith('.yard') && name !== 'shop.yard');

function pageOf(texts: Map<string, string>, uri: string) {
  const service = serviceOver(texts);
  const { comparison, problems } = service.weighing(uri);
  const columns = keepLastGood([], { comparison, problems });
  return { service, comparison, columns, targets: new Map([...targetsOf(columns, comparison.estimate), ...closingTargets(comparison)]), markup: comparisonPage({ comparison, columns, lineOf: () => undefined }) };
}

describe.each(names)('the page of %s', (name) => {
  const { comparison, columns, targets, markup, service } = pageOf(sampleTexts(name), `/${name}`);

  test('shows the figures of the comparison', () => {
    const shown = figuresIn(markup);
    const figures = namedFigures(comparison);
    const compared = [...shown].filter(([id]) => figures.has(id) && !/\.(days|line\.\d+)$/.test(id));
    expect(compared.length).toBeGreaterThan(4 * comparison.options.length);
    for (const [id, text] of compared) {
      const figure = figures.get(id);
      expect(text, id).toBe(figure === undefined ? '' : valueText(figure.likely, figure.unit, comparison.money));
    }
    for (const { option } of comparison.options) expect(shown.has(`${option.name}.total`)).toBe(true);
  });

  test('tells the verdict, and marks the cheapest with a word', () => {
    expect(verdictIn(markup)).toBe(verdict(comparison).replace(/'/g, '&#39;'));
    expect(markup.match(/<span class="pick">cheapest<\/span>/g)).toHaveLength(1);
  });

  test('has rows only for what some option has', () => {
    for (const [key, sum] of [['cores', 'cores'], ['outside', 'sublets'], ['fees', 'fees']] as const) {
      const used = comparison.options.some(({ totals }) => !totals[sum].high.isZero());
      expect(markup.includes(`<tr data-key="${key}"`), key).toBe(used);
    }
  });

  test('every figure leads to a line, and lines lead to their own', () => {
    for (const id of [...figuresIn(markup).keys()]) expect(targets.get(id)?.length, id).toBeGreaterThan(0);
    for (const column of columns) {
      column.weighed.totals.lines.forEach((line, i) => {
        const [first] = targets.get(`${column.key}.line.${i + 1}`) ?? [];
        expect(first === undefined ? undefined : service.place(first)).toEqual(service.place(line.at));
      });
    }
  });

  test('is well formed, without styles or scripts of its own', () => {
    expect(isWellFormed(markup)).toBe(true);
    expect(markup).not.toMatch(/<script|<style|\sstyle=|\son[a-z]+=|javascript:|https?:/i);
  });
});

describe('texts of a file', () => {
  const hostile = `<img src=x onerror='alert(1)'>&lt;</table><script>`;
  const titled = (title: string) => new Map([['/a.yard', ['steelyard 1', 'shop "S"', '  currency USD', '  rate plain "Plain" 100.00 usual', `estimate "${title}"`, `vehicle "${title}"`, `access out "${title}"`, '  remove 1 h', `labour job "${title}"`, '  takes 2 h with out', `labour due "${title}"`, '  takes 1 h', '  takes 0.5 h with out', 'consider due', `option one "${title}"`, '  do job', `  part "${title}" 10.00 new`, `option two "${title}"`, '  do job', ''].join('\n')]]);

  test('stay text, wherever they stand', () => {
    const { markup } = pageOf(titled(hostile), '/a.yard');
    expect(isWellFormed(markup)).toBe(true);
    expect(markup).not.toMatch(/<img|<script|<\/table>&/i);
    expect(markup.split('&lt;img src=x onerror=&#39;alert(1)&#39;&gt;&amp;lt;&lt;/table&gt;&lt;script&gt;').length).toBeGreaterThan(16);
  });

  test('cannot turn the reading order round', () => {
    expect(pageOf(titled('pump\u202e00.1'), '/a.yard').markup).not.toContain('\u202e');
  });

  test('an estimate without options says what to write', () => {
    expect(pageOf(new Map([['/a.yard', 'steelyard 1\n']]), '/a.yard').markup).toContain('option used &quot;Fit a used engine&quot;'.replace(/&quot;/g, '"'));
  });
});
