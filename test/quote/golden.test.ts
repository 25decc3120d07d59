import { createHash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, test } from 'vitest';
import { exportStyle } from '../../src/report/export/export-style.js';
import { quoteStyle } from '../../src/report/quote/quote-style.js';
import { quoteOfSample, sampleQuotes, samplesFolder } from './samples.js';

const made = sampleQuotes();
const folder = path.join(samplesFolder, 'quotes');

describe('samples/quotes', () => {
  test.each([...made.keys()])('%s is what the product writes (else run test/quote/write-samples.ts)', (file) => {
    expect(readFileSync(path.join(folder, file), 'utf8') === made.get(file), `stale: samples/quotes/${file}`).toBe(true);
  });

  test('holds nothing else', () => {
    expect(readdirSync(folder).sort()).toEqual([...made.keys()].sort());
  });
});

// CSP Level 3, 6.7.2.3: the hash is of the text between the tags, as UTF-8.
test.each([['quote', quoteStyle], ['export', exportStyle]])('the style of the %s is let in by its own hash', (_, { css, sha256 }) => {
  expect(createHash('sha256').update(css).digest('base64')).toBe(sha256);
  expect(css).not.toMatch(/url\(|@import|"|<|\\/);
});

describe('the pilgrim sample, read as a customer', () => {
  const text = made.get('pilgrim-v6-used.txt') as string;

  // 16 CFR 20.1 ask that used be said (check-values: read); the figures are those of `steelyard weigh`.
  test.each([
    'Total               $5,858.59', 'Of that comes back  $160.88', 'Used engine, 92 000 mi · used', '· outside work',
    'Valid until  December 8, 2026', 'In 9 of 10 cases we expect it by Tuesday, December 8, 2026', 'A subframe bolt breaks',
    '- Labour to change the engine again, should the used one fail', 'CHECK YOUR LOCAL RULES', 'Amount up to',
  ])('says %s', (says) => expect(text).toContain(says));

  test('leaves comebacks out', () => {
    expect(text).not.toContain('fails in its first year');
  });

  test('what a core brings back: the deposit less the piece kept, and 7.25 % of it', () => {
    const [core] = quoteOfSample('pilgrim-v6', 'exchange').deposits;
    expect(core).toMatchObject({ charge: '600.00', refund: '560.00', taxBack: '40.60', late: false, less: [{ title: 'Oil filter housing', amount: '40.00' }] });
  });

  test('an offer of 14 days from 24 November ends on 8 December', () => {
    expect(quoteOfSample('pilgrim-v6').validUntil).toBe('2026-12-08');
  });
});
