import { writeFileSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import fc from 'fast-check';
import { afterAll, beforeAll, describe, expect, it, test } from 'vitest';
import { run } from '../../src/cli/run.js';
import { comparisonHtml } from '../../src/report/export/index.js';
import { comparisonPage, keepLastGood, targetsOf } from '../../src/report/page/index.js';
import { quoteForm, sheetForm, stageQuoteOf, stageSheetOf, type QuoteForm, type StageQuote } from '../../src/report/quote/index.js';
import { comparisonText, namedFigures, valueText, widthOf } from '../../src/report/index.js';
import { Decimal } from '../../src/vocabulary/index.js';
import type { Comparison } from '../../src/weigh/index.js';
import { figuresIn, isWellFormed, serviceOver } from '../page/estimates.js';
import { decisionOf, quoteOfText } from '../quote/made.js';
import { estimateOf, HOSTILE } from '../support/hostile.js';
import { randomStaged } from '../support/random-stage.js';
import { PATIENT, runs } from '../support/random-runs.js';
import { oneFile, weighFresh } from '../weigh/decision/weighing.js';
import { worked } from './worked.js';

const FORMS: readonly QuoteForm[] = ['text', 'html', 'markdown'];

function quoteOf(comparison: Comparison, name = 'tear-down'): StageQuote {
  const made = stageQuoteOf(comparison, name, new Map());
  if (made.kind !== 'quote') throw new Error(made.kind);
  return made.quote;
}

const formOf = (text: string, form: QuoteForm) => sheetForm(stageSheetOf(quoteOf(decisionOf(text).comparison)), form);
const words = (text: string) => text.replace(/<style>[^]*?<\/style>/, '').replace(/<[^>]*>/g, ' ').replace(/\\/g, '').replace(/\s+/g, ' ');

describe('the quote of a stage', () => {
  // 16 CCR 3353(c), as read for check-values.md: an estimate of a tear-down names the cost of reassembly and the parts
  // that the tear-down destroys. The paper itself concludes nothing of any law.
  test.each(FORMS)('%s: what is done, what it destroys, what putting back costs, what is owed, room to authorise', (form) => {
    const says = words(formOf(worked, form));
    for (const one of ['Take the front apart', 'Strip the front', '$630.00', 'Parts that this destroys', 'Bolts', '$745.00', '$1,375.00', 'check your local rule on tear-down estimates', 'Amount up to', 'is not charged again']) expect(says.toLowerCase()).toContain(one.toLowerCase());
    expect(says).not.toMatch(/\bCCR\b|\blaw\b|illegal|required by|must be authorised|entitled/i);
  });

  it('has no word of putting back in the price of getting in, and the lines of putting back add up', () => {
    const quote = quoteOf(decisionOf(worked).comparison);
    expect(quote.groups.flatMap(({ lines }) => lines.map(({ title, stretch, amount }) => [title, stretch, amount]))).toEqual([['Front off', 'opening', '200.00'], ['Strip the front', undefined, '400.00'], ['Supplies', undefined, '30.00']]);
    expect(quote.putBack.lines.map(({ title, stretch, amount }) => [title, stretch, amount])).toEqual([['Front off', 'closing', '300.00'], ['Seal', undefined, '10.00'], ['Refill', undefined, '40.00'], ['Putting together again what was taken apart', undefined, '350.00'], ['Bolts', undefined, '40.00']]);
    expect(quote.putBack.feesAndTax).toBe('5.00');
    expect(formOf(worked, 'text')).not.toContain('all of it goes back afterwards');
  });

  it('says so where nothing is destroyed', () => {
    expect(words(formOf(worked.replace('  destroys bolts\n', ''), 'text'))).toContain('None that we know of.');
  });

  it('what the shop pays, adds and keeps changes not a byte', () => {
    for (const form of FORMS) expect(formOf(worked.replace('rate bench 100.00', 'rate bench 100.00 cost 41.00').replace('8 at 5.00 new', '8 at cost 4.00 new').replace('  tax sales', '  markup 25%\n  tax sales'), form)).toBe(formOf(worked, form));
  });

  it('sums of random estimates: groups and taxes to the total, lines and fees and tax to putting back, both to what is owed (80 cases)', PATIENT, () => {
    let lines = 0;
    const added = (amounts: readonly string[]) => amounts.reduce((sum, one) => sum.plus(one), new Decimal(0)).toFixed();
    fc.assert(fc.property(randomStaged, (text) => {
      const { comparison } = weighFresh(oneFile(text));
      for (const { stage } of comparison.stages) {
        const { groups, taxes, total, putBack, stop } = quoteOf(comparison, stage.name);
        expect(added([...groups.map(({ amount }) => amount), ...taxes.map(({ amount }) => amount)])).toBe(new Decimal(total).toFixed());
        expect(added([...putBack.lines.map(({ amount }) => amount), putBack.feesAndTax])).toBe(new Decimal(putBack.amount).toFixed());
        expect(added([total, putBack.amount])).toBe(new Decimal(stop).toFixed());
        lines += putBack.lines.length;
      }
    }), runs(4071, 80));
    expect(lines).toBeGreaterThan(80);
  });

  it('is refused where the stage is not whole, or not there', () => {
    expect(stageQuoteOf(decisionOf(worked.replace('takes 4 h with front-off', 'takes 4,0 h with front-off')).comparison, 'tear-down', new Map()).kind).toBe('incomplete');
    expect(stageQuoteOf(decisionOf(worked).comparison, 'teardown', new Map()).kind).toBe('no-stage');
  });

  it('an option’s quote says what of it is authorised for the stage', () => {
    expect(quoteForm(quoteOfText(worked, 'rebuild'), 'text')).not.toContain('authorised already');
    expect(words(quoteForm(quoteOfText(`${worked}authorised 630.00 for tear-down on 2026-11-24 by "the owner" phone\n`, 'rebuild'), 'text'))).toContain('Of this total, $630.00 is authorised already, for what was done before the decision; it is not charged twice. Left to authorise: $995.00.');
  });
});

describe('hostile text in a stage', () => {
  const withStage = (text: string) => `${estimateOf(text)}stage apart "${text.replaceAll('\\', '\\\\').replaceAll('"', '\\"')}"\n  do job\n  opens open\n  put back 2 h\n  destroys unit\n`;
  const tags = (page: string) => page.replace(/<style>[^]*?<\/style>/, '').match(/<[^>]*>/g)?.map((tag) => tag.replace(/"[^"]*"/g, '""'));
  const harmless = decisionOf(withStage('plain words'));

  test.each(HOSTILE.map((text) => [JSON.stringify(text.slice(0, 40)), text] as const))('%s stays text in the quote, the panel and the terminal', (_, text) => {
    const decision = decisionOf(withStage(text));
    const sheet = stageSheetOf(quoteOf(decision.comparison, 'apart'));
    expect(tags(sheetForm(sheet, 'html'))).toEqual(tags(sheetForm(stageSheetOf(quoteOf(harmless.comparison, 'apart')), 'html')));
    const out = sheetForm(sheet, 'text');
    expect(out.split('\n').filter((line) => widthOf(line) > 80)).toEqual([]);
    for (const said of [out, comparisonText(decision)]) expect(said).not.toMatch(/[\u0000-\u0009\u000b-\u001f\u007f-\u009f\u200b-\u200f\u202a-\u202e\u2066-\u2069\ufeff]/);
    expect(isWellFormed(pageOf(withStage(text)).markup)).toBe(true);
  });
});

function pageOf(text: string) {
  const { comparison, problems } = serviceOver(new Map([['/one.yard', text]])).weighing('/one.yard');
  const columns = keepLastGood([], { comparison, problems });
  return { comparison, targets: targetsOf(columns, comparison.estimate), markup: comparisonPage({ comparison, columns, lineOf: () => undefined }) };
}

describe('the panel', () => {
  it('has a section of its own for stages, whose figures lead to their line', () => {
    const { comparison, targets, markup } = pageOf(`${worked}authorised 630.00 for tear-down on 2026-11-24\n`);
    const figures = namedFigures(comparison);
    const shown = [...figuresIn(markup)].filter(([id]) => id.startsWith('.stage.'));
    expect(shown).toHaveLength(5);
    for (const [id, text] of shown) {
      const figure = figures.get(id.replace('.stage.1', 'stage.tear-down'));
      expect(text).toBe(figure === undefined ? '' : valueText(figure.likely, figure.unit, comparison.money));
      expect(targets.get(id)?.at(-1)).toBe(comparison.stages[0]?.stage.at);
    }
    expect(markup).toContain('Left to authorise:');
  });

  it('shows a stage before any option is written, and it can be quoted', () => {
    const alone = worked.replace(/^option [^]*$/m, '').replace('  unrepaired 500.00\n', '');
    expect(pageOf(alone).markup).toContain('data-key="stages"');
    expect(words(formOf(alone, 'text'))).toContain('$1,375.00 in all');
    expect(formOf(alone, 'text')).not.toContain('IF YOU GO ON');
  });

  it('has none without a stage', () => {
    expect(pageOf(worked.replace(/^stage [^]*?(?=^option)/m, '')).markup).not.toContain('data-key="stages"');
  });
});

it('the exported page says what stages come to', () => {
  const page = comparisonHtml(decisionOf(worked));
  expect(words(page)).toContain('Before the decision Take the front apart. Alone 630.00; where the customer stops there, putting it back adds 745.00, 1,375.00 in all.');
  expect(comparisonHtml(decisionOf(worked.replace(/^stage [^]*?(?=^option)/m, '')))).not.toContain('Before the decision');
});

describe('in the terminal', () => {
  let folder: string;
  beforeAll(() => {
    folder = mkdtempSync(path.join(tmpdir(), 'steelyard-stage-'));
    writeFileSync(path.join(folder, 'job.yard'), worked);
    writeFileSync(path.join(folder, 'none.yard'), worked.replace(/^stage [^]*?(?=^option)/m, ''));
    writeFileSync(path.join(folder, 'broken.yard'), worked.replace('takes 4 h with front-off', 'takes 4,000 h with front-off'));
  });
  afterAll(() => rmSync(folder, { recursive: true }));

  function steelyard(...args: readonly string[]) {
    let out = '';
    let err = '';
    const code = run(args, '1.2.3', { cwd: folder, styled: false, stdin: () => worked, out: (text) => void (out += text), err: (text) => void (err += text) });
    return { code, out, err };
  }

  test.each([['text', 'text'], ['html', 'html'], ['markdown', 'markdown']] as const)('quote --stage --as %s', (as, form) => {
    expect(steelyard('quote', 'job.yard', '--stage', 'tear-down', '--as', as)).toEqual({ code: 0, out: formOf(worked, form), err: '' });
    expect(steelyard('quote', '-', '--stage', 'tear-down', '--as', as).out).toBe(formOf(worked, form));
  });

  it('says what is wrong with the command', () => {
    expect(steelyard('quote', 'job.yard', '--stage', 'teardown')).toMatchObject({ code: 2, err: expect.stringContaining('There is no stage teardown. Did you mean tear-down? The stages: tear-down.') as string });
    expect(steelyard('quote', 'none.yard', '--stage', 'tear-down')).toMatchObject({ code: 2, err: expect.stringContaining('The estimate has none.') as string });
    expect(steelyard('quote', 'job.yard', '--stage', 'tear-down', '--option', 'used')).toMatchObject({ code: 2, err: expect.stringContaining('one at a time') as string });
    expect(steelyard('weigh', 'job.yard', '--stage', 'tear-down')).toMatchObject({ code: 2, err: expect.stringContaining('--stage belongs to quote.') as string });
  });

  it('makes none where a line is missing', () => {
    const { code, out, err } = steelyard('quote', 'broken.yard', '--stage', 'tear-down');
    expect({ code, out }).toEqual({ code: 1, out: '' });
    expect(err).toContain('No quote was made: Take the front apart rests on a line');
  });

  it('weigh shows what comes before the decision, and explains its figures', () => {
    expect(steelyard('weigh', 'job.yard').out).toContain('Before the decision');
    expect(steelyard('weigh', 'none.yard').out).not.toContain('Before the decision');
    expect(steelyard('weigh', 'job.yard', '--explain', 'stage.tear-down.put-back').out).toMatch(/^Take the front apart: putting it back: 745\.00 {2}the first less the others\n/);
    expect(steelyard('weigh', 'none.yard', '--json').out).not.toContain('"stages"');
  });
});
