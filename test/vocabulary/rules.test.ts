import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, test } from 'vitest';
import { limits } from '../../src/language/index.js';
import { allRules, type Diagnostic } from '../../src/service/index.js';
import * as allowRules from '../../src/service/checks/allow-rules.js';
import { allChecks } from '../../src/service/checks/index.js';
import { readMarks } from '../../src/tools/marked-example.js';
import { readFixture, serviceOver, uriOf } from '../support/fixture.js';

const THIS = 'this.yard';

/** What an example says beside its own rule, where that can't be helped. */
const besides: Readonly<Record<string, { readonly also: readonly string[]; readonly because: string }>> = {
  'allow-shape': { also: ['thousands-comma'], because: 'it is about a line that can’t be read' },
  'too-many-problems': { also: Array.from({ length: limits.problems + 1 }, () => 'unknown-kind'), because: 'that is what it is about' },
  'unrepaired-alone': { also: ['estimate-line-missing'], because: 'a whole estimate would have more to say' },
  'too-deep': { also: ['unknown-fact'], because: 'nothing may stand as deep as that, so the lines above can’t be right either' },
};

/** Files that examples use. */
const shared = Object.fromEntries(Array.from({ length: 24 }, (_, i) => [`shared-${i + 1}.yard`, 'steelyard 1\n']));

function diagnose(text: string): readonly Diagnostic[] {
  const { service } = serviceOver({ ...shared, [THIS]: text });
  return [...service.allDiagnostics(uriOf(THIS)).values()].flat();
}

describe('every rule’s example shows that rule, at the marked place, and nothing else', () => {
  test.each(allRules.map((rule) => [rule.code, rule] as const))('%s', (code, rule) => {
    expect(rule.example).toMatch(/^[^«»]*«[^«»]*»[^«»]*$/);
    const { text, start, end } = readMarks(rule.example);
    const said = diagnose(text).map((one) => `${one.range.start}–${one.range.end} ${one.code}`);
    const own = `${start}–${end} ${code}`;
    expect(said.filter((one) => one === own)).toEqual([own]);
    expect(said.filter((one) => one !== own).map((one) => one.split(' ')[1])).toEqual(besides[code]?.also ?? []);
  });

  test('no exception is listed in vain', () => {
    expect(Object.keys(besides).filter((code) => !allRules.some((rule) => rule.code === code))).toEqual([]);
  });
});

describe('every fix mends its example', () => {
  const fixes = allRules.flatMap((rule) => {
    const { text } = readMarks(rule.example);
    const fix = diagnose(text).find((one) => one.code === rule.code)?.fix;
    return fix === undefined ? [] : [{ code: rule.code, title: fix.title, text, fix }];
  });

  test.each(fixes)('$code: $title', ({ code, text, fix }) => {
    expect(fix.place.uri).toBe(uriOf(THIS));
    const mended = text.slice(0, fix.place.range.start) + fix.text + text.slice(fix.place.range.end);
    expect(diagnose(mended).map((one) => one.code)).not.toContain(code);
  });

  test('every rule that offers a fix shows it in its example', () => {
    const shown = new Set(fixes.map(({ code }) => code));
    expect(allRules.filter((rule) => rule.fix !== undefined && !shown.has(rule.code)).map(({ code }) => code)).toEqual([]);
  });
});

describe('rules', () => {
  test('have codes of their own, in small letters and hyphens', () => {
    const codes = allRules.map(({ code }) => code);
    expect(new Set(codes).size).toBe(codes.length);
    expect(codes.filter((code) => !/^[a-z]+(-[a-z]+)*$/.test(code))).toEqual([]);
  });

  test('have titles of their own', () => {
    expect(new Set(allRules.map(({ title }) => title)).size).toBe(allRules.length);
  });

  test('are all met in the wrong files, but for those that only their examples show', () => {
    const folder = path.join(import.meta.dirname, '../corpus/err');
    const marks = readdirSync(folder).flatMap((file) => [...readFileSync(path.join(folder, file), 'utf8').matchAll(/^\s*(?:\^+|\|) ([a-z-]+)/gm)].map((match) => match[1] as string));
    const met = new Set(marks);
    const ofTheTrade = new Set([...allChecks.map((check) => check.rule), ...Object.values(allowRules)].map(({ code }) => code)); // test/service/checks
    expect(allRules.map(({ code }) => code).filter((code) => !met.has(code) && !ofTheTrade.has(code))).toEqual(['long-file', 'too-many-problems', 'use-too-many', 'too-long-in-all', 'too-many-chances', 'too-many-options', 'too-many-ways']);
  });
});

describe('messages', () => {
  const folder = path.join(import.meta.dirname, '../corpus/err');
  const corpus = readdirSync(folder).flatMap((file) => {
    const { files } = readFixture(readFileSync(path.join(folder, file), 'utf8'));
    return [...serviceOver(files).service.allDiagnostics(uriOf(files[0]?.name ?? '')).values()].flat();
  });
  const all = [...corpus, ...allRules.flatMap((rule) => diagnose(readMarks(rule.example).text))];

  test('say what is wrong, why it matters and what to write, in whole sentences', () => {
    const poor = all.filter(({ message: { what, why, instead } }) => !/^["“(]?\S.*[.]$/s.test(what) || !/^[A-Z].*\.$/s.test(why) || instead.length < 7);
    expect(poor.map(({ code, text }) => `${code}: ${text}`)).toEqual([]);
  });

  test('hold no hole, no type name and no line end', () => {
    const poor = all.filter(({ text }) => /undefined|null|NaN|\[object|\n|\$\{| {2}|\bis is\b|[^.]\.\.[^./]/.test(text));
    expect(poor.map(({ code, text }) => `${code}: ${text}`)).toEqual([]);
  });

  test('stay short', () => {
    expect(all.filter(({ text }) => text.length > 420).map(({ code, text }) => `${code} ${text.length}: ${text}`)).toEqual([]);
  });
});
