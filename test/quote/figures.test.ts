import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { Decimal } from '../../src/vocabulary/index.js';
import { quoteForm, type Quote } from '../../src/report/quote/index.js';
import { addedByChances } from '../../src/report/quote/added.js';
import { figuresOf } from '../../src/report/quote/figures-said.js';
import { modelOf } from '../../src/weigh/decide/model.js';
import { createTape } from '../../src/weigh/tape.js';
import type { Decision, Figure } from '../../src/weigh/index.js';
import { randomEstimate } from '../support/random-estimate.js';
import { PATIENT } from '../support/random-runs.js';
import { decisionOf, quotes } from './made.js';

function added(amounts: readonly string[]): Decimal {
  return amounts.reduce((sum, amount) => sum.plus(amount), new Decimal(0));
}

/** Deciding is dear, so every test looks at the same random estimates: the seed is fixed. */
const drawn = fc.sample(randomEstimate, { seed: 11, numRuns: 90 }).map((text) => {
  const decision = decisionOf(text);
  return { text, decision, quotes: quotes(decision) };
});

describe('sums, on random estimates', () => {
  test('lines add up to their groups, groups and taxes to the total, to the smallest coin', PATIENT, () => {
    let lines = 0;
    drawn.forEach(({ decision, quotes: all }) => {
      all.forEach((quote) => {
        for (const group of quote.groups) expect(added(group.lines.map(({ amount }) => amount)).toFixed()).toBe(new Decimal(group.amount).toFixed());
        expect(added([...quote.groups.map(({ amount }) => amount), ...quote.taxes.map(({ amount }) => amount)]).toFixed(quote.currency.digits)).toBe(quote.total);
        lines += quote.groups.flatMap((group) => group.lines).length;
        const weighed = decision.comparison.options.find(({ option }) => option.name === quote.option.name);
        expect(quote.total).toBe(weighed?.totals.total.likely.toFixed(quote.currency.digits));
        for (const one of quote.couldBeFound) expect(added([...one.lines.map(({ amount }) => amount), one.feesAndTax]).toFixed(quote.currency.digits)).toBe(one.amount);
      });
    });
    expect(lines).toBeGreaterThan(400);
  });

  test('what a chance adds is what the decision model adds when it happens', PATIENT, () => {
    let compared = 0;
    drawn.forEach(({ decision: { comparison: { estimate, money, options } } }) => {
      for (const weighed of options.filter(({ complete }) => complete)) {
        const model = modelOf(weighed, estimate, money);
        const tape = createTape(money, estimate.shop.rounding);
        const node = tape.node(model.total);
        const gate = (at: Figure['at'], on: 0 | 1) => {
          const leaf = at === undefined ? undefined : tape.leafAt(at);
          if (leaf !== undefined) tape.set(leaf, on);
        };
        const totalWith = (ats: readonly Figure['at'][]) => {
          for (const one of model.chances) gate(one.gate.at, ats.includes(one.gate.at) ? 1 : 0);
          tape.run();
          return tape.valueOf(node);
        };
        for (const one of addedByChances(weighed, estimate, money)) {
          const above: Figure['at'][] = [];
          for (let at = model.chances.findIndex(({ chance }) => chance === one.chance); at >= 0; at = model.chances[at]?.under[0] ?? -1) above.push(model.chances[at]?.gate.at);
          const wanted = totalWith(above) - totalWith(above.slice(1));
          expect(Math.abs(one.then.total.likely.minus(one.before.total.likely).toNumber() - wanted)).toBeLessThan(10 ** -money.currency.digits / 2);
          compared++;
        }
      }
    });
    expect(compared).toBeGreaterThan(40);
  });
});

// What must never be on a customer's paper -------------------------------------------------------------------------

const FORBIDDEN = /cost|markup|margin|slack|technician|derivation|profit|spread|sold/i;

/** Every key of a value, at whatever depth. */
function keysOf(value: unknown): string[] {
  if (Array.isArray(value)) return value.flatMap(keysOf);
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, below]) => [key, ...keysOf(below)]);
}

/** Numbers of a text in English as decimal digits, thousands put together. */
function numbersIn(text: string): Set<string> {
  return new Set((text.match(/\d[\d,]*(?:\.\d+)?/g) ?? []).map((one) => new Decimal(one.replace(/,/g, '') || '0').toFixed()));
}

