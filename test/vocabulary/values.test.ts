import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { parse, type Problem } from '../../src/language/index.js';
import { exampleAt, placesOf } from '../../src/tools/places.js';
import { allKinds, closest, isDate, readBlock, recordJson, units, type Field, type Kind, type Record } from '../../src/vocabulary/index.js';

function read(text: string): { readonly records: readonly Record[]; readonly problems: readonly Problem[] } {
  const blocks = parse('a.yard', text).blocks.map(readBlock);
  return { records: blocks.flatMap(({ records }) => records), problems: blocks.flatMap(({ problems }) => problems) };
}

const codes = (text: string) => read(text).problems.map(({ code }) => code);

/** The innermost record of a text in which each line stands below the one before. */
function innermost(records: readonly Record[]): Record {
  const last = records[records.length - 1] as Record;
  return last.children.length === 0 ? last : innermost(last.children);
}

/** A head of this kind and whatever must stand above it. */
function headOf(kind: Kind): { readonly text: string; readonly indent: string } {
  const place = placesOf(kind)[0] ?? [];
  const lines = [...place, kind].map((one, depth) => `${'  '.repeat(depth)}${one.word}${one.name === 'required' ? ' x' : ''}${one.title === 'required' ? ' "X"' : ''}`);
  return { text: lines.join('\n'), indent: '  '.repeat(place.length + 1) };
}

describe('every kind’s example is read without problems wherever it may stand', () => {
  const cases = allKinds.flatMap((kind) => placesOf(kind).map((place) => ({ where: [...place, kind].map(({ word }) => word).join(' > '), text: exampleAt(kind, place) })));
  test.each(cases)('$where', ({ text }) => {
    expect(codes(text)).toEqual([]);
  });
});

describe('every slot takes every example and every word of its value', () => {
  const cases = allKinds.flatMap((kind) => [...kind.leads].map(([lead, key]) => ({ slot: `${kind.word}: ${lead}`, kind, lead, key })));
  test.each(cases)('$slot', ({ kind, lead, key }) => {
    const field = kind.fields[key] as Field;
    const { text, indent } = headOf(kind);
    for (const value of [...field.value.examples, ...Object.keys(field.value.words ?? {})]) {
      const below = read(`${text}\n${indent}${lead} ${value}\n`);
      const onHead = read(`${text} ${lead} ${value}\n`);
      expect([...below.problems, ...onHead.problems].map(({ code }) => code)).toEqual([]);
      const [a, b] = [innermost(below.records), innermost(onHead.records)];
      expect(a.values).toHaveProperty([key]);
      expect(recordJson(a)).toEqual(recordJson(b));
    }
  });
});

describe('numbers', () => {
  const whole = fc.oneof(fc.constant('0'), fc.bigInt({ min: 1n, max: 999_999_999_999n }).map(String));
  const number = fc.oneof(whole, fc.tuple(whole, fc.stringMatching(/^\d{1,6}$/)).map(([a, b]) => `${a}.${b}`));
  const price = (text: string) => (innermost(read(`part p "P" ${text} new\n`).records).values as { price?: { likely: { toFixed: () => string } } }).price?.likely.toFixed();
  const plain = (text: string) => (text.includes('.') ? text.replace(/\.?0+$/, '') : text);

  test('keep every digit that is written', () => {
    fc.assert(fc.property(number, (text) => price(text) === plain(text)), { numRuns: 100 });
  });

  test('are refused in any other form, once', () => {
    fc.assert(fc.property(number, fc.constantFrom('-', '+', '$', '€', '£'), (text, sign) => {
      expect(codes(`part p "P" ${sign}${text} new\n`)).toHaveLength(1);
      expect(codes(`part p "P" ${text.split('.')[0] ?? ''},000 new\n`)).toHaveLength(1);
      expect(codes(`part p "P" ${text}e3 new\n`)).toEqual(['not-a-number']);
      expect(codes(`part p "P" ${text.split('.')[0] ?? ''}0000000000000 new\n`)).toEqual(['number-too-long']);
    }), { numRuns: 40 });
  });

  test('three are read in order only', () => {
    fc.assert(fc.property(fc.tuple(fc.nat(99), fc.nat(99), fc.nat(99)), ([a, b, c]) => {
      expect(codes(`labour l "L" ${a} / ${b} / ${c} h\n`)).toEqual(a <= b && b <= c ? [] : ['figures-out-of-order']);
    }), { numRuns: 60 });
  });
});

describe('units', () => {
  const slots = { time: 'labour x "X"\n  takes 1 UNIT', wait: 'part x "X"\n  arrives 1 UNIT', distance: 'vehicle "X"\n  odometer 1 UNIT', pressure: 'finding "X"\n  compression 1 UNIT' };
  test.each(Object.entries(slots))('a slot for %s takes its own and no other', (dimension, text) => {
    for (const unit of units) expect(codes(text.replace('UNIT', unit.word)), unit.word).toEqual(unit.dimension === dimension ? [] : ['wrong-unit']);
  });

  test.each([['hrs', 'h'], ['hour', 'h'], ['days', 'd'], ['weeks', 'wk'], ['months', 'mo'], ['litres', 'L'], ['l', 'L'], ['miles', 'mi'], ['KM', 'km'], ['lbs', 'lb'], ['PSI', 'psi']])('%s is told to be %s', (written, meant) => {
    const [problem] = read(`labour x "X" 1 ${written}\n`).problems;
    expect(problem?.code).toBe('wrong-unit');
    expect(problem?.fix?.text).toBe(meant);
  });
});

describe('dates', () => {
  test.each([['2024-02-29', true], ['2023-02-29', false], ['2100-02-29', false], ['2000-02-29', true], ['2026-04-31', false], ['2026-00-10', false], ['2026-12', true], ['2026-13', false], ['0000-01-01', false]])('%s: %s', (iso, exists) => {
    expect(isDate(iso)).toBe(exists);
  });
});

describe('near misses', () => {
  test.each([['odometre', 'odometer'], ['labor', 'labour'], ['nwe', 'new'], ['PUMP', 'pump'], ['xyz', undefined], ['', undefined], ['x'.repeat(200), undefined]])('%s', (written, meant) => {
    expect(closest(written, ['odometer', 'labour', 'new', 'pump'])).toBe(meant);
  });
});
