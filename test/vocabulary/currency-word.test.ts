import { describe, expect, it } from 'vitest';
import { parse } from '../../src/language/index.js';
import { readBlock } from '../../src/vocabulary/index.js';

/** The text with the fix of its one problem. */
function mended(line: string): string | undefined {
  const { blocks: [block] } = parse('/a.yard', line);
  const { problems: [only, ...others] } = readBlock(block as NonNullable<typeof block>);
  expect(others).toEqual([]);
  if (only?.fix === undefined) return undefined;
  expect(only.code).toBe('currency-word');
  return line.slice(0, only.fix.at.start) + only.fix.text + line.slice(only.fix.at.end);
}

describe('a currency in another form than three capital letters behind the figure', () => {
  it.each([
    ['part pump "Pump" 64.30 usd new', 'part pump "Pump" 64.30 USD new'],
    ['part pump "Pump" USD 64.30 new', 'part pump "Pump" 64.30 USD new'],
    ['part pump "Pump" eur 60 / 64.30 / 70 new', 'part pump "Pump" 60 / 64.30 / 70 EUR new'],
    ['part pump "Pump" 60 / 64.30 / 70 Eur', 'part pump "Pump" 60 / 64.30 / 70 EUR'],
    ['part pump "Pump" cost 12.00 gbp', 'part pump "Pump" cost 12.00 GBP'],
    ['part pump "Pump" cost GBP 12.00 new', 'part pump "Pump" cost 12.00 GBP new'],
    ['part clamp "Clamp" 4 at 1.20 usd new', 'part clamp "Clamp" 4 at 1.20 USD new'],
    ['vehicle "Van"\n  worth usd 4000', 'vehicle "Van"\n  worth 4000 USD'],
    ['vehicle "Van"\n  worth 4000 usd', 'vehicle "Van"\n  worth 4000 USD'],
  ])('is written anew: %s', (line, proper) => {
    expect(mended(line)).toBe(proper);
    const { blocks: [block] } = parse('/a.yard', proper);
    expect(readBlock(block as NonNullable<typeof block>).problems).toEqual([]);
  });

  it.each(['part pump "Pump" 64.30 usb new', 'part pump "Pump" usd new', 'part pump "Pump" new usd', 'part pump "Pump" "usd" new'])('is something else: %s', (line) => {
    const { blocks: [block] } = parse('/a.yard', line);
    expect(readBlock(block as NonNullable<typeof block>).problems.map(({ code }) => code)).not.toContain('currency-word');
  });
});
