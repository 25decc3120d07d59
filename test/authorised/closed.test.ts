import { Ajv2020 } from 'ajv/dist/2020.js';
import * as z from 'zod';
import { describe, expect, test } from 'vitest';
import { closingJson, closingText, comparisonText, weighJson, weighReport } from '../../src/report/index.js';
import { closingReport } from '../../src/report/closing-schema.js';
import { comparisonPage, keepLastGood } from '../../src/report/page/index.js';
import { closingOf, decide } from '../../src/weigh/index.js';
import { serviceOver, uriOf } from '../support/fixture.js';

const uri = uriOf('e.yard');
// The repair is 8 h at 100.00, a gasket of 100.00 and 7.00 of tax on it: 907.00; the used engine 1,200.00.
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
labour strip "Take it apart" 2 h
  because seen
stage look "Look inside"
  do strip
  put back 1 h
option repair "Repair the head"
  warranty 12 mo
  labour "Rear head" 6 h
    because seen
  part "Gasket" 100.00 new
option used "Fit a used engine"
  warranty 3 mo
  labour "Swap" 10 h
    because seen
`;
const of = (lines: string) => {
  const text = `${ESTIMATE}${lines}`;
  const { service } = serviceOver({ 'e.yard': text });
  const { comparison } = service.weighing(uri);
  const problems = service.diagnostics(uri).filter(({ code }) => /authorised/.test(code));
  return { text, service, comparison, problems, codes: problems.map(({ code, message }) => `${code}: ${message.what}`) };
};
const AGREED = 'authorised 800.00 for repair on 2026-11-25 by "the owner" phone\nstarted on 2026-11-30\n';
const closed = (billed: string, forWhat = ' for repair') => `closed${forWhat} on 2026-12-02\n${billed === '' ? '' : `  billed ${billed}\n`}`;
const sentenceOf = (lines: string) => {
  const { comparison } = of(lines);
  return weighJson(decide(comparison), () => undefined, '2026-12-05').authorised.map(({ sentence }) => sentence);
};

describe('once a job is closed, what was billed is held against what was authorised', () => {
  test.each([
    ['above the room', '860.00', 'The 860.00 that was billed is 60.00 above it, 10.00 more than the room of 50.00. No line says that the customer agreed to that; check your local rule on written estimates and authorisation.', ['billed-above-authorised: 860.00 was billed for repair, and 800.00 was authorised: 60.00 more, with a room of 50.00.']],
    ['at its end', '850.00', 'The 850.00 that was billed is 50.00 above it, within the room of 50.00.', []],
    ['a cent above it', '850.01', 'The 850.01 that was billed is 50.01 above it, 0.01 more than the room of 50.00. No line says that the customer agreed to that; check your local rule on written estimates and authorisation.', ['billed-above-authorised: 850.01 was billed for repair, and 800.00 was authorised: 50.01 more, with a room of 50.00.']],
    ['the same', '800.00', 'The 800.00 that was billed is the same.', []],
    ['less', '799.99', 'The 799.99 that was billed is not above it.', []],
    ['not written: nobody is to be asked for today’s total any more', '', 'The job is closed.', []],
  ])('%s', (_, billed, says, wanted) => {
    const { codes, problems, comparison, text, service } = of(AGREED + closed(billed));
    expect(codes).toEqual(wanted);
    for (const { range, related } of problems) expect([text.slice(range.start, range.end), text.slice(related?.place.range.start, related?.place.range.end)]).toEqual([billed, AGREED.split('\n')[0]]);
    expect(sentenceOf(AGREED + closed(billed))).toEqual([`“Repair the head”: 800.00 was authorised on 2026-11-25 by the owner by telephone. ${says}`]);
    const shown = [comparisonText(decide(comparison)), comparisonPage({ comparison, columns: keepLastGood([], { comparison, problems: [] }), lineOf: () => undefined }), ...service.lenses(uri).map(({ label }) => label)].join('\n').replace(/\s+/g, ' ');
    expect(shown).toContain(says);
    expect(shown).not.toMatch(/ask the customer/i);
  });

  test('until then today’s total is', () => {
    expect(of(AGREED).codes).toEqual(['more-than-authorised: Option repair comes to 907.00 today, tax and core charges included, and 800.00 was authorised: 107.00 more, with a room of 50.00.']);
  });

  test('a closing that is written takes the say from the check that was there, and gives it back when it goes', () => {
    const { host, service } = serviceOver({ 'e.yard': ESTIMATE + AGREED });
    const codes = () => service.diagnostics(uri).map(({ code }) => code).filter((code) => /authorised/.test(code));
    expect(codes()).toEqual(['more-than-authorised']);
    host.set('e.yard', ESTIMATE + AGREED + closed('790.00'));
    expect(codes()).toEqual([]);
    host.set('e.yard', ESTIMATE + AGREED);
    expect(codes()).toEqual(['more-than-authorised']);
  });

  test('without a rule of the shop there is no room', () => {
    const { service } = serviceOver({ 'e.yard': `${ESTIMATE}${AGREED}${closed('800.01')}`.replace(/ {2}overrun.*\n/, '') });
    expect(service.diagnostics(uri).filter(({ code }) => code === 'billed-above-authorised').map(({ message }) => message.what)).toEqual(['800.01 was billed for repair, and 800.00 was authorised: 0.01 more, and there is no room without asking.']);
  });

  test('of several for it the latest holds', () => {
    expect(of(`${AGREED}authorised 870.00 for repair on 2026-12-01 signed\n${closed('900.00')}`).codes).toEqual([]);
  });

  test('with a later one for another option, that of what was done is held against the bill', () => {
    expect(of(`${AGREED}authorised 1200.00 for used on 2026-11-28 signed\n${closed('860.00')}`).codes).toEqual([
      'closed-unauthorised: By this repair was done; used is what was authorised last.',
      'billed-above-authorised: 860.00 was billed for repair, and 800.00 was authorised: 60.00 more, with a room of 50.00.',
    ]);
  });

  test('behind the line and above the option in short', () => {
    const hints = (billed: string) => {
      const { service, text } = of(AGREED + closed(billed));
      return service.inlayHints(uri, { start: text.indexOf('authorised 800'), end: text.length }).map(({ label }) => label)[0];
    };
    expect([hints('860.00'), hints('840.00'), hints('700.00'), hints('')]).toEqual(['860.00 billed, 60.00 above it, room 50.00: not authorised', '840.00 billed, 40.00 above it, room 50.00', '700.00 billed', 'closed']);
  });

  test('as data', () => {
    const data = (lines: string) => {
      const report = weighJson(decide(of(lines).comparison), () => undefined, '2026-12-05');
      const validate = new Ajv2020({ strict: false }).compile(z.toJSONSchema(weighReport(), { target: 'draft-2020-12' }));
      expect(validate(report), JSON.stringify(validate.errors)).toBe(true);
      return report.authorised.map(({ against, total, over, aboveRoom, mustAsk }) => [against, total.likely, over.likely, aboveRoom.likely, mustAsk]);
    };
    expect(data(AGREED)).toEqual([['today', '907.00', '107.00', '57.00', true]]);
    expect(data(AGREED + closed('860.00'))).toEqual([['billed', '860.00', '60.00', '10.00', null]]);
    expect(data(AGREED + closed(''))).toEqual([[null, '907.00', '107.00', '57.00', null]]);
  });
});

describe('closed for something else than was authorised', () => {
  test.each([
    ['another option', AGREED + closed('1200.00', ' for used'), ['closed-unauthorised: By this used was done; repair is what was authorised last.']],
    ['an option after a stage alone', `authorised 200.00 for look on 2026-11-25\nstarted on 2026-11-30\n${closed('1200.00', ' for used')}`, ['closed-unauthorised: By this used was done; look is what was authorised last.']],
    ['what was authorised', AGREED + closed('800.00'), []],
    ['nothing was done', AGREED + closed('', ''), []],
    ['nothing is authorised at all: that is told where work began', `started on 2026-11-30\n${closed('800.00')}`, ['started-unauthorised: Work began on 2026-11-30, and nothing is authorised.']],
  ])('%s', (_, lines, wanted) => {
    const { codes, problems, text } = of(lines);
    expect(codes).toEqual(wanted);
    for (const { code, range } of problems) if (code === 'closed-unauthorised') expect(text.slice(range.start, range.end)).toBe('used');
  });
});

describe('the closing says it', () => {
  const closing = (lines: string) => {
    const { comparison } = of(lines);
    const made = closingOf(comparison);
    if (made === undefined) throw new Error('not closed');
    const report = closingJson(made, comparison, () => undefined);
    const validate = new Ajv2020({ strict: false }).compile(z.toJSONSchema(closingReport(), { target: 'draft-2020-12' }));
    expect(validate(report), JSON.stringify(validate.errors)).toBe(true);
    const page = comparisonPage({ comparison, columns: keepLastGood([], { comparison, problems: [] }), lineOf: () => undefined });
    return { text: closingText(made, comparison).replace(/\s+/g, ' '), report, page };
  };

  test('above the room: text, page and data', () => {
    const { text, report, page } = closing(AGREED + closed('860.00'));
    const says = 'Authorised: 800.00; what was billed is 60.00 above it, 10.00 more than the room of 50.00. No line says that the customer agreed to that; check your local rule on written estimates and authorisation.';
    expect(text).toContain(says);
    expect(page).toContain(`<p>${says}</p>`);
    expect(text).toContain('Billed, beside what was authorised 800.00 860.00 +60.00 +7.5 %');
    expect(report).toMatchObject({ authorised: { amount: '800.00', over: '60.00', room: '50.00', aboveRoom: '10.00' }, authorisedElse: null });
    expect(report.sentences).toContain(says);
  });

  test('within it', () => {
    expect(closing(AGREED + closed('840.00')).text).toContain('Authorised: 800.00; what was billed is 40.00 above it, within the room of 50.00. ');
    expect(closing(AGREED + closed('790.00')).text).toContain('Authorised: 800.00; what was billed is not above it. ');
  });

  test('for something else', () => {
    const { text, report, page } = closing(AGREED + closed('1200.00', ' for used'));
    expect(text).toContain('“Repair the head” is what was authorised last, not what was done.');
    expect(page).toContain('“Repair the head” is what was authorised last, not what was done.');
    expect(report).toMatchObject({ authorised: null, authorisedElse: 'repair' });
  });

  test('nothing where nothing is authorised, or what was billed is not written', () => {
    expect(closing(closed('840.00')).text).not.toMatch(/authorised/i);
    expect(closing(AGREED + closed('')).report).toMatchObject({ authorised: null, authorisedElse: null });
    expect(closing(AGREED + closed('')).text).not.toMatch(/authorised/i);
  });
});
