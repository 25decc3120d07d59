import { beforeAll, describe, expect, test } from 'vitest';
import { plain, weighJson } from '../../src/report/index.js';
import { comparisonCsv, comparisonHtml } from '../../src/report/export/index.js';
import { comparisonPage, decisionPart, decisionView, keepLastGood } from '../../src/report/page/index.js';
import { quoteForm, type Quote } from '../../src/report/quote/index.js';
import type { Decision } from '../../src/weigh/index.js';
import { decisionOf, quotes } from '../quote/made.js';
import { estimateOf, estimateWith, HOSTILE } from '../support/hostile.js';
import { dangersIn, skeletonOf } from '../support/skeleton.js';
import { browserPath, load, opened } from './browser.js';

const HARMLESS = 'plain words';

/** The inside of the panel as the editor sends it, in two pieces. */
function panelOf(decision: Decision): string {
  const columns = keepLastGood([], { comparison: decision.comparison, problems: [] });
  return `${comparisonPage({ comparison: decision.comparison, columns, lineOf: () => ({ line: 1, file: decision.comparison.estimate.header?.title }) })}${decisionPart(decisionView(decision, columns))}`;
}

const forms = {
  panel: panelOf,
  quote: (decision: Decision) => quoteForm(quotes(decision)[0] as Quote, 'html'),
  export: comparisonHtml,
} as const;
type Form = keyof typeof forms;

describe.skipIf(browserPath === undefined)('in a browser', { timeout: 60_000 }, () => {
  const at = opened();
  const shapes = new Map<Form, readonly string[]>();
  type Read = { readonly shape: readonly string[]; readonly dangers: readonly string[]; readonly text: string };
  const read = async (decision: Decision): Promise<readonly (readonly [Form, Read])[]> => await at().page.evaluate(`${JSON.stringify(Object.entries(forms).map(([form, make]) => [form, make(decision)]))}.map(([form, markup]) => {
    const { body } = new DOMParser().parseFromString(markup, 'text/html');
    return [form, { shape: ${skeletonOf('body')}, dangers: ${dangersIn('body')}, text: body.textContent }];
  })`);
  beforeAll(async () => {
    for (const [form, { shape }] of await read(decisionOf(estimateOf(HARMLESS)))) shapes.set(form, shape);
  });

  test('the harmless estimate is whole, and every form of it says its text often', () => {
    const { comparison } = decisionOf(estimateOf(HARMLESS));
    expect(comparison.options.map(({ complete }) => complete)).toEqual(comparison.options.map(() => true));
    expect(comparison.problems.filter(({ severity }) => severity === 'error')).toEqual([]);
    for (const form of Object.keys(forms) as Form[]) expect(forms[form](decisionOf(estimateOf(HARMLESS))).split(HARMLESS).length, form).toBeGreaterThan(20);
  });

  test.each(HOSTILE.map((text) => [JSON.stringify(text.slice(0, 40)), text] as const))('%s is text in every title, note and path of panel, quote and export', async (_, text) => {
    for (const [form, { shape, dangers, text: said }] of await read(decisionOf(estimateOf(text)))) {
      expect(shape, form).toEqual(shapes.get(form));
      expect(dangers, form).toEqual([]);
      expect(said.replace(/\s+/g, ' '), form).toContain(plain(text).replace(/\s+/g, ' ').trim());
    }
  });

  test('nothing runs, asks or is loaded where such a page is opened', async () => {
    const { page, complaints } = at();
    for (let turn = 0; turn < HOSTILE.length; turn += 24) {
      const decision = decisionOf(estimateWith((place) => HOSTILE[(place + turn) % HOSTILE.length] as string));
      for (const [form, make] of Object.entries(forms)) {
        await load(page, form === 'panel' ? `<main>${make(decision)}</main>` : make(decision));
        expect(complaints.splice(0), form).toEqual([]);
      }
    }
  });
});

describe('the JSON of a hostile estimate', () => {
  test.each(HOSTILE.map((text) => [JSON.stringify(text.slice(0, 40)), text] as const))('%s comes back as it was, and nothing else has changed', (_, text) => {
    const shape = (json: unknown): unknown => JSON.parse(JSON.stringify(json, (key: string, value: unknown) => (typeof value === 'string' && !/^-?\d+(\.\d+)?$/.test(value) ? '' : key === 'column' || key === 'line' ? 0 : value)));
    const of = (decision: Decision): unknown => weighJson(decision, () => undefined);
    const json = of(decisionOf(estimateOf(text)));
    expect(shape(json)).toEqual(shape(of(decisionOf(estimateOf(HARMLESS)))));
    expect((JSON.parse(JSON.stringify(json)) as { readonly title: string }).title).toBe(decisionOf(estimateOf(text)).comparison.estimate.header?.title);
  });
});

test('different texts in every place, turned round until each has stood in each, stay in their cells of the CSV', () => {
  const places = [...estimateWith((place) => `place ${place}`).matchAll(/place \d+/g)].length;
  const rowsOf = (decision: Decision): number => comparisonCsv(decision.comparison).split('\r\n').length;
  const wanted = rowsOf(decisionOf(estimateOf(HARMLESS)));
  for (let turn = 0; turn < HOSTILE.length; turn++) {
    expect(rowsOf(decisionOf(estimateWith((place) => HOSTILE[(place + turn) % HOSTILE.length] as string)))).toBe(wanted);
  }
  expect(places).toBeGreaterThan(25);
});
