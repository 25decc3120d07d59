import { Ajv2020 } from 'ajv/dist/2020.js';
import * as z from 'zod';
import { describe, expect, test } from 'vitest';
import { comparisonText, namedFigures, weighJson, weighReport } from '../../src/report/index.js';
import { comparisonPage, keepLastGood, targetsOf } from '../../src/report/page/index.js';
import { decide } from '../../src/weigh/index.js';
import { estimateOf, HOSTILE } from '../support/hostile.js';
import { serviceOver, uriOf } from '../support/fixture.js';
import { isWellFormed } from '../page/estimates.js';

const uri = uriOf('e.yard');
const CONTROL = /[\u0000-\u0009\u000b-\u001f\u007f-\u009f\u200b-\u200f\u202a-\u202e\u2066-\u2069\ufeff]/;
const ESTIMATE = `steelyard 1
shop "S"
  currency USD
  workday 8 h
  rate bench 100.00
  tax sales 7% on parts
  overrun 10% at least 10.00 at most 50.00
estimate "E"
  written 2026-11-24
  start 2026-11-30
  valid 14 d
finding seen "Seen on the lift"
option repair "Repair the head"
  warranty 12 mo
  labour "Rear head" 8 h
    because seen
  part "Gasket" 100.00 new
option used "Fit a used engine"
  warranty 3 mo
  labour "Swap" 12 h
    because seen
`;
// 800.00 + 100.00 + 7.00 of tax: 907.00
const over = (lines: string) => {
  const text = `${ESTIMATE}${lines}`;
  const { service } = serviceOver({ 'e.yard': text });
  return { text, service, comparison: service.weighing(uri).comparison };
};

const CASES = [
  {
    name: 'within the room', lines: 'authorised 876.88 for repair on 2026-11-25 by "the owner" phone version "3fa91c2"\n',
    hint: '30.12 of 50.00 room used',
    says: '“Repair the head”: 876.88 was authorised on 2026-11-25 by the owner by telephone, version “3fa91c2”. Today’s total, tax and core charges included, is 907.00: 30.12 above it, of a room of 50.00; 19.88 is left.',
    found: [],
  },
  {
    name: 'above the room', lines: 'authorised 800.00 for repair on 2026-11-25 signed\n',
    hint: '107.00 above it, room 50.00: ask the customer',
    says: '“Repair the head”: 800.00 was authorised on 2026-11-25 signed. Today’s total, tax and core charges included, is 907.00: 107.00 above it, 57.00 more than the room of 50.00. Ask the customer for the new total before going on; check your local rule on written estimates and authorisation.',
    found: ['more-than-authorised: Option repair comes to 907.00 today, tax and core charges included, and 800.00 was authorised: 107.00 more, with a room of 50.00.'],
  },
  {
    name: 'exactly the total', lines: 'authorised 907.00 for repair on 2026-11-25\n',
    hint: '0.00 of 50.00 room used',
    says: '“Repair the head”: 907.00 was authorised on 2026-11-25. Today’s total, tax and core charges included, is 907.00: the same. Room without asking: 50.00.',
    found: [],
  },
] as const;

