import { expect, test } from 'vitest';
import { serviceOver, uriOf } from '../support/fixture.js';

const uri = uriOf('e.yard');
const TEXT = `steelyard 1
shop "Bench"
  rate bench 100.00
vehicle "Van"
  worth 5000.00
  unrepaired 900.00
fee tow "Tow in" 80.00
labour look "Look in" 0.6 h
  done first
option repair "Repair"
  do look
  charge tow
  labour "Rear head" 8 h
`;
const { service } = serviceOver({ 'e.yard': TEXT });
const at = (words: string) => TEXT.indexOf(words) + 1;
const shown = ({ start, end }: { readonly start: number; readonly end: number }) => TEXT.slice(start, end);

/** Selling the vehicle as it stands is an option that no line writes: whatever is said of it is said at `unrepaired`. */
test('its lens stands above the value unrepaired and says whose figures these are', () => {
  expect(service.lenses(uri).map(({ range, label, figure }) => `${shown(range)}: ${label}; ${figure ?? ''}`)).toEqual([
    'unrepaired 900.00: Sell it as it stands: 140.00 · 4,240.00 in all · +3,300.00; as-it-stands.total',
    'option repair "Repair": 940.00 · cheapest; repair.total',
  ]);
});

test('hovering over the value says what it comes to, and over the vehicle only what that is', () => {
  const says = (words: string) => service.hover(uri, at(words))?.paragraphs[0];
  expect(says('unrepaired 900')).toBe('Sell it as it stands: 140.00');
  expect(says('vehicle "Van"')).toBe('vehicle: The vehicle in the bay.');
  expect(says('option repair')).toBe('Repair: 940.00');
});

test('what it owes anyway counts in it', () => {
  const using = (words: string) => service.totalsUsing(uri, at(words)).map(({ option, figure, amount }) => `${option} ${figure} ${amount}`);
  expect(using('labour look')).toEqual(['repair repair.line.1 60.00', 'as-it-stands as-it-stands.line.1 60.00']);
  expect(using('fee tow')).toEqual(['repair repair.line.3 80.00', 'as-it-stands as-it-stands.line.2 80.00']);
  expect(using('labour "Rear')).toEqual(['repair repair.line.2 800.00']);
  expect(using('unrepaired 900')).toContain('as-it-stands as-it-stands.total 140.00');
});

test('it has no line in the outline, and formatting and selecting know nothing of it', () => {
  expect(service.symbols(uri).map(({ kind, name }) => `${kind} ${name}`)).toEqual(['shop Bench', 'vehicle Van', 'fee Tow in', 'labour Look in', 'option Repair']);
  expect(service.selectionRanges(uri, at('unrepaired 900')).map(shown)[0]).toBe('unrepaired');
  expect(service.folding(uri).length).toBe(4);
  expect(service.status(uri)?.short).toBe('repair −3,300.00');
});
