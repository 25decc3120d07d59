import { readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, test } from 'vitest';
import { comparisonText, namedFigures } from '../../src/report/index.js';
import { createLanguageService } from '../../src/service/index.js';
import type { Decided } from '../../src/weigh/index.js';
import { calculated, fraction, rounded } from './fractions.js';
import { expectQuoted } from './quoted.js';

// The second estimate of samples/worked-example.md: every sum of its tables is done again in fractions of whole
// numbers, and what the tool shows is compared with it. Formulas: Malcolm, Roseboom, Clark & Fazar, Operations
// Research 7(5), 1959 (three-point mean and variance); Raiffa & Schlaifer, Applied Statistical Decision Theory, 1961
// (value of a test); NCEES FE Reference Handbook (A/P, A/F; table factors from memory, recomputed on the page);
// NIST/SEMATECH e-Handbook 1.3.6.7.1 (normal quantiles).

const page = readFileSync(path.resolve(import.meta.dirname, '../../samples/worked-example.md'), 'utf8').split(/^# The decision$/m)[1] ?? '';
const estimate = /^```yard\n([^]*?)^```$/m.exec(page)?.[1] ?? '';
const service = createLanguageService({ read: () => ({ text: estimate }), resolvePath: () => undefined });
const decision = service.decision('/quay.yard');
const figures = namedFigures(decision.comparison, decision);
const rebuild = optionOf('rebuild');
const used = optionOf('used');
const dye = decision.inspections[0];

function optionOf(name: string): Decided {
  const option = decision.options.find(({ weighed }) => weighed.option.name === name);
  if (option === undefined) throw new Error(`No option ${name}`);
  return option;
}

function flipOf(line: string): number | undefined {
  return decision.flips.find((flip) => flip.line === line && flip.to.name === 'used')?.holds;
}

const shown: Readonly<Record<string, number | undefined>> = {
  'rebuild.total': figures.get('rebuild.total')?.likely.toNumber(),
  'used.total': figures.get('used.total')?.likely.toNumber(),
  'used.monthly': figures.get('used.monthly')?.likely.toNumber(),
  'rebuild, on average': rebuild.average,
  'used, on average': used.average,
  'dye, how often it shows': dye?.results.find(({ shows }) => shows.length > 0)?.chance,
  'dye, what it saves': dye?.worth,
  'dye, its price': dye?.price.likely.toNumber(),
  'dye, what is left': dye?.net,
  'dye, certainty': dye?.perfectWorth,
  'rebuild, hours to the end': rebuild.weighed.ready.finish,
  'flip of the swap': flipOf('Swap the engine'),
  'flip of the used engine': flipOf('Used engine'),
  'flip of the crack': flipOf('The head is cracked'),
};

/** The cells of all rows below heads that begin so. */
function tables(head: string): string[][] {
  return page.split('\n\n').filter((block) => block.startsWith(head))
    .flatMap((block) => block.trim().split('\n').slice(2).map((row) => row.split('|').slice(1, -1).map((cell) => cell.trim())));
}

const rows = tables('| what | how | result | the tool |').map(([what = '', how = '', result = '', tool = '']) => ({ what, how, result: result.replaceAll(',', ''), tool }));

describe('the decision worked by hand', () => {
  test('has its rows, and each thing that the tool shows in one of them', () => {
    expect(rows.length).toBe(37);
    expect(rows.map(({ tool }) => tool).filter((tool) => tool !== '').sort()).toEqual(Object.keys(shown).sort());
  });

  test.each(rows)('$what: $how is $result', ({ how, result, tool }) => {
    const decimals = result.split('.')[1]?.length ?? 0;
    expect(rounded(calculated(how), decimals)).toBe(result);
    if (tool !== '') expect(shown[tool]).toBeCloseTo(Number(result), 9);
  });

  test('its days are those of the tool', () => {
    const { ready } = rebuild.weighed;
    expect(page).toContain(`the likely day is Wednesday, ${ready.date ?? ''}.`);
    const byStart = [...ready.tasks].sort((a, b) => a.start - b.start || Number(b.critical) - Number(a.critical));
    expect(byStart.filter(({ critical }) => critical).map(({ end, start }) => end - start)).toEqual([3, 16, 5]);
    const by = (chance: number) => ready.byChance.find((one) => one.chance === chance);
    expect([by(0.8)?.days, by(0.9)?.days]).toEqual([4, 5]);
    expect(page.replaceAll('\n', ' ')).toContain(`8 times in 10 by ${by(0.8)?.date ?? ''}, 9 times in 10 by ${by(0.9)?.date ?? ''}. The 1000 drawn cases say ${rebuild.risk?.ready?.p90 ?? ''} too.`);
  });

  test('its pieces are those of the tool', () => {
    const hours = rebuild.weighed.ready.tasks.map(({ task: { length, wait } }) => [length.low, length.likely, length.high].map((days) => days.toNumber() * (wait === 'd' ? 8 : 1)));
    const written = tables('| piece |').map(([, , ...points]) => points.map(Number));
    expect(written).toHaveLength(4);
    expect(hours.map(String).sort()).toEqual(written.map(String).sort());
  });

  test('the head is cracked in 250 of the 1000 cases, and the sampled mean is near the exact one', () => {
    expect([decision.cases, rebuild.risk?.trouble]).toEqual([1000, 0.25]);
    expect(Math.abs((rebuild.risk?.inAll.mean ?? 0) - 1700)).toBeLessThan(1);
  });

  test('the quote is the same without what may turn up and what could be looked at', () => {
    const bare = estimate.replace(/^ {2}chance [^]*?\n {4}.*\n/m, '').replace(/^inspect [^]*/m, '');
    expect(bare.split('\n').length).toBe(estimate.split('\n').length - 4);
    const without = createLanguageService({ read: () => ({ text: bare }), resolvePath: () => undefined }).decision('/quay.yard');
    const quote = (of: typeof decision) => [...namedFigures(of.comparison)].map(([name, { low, likely, high }]) => [name, low.toFixed(), likely.toFixed(), high.toFixed()].join(' '));
    expect(quote(without)).toEqual(quote(decision));
    expect(without.options.map(({ average }) => average)).toEqual([1400, 1880]);
  });

  test('a result changes the choice, the other does not', () => {
    expect(dye?.results.map(({ shows, choose, changes }) => [shows.length, choose, changes])).toEqual([[0, 'rebuild', false], [1, 'used', true]]);
    expect(dye?.verdict).toBe('worth doing');
  });

  test('the tool says what the page quotes', () => {
    const quotes = [...page.matchAll(/^```text weigh\n([^]*?)^```$/gm)];
    expect(quotes).toHaveLength(1);
    for (const [, quote = ''] of quotes) expectQuoted(quote, comparisonText(decision));
  });
});

describe('sums in fractions', () => {
  test.each([['1 + 2 × 3', '7'], ['(1 + 2) × 3', '9'], ['2 / 3', '1'], ['1,000 - 1', '999'], ['1.1 ^ 2 × 100', '121'], ['10 - 4 - 3', '3'], ['8 / 4 / 2', '1']])('%s is %s', (how, result) => expect(rounded(calculated(how), 0)).toBe(result));
  test('half goes up', () => expect([rounded(fraction('0.125'), 2), rounded(fraction('0.124'), 2), rounded(fraction('0.05'), 1)]).toEqual(['0.13', '0.12', '0.1']));
  test.each(['1 + ', '(1', '1 ) 2', '1 / 0', 'x'])('%s is no sum', (how) => expect(() => calculated(how)).toThrow());
});
