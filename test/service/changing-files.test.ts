import { expect, test } from 'vitest';
import { createLanguageService, type LanguageService } from '../../src/service/index.js';

const text = (price: string): string => `steelyard 1\noption a "A"\n  part "P" ${price}\n`;

/** A file that changes right after it was read so many times. */
function changingAfter(reads: number): LanguageService {
  let left = reads;
  return createLanguageService({ read: () => ({ text: text(left-- > 0 ? '10.00' : '20.00') }), resolvePath: () => undefined });
}

const total = (service: LanguageService): string => service.weighing('/a.yard').comparison.options[0]?.totals.total.likely.toFixed(2) ?? '';

// However the reads fall, an answer is that of a text that was there, and the next one is that of the text that is there now.
test.each([1, 2, 3, 4, 5, 6])('a text that changes after %i reads is not answered for by what it was before', (reads) => {
  const service = changingAfter(reads);
  expect(['10.00', '20.00']).toContain(total(service));
  for (let i = 0; i < reads; i++) total(service);
  expect(total(service)).toBe('20.00');
});
