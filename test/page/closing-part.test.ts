import { describe, expect, test } from 'vitest';
import { closingTargets, comparisonPage, keepLastGood } from '../../src/report/page/index.js';
import { isWellFormed, sampleTexts, serviceOver } from './estimates.js';

const uri = '/pilgrim-v6.yard';

function pageOf(records: string) {
  const texts = sampleTexts('pilgrim-v6.yard');
  texts.set(uri, `${texts.get(uri) ?? ''}${records}`);
  const service = serviceOver(texts);
  const weighing = service.weighing(uri);
  return { service, comparison: weighing.comparison, markup: comparisonPage({ comparison: weighing.comparison, columns: keepLastGood([], weighing), lineOf: () => undefined }) };
}

describe('the page of a job that is over', () => {
  const { service, comparison, markup } = pageOf('started on 2026-11-30\nclosed for used on 2026-12-09\n  clocked swap 6.5 h\n  clocked engine-out 15.0 h\n  paid pump 97.40\n  credited "Used engine, 92 000 mi" 120.00\n');
  const row = (says: string): string => [...markup.matchAll(/<tr data-key="\.took\.\d+"[^>]*>.*?<\/tr>/gs)].map(([found]) => found).find((found) => found.includes(says)) ?? '';

  test('says what it took beside what was estimated, by hand', () => {
    expect(row('Swap engine')).toMatch(/<td>5\.5 h<\/td><td>6\.5 h<\/td><td>1\.0 h<\/td>/);
    expect(row('Engine and gearbox lowered')).toMatch(/<td>14\.0 h<\/td><td>15\.0 h<\/td><td>1\.0 h<\/td>/);
    expect(row('Coolant pump with seal')).toMatch(/<td>92\.00<\/td><td>97\.40<\/td><td>5\.40<\/td>/);
    expect(row('Coolant pump: replace')).toContain('not recorded');
    expect(isWellFormed(markup)).toBe(true);
  });

  test('each line leads to its text', () => {
    const targets = closingTargets(comparison);
    const shown = [...markup.matchAll(/data-figure="(\.took\.\d+)"/g)].map(([, id = '']) => id);
    expect(shown.length).toBe(targets.size);
    for (const id of shown) expect((targets.get(id) ?? []).flatMap((span) => service.place(span) ?? []).length, id).toBe(1);
  });
});

test('before that there is no such section', () => {
  expect(pageOf('').markup).not.toContain('data-key="took"');
});
