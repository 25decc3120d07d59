import { describe, expect, test } from 'vitest';
import { comparisonText, decisionVerdict, listJson, listText, rowOf, verdict, weighJson } from '../../src/report/index.js';
import { comparisonCsv, comparisonHtml } from '../../src/report/export/index.js';
import { comparisonPage, keepLastGood, targetsOf } from '../../src/report/page/index.js';
import { quoteForm } from '../../src/report/quote/index.js';
import { quoteOfText } from '../quote/made.js';
import { serviceOver, uriOf } from '../support/fixture.js';

// Common practice: what was found supports a way out or speaks against it. 100.00 an hour; sums by hand.

const HEAD = 'steelyard 1\nshop "S"\n  rate bench 100.00\nestimate "E"\n  written 2026-11-30\n  start 2026-11-30\n';
const OPTIONS = 'option mend "Mend the head"\n  labour "Head" 10 h\noption used "Used engine"\n  labour "Swap" 9.1 h\n  part "Engine" 0.00 used\noption new "New engine"\n  labour "Swap it" 12 h\n';
const AGAINST = 'finding scored "Bores scored"\n  rules out used\n';
const over = (text: string) => serviceOver({ 'e.yard': text }).service;
const decided = (text: string) => over(text).decision(uriOf('e.yard'));
const said = (text: string) => [verdict(decided(HEAD + text).comparison), decisionVerdict(decided(HEAD + text))];

