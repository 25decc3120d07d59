import { describe, expect, it } from 'vitest';
import { currencyOf } from '../../src/vocabulary/index.js';
import { Decimal } from '../../src/vocabulary/index.js';
import { moneyOf } from '../../src/weigh/index.js';
import { moneyText } from '../../src/report/index.js';
import { readSound } from './weighed.js';

const cents = { code: '', digits: 2 };
const oneDecimal = { code: '', digits: 1 };

/** What one line of parts comes to. */
function line(part: string, shop = ''): string {
  const { comparison, option } = readSound(`steelyard 1\nshop "Invented Bay"\n${shop}\noption one "One"\n  part "Part" ${part} new\n`);
  return option('one').totals.parts.likely.toFixed(comparison.money.currency.digits);
}

describe('rounding to the smallest coin', () => {
  it('5 USC 5504(b) as OPM publishes it (read): 18.845 becomes 18.85', () => {
    expect(moneyOf(cents, 'half-up').round(new Decimal('18.845')).toFixed(2)).toBe('18.85');
    expect(line('18.8450')).toBe('18.85');
    expect(line('0.5 at 37.69')).toBe('18.85');
  });

  // General Decimal Arithmetic test cases 2.59, precision 5 (read): the quotients have five digits, so one decimal is left.
  const cases = [
    { of: '12345', rounding: 'half-up', digits: '3086.3' },
    { of: '12345', rounding: 'half-even', digits: '3086.2' },
    { of: '12355', rounding: 'half-up', digits: '3088.8' },
    { of: '12355', rounding: 'half-down', digits: '3088.7' },
  ] as const;

  it.each(cases)('General Decimal Arithmetic 2.59 (read): $of / 4 $rounding is $digits', ({ of, rounding, digits }) => {
    const quarter = new Decimal(of).div(4);
    expect(moneyOf(oneDecimal, rounding).round(quarter).toFixed()).toBe(digits);
  });

  it.each(cases)('the same through a text, the point one place to the left (computed): $of at 0.025, $rounding', ({ of, rounding, digits }) => {
    expect(line(`${of} at 0.025`, `  rounding ${rounding}`)).toBe(new Decimal(digits).div(10).toFixed(2));
  });

  it('rounds a line once, on the exact product (computed): cost 1.015 with 50 % on it, three times', () => {
    // 1.015 × 1.5 × 3 = 4.5675; a unit price rounded first would make 1.52 × 3 = 4.56.
    expect(line('3 at cost 1.0150', '  markup 50%')).toBe('4.57');
  });

  it('minutes are divided last (computed): 20 min at 100.00 and three times 20 min at 100.01', () => {
    const { option } = readSound('steelyard 1\nshop "S"\n  rate bench 100.01\noption one "One"\n  labour "A" 20 min\n  labour "B" 3 at 20 min\n');
    expect(option('one').totals.lines.map((one) => one.amount.likely.toFixed(2))).toEqual(['33.34', '100.01']);
  });

  it('half-up is used where the shop says nothing (computed)', () => {
    expect(line('0.125')).toBe('0.13');
    expect(line('0.125', '  rounding half-even')).toBe('0.12');
    expect(line('0.135', '  rounding half-even')).toBe('0.14');
    expect(line('0.125', '  rounding half-down')).toBe('0.12');
  });
});

describe('ISO 4217 minor units (read)', () => {
  const units = { USD: 2, EUR: 2, CAD: 2, GBP: 2, JPY: 0, KRW: 0, CLP: 0, KWD: 3, BHD: 3, OMR: 3, TND: 3 } as const;

  it.each(Object.entries(units))('%s has %i decimals, in the list and in a line', (code, digits) => {
    expect(currencyOf(code)?.digits).toBe(digits);
    const { comparison, option } = readSound(`steelyard 1\nshop "S"\n  currency ${code}\noption one "One"\n  part "Part" 1234.5678 new\n`);
    const expected = { 0: '1,235', 2: '1,234.57', 3: '1,234.568' }[digits];
    expect(moneyText(option('one').totals.total.likely, comparison.money)).toBe(expected);
  });

  it('no code of a metal or a fund, and none in small letters, is a currency (computed)', () => {
    for (const code of ['XAU', 'XDR', 'XTS', 'usd', 'DOLLARS']) expect(currencyOf(code)).toBeUndefined();
  });
});

describe('markup', () => {
  const shop = '  markup 80% to 40.00\n  markup 50% to 250.00\n  markup 30%';

  it('the whole cost takes the percentage of the first band that reaches it (computed)', () => {
    expect(line('cost 40.00', shop)).toBe('72.00');
    expect(line('cost 40.01', shop)).toBe('60.02');
    expect(line('cost 250.00', shop)).toBe('375.00');
    expect(line('cost 250.01', shop)).toBe('325.01');
  });

  it('goes by the cost of one, not by the sum (computed)', () => {
    expect(line('10 at cost 40.00', shop)).toBe('720.00');
  });

  it('bands may stand in any order (computed)', () => {
    expect(line('cost 100.00', '  markup 30%\n  markup 50% to 250.00\n  markup 80% to 40.00')).toBe('150.00');
  });
});
