import { describe, expect, test } from 'vitest';
import { jsonOf, messagesOf, said } from './said.js';

const priced = (figure: string) => said(`part p "P" ${figure} new\n`);

describe('a figure has up to 12 digits before the point and 6 after', () => {
  test.each(['123456789012.123456', '000000000001', '999999999999', '0.000001', '0', '0.0', '7'])('%s is read', (figure) => {
    expect(priced(figure)).toEqual([]);
  });

  test.each(['1234567890123', '0000000000001', '1234567890123.5', '1.1234567', '0.0000000', '123456789012.1234567'])('%s is not', (figure) => {
    expect(priced(figure)).toEqual([['number-too-long', figure]]);
  });

  test('what is read is what is written', () => {
    expect(jsonOf('part p "P" 123456789012.123456 new\n')).toMatchObject({ price: { likely: '123456789012.123456' } });
    expect(jsonOf('part p "P" 0.000001 new\n')).toMatchObject({ price: { likely: '0.000001' } });
  });
});

// What a person may have meant is offered where there is one reading of it, and never chosen silently.
describe('a figure in another form is refused, with the one to write instead', () => {
  const forms: readonly (readonly [figure: string, code: string, instead?: string])[] = [
    // A sign of money before or behind, with a space or without.
    ['$64.30', 'currency-sign', '64.30'], ['64.30$', 'currency-sign', '64.30'], ['64.30€', 'currency-sign', '64.30'], ['£5', 'currency-sign', '5'], ['5¥', 'currency-sign', '5'],
    ['$ 64.30', 'currency-sign', '64.30'], ['64.30 €', 'currency-sign', '64.30'], ['4 / 5 / 6 €', 'currency-sign', '4 / 5 / 6'],
    ['5$$', 'not-a-number'], ['$', 'not-a-number'],
    // A minus turns a charge into a credit.
    ['-64.30', 'negative-figure', '64.30'], ['-5', 'negative-figure', '5'], ['-64.', 'not-a-number'], ['-.5', 'not-a-number'], ['-5-', 'not-a-number'],
    // A comma that divides threes is taken out; one alone stands for the point.
    ['1,250', 'thousands-comma', '1250'], ['1,250.00', 'thousands-comma', '1250.00'], ['1,250,000', 'thousands-comma', '1250000'], ['999,999.5', 'thousands-comma', '999999.5'],
    ['12,50', 'thousands-comma', '12.50'], ['1234,567', 'thousands-comma', '1234.567'], ['1,2345', 'thousands-comma', '1.2345'], ['0,5', 'thousands-comma', '0.5'],
    ['1,25,000', 'not-a-number'], ['1,250,00', 'not-a-number'], ['1,250.00.5', 'not-a-number'],
    // A point without digits on both its sides, or points between threes as in parts of Europe.
    ['.50', 'not-a-number', '0.50'], ['5.', 'not-a-number', '5'], ['12.', 'not-a-number', '12'], ['1.250,00', 'not-a-number', '1250.00'], ['1.250.000,5', 'not-a-number', '1250000.5'],
    ['1.25.000,5', 'not-a-number'], ['1.2.3', 'not-a-number'], ['1250.000,5', 'not-a-number'],
    // A plus says nothing.
    ['+5', 'not-a-number', '5'], ['+5.25', 'not-a-number', '5.25'], ['+5.', 'not-a-number'], ['..5', 'not-a-number'],
    // A unit glued to the figure, as the language writes it or as people do; what is no unit is not offered.
    ['11h', 'glued-unit', '11 h'], ['4.5hrs', 'glued-unit', '4.5 h'], ['12kPa', 'glued-unit', '12 kPa'], ['3weeks', 'glued-unit', '3 wk'],
    ['4.5zz', 'not-a-number'], ['11h2', 'not-a-number'], ['5e3', 'not-a-number'], ['0x1F', 'not-a-number'],
  ];
  test.each(forms.map(([figure, code, ...instead]) => [figure, [code, figure, ...instead]] as const))('%s', (figure, whole) => {
    expect(priced(figure)).toEqual([whole]);
  });

  test('a comma before three digits can be read in two ways, and both are said', () => {
    const [message] = messagesOf('part p "P" 1,250 new\n');
    expect(message?.instead).toBe('Write 1250 where thousands are meant, 1.25 where decimals are.');
    expect(messagesOf('part p "P" 1,125 new\n')[0]?.instead).toContain('1.1250');
    expect(messagesOf('part p "P" 0,125 new\n')[0]?.instead).toContain('Write 0.125');
  });

  test('a range that rises once its points are taken for thousands is offered so', () => {
    expect(priced('900 / 1.250 / 1.400')).toEqual([['figures-out-of-order', '900 / 1.250 / 1.400', '900 / 1250 / 1400']]);
    expect(priced('9 / 1.250 / 4')).toEqual([['figures-out-of-order', '9 / 1.250 / 4', '1.250 / 4 / 9']]);
  });

  test.each(['$$5', '--5', '-', '+', '$5h', '=5', 'x5$', '$5x'])('%s is no figure at all', (written) => {
    expect(priced(written).map(([code, marked]) => [code, marked])).toEqual([['unknown-word', written]]);
  });
});
