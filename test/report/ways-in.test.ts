import { expect, test } from 'vitest';
import { comparisonText } from '../../src/report/index.js';
import { serviceOver, uriOf } from '../support/fixture.js';

// 100.00 an hour, no fees and no taxes; sums by hand.

const TEXT = `steelyard 1
shop "S"
  rate bench 100.00
access raised "Engine raised"
  remove 1 h
  refit 1 h
access out "Engine out"
  remove 4 h
  refit 4 h
access tray "Tray off"
  remove 0.5 h
  refit 0.5 h
labour cover "Cover"
  takes 3 h with out
  takes 6 h with raised
labour pan "Pan"
  takes 2 h with tray
  takes 3 h with raised
`;
const rows = (option: string) => {
  const { service } = serviceOver({ 'e.yard': TEXT + option });
  const text = comparisonText(service.decision(uriOf('e.yard')));
  return text.slice(text.indexOf('Ways in\n')).split('\n').slice(1).filter((_, at, all) => all.slice(0, at).every((before) => before !== '')).map((line) => line.trim().replace(/ {2,}/g, ' | ')).filter((line) => line !== '');
};

test('a pinned way in says by how much it is dearer than the best, or that it is the cheapest', () => {
  // Raised: 2 + 6 + 3 = 11 h; out: 8 + 3 h, and the pan needs the tray: 1 + 2 h.
  expect(rows('option one "One"\n  do cover, pan\n  way out, tray\n')[0]).toBe('one | out + tray, pinned: 300.00 dearer than the best | 1,400.00 | 14.0 h');
  expect(rows('option one "One"\n  do cover, pan\n  way raised\n')[0]).toBe('one | raised, pinned, and the cheapest | 1,100.00 | 11.0 h');
});

test('one that leaves work out is held against none: it is cheap only for that', () => {
  // The cover needs one of the others: 1 + 2 h for the pan alone.
  expect(rows('option one "One"\n  do cover, pan\n  way tray\n')[0]).toBe('one | tray, pinned: leaves work out | 300.00 | 3.0 h');
});

test('one whose option has a line that can’t be read is held against none either', () => {
  expect(rows('option one "One"\n  do cover, pan\n  way out, tray\n  part "Pan gasket" 1,20 new\n')[0]).toBe('one | out + tray, pinned | 1,400.00 | 14.0 h');
});