/** What the shop pays, adds and keeps, as decimal digits; short round ones say nothing, since they stand everywhere. */
function internalOf({ comparison: { estimate }, options }: Decision): Set<string> {
  const { shop } = estimate;
  const goods = estimate.options.flatMap(({ parts, sublets }) => [...parts, ...sublets]).concat(estimate.parts, estimate.sublets, estimate.access.flatMap((way) => [...way.parts, ...way.sublets]));
  const amounts = [
    ...goods.flatMap(({ cost }) => cost ?? []),
    ...[...shop.rates.values()].flatMap(({ cost }) => cost ?? []),
    ...[...shop.markup.parts, ...shop.markup.sublets].map(({ percent }) => percent),
    ...options.flatMap(({ margin }) => [margin.margin, ...margin.by.flatMap(({ cost, margin: left }) => [cost, left])]),
  ];
  return new Set(amounts.flatMap(({ low, likely, high }) => [low, likely, high]).map((one) => one.toFixed()).filter((one) => one.replace(/\D/g, '').length >= 3));
}

/** Every number that a customer may see, straight from the weighing: never by way of the quote. */
function customersOf({ comparison: { estimate, options, money } }: Decision): Set<string> {
  const points = (figure: Figure | undefined) => (figure === undefined ? [] : [figure.low, figure.likely, figure.high]);
  const hours = (figure: Figure | undefined) => points(figure).map((one) => one.toDecimalPlaces(2));
  const found = options.flatMap((weighed) => {
    const { totals, returns, open, option, ready } = weighed;
    const sum = (lines: typeof totals.lines) => lines.reduce((all, line) => all.plus(line.amount.likely), new Decimal(0));
    const hoursOf = (lines: typeof totals.lines) => lines.reduce((all, line) => all.plus(line.hours?.likely ?? 0), new Decimal(0)).toDecimalPlaces(2);
    const groups = (['labour', 'part', 'sublet', 'fee', 'core'] as const).flatMap((kind) => (['work', 'access'] as const).map((share) => totals.lines.filter((line) => line.kind === kind && line.share === share)));
    const access = totals.lines.filter(({ share }) => share === 'access');
    const chances = addedByChances(weighed, estimate, money).flatMap(({ lines, before, then }) => {
      const more = then.total.likely.minus(before.total.likely);
      return [...lines.flatMap((line) => [line.amount.likely, ...hours(line.hours), ...points(line.quantity)]), more, more.minus(sum(lines)), more.minus(sum(lines)).abs()];
    });
    return [
      ...totals.lines.flatMap((line) => [...points(line.amount), ...hours(line.hours), ...points(line.quantity)]),
      ...[...groups, access].flatMap((lines) => [sum(lines), hoursOf(lines)]),
      ...points(totals.total), ...points(totals.tax), ...totals.taxes.flatMap(({ amount, tax }) => [...points(amount), tax.percent.likely]),
      returns.refunds.likely.plus(returns.taxBack.likely), ...returns.cores.flatMap((core) => [core.charge.likely, core.refund.likely, core.taxBack.likely, ...(core.core.less === undefined ? [] : [core.core.less.likely.toDecimalPlaces(money.currency.digits)]), ...core.core.keeps.flatMap(({ less }) => less?.likely.toDecimalPlaces(money.currency.digits) ?? [])]),
      ...chances, ...open.flatMap(({ now, alone }) => [now.likely, now.likely.abs(), alone.likely]), ...option.harvests.flatMap(({ value }) => (value === undefined ? [] : [money.round(value.likely)])),
      ...points(ready.days), ...(option.warranty === undefined ? [] : [option.warranty.likely]),
    ];
  });
  const written = [
    ...[...estimate.shop.rates.values()].map(({ price }) => price.likely),
    ...estimate.findings.flatMap(({ compression, leakage }) => [...(compression?.values ?? []), ...(leakage?.values ?? [])]),
    ...(estimate.vehicle?.odometer === undefined ? [] : [estimate.vehicle.odometer.likely]),
  ];
  return new Set([...found, ...written].map((one) => one.toFixed()));
}

/** Numbers in the product's own sentences and in texts of the file: years of dates, rules, titles, the VIN. */
const WORDS = numbersIn('9 of 10 29 CFR 1910 40 CFR 82.34 40 CFR 279.22 2026 2027 2028 2029 2030 2013 11111111111111111 1 2 50/50 # 4');

