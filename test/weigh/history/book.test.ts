import { describe, expect, test } from 'vitest';
import { accessJob, historyOf, labourJob, type Case } from '../../../src/weigh/history/index.js';

const pump = labourJob({ name: 'pump', title: 'Coolant pump' }, []);
const day = (i: number) => new Date(Date.UTC(2024, 0, 1 + i)).toISOString().slice(0, 10);
const once = (job: Case['job'], more: Partial<Case> = {}): Case => ({ job, hours: 4, estimated: 4, on: '2026-01-01', ...more });
const trendOf = (hours: readonly number[]) => historyOf(hours.map((one, i) => once(pump, { hours: one, on: day(i * 30) })))[0]?.trend;

describe('the jobs of a book', () => {
  const seal = labourJob({ name: 'seal', title: 'Rear seal' }, []);
  const out = accessJob({ name: 'out', title: 'Engine out' });

  test('stand by how often they were done, and where that is the same by their key', () => {
    const keys = (cases: readonly Case[]) => historyOf(cases).map(({ job: { key }, count }) => `${key}: ${count}`);
    const cases = [seal, pump, out, seal, out, pump, pump].map((job) => once(job));
    expect(keys(cases)).toEqual(['labour pump: 3', 'access out: 2', 'labour seal: 2']);
    expect(keys([...cases].reverse())).toEqual(['labour pump: 3', 'access out: 2', 'labour seal: 2']);
  });
});

describe('cases of one day', () => {
  const titled = (title: string, more: Partial<Case>) => once({ ...pump, title }, more);
  const named = (cases: readonly Case[]) => [historyOf(cases)[0]?.job.title, historyOf([...cases].reverse())[0]?.job.title];

  test('are put in order by their hours, then by what was estimated, whatever file came first', () => {
    expect(named([titled('Longer', { hours: 10 }), titled('Shorter', { hours: 9 })])).toEqual(['Longer', 'Longer']);
    expect(named([titled('More', { estimated: 10 }), titled('Less', { estimated: 9 })])).toEqual(['More', 'More']);
    expect(named([titled('Some', { estimated: 1 }), titled('None', { estimated: undefined })])).toEqual(['Some', 'Some']);
  });

  test('a case without a day comes before all that have one', () => {
    expect(named([titled('Undated', { on: undefined, hours: 99 }), titled('Dated', {})])).toEqual(['Dated', 'Dated']);
  });
});

describe('a trend is told', () => {
  // The test of Mann and Kendall, worked by hand: without ties the variance for ten values is 10 × 9 × 25 / 18 = 125.
  test('only where chance would rarely give as much', () => {
    // 25 of 45 pairs rise and 20 fall: z = 4 / √125 = 0.36, which chance alone gives in 72 cases of 100.
    expect(trendOf([4, 6.1, 5, 4.2, 6.3, 5.1, 4.1, 6.2, 5.2, 4.3])).toBeUndefined();
    // All 45 rise: z = 44 / √125 = 3.94.
    expect(trendOf([4, 4.1, 4.2, 4.3, 4.4, 4.5, 4.6, 4.7, 4.8, 4.9])?.byChance).toBeCloseTo(8.3e-5, 6);
  });

  test('not where the middle of all slopes is flat, however sure the few that rise are', () => {
    // 480 of 780 pairs are equal and 300 rise; with ties z = 299 / √4100 = 4.67.
    expect(trendOf([...Array.from({ length: 30 }, () => 4), ...Array.from({ length: 10 }, () => 5)])).toBeUndefined();
  });
});