describe.each(CASES)('$name', ({ lines, hint, says, found }) => {
  const { text, service, comparison } = over(lines);
  const at = text.indexOf('authorised ');

  test('behind the line, above the option, and under the pointer', () => {
    const hints = service.inlayHints(uri, { start: at, end: text.length });
    expect(hints.map(({ label, says: more }) => [label, more])).toEqual([[hint, says]]);
    expect(service.lenses(uri).find(({ figure }) => figure === 'repair.total')?.label).toMatch(new RegExp(` · authorised [\\d.]+ · ${hint.replace(/[.]/g, '\\.')}$`));
    expect(service.hover(uri, at + 2)?.paragraphs[0]).toBe(says);
  });

  test('as a problem only where the customer must be asked', () => {
    const problems = service.diagnostics(uri).filter(({ code }) => /authorised/.test(code));
    expect(problems.map(({ code, message }) => `${code}: ${message.what}`)).toEqual(found);
    for (const one of problems) {
      expect(text.slice(one.range.start, one.range.end)).toBe(lines.trim());
      expect(text.slice(one.related?.place.range.start, one.related?.place.range.end)).toBe('option repair "Repair the head"');
    }
  });

  test('in the text, the page and the data', () => {
    expect(comparisonText(decide(comparison)).replace(/\s+/g, ' ')).toContain(`Authorised ${says}`);
    const columns = keepLastGood([], { comparison, problems: [] });
    const page = comparisonPage({ comparison, columns, lineOf: () => undefined });
    expect(page).toContain(`<h2 id="authorised-title">Authorised</h2><ul class="sentences"><li data-key=".authorised.1"><button type="button" data-figure=".authorised.1">${says}</button></li></ul>`);
    expect((targetsOf(columns, comparison.estimate).get('.authorised.1') ?? []).map((span) => service.place(span)?.range.start)).toEqual([at]);
    const report = weighJson(decide(comparison), () => undefined, '2026-11-26');
    const validate = new Ajv2020({ strict: false }).compile(z.toJSONSchema(weighReport(), { target: 'draft-2020-12' }));
    expect(validate(report), JSON.stringify(validate.errors)).toBe(true);
    expect(report.authorised).toMatchObject([{ for: 'repair', on: '2026-11-25', total: { likely: '907.00' }, room: { likely: '50.00' }, mustAsk: found.length > 0, sentence: says }]);
    expect(report.state).toEqual({ state: 'authorised', since: '2026-11-25', option: 'repair', validUntil: null, asOf: '2026-11-26' });
    expect(namedFigures(comparison).get('repair.room-used')?.likely.plus(namedFigures(comparison).get('repair.room-left')?.likely ?? 0).toFixed(2)).toBe('50.00');
  });
});

describe('which authorisation holds', () => {
  const short = (lines: string) => {
    const { text, service } = over(lines);
    return service.inlayHints(uri, { start: text.indexOf('authorised '), end: text.length }).map(({ label }) => label);
  };

  test('the latest for an option, wherever it stands, as the whole amount', () => {
    expect(short('authorised 900.00 for repair on 2026-11-27\nauthorised 800.00 for repair on 2026-11-25\n')).toEqual(['7.00 of 50.00 room used']);
    const { text, service } = over('authorised 900.00 for repair on 2026-11-27\nauthorised 800.00 for repair on 2026-11-25\n');
    expect(service.hover(uri, text.lastIndexOf('authorised'))?.paragraphs[0]).toBe('A later line holds for repair: that of 2026-11-27.');
  });

  test('of several options the one authorised last is the job, and of the other nobody is asked', () => {
    const { service } = over('authorised 100.00 for repair on 2026-11-25\nauthorised 1200.00 for used on 2026-11-27\n');
    expect(service.lenses(uri).map(({ label }) => label)).toEqual(['907.00 · cheapest · authorised 100.00 · since then used was authorised', '1,200.00 · +293.00 · authorised 1,200.00 · 0.00 of 50.00 room used']);
    expect(service.diagnostics(uri).filter(({ code }) => code === 'more-than-authorised')).toEqual([]);
  });

  test.each([['in another currency', 'authorised 100.00 EUR for repair on 2026-11-25'], ['without its amount', 'authorised for repair on 2026-11-25'], ['for what is gone', 'authorised 100.00 for exchange on 2026-11-25']])('none %s', (_, line) => {
    expect(short(`${line}\n`)).toEqual([]);
  });

  test('an option with a line that can’t be read is not held against it', () => {
    const { service } = over('  part "Bolt" 1,200.00 new\nauthorised 100.00 for used on 2026-11-25\n');
    expect(service.inlayHints(uri, { start: 0, end: 2000 }).map(({ label }) => label)).toContain('today’s total is not whole');
    expect(service.diagnostics(uri).map(({ code }) => code)).not.toContain('more-than-authorised');
  });

  test('a stage is held against what it comes to alone', () => {
    const { service, text } = over('labour strip "Take it apart" 2 h\n  because seen\nstage tear-down "Look inside"\n  do strip\n  put back 1 h\nauthorised 100.00 for tear-down on 2026-11-25\n');
    expect(service.diagnostics(uri).filter(({ code }) => code === 'more-than-authorised').map(({ message }) => message.what)).toEqual(['Stage tear-down comes to 200.00 today, tax and core charges included, and 100.00 was authorised: 100.00 more, with a room of 10.00.']);
    expect(namedFigures(service.weighing(uri).comparison).get('stage.tear-down.room')?.likely.toFixed(2)).toBe('10.00');
    expect(text).toContain('stage tear-down');
  });
});

