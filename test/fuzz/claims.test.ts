import { expect, test } from 'vitest';
import { clean, finite } from '../../src/tools/fuzz/claim.js';
import { wellFormed } from '../../src/tools/fuzz/markup.js';

test.each([
  ['a number that is none', () => clean('c', 'Total NaN USD', '')],
  ['a value that is none', () => clean('c', 'Total undefined', '')],
  ['a number without end in data', () => finite('c', { a: [{ b: Infinity }] })],
  ['an element that is not closed', () => wellFormed('c', '<p><b>x</p>')],
  ['an attribute that breaks out', () => wellFormed('c', '<p title=""x"">x</p>')],
  ['a bare ampersand', () => wellFormed('c', '<p>a & b</p>')],
  ['an attribute twice', () => wellFormed('c', '<p id="a" id="b">x</p>')],
])('%s is seen', (_, claim) => {
  expect(claim).toThrow(/^c: /);
});

test('what stands in the input may stand in the output, and what is right is right', () => {
  clean('c', 'Total of the NaN pump', 'part p "NaN pump" 1.00');
  finite('c', { a: [1, 'Infinity'] });
  wellFormed('c', '<!doctype html><p title="a &lt; b">a<br>b &#39;</p>');
});
