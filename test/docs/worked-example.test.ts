import { existsSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, test } from 'vitest';
import { namedFigures } from '../../src/report/index.js';
import { createLanguageService, resolveWithin } from '../../src/service/index.js';

const samples = path.resolve(import.meta.dirname, '../../samples');
// The first of the page's two estimates; worked-decision.test.ts has the second.
const page = readFileSync(path.join(samples, 'worked-example.md'), 'utf8').split(/^# The decision$/m)[0] ?? '';
const service = createLanguageService({
  read: (uri) => (existsSync(uri) ? { text: readFileSync(uri, 'utf8') } : 'missing'),
  resolvePath: (from, written) => resolveWithin(samples, from, written),
});
const { comparison } = service.weighing(path.join(samples, 'heron-pump.yard'));
const figures = namedFigures(comparison);

interface Row {
  readonly what: string;
  readonly how: string;
  readonly amount: string;
  readonly figure: string;
}

const rows: readonly Row[] = [...page.matchAll(/^\| (?!what)(.+?) \| (.+?) \| ([\d,.]+) \| ?(.*?) ?\|$/gm)]
  .map(([, what = '', how = '', amount = '', figure = '']) => ({ what, how, amount: amount.replaceAll(',', ''), figure }));

/** An amount in ten-thousandths of a cent, as a whole number: the page's sums are done again without any library. */
function scaled(text: string): bigint {
  const [whole = '0', decimals = ''] = text.replaceAll(',', '').split('.');
  return BigInt(whole + decimals.padEnd(6, '0'));
}

const ONE = 1_000_000n;
const CENT = 10_000n;

/** Numbers joined by ×, + or -; every product is rounded to the cent, half up, as the line that it stands for. */
function done(how: string): bigint {
  const sums = how.split(/ ([+-]) /);
  if (how.includes('×') && sums.length > 1) return sums.reduce((sum, one, i) => (i % 2 === 1 ? sum : sums[i - 1] === '-' ? sum - done(one) : sum + done(one)), 0n);
  const parts = how.split(' ');
  let value = scaled(parts[0] as string);
  for (let i = 1; i < parts.length; i += 2) {
    const next = scaled(parts[i + 1] as string);
    if (parts[i] === '×') value = (value * next) / ONE;
    else if (parts[i] === '+') value += next;
    else if (parts[i] === '-') value -= next;
    else throw new Error(`${parts[i] ?? ''} in ${how}`);
  }
  return ((value + CENT / 2n) / CENT) * CENT;
}

describe('the estimate worked by hand', () => {
  test('has its rows', () => expect(rows.length).toBe(44));

  test.each(rows)('$what: $how is $amount', ({ how, amount, figure }) => {
    expect(done(how)).toBe(scaled(amount));
    const [name = '', point = 'likely'] = figure.split(', ');
    if (figure !== '') expect(figures.get(name)?.[point as 'low' | 'likely' | 'high'].toFixed(2)).toBe(amount);
  });

  test('its hours and days are those of the tool', () => {
    const lifted = comparison.options.find(({ option }) => option.name === 'lifted');
    expect(page).toContain('Hours: 1.0 + 1.2 + 6.0 + 0.8 = 9.0.');
    expect(lifted?.totals.hours.likely.toFixed(1)).toBe('9.0');
    expect(page).toContain('2.0 + 0.8 = 2.8, and 9.0 - 2.8 = 6.2.');
    expect(lifted?.penalty.hours.likely.toFixed(1)).toBe('6.2');
    expect(page).toContain(`1 + 1 = 2 working days: it is ready on Tuesday, ${lifted?.ready.date ?? ''}.`);
    expect(lifted?.ready.days.likely.toFixed()).toBe('2');
  });
});
