import { expect, test } from 'vitest';
import { quoteForm } from '../../src/report/quote/index.js';
import { quoteOfText } from './made.js';

const ready = (answer: string) => quoteForm(quoteOfText(`steelyard 1\nshop "S"\n  workday 8 h\n  rate bench 100.00\nestimate "E"\n  written 2026-11-30\n  start 2026-11-30\n${answer}option one "One"\n  labour "Work" 4 h\n`), 'text').replace(/\s+/g, ' ').match(/We expect it.*?\./)?.[0];

test('the day depends on the answer only where there is time for one', () => {
  // Two days for the answer, half of the third for the work.
  expect(ready('  answer 2 d\n')).toBe('We expect it to be ready on Wednesday, December 2, 2026, 3 working days counted from November 30, 2026 if we have your answer within 2 days of telling you what we found.');
  expect(ready('  answer 0 d\n')).toBe('We expect it to be ready on Monday, November 30, 2026, 1 working day counted from November 30, 2026.');
  expect(ready('')).toBe('We expect it to be ready on Monday, November 30, 2026, 1 working day counted from November 30, 2026.');
});
