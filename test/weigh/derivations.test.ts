import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { moneyText } from '../../src/report/index.js';
import type { Comparison, Figure, Line, Totals } from '../../src/weigh/index.js';
import { compare, fromDigits, minus, nothing, per, plus, rounded, times, whole, type Rational, type Rounding } from '../oracle/rational.js';
import { randomEstimate } from '../support/random-estimate.js';
import { runs } from '../support/random-runs.js';
import { readSample, readSound, sampleFiles } from './weighed.js';

const POINTS = ['low', 'likely', 'high'] as const;
type Point = (typeof POINTS)[number];

/** Every figure that hangs on a comparison, wherever in it, each once. */
function figuresOf(comparison: Comparison): Set<Figure> {
  const figures = new Set<Figure>();
  const seen = new Set<unknown>();
  const visit = (value: unknown) => {
    if (typeof value !== 'object' || value === null || seen.has(value)) return;
    seen.add(value);
    if (isFigure(value)) figures.add(value);
    for (const [key, inner] of Object.entries(value)) if (!['at', 'record', 'option', 'job', 'mode', 'paid', 'part', 'core'].includes(key)) visit(inner);
  };
  visit(comparison.options);
  return figures;
}

function isFigure(value: object): value is Figure {
  return 'step' in value && 'from' in value && 'likely' in value;
}

interface Rules {
  readonly digits: number;
  readonly rounding: Rounding;
}

/** What a figure comes to by its step and the figures it was made from, and nothing else; undefined for leaves. */
function workedOut(figure: Figure, point: Point, { digits, rounding }: Rules): Rational | undefined {
  const { step, from } = figure;
  const values = from.map((one) => fromDigits(one[point].toFixed()));
  const [first = nothing, ...rest] = values;
  const end = (value: Rational, isRounded: boolean): Rational => (isRounded ? { n: rounded(value, digits, rounding), d: 10n ** BigInt(digits) } : value);
  switch (step.kind) {
    case 'given':
    case 'found':
      return undefined;
    case 'sum':
      return values.reduce(plus, nothing);
    case 'difference':
      return rest.reduce(minus, first);
    case 'remainder': {
      const left = rest.reduce(minus, first);
      return left.n < 0n ? nothing : left;
    }
    case 'product':
      return end(per(values.reduce(times, whole(1n)), BigInt(step.per)), step.rounded);
    case 'percentage':
      return end(per(times(first, rest[0] as Rational), 100n), step.rounded);
    case 'raised':
      return end(per(times(first, plus(whole(100n), rest[0] as Rational)), 100n), step.rounded);
    case 'least':
      return values.reduce((least, value) => (compare(value, least) < 0 ? value : least));
  }
}

/** A division without end is kept to 40 digits: only hours made of minutes, and days, may be off by so little. */
const SMALL: Rational = { n: 1n, d: 10n ** 30n };

function expectWorkedOut(figure: Figure, rules: Rules): void {
  for (const point of POINTS) {
    const what = `${figure.label} (${figure.step.kind}), ${point}`;
    if (!figure[point].isFinite()) throw new Error(`${what} is ${figure[point].toString()}`);
    const own = workedOut(figure, point, rules);
    if (own === undefined) continue;
    const off = minus(own, fromDigits(figure[point].toFixed()));
    const size: Rational = off.n < 0n ? { n: -off.n, d: off.d } : off;
    const holds = figure.unit === 'hours' || figure.unit === 'days' ? compare(size, SMALL) < 0 : off.n === 0n;
    if (!holds) expect.fail(`${what}: ${figure[point].toFixed()} is not what its parts make: ${String(own.n)}/${String(own.d)}`);
  }
}

/** A leaf stands in the text: its span holds its numbers. Without a span it is a constant, and says so. */
function expectWritten(figure: Figure): void {
  if (figure.at === undefined) {
    expect(figure.label).toContain('taken as');
    return;
  }
  const { block, start, end } = figure.at;
  const text = block.text.slice(start, end);
  const written = [...text.matchAll(/\d+(?:\.\d+)?/g)].map(([digits]) => fromDigits(digits));
  for (const point of POINTS) {
    const value = fromDigits(figure[point].toFixed());
    if (!written.some((one) => compare(one, value) === 0)) expect.fail(`${figure.label}: ${figure[point].toFixed()} does not stand in “${text}”`);
  }
}

/** Lines as shown add up to sums as shown, in whole cents, at all three points. */
function expectAddsUp({ lines, taxes, ...sums }: Totals, comparison: Comparison): void {
  const { money } = comparison;
  for (const point of POINTS) {
    const cents = (figure: Figure) => BigInt(moneyText(figure[point], money).replace(/[,.]/g, ''));
    const of = (kind: Line['kind'] | undefined, share: Line['share'] | undefined) => lines.filter((line) => (kind === undefined || line.kind === kind) && (share === undefined || line.share === share)).reduce((sum, line) => sum + cents(line.amount), 0n);
    for (const line of lines) expect(line.amount[point].decimalPlaces()).toBeLessThanOrEqual(money.currency.digits);
    const shown = { access: cents(sums.access), labour: cents(sums.labour), parts: cents(sums.parts), sublets: cents(sums.sublets), fees: cents(sums.fees), cores: cents(sums.cores) };
    expect(shown).toEqual({ access: of(undefined, 'access'), labour: of('labour', 'work'), parts: of('part', 'work'), sublets: of('sublet', 'work'), fees: of('fee', 'work'), cores: of('core', undefined) });
    expect(cents(sums.tax)).toBe(taxes.reduce((sum, tax) => sum + cents(tax.amount), 0n));
    expect(cents(sums.total)).toBe(of(undefined, undefined) + cents(sums.tax));
    expect(cents(sums.total)).toBe(Object.values(shown).reduce((sum, one) => sum + one, 0n) + cents(sums.tax));
  }
  expect(sums.total.low.lte(sums.total.likely) && sums.total.likely.lte(sums.total.high)).toBe(true);
}

function expectHeld(comparison: Comparison): { readonly figures: number; readonly leaves: number } {
  const rules: Rules = { digits: comparison.money.currency.digits, rounding: comparison.estimate.shop.rounding };
  const figures = figuresOf(comparison);
  let leaves = 0;
  for (const figure of figures) {
    expectWorkedOut(figure, rules);
    if (figure.step.kind === 'given') {
      leaves++;
      expectWritten(figure);
    }
    if (figure.step.kind === 'found') expect(figure.step.how).not.toBe('');
  }
  for (const { planned } of comparison.options) {
    for (const plan of [planned.chosen, planned.stand, planned.unpinned, ...planned.others]) if (plan !== undefined) expectAddsUp(plan.totals, comparison);
  }
  return { figures: figures.size, leaves };
}

describe('every figure follows from its parts, down to the lines', () => {
  it.each(sampleFiles)('sample %s', (file) => {
    const { comparison } = readSample(file);
    const { figures, leaves } = expectHeld(comparison);
    if (comparison.options.length > 0) expect(Math.min(figures, leaves)).toBeGreaterThan(20);
  });

  it('random estimates', () => {
    let figures = 0;
    let leaves = 0;
    fc.assert(fc.property(randomEstimate, (text) => {
      const found = expectHeld(readSound(text).comparison);
      figures += found.figures;
      leaves += found.leaves;
    }), runs(565, 120));
    expect(figures).toBeGreaterThan(5000);
    expect(leaves).toBeGreaterThan(1000);
  });
});