describe('an option that a finding rules out', () => {
  const decision = decided(`${HEAD}${AGAINST}${OPTIONS}`);
  const { comparison } = decision;

  test('is weighed like the others, and is in no ranking', () => {
    expect(comparison.options.map(({ option, inAll }) => `${option.name} ${inAll.likely.toFixed()}`)).toEqual(['mend 1000', 'used 910', 'new 1200']);
    expect(comparison.ranking.map(({ option }) => option.name)).toEqual(['mend', 'new']);
    expect([...new Set(decision.flips.map(({ to }) => to.name))]).toEqual(['new']);
  });

  test('is told by the verdict, with what it would cost and what speaks against it', () => {
    for (const one of said(AGAINST + OPTIONS)) expect(one).toContain('Mend the head costs 1,000.00: 200.00 less than the next, New engine. Nothing of that is paid for getting at the work. Used engine would cost 90.00 less, but the finding “Bores scored” speaks against it.');
    for (const one of said(AGAINST.replace('used', 'new') + OPTIONS)) expect(one).toContain('New engine would cost 290.00 more, and the finding “Bores scored” speaks against it.');
    for (const one of said(AGAINST + OPTIONS.replace('9.1 h', '10 h'))) expect(one).toContain('Used engine would cost as much, but the finding');
    for (const one of said(`${AGAINST}finding "Mounts cracked"\n  rules out used, new\n${OPTIONS}`)) {
      expect(one).toBe('Mend the head costs 1,000.00. Used engine would cost 90.00 less, but the findings “Bores scored” and “Mounts cracked” speak against it. New engine would cost 200.00 more, and the finding “Mounts cracked” speaks against it.');
    }
  });

  test('where all are, none is picked, and it is said why', () => {
    const text = `${AGAINST.replace('used', 'used, mend, new')}${OPTIONS}`;
    for (const one of said(text)) expect(one).toMatch(/^No option is left to choose\. Mend the head would cost 1,000\.00, but the finding “Bores scored” speaks against it\. Used engine would cost 910\.00, but /);
    expect(weighJson(decided(HEAD + text), () => undefined).pick).toBeNull();
  });

  test('that can’t be weighed is not told as one that could', () => {
    for (const one of said(`${AGAINST}${OPTIONS.replace('0.00 used', 'used')}`)) {
      expect(one).toContain('Not weighed until its lines can be read: Used engine.');
      expect(one).not.toContain('speaks against it');
    }
  });

  test('no sentence behind it says “it” of another option', () => {
    expect(decisionVerdict(decided(`${HEAD}${AGAINST}${OPTIONS.replace('10 h', '9 / 10 / 11 h')}`))).toMatch(/speaks against it\. Mend the head is the cheapest in /);
    expect(decisionVerdict(decision)).toMatch(/speaks against it\. Mend the head is ready on /);
  });

  test('says so beside its name, in every form of the comparison', () => {
    expect(comparisonText(decision)).toMatch(/^ +cheapest +ruled out +no\. 2$/m);
    expect(weighJson(decision, () => undefined).options.map(({ name, rank, ruledOut }) => [name, rank, ruledOut])).toEqual([['mend', 1, []], ['used', null, ['Bores scored']], ['new', 2, []]]);
    const rows = comparisonCsv(comparison).trimEnd().split('\r\n').map((row) => row.split(','));
    expect(rows.map((row) => `${row[0] ?? ''} ${row[row.length - 1] ?? ''}`)).toEqual(['option ruled_out', '"mend" ', '"used" "Bores scored"', '"used" "Bores scored"', '"new" ']);
    expect(comparisonHtml(decision)).toContain('used · ruled out: <bdi>Bores scored</bdi>');
  });

  test('in the panel the finding beside its name leads to its line, and what it would cost less is shown', () => {
    const { problems } = over(`${HEAD}${AGAINST}${OPTIONS}`).weighing(uriOf('e.yard'));
    const columns = keepLastGood([], { comparison, problems });
    const page = comparisonPage({ comparison, columns, lineOf: () => undefined });
    expect(page).toContain('<span class="said">ruled out: <button type="button" data-figure=".finding.1"><bdi>Bores scored</bdi></button></span>');
    expect(page.match(/<span class="pick">cheapest<\/span>/g)).toHaveLength(1);
    expect(page).toContain('<button type="button" data-figure="used.above">-90.00</button>');
    expect(targetsOf(columns, comparison.estimate).get('.finding.1')).toHaveLength(1);
  });

  test('on a quote of another one it is told among those that were weighed', () => {
    for (const form of ['text', 'html', 'markdown'] as const) expect(quoteForm(quoteOfText(`${HEAD}${AGAINST}${OPTIONS}`, 'mend'), form).replace(/<[^>]+>|\\/g, '').replace(/\s+/g, ' ')).toContain('Used engine; ruled out: “Bores scored”');
  });

  test('is told above its line and on it', () => {
    const text = `${HEAD}${AGAINST}${OPTIONS}`;
    const service = over(text);
    expect(service.lenses(uriOf('e.yard')).map(({ label }) => label)).toEqual(['1,000.00 · cheapest', '910.00 · \u221290.00 · ruled out: “Bores scored”', '1,200.00 · +200.00']);
    expect(service.hover(uriOf('e.yard'), text.indexOf('option used') + 8)?.paragraphs).toContain('The finding “Bores scored” speaks against Used engine: it is weighed like the others, and is no choice.');
  });

  test('is not what an estimate is listed under, unless its records say so', () => {
    const row = (records: string) => rowOf(over(`${HEAD}${AGAINST}${OPTIONS}${records}`).weighing(uriOf('e.yard')), '2026-12-01');
    expect(row('')?.pick).toMatchObject({ name: 'mend', by: 'cheapest', ruledOut: [] });
    const quoted = row('quoted 910.00 for used on 2026-11-30\n');
    expect(quoted?.pick).toMatchObject({ name: 'used', by: 'said', ruledOut: ['Bores scored'] });
    const listed = quoted === undefined ? [] : [{ file: 'e.yard', row: quoted }];
    expect(listText(listed, [])).toContain('used (ruled out)');
    expect(listJson(listed, [], '2026-12-01').estimates[0]?.pick).toMatchObject({ ruledOut: ['Bores scored'] });
  });
});

describe('work that a finding rules out', () => {
  const text = (rules: string) => `${HEAD}finding scored "Bores scored"\n  rules out ${rules}\nlabour hone "Hone the bores" 4 h\n  because scored\noption mend "Mend"\n  do hone\noption other "Other"\n  labour "Swap" 9 h\n    because scored\n`;
  const found = (of: string) => [...over(of).allDiagnostics(uriOf('e.yard')).values()].flat().filter(({ code }) => code === 'ruled-out-work').map(({ text: says, severity }) => `${severity}: ${says}`);

  test('is advice at the option that does it all the same, which competes', () => {
    expect(found(text('hone'))).toEqual([expect.stringContaining('advice: Option mend does “Hone the bores”, and the finding “Bores scored” speaks against that work.')]);
    expect(decided(text('hone')).comparison.ranking).toHaveLength(2);
  });

  test('is not told of an option that is ruled out itself, nor where no option does it', () => {
    expect(found(text('hone, mend'))).toEqual([]);
    expect(found(text('hone').replace('  do hone\n', '  labour "Swap" 8 h\n    because scored\n'))).toEqual([]);
  });
});