describe('work that began', () => {
  const advice = (lines: string) => over(lines).service.diagnostics(uri).filter(({ code }) => code === 'started-unauthorised').map(({ message }) => message.what);
  test.each([
    ['started on 2026-11-30\n', ['Work began on 2026-11-30, and nothing is authorised.']],
    ['authorised 907.00 for repair on 2026-12-01\nstarted on 2026-11-30\n', ['Work began on 2026-11-30; the first authorisation is of 2026-12-01.']],
    ['authorised 907.00 for repair on 2026-11-30\nstarted on 2026-11-30\n', []],
  ])('%j', (lines, wanted) => {
    expect(advice(lines)).toEqual(wanted);
  });
});

test('the head of the text tells the state where there is a record of the job, and a day to tell it for', () => {
  const head = (lines: string, today?: string) => comparisonText(decide(over(lines).comparison), (text) => text, today).split('\n\n')[0];
  expect(head('quoted 907.00 for repair on 2026-11-24\n', '2026-11-26')).toBe('E\nQuoted on 2026-11-24: repair, valid until 2026-12-08');
  expect(head('quoted 907.00 for repair on 2026-11-24\n', '2026-12-09')).toBe('E\nExpired since 2026-12-09: repair');
  expect(head('authorised 907.00 for repair on 2026-11-25\nstarted on 2026-11-30\n', '2026-12-01')).toBe('E\nIn work since 2026-11-30: repair');
  expect(head('', '2030-01-01')).toBe('E');
  expect(head('quoted 907.00 for repair on 2026-11-24\n')).toBe('E');
});

describe('hostile words in a record stay words', () => {
  const withRecord = (text: string) => `${estimateOf('plain words')}authorised 1.00 for one on 2026-11-25 by ${quoted(text)} version ${quoted(text)}\n`;
  const quoted = (text: string) => `"${text.replaceAll('\\', '\\\\').replaceAll('"', '\\"')}"`;
  const pageOf = (text: string) => {
    const { service } = serviceOver({ 'e.yard': withRecord(text) });
    const { comparison } = service.weighing(uri);
    return { comparison, page: comparisonPage({ comparison, columns: keepLastGood([], { comparison, problems: [] }), lineOf: () => undefined }) };
  };
  const tags = (page: string) => page.match(/<[^>]*>/g)?.map((tag) => tag.replace(/"[^"]*"/g, '""'));
  const shape = tags(pageOf('plain words').page);

  test.each(HOSTILE.map((text) => [JSON.stringify(text.slice(0, 40)), text] as const))('%s', (_, text) => {
    const { comparison, page } = pageOf(text);
    expect(comparison.estimate.authorised).toHaveLength(1);
    expect(tags(page)).toEqual(shape);
    expect(isWellFormed(page)).toBe(true);
    // Deciding is dear: only what a terminal could obey is printed.
    if (CONTROL.test(text)) expect(comparisonText(decide(comparison))).not.toMatch(CONTROL);
  });
});
