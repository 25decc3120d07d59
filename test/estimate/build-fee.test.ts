import { describe, expect, test } from 'vitest';
import { called, inShop, told, wordsOf } from './estimated.js';

describe('a fee', () => {
  const fee = (line: string) => told(inShop(`fee f "F" ${line}\n`));

  test('is an amount, or a percentage of something', () => {
    for (const line of ['5.00', '2 at 5.00', '5% of labour, parts', '5% of labour cap 50.00', '0% of labour']) expect(fee(line)).toEqual([]);
    expect(called(inShop('fee f "F" 5% of labour, parts, labour\n').estimate.fees)).toEqual(['f']);
    expect(inShop('fee f "F" 5% of labour, parts, labour\n').estimate.fees[0]?.of).toEqual(['labour', 'parts']);
  });

  test.each([['', 'neither an amount nor a percentage'], ['5.00 5% of labour', 'an amount and a percentage'], ['5%', 'a percentage of'], ['2 at 5% of labour', 'charged once']])('%s can’t be worked out', (line, says) => {
    expect(fee(line).map(([code]) => code)).toEqual(['fee-unclear']);
    expect(wordsOf(inShop(`fee f "F" ${line}\n`), 'fee-unclear')).toContain(says);
  });

  test('that can’t be read is told once', () => {
    expect(fee('5,00').map(([code]) => code)).toEqual(['thousands-comma']);
  });
});
