import { describe, expect, test } from 'vitest';
import { comparisonText } from '../../src/report/index.js';
import { marginRows } from '../../src/report/margin-text.js';
import { comparisonHtml } from '../../src/report/export/index.js';
import { comparisonPage, keepLastGood } from '../../src/report/page/index.js';
import { quoteForm, quoteForms, type QuoteForm } from '../../src/report/quote/index.js';
import { decisionOf, quoteOfText } from './made.js';

// What becomes of the money for an old unit, in the quote and in what the shop reads, in the same words. Sums by hand.

const estimate = (policy: string, below: string, more = '') => `steelyard 1
shop "S"
  currency USD
  rate bench 100.00
  tax state "State tax" 6.25% on parts
  tax county "County tax" 1.125% on parts by item
${policy === '' ? '' : `  core-tax ${policy} on rebuilt\n`}estimate "E"
  start 2026-11-30
option one "One"
  labour "Work" 40 h
  part "Pump" 71.20 rebuilt
    core ${below}
${more}`;
const flat = (text: string) => text.replace(/\s+/g, ' ');
const quoted = (text: string, form: QuoteForm = 'text') => flat(quoteForm(quoteOfText(text, 'one'), form).replace(form === 'html' ? /<[^>]*>/g : /\\/g, ''));
const told = (text: string) => comparisonText(decisionOf(text));

describe('tax on a core that does not come back', () => {
  // 6.25 % and 1.125 % of 15.00 are 0.94 and 0.17.
  test.each(Object.keys(quoteForms) as QuoteForm[])('is told on the quote: %s', (form) => {
    expect(quoted(estimate('kept', '15.00'), form)).toContain('Pump: $15.00 is paid now. $15.00 comes back, if the old unit goes back complete and put together. $1.11 of tax on it does not come back. What is missing or damaged makes it less.');
  });

  test('and of what is taken off, where tax comes back', () => {
    // On 15.00 1.11 is paid; on 10.00 0.63 and 0.11 come back.
    expect(quoted(estimate('refunded', '15.00 less 5.00'))).toContain('$10.00 comes back, and $0.74 of tax with it, if the old unit goes back complete and put together; taken off already: $5.00 for what is damaged or missing. $0.37 of tax on it does not come back.');
  });

  test('and where the old unit goes back too late', () => {
    expect(quoted(estimate('refunded', '15.00 due 1 d'))).toContain('so nothing is expected back. $1.11 of tax on it does not come back.');
  });

  test('and is not spoken of where there is none', () => {
    for (const policy of ['refunded', 'none', '']) expect(quoted(estimate(policy, '15.00'))).not.toContain('of tax on it');
  });

  test('in what the shop reads, beside what comes back', () => {
    expect(told(estimate('kept', '15.00'))).toMatch(/^Comes back with the cores +15\.00\n {2}tax on cores that does not come back +1\.11\nPaid in the end +\d/m);
    expect(told(estimate('refunded', '15.00'))).not.toContain('does not come back');
  });
});

describe('money for old units and worth of pieces are two things', () => {
  const both = estimate('refunded', '15.00', '  harvest "Alternator" 85.00\n');

  test('the quote speaks of the first, and the text and pages for the shop tell each by itself', () => {
    expect(quoted(both)).toContain('Of that comes back $16.11');
    expect(told(both)).toMatch(/^Comes back with the cores +16\.11\nWorth of pieces kept or taken off +85\.00\nPaid in the end/m);
    const decision = decisionOf(both);
    const page = comparisonPage({ comparison: decision.comparison, columns: keepLastGood([], { comparison: decision.comparison, problems: [] }), lineOf: () => undefined });
    for (const shown of [comparisonHtml(decision), page].map((one) => flat(one.replace(/<[^>]*>/g, ' ')).toLowerCase())) {
      expect(shown).toMatch(/comes back with the cores 16\.11 /);
      expect(shown).toMatch(/worth of pieces kept or taken off 85\.00 /);
    }
  });

  test('total less the two is what is paid in the end', () => {
    const [total, cores, pieces, net] = ['Total', 'Comes back with the cores', 'Worth of pieces kept or taken off', 'Paid in the end'].map((label) => Number(new RegExp(`^${label} +([\\d,.]+)$`, 'm').exec(told(both))?.[1]?.replaceAll(',', '')));
    expect(((total as number) - (cores as number) - (pieces as number)).toFixed(2)).toBe((net as number).toFixed(2));
  });
});

test('where some hours cost the shop nobody knows what, nothing is told of an hour', () => {
  const labels = (cost: string) => marginRows(decisionOf(estimate('', '15.00', '  part "Belt" cost 20.00 new\n').replace('rate bench 100.00', `rate bench 100.00${cost}`))).flatMap((row) => (typeof row === 'string' ? [] : [row.cells[0]]));
  expect(labels(' cost 40.00')).toContain('  for each hour of work');
  expect(labels('').filter((label) => label?.includes('for each'))).toEqual([]);
  expect(labels('')).toContain('Lines whose cost is not written');
});
