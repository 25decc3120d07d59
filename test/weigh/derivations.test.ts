import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { moneyText } from '../../src/report/index.js';
import { decide, type Comparison, type Figure, type Line, type Totals } from '../../src/weigh/index.js';
import { plansToSearch } from '../../src/weigh/plan.js';
import { compare, fromDigits, minus, nothing, per, plus, rounded, times, whole, type Rational, type Rounding } from '../oracle/rational.js';
import { randomEstimate } from '../support/random-estimate.js';
import { PATIENT, runs } from '../support/random-runs.js';
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
  visit(decide(comparison).options);
  // What flip points are searched on: the least of several modes, and the hours beside it.
  const { estimate, money } = comparison;
  for (const { option } of comparison.options) visit(plansToSearch({ ...option, access: estimate.access }, estimate.shop, money, 16).map(({ totals }) => totals));
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
      return end(per(times(first, rest[0] as Rational), 100n), true);
    case 'raised':
      return per(times(first, plus(whole(100n), rest[0] as Rational)), 100n);
    case 'least':
      return values.reduce((least, value) => (compare(value, least) < 0 ? value : least));
    case 'greatest':
      return values.reduce((greatest, value) => (compare(value, greatest) > 0 ? value : greatest));
    case 'beside-least': {
      const amounts = values.slice(0, values.length / 2);
      const beside = values.slice(values.length / 2);
      const pairs = amounts.map((amount, i) => [amount, beside[i] as Rational] as const);
      return pairs.reduce((best, pair) => ((compare(pair[0], best[0]) || compare(pair[1], best[1])) < 0 ? pair : best))[1];
    }
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
    if (!figure.label.includes('taken as')) expect.fail(`${figure.label} is neither written nor said to be assumed`);
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
    const cents = (figure: Figure) => Number(moneyText(figure[point], money).replace(/[,.]/g, ''));
    const fine = lines.find((line) => line.amount[point].decimalPlaces() > money.currency.digits);
    if (fine !== undefined) expect.fail(`${fine.title} is not whole coins`);
    const added = { access: 0, labour: 0, parts: 0, sublets: 0, fees: 0, cores: 0, tax: 0, total: 0 };
    for (const line of lines) added[groupOf(line)] += cents(line.amount);
    for (const tax of taxes) added.tax += cents(tax.amount);
    added.total = Object.values(added).reduce((sum, one) => sum + one, 0);
    const shown = { access: cents(sums.access), labour: cents(sums.labour), parts: cents(sums.parts), sublets: cents(sums.sublets), fees: cents(sums.fees), cores: cents(sums.cores), tax: cents(sums.tax), total: cents(sums.total) };
    expect(shown).toEqual(added);
  }
  if (sums.total.low.gt(sums.total.likely) || sums.total.likely.gt(sums.total.high)) expect.fail('a total out of order');
}

function groupOf(line: Line): 'access' | 'labour' | 'parts' | 'sublets' | 'fees' | 'cores' {
  if (line.share === 'access') return 'access';
  return ({ labour: 'labour', part: 'parts', sublet: 'sublets', fee: 'fees', core: 'cores' } as const)[line.kind];
}

function expectHeld(comparison: Comparison): { readonly figures: number; readonly leaves: number; readonly steps: ReadonlySet<string> } {
  const rules: Rules = { digits: comparison.money.currency.digits, rounding: comparison.estimate.shop.rounding };
  const figures = figuresOf(comparison);
  let leaves = 0;
  for (const figure of figures) {
    expectWorkedOut(figure, rules);
    if (figure.step.kind === 'given') {
      leaves++;
      expectWritten(figure);
    }
    if (figure.step.kind === 'found' && figure.step.how === '') expect.fail(`${figure.label} does not say how it was found`);
  }
  for (const { planned } of comparison.options) {
    for (const plan of [planned.chosen, planned.stand, planned.unpinned, ...planned.others]) if (plan !== undefined) expectAddsUp(plan.totals, comparison);
  }
  return { figures: figures.size, leaves, steps: new Set([...figures].map(({ step }) => step.kind)) };
}

describe('every figure follows from its parts, down to the lines', () => {
  it.each(sampleFiles)('sample %s', (file) => {
    const { comparison } = readSample(file);
    const { figures, leaves } = expectHeld(comparison);
    if (comparison.options.length > 0) expect(Math.min(figures, leaves)).toBeGreaterThan(20);
  });

  it('random estimates', PATIENT, () => {
    let figures = 0;
    let leaves = 0;
    const steps = new Set<string>();
    fc.assert(fc.property(randomEstimate, (text) => {
      const found = expectHeld(readSound(text).comparison);
      found.steps.forEach((step) => steps.add(step));
      figures += found.figures;
      leaves += found.leaves;
    }), runs(565, 80));
    expect(figures).toBeGreaterThan(4000);
    expect(leaves).toBeGreaterThan(1000);
    expect([...steps].sort()).toEqual(['beside-least', 'difference', 'found', 'given', 'greatest', 'least', 'percentage', 'product', 'raised', 'remainder', 'sum']);
  });
});
