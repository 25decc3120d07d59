import { expect, test } from 'vitest';
import { serviceOver, uriOf } from '../../support/fixture.js';

// How a comment that allows something may be written, and that it allows this and nothing else.

const THIS = 'this.yard';
const HEAD = 'steelyard 1\nshop "S"\n  workday 8 h\n  rate bench 100.00\n  tax sales 7% on parts\nestimate "E"\n  start 2026-11-30\n  valid 14 d\nfinding seen "Seen"\n';

/** All that is told of an estimate whose one odd line, a part that nothing names, has a comment behind it. */
function told(comment: string, part = 'part ring "Ring" 9.00 new'): readonly string[] {
  const text = `${HEAD}${part}  ${comment}\noption mend "Mend it"\n  labour "Front seal" 2 h\n    because seen\n  warranty 12 mo\noption stop "Stop"\n`;
  return [...serviceOver({ [THIS]: text }).service.allDiagnostics(uriOf(THIS)).values()].flat().map(({ code }) => code).sort();
}

test.each(['# allow unused-line: kept for later', '#allow unused-line: kept for later', '#   allow   unused-line: kept', '# allow unused-line:kept', '# allow unused-line : kept', '# allow unused-line  :  kept  '])('%s', (comment) => {
  expect(told(comment)).toEqual([]);
});

test.each<[string, readonly string[]]>([
  ['# allow unused-line', ['allow-without-reason']],
  ['# allow unused-line:', ['allow-without-reason']],
  ['# allow unused-line:   ', ['allow-without-reason']],
  ['# allow unused-lines: kept', ['allow-unknown', 'unused-line']],
  // Remarks like any other.
  ['# allow time for curing', ['unused-line']],
  ['# allow time', ['unused-line']],
  ['# we allow unused-line: kept', ['unused-line']],
  ['# allows unused-line: kept', ['unused-line']],
])('%s: %j', (comment, wanted) => {
  expect(told(comment)).toEqual(wanted);
});

test('allows what it names alone, of two things that are told of one line', () => {
  const part = 'part ring "Ring" 1.00 / 4.00 / 30.00 new';
  expect(told('# as bought last', part)).toEqual(['range-very-wide', 'unused-line']);
  expect(told('# allow unused-line: kept', part)).toEqual(['range-very-wide']);
  expect(told('# allow range-very-wide: scrap prices', part)).toEqual(['unused-line']);
});
