import { expect, test } from 'vitest';
import { closingOf, percentOver } from '../../src/weigh/index.js';
import { read } from './weighed.js';

// A job that is over, beside its estimate. Sums by hand; 2026-12-07 is a Monday (ISO 8601).

const TEXT = `steelyard 1
shop "Invented Bay"
  currency USD
  rate bench 100.00
  fee disposal "Oil disposal" 14.50
access out "Engine out"
  remove 6 h
labour swap "Swap" 5 h with out
option used "Used engine"
  do swap
  part unit "Unit" cost 40.00 rebuilt
    core 30.00
      assemble 1 h
  part filter "Filter" 9.00 customer-supplied
started on 2026-12-07
closed for used on 2026-12-09
`;

test('days and what was billed stand for the whole job: they take no way in', () => {
  const closing = closingOf(read(`${TEXT}  billed 1300.00\n`).comparison);
  expect([closing?.days, closing?.billed].map((one) => [one?.title, one?.with, one?.actual?.likely.toFixed()])).toEqual([['Working days', [], '3'], ['Billed', [], '1300']]);
});

test('what was paid stands beside goods and fees alone, never beside work, a core, or what the customer brought', () => {
  const paid = (below: string) => closingOf(read(TEXT + below).comparison)?.paid.lines.map(({ title, estimated, actual }) => [title, estimated?.likely.toFixed(), actual?.likely.toFixed()]);
  expect(paid('')).toEqual([['Unit', '40', undefined]]);
  expect(paid('  paid unit 44.00\n  paid disposal 9.80\n')).toEqual([['Unit', '40', '44'], ['Oil disposal', undefined, '9.8']]);
  expect(paid('  paid filter 5.00\n')).toEqual([['Unit', '40', undefined], ['Filter', undefined, '5']]);
});

test('how far off it was is said in percent of the estimate, and not where nothing was estimated', () => {
  const { hours } = closingOf(read(`${TEXT}  clocked swap 6 h\n  clocked out 6 h\n`).comparison) ?? {};
  expect(hours?.lines.map((line) => [line.title, percentOver(line)?.toFixed()])).toEqual([['Engine out: remove and refit', '0'], ['Swap', '20'], ['Unit: put the core together', undefined]]);
});

test('money takes no way in: that stands beside hours alone', () => {
  const { hours, paid, cores } = closingOf(read(`${TEXT}  clocked swap 6 h\n  paid unit 44.00\n  paid disposal 9.80\n  paid hose 3.00\n  credited unit 28.00\n`).comparison) ?? {};
  expect([hours, paid, cores].map((part) => part?.lines.map(({ title, with: ways }) => `${title}: ${ways.join()}`))).toEqual([
    ['Engine out: remove and refit: ', 'Swap: out', 'Unit: put the core together: '], ['Unit: ', 'Oil disposal: ', 'hose: '], ['Unit: '],
  ]);
});

test('sums hold what stands side by side apart from what does not', () => {
  const { paid } = closingOf(read(`${TEXT}  paid unit 44.00\n  paid disposal 9.80\n  paid hose 3.00\n`.replace('  part filter', '  part "Belt" 25.00 new\n  sublet "Machining" cost 60.00\n  part filter')).comparison) ?? {};
  // A price alone doesn't say what the shop pays; what it is for was not estimated.
  expect(paid?.lines.map(({ title, estimated, actual }) => [title, estimated?.likely.toFixed(), actual?.likely.toFixed()])).toEqual([
    ['Unit', '40', '44'], ['Belt', undefined, undefined], ['Machining', '60', undefined], ['Oil disposal', undefined, '9.8'], ['hose', undefined, '3'],
  ]);
  const { estimated, actual, over, beyond, open } = paid ?? {};
  expect([estimated, actual, over, beyond, open].map((one) => one?.likely.toFixed())).toEqual(['40', '44', '4', '12.8', '60']);
});

test('each line says where the estimate has it, a way in at its own line', () => {
  const { hours } = closingOf(read(TEXT).comparison) ?? {};
  expect(hours?.lines.map(({ at: { block, start } }) => block.text.slice(start).split(/[\n"]/)[0])).toEqual(['access out ', 'labour swap ', 'core 30.00']);
});
