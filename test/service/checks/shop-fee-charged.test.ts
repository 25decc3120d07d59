import { describe, expect, test } from 'vitest';
import { serviceOver, uriOf } from '../../support/fixture.js';

// A fee of the shop is charged on every option with work (the language's own rule); what naming it does besides is held against the totals.

const THIS = 'this.yard';
const HEAD = 'steelyard 1\nshop "S"\n  workday 8 h\n  rate bench 100.00\n  tax sales 7% on parts\n  fee supplies "Shop supplies" 5% of labour\nestimate "E"\n  start 2026-11-30\n  valid 14 d\nfinding seen "Seen"\nfee tow "Tow in" 120.00\nlabour seal "Front seal" 2 h\n  because seen\n';
const one = (...facts: readonly string[]) => `option one "Mend it"\n  warranty 12 mo\n${facts.map((fact) => `  ${fact}\n`).join('')}option two "Stop"\n  worth 10.00\n`;
const chance = (...facts: readonly string[]) => ['do seal', 'chance "The sleeve is worn" 50%', '  labour "Sleeve" 1 h', ...facts.map((fact) => `  ${fact}`)];

function read(text: string) {
  const { service } = serviceOver({ [THIS]: HEAD + text });
  const decided = service.decision(uriOf(THIS)).options.find(({ weighed }) => weighed.option.name === 'one');
  const told = service.diagnostics(uriOf(THIS)).filter(({ code }) => code === 'shop-fee-charged' || code === 'chance-of-what-is-done');
  return {
    told: told.map(({ range, message }) => `${(HEAD + text).slice(range.start, range.end)}: ${message.why}`),
    total: decided?.weighed.totals.total.likely.toFixed(2),
    average: decided?.average.toFixed(2),
    mended: told.flatMap(({ fix }) => (fix === undefined ? [] : [(HEAD + text).slice(0, fix.place.range.start) + fix.text + (HEAD + text).slice(fix.place.range.end)])),
  };
}

describe('a fee of the shop that is named behind charge', () => {
  test('by an option with work has no effect, and that is told', () => {
    const named = read(one('do seal', 'charge supplies'));
    expect(named.told).toEqual(['supplies: Named here it has no effect: it is charged once all the same.']);
    expect([named.total, read(one('do seal')).total]).toEqual(['210.00', '210.00']);
    expect(named.mended).toEqual([HEAD + one('do seal')]);
  });

  test('beside a fee of the estimate leaves that one', () => {
    expect(read(one('do seal', 'charge tow, supplies')).mended).toEqual([HEAD + one('do seal', 'charge tow')]);
    expect(read(one('do seal', 'charge tow')).told).toEqual([]);
  });

  test('by an option without work is what brings it in', () => {
    expect(read('option one "Fetch it"\n  charge supplies\noption two "Mend it"\n  warranty 12 mo\n  do seal\n').told).toEqual([]);
  });

  test('by a chance is charged once more, and that is told', () => {
    const named = read(one(...chance('charge supplies')));
    expect(named.told).toEqual(['supplies: It counts what turns up here as well; named here, it is charged once more.']);
    // Half of the cases take 1 h more at 100.00 with its 5 %; named, another 5 %.
    expect([read(one(...chance())).average, named.average]).toEqual(['262.50', '265.00']);
  });

  test('by a comeback has no effect: its work is charged like an option', () => {
    const text = (fee: readonly string[]) => one(...chance(...fee)).replace('50%', '50% comeback');
    expect(read(text(['charge supplies'])).told).toEqual(['supplies: Named here it has no effect: it is charged once all the same.']);
    expect([read(text([])).average, read(text(['charge supplies'])).average]).toEqual(['262.50', '262.50']);
  });
});

test('a fee that a chance charges is charged each time, so such a chance is not one of work that is done anyway', () => {
  const towed = read(one('do seal', 'charge tow', 'chance "Towed again" 50%', '  charge tow'));
  expect(towed.told).toEqual([]);
  expect(towed.average).toBe('390.00'); // 210.00, 120.00, and half of another 120.00
});