describe('nothing of the shop’s own is on it, on random estimates', () => {
  test('no number that is only what the shop pays, adds or keeps', PATIENT, () => {
    let guarded = 0;
    let seen = 0;
    drawn.forEach(({ text, decision, quotes: all }) => {
      const internal = internalOf(decision);
      const allowed = customersOf(decision);
      for (const quote of all) {
        const numbers = new Set([...numbersIn(quoteForm(quote, 'text')), ...numbersIn(quoteForm(quote, 'html').replace(/<style>[^]*<\/style>|sha256-[^']*|data:[^"]*/g, '')), ...numbersIn(quoteForm(quote, 'markdown').replace(/\\/g, ''))]);
        for (const secret of internal) {
          guarded++;
          if (!numbers.has(secret)) continue;
          seen++;
          expect(allowed.has(secret) || WORDS.has(secret), `${secret} of the shop is on the quote of ${quote.option.name}\n${text}`).toBe(true);
        }
      }
    });
    expect(guarded).toBeGreaterThan(1400);
    expect(seen).toBeGreaterThan(10); // some are customer figures too: the test can see
  });

  test('what an hour costs the shop changes not a byte', PATIENT, () => {
    let changed = 0;
    drawn.slice(0, 40).forEach(({ text, quotes: all }) => {
      const other = text.replace(/^( {2}rate .* cost )\d[\d.]*(?: \/ \d[\d.]* \/ \d[\d.]*)?/gm, '$177.77');
      if (other === text) return;
      changed++;
      expect(quotes(decisionOf(other)).map((quote) => quoteForm(quote, 'html'))).toEqual(all.map((quote) => quoteForm(quote, 'html')));
    });
    expect(changed).toBeGreaterThan(10);
  });

  test('the model has no place for it', PATIENT, () => {
    drawn.forEach(({ quotes: all }) => {
      for (const quote of all) expect(keysOf(quote).filter((key) => FORBIDDEN.test(key))).toEqual([]);
    });
    type Keys<T> = T extends readonly (infer One)[] ? Keys<One> : T extends object ? { [K in keyof T]: K | Keys<T[K]> }[keyof T] : never;
    type Secret = Extract<Keys<Quote>, 'cost' | 'markup' | 'margin' | 'slack' | 'technician' | 'step' | 'from' | 'at' | 'record'>;
    const none: [Secret] extends [never] ? true : false = true;
    expect(none).toBe(true);
  });

  test('the same estimate gives the same bytes', PATIENT, () => {
    drawn.slice(25, 30).forEach(({ text, quotes: all }) => {
      const forms = (list: typeof all) => list.flatMap((quote) => [quoteForm(quote, 'html'), quoteForm(quote, 'text'), quoteForm(quote, 'markdown')]);
      expect(forms(quotes(decisionOf(text)))).toEqual(forms(all));
    });
  });
});

// Unicode CLDR, as Node’s ICU has it: the separators and the place of the sign, from memory, seen in the output.
describe('numbers, money and dates by locale', () => {
  const of = (locale: string, code: string, digits: number) => figuresOf({ locale, currency: { code, digits } });
  const spaced = (text: string) => text.replace(/[\u00a0\u202f]/g, ' ');

  test.each([
    ['en-US', 'USD', 2, '1234567.5', '$1,234,567.50'],
    ['en-GB', 'GBP', 2, '1234.05', '£1,234.05'],
    ['de-DE', 'EUR', 2, '1234.05', '1.234,05 €'],
    ['fr-FR', 'EUR', 2, '1234.05', '1 234,05 €'],
    ['en-IN', 'INR', 2, '1234567.89', '₹12,34,567.89'],
    ['ja-JP', 'JPY', 0, '123456', '￥123,456'],
    ['en-US', 'KWD', 3, '12.345', 'KWD 12.345'],
    ['en-US', '', 2, '1234.5', '1,234.50'],
    // More digits than a binary float holds: Intl is given text.
    ['en-US', 'USD', 2, '12345678901234567.89', '$12,345,678,901,234,567.89'],
    ['en-US', 'USD', 2, '0.125', '$0.125'],
  ] as const)('%s %s %i: %s is %s', (locale, code, digits, amount, wanted) => {
    expect(spaced(of(locale, code, digits).money(amount))).toBe(wanted);
  });

  test.each([
    ['en-US', 'December 8, 2026'], ['en-GB', '8 December 2026'], ['de-DE', '8. Dezember 2026'], ['ja-JP', '2026年12月8日'],
  ])('%s writes a date as %s, whatever the zone of the machine', (locale, wanted) => {
    expect(of(locale, '', 2).day('2026-12-08')).toBe(wanted);
  });

  test('marks of direction that Intl puts in are left to the form', () => {
    expect(of('ar-EG', 'USD', 2).money('1234.5')).not.toMatch(/[\u061c\u200e\u200f]/);
    expect(of('fa-IR', 'USD', 2).money('1234.5')).toContain('۱');
  });
});
