import { describe, expect, test } from 'vitest';
import { allRules, problemsIn } from '../../src/tools/all-rules.js';
import { emitManual } from '../../src/tools/emit-manual.js';
import { readMarks, underlined } from '../../src/tools/marked-example.js';
import { allKinds, units, type Field } from '../../src/vocabulary/index.js';

const manual = emitManual()['schemas/manual.md'] as string;
const headings = [...manual.matchAll(/^#+ (.*)$/gm)].map((found) => found[1] as string);

describe('the manual', () => {
  test('every kind, unit, fact and word is in it', () => {
    for (const { word } of allKinds) expect(headings).toContain(word);
    for (const { word } of units) expect(manual).toContain(`| \`${word}\` |`);
    for (const kind of allKinds) {
      for (const field of Object.values(kind.fields) as Field[]) {
        if (field.lead !== undefined) expect(manual).toContain(`\`${field.lead} `);
        for (const word of Object.keys(field.value.words ?? {})) expect(manual).toContain(`\`${word}\``);
      }
      expect(manual).toContain(kind.example);
    }
  });

  test('headings are anchors, so none stands twice, and every link leads to one', () => {
    const anchors = headings.map((heading) => heading.toLowerCase().replace(/[^a-z0-9 -]/g, '').replace(/ /g, '-'));
    expect(new Set(anchors).size).toBe(anchors.length);
    for (const [, target] of manual.matchAll(/\]\(#([^)]*)\)/g)) expect(anchors).toContain(target);
  });

  test('it can’t hide anything: no control and no invisible characters', () => {
     
    expect(manual).not.toMatch(/[\u0000-\u0009\u000b-\u001f\u007f\u0085\u200b-\u200f\u2028-\u202e\u2060-\u2069\ufeff]/);
  });

  test('it speaks to a shop writer', () => {
    expect(manual).not.toMatch(/\b(token|record|parser?|boolean|regex|undefined|schema|syntax|integer)s?\b/i);
  });
});

describe('every rule’s example', () => {
  test.each(allRules().map((rule) => [rule.code, rule] as const))('%s is found at its marks and explained', (code, rule) => {
    const { text, start, end } = readMarks(rule.example);
    const found = problemsIn(text).filter((problem) => problem.code === code);
    // No example holds two blocks with one text, so a block is found by it.
    expect(found.map(({ at }) => ({ start: text.indexOf(at.block.text) + at.start, end: text.indexOf(at.block.text) + at.end }))).toEqual([{ start, end }]);
    expect(headings).toContain(code);
  });

  test('codes are unique', () => {
    const codes = allRules().map((rule) => rule.code);
    expect(new Set(codes).size).toBe(codes.length);
  });
});

test('marks are shown under what they mark', () => {
  expect(underlined(readMarks('note "a"\n«note» "b"\n'))).toBe('note "a"\nnote "b"\n^^^^');
  expect(underlined(readMarks('« \t»worth 4'))).toBe(' [tab]worth 4\n^^^^^^');
});
