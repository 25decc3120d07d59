import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { parse, print } from '../../../src/language/index.js';
import { formatEdits, formatOnTypeEdits, applyEdits } from '../../../src/service/format/format.js';
import { readBlock, recordJson } from '../../../src/vocabulary/index.js';
import { anyText, goodFiles } from '../../language/noise.js';
import { serviceOver, uriOf } from '../../support/fixture.js';
import { PATIENT, runs } from '../../support/random-runs.js';
import { damaged } from './damage.js';

const uri = uriOf('e.yard');
const formatted = (text: string) => applyEdits(text, formatEdits(parse(uri, text)));
/** As one text: comparing two of these is quicker than comparing thousands of small values. */
const recordsIn = (text: string) => parse(uri, text).blocks.flatMap((block) => readBlock(block).records.map((record) => JSON.stringify(recordJson(record)))).join('\n');
const commentsIn = (text: string) => parse(uri, text).blocks.flatMap((block) => block.comments.map(({ start, end }) => block.text.slice(start, end).trimEnd()));
const problemsIn = (text: string) => parse(uri, text).blocks.flatMap((block) => readBlock(block).problems.map(({ code, at }) => `${code} ${block.text.slice(at.start, at.end)}`));
const blankLines = (text: string) => text.split(/\r?\n/).map((line) => line.trim() === '');
const endsIn = (text: string) => text.match(/\r?\n/g) ?? [];
const wordsIn = (text: string) => text.replace(/[ \t]/g, '');

function totalsOf(text: string): unknown {
  const { service } = serviceOver({ 'e.yard': text });
  const { comparison, problems } = service.weighing(uri);
  return {
    problems: problems.map(({ code }) => code),
    options: comparison.options.map(({ option, complete, totals, inAll }) => [option.name, complete, totals.total.low.toFixed(), totals.total.likely.toFixed(), totals.total.high.toFixed(), inAll.likely.toFixed(), totals.lines.length]),
  };
}

describe('formatting an estimate whose white space is in disorder', () => {
  test('keeps records, comments, blank lines and line ends, and twice is as good as once', PATIENT, () => {
    fc.assert(fc.property(damaged, ({ before, after }) => {
      const records = recordsIn(before);
      expect(recordsIn(after)).toBe(records);
      const text = formatted(after);
      expect(recordsIn(text)).toBe(records);
      expect(problemsIn(text)).toEqual([]);
      expect(commentsIn(text)).toEqual(commentsIn(after));
      expect(blankLines(text)).toEqual(blankLines(after));
      expect(endsIn(text)).toEqual(endsIn(after));
      expect(wordsIn(text)).toBe(wordsIn(after));
      expect(text).not.toMatch(/[ \t]\r?$/m);
      expect(text).not.toMatch(/^\t/m);
      expect(formatted(text)).toBe(text);
    }), runs(31, 50));
  });

  test('changes no total and no problem', PATIENT, () => {
    fc.assert(fc.property(damaged, ({ before, after }) => {
      const wanted = totalsOf(before);
      expect(totalsOf(after)).toEqual(wanted);
      expect(totalsOf(formatted(after))).toEqual(wanted);
    }), runs(32, 15));
  });

  test('keeps records where only a range or the line above the cursor is formatted', PATIENT, () => {
    fc.assert(fc.property(damaged, fc.double({ min: 0, max: 1, noNaN: true }), fc.nat(200), ({ after }, share, length) => {
      const start = Math.floor(share * after.length);
      const tree = parse(uri, after);
      const whole = formatEdits(tree);
      const part = formatEdits(tree, { start, end: Math.min(after.length, start + length) });
      const typed = formatOnTypeEdits(tree, after.indexOf('\n', start) + 1);
      const places = new Set(whole.map((one) => JSON.stringify(one)));
      for (const one of [...part, ...typed]) expect(places.has(JSON.stringify(one))).toBe(true);
      for (const edits of [part, typed]) {
        const text = applyEdits(after, edits);
        expect(recordsIn(text)).toEqual(recordsIn(after));
        expect(problemsIn(text)).toEqual([]);
      }
    }), runs(33, 30));
  });
});

describe('formatting any text', () => {
  test('moves nothing but white space, loses no comment, and twice is as good as once', PATIENT, () => {
    fc.assert(fc.property(anyText, (before) => {
      const text = formatted(before);
      expect(wordsIn(text)).toBe(wordsIn(before));
      expect(recordsIn(text)).toEqual(recordsIn(before));
      expect(problemsIn(text)).toEqual(problemsIn(before));
      expect(commentsIn(text)).toEqual(commentsIn(before));
      expect(formatted(text)).toBe(text);
      expect(print(parse(uri, text))).toBe(text);
    }), runs(34, 80));
  });

  test.each(Object.keys(goodFiles))('%s keeps its records', (name) => {
    const before = goodFiles[name] as string;
    const text = formatted(before);
    expect(recordsIn(text)).toEqual(recordsIn(before));
    expect(commentsIn(text)).toEqual(commentsIn(before));
    expect(formatted(text)).toBe(text);
  });
});

test('the edits are small: none holds a word', PATIENT, () => {
  fc.assert(fc.property(damaged, ({ after }) => {
    for (const { range, text } of formatEdits(parse(uri, after))) {
      const replaced = after.slice(range.start, range.end);
      if (!/^[ \t]*$/.test(replaced) || !/^ *$/.test(text) || replaced === text) expect(`${replaced} → ${text}`).toBe('white space alone');
    }
  }), runs(35, 20));
});
