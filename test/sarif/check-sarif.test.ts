import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, test } from 'vitest';
import { allRules } from '../../src/service/index.js';
import { estimateWith, HOSTILE } from '../support/hostile.js';
import { readFixture, serviceOver, uriOf } from '../support/fixture.js';
import { sarifOf } from './in-memory.js';
import { textIn, wrongIn } from './standard.js';

const THIS = 'this.yard';
const shared = Object.fromEntries(Array.from({ length: 24 }, (_, i) => [`shared-${i + 1}.yard`, 'steelyard 1\n']));
const examples = allRules.map((rule) => [rule.code, rule.example.replace(/[«»]/g, '')] as const);

const folder = path.join(import.meta.dirname, '../corpus/err');
const corpus = readdirSync(folder).map((file) => [file, Object.fromEntries(readFixture(readFileSync(path.join(folder, file), 'utf8')).files.map(({ name, text }) => [name, text]))] as const);

describe('the standard, as the tests read it', () => {
  // SARIF 2.1.0, 3.30.2, the file of its note 1 and its examples 1, 5 and 6.
  const file = 'abcd\r\nefg\r\nhijk\r\nlmn\r\n';
  test.each([
    [{ startLine: 1, startColumn: 2, endLine: 1, endColumn: 4 }, 'bc'],
    [{ startLine: 2, startColumn: 1, endLine: 3, endColumn: 1 }, 'efg\r\n'],
    [{ startLine: 1, startColumn: 2, endLine: 1, endColumn: 2 }, ''],
  ])('%j is %j, with and without a byte order mark', (region, text) => {
    for (const whole of [file, `\ufeff${file}`]) {
      const { start, end } = textIn(whole, region);
      expect(whole.slice(start, end)).toBe(text);
    }
  });
});

describe('every rule’s example', () => {
  test.each(examples)('%s is told as the standard has it, with the rule described', (code, text) => {
    const log = sarifOf({ [THIS]: text, ...shared });
    expect(wrongIn(log)).toEqual([]);
    const [run] = log.runs;
    const rule = run?.tool.driver.rules.find(({ id }) => id === code);
    const meant = allRules.find((one) => one.code === code);
    expect(rule?.defaultConfiguration?.level).toBe(meant?.severity === 'advice' ? 'note' : meant?.severity);
    expect((rule?.fullDescription?.text.length ?? 0) > (rule?.shortDescription?.text.length ?? 0)).toBe(true);
    expect(rule?.help?.text).toContain(`schemas/manual.md#${code}`);
    expect(run?.results.map(({ ruleId }) => ruleId)).toContain(code);
  });
});

describe('every wrong file of the corpus', () => {
  test.each(corpus)('%s: ranges and fixes are where the service has them', (_, texts) => {
    const log = sarifOf(texts);
    expect(wrongIn(log)).toEqual([]);
    const [run] = log.runs;
    const { service } = serviceOver(texts);
    const own = [...service.allDiagnostics(uriOf(Object.keys(texts)[0] as string)).values()].flat();
    expect(run?.results).toHaveLength(new Set(own.map((one) => `${one.uri} ${one.range.start} ${one.range.end} ${one.code}`)).size);
    for (const [i, { ruleId, locations, fixes = [], relatedLocations = [] }] of (run?.results ?? []).entries()) {
      const [at] = locations;
      const uri = at?.physicalLocation.artifactLocation.uri ?? '';
      const whole = texts[decodeURIComponent(uri)] ?? '';
      const region = at?.physicalLocation.region;
      const range = region === undefined ? undefined : textIn(whole, region);
      const meant = own.find((one) => one.code === ruleId && one.uri === uriOf(uri) && one.range.start === range?.start && one.range.end === range.end);
      // A range may begin at the mark itself, which the standard has no column for.
      if (meant === undefined) expect(whole.startsWith('\ufeff') && range?.start === 1, `result ${i}, ${ruleId} at ${JSON.stringify(range)}`).toBe(true);
      expect(fixes).toHaveLength(meant?.fix === undefined ? 0 : 1);
      expect(relatedLocations).toHaveLength(meant?.related === undefined ? 0 : 1);
      const [change] = fixes[0]?.artifactChanges ?? [];
      const [replacement] = change?.replacements ?? [];
      if (change === undefined || replacement === undefined || meant?.fix === undefined) continue;
      const { start, end } = textIn(texts[change.artifactLocation.uri] ?? '', replacement.deletedRegion);
      expect({ start, end, text: replacement.insertedContent?.text }).toEqual({ ...meant.fix.place.range, text: meant.fix.text });
    }
  });
});

describe('fingerprints', () => {
  const wrong = 'steelyard 1\npart a "A" 1,250.00 new\npart b "B" 1,250.00 new\n';
  const printsOf = (text: string) => (sarifOf({ [THIS]: text }).runs[0]?.results ?? []).map(({ ruleId, partialFingerprints }) => [ruleId, ...Object.entries(partialFingerprints ?? {}).flat()].join(' '));

  test('stay when lines move and columns are lined up anew', () => {
    const moved = 'steelyard 1\n\n# a word\n\npart b "B"      1,250.00 new\r\npart a   "A" 1,250.00 new\n';
    expect(printsOf(moved).sort()).toEqual(printsOf(wrong).sort());
    expect(printsOf(wrong)).toHaveLength(2);
  });

  test('change when the words of the line do, and tell equal lines apart', () => {
    expect(printsOf(wrong.replace('a "A"', 'a "Other"'))[0]).not.toBe(printsOf(wrong)[0]);
    const twice = printsOf('steelyard 1\npart "A" 1,250.00 new\npart "A" 1,250.00 new\n').filter((one) => one.startsWith('thousands-comma'));
    expect(twice).toHaveLength(2);
    expect(new Set(twice).size).toBe(2);
  });

  test.each(corpus)('%s: no two findings of a file have the same', (_, texts) => {
    const prints = (sarifOf(texts).runs[0]?.results ?? []).map(({ ruleId, locations, partialFingerprints }) => JSON.stringify([ruleId, locations[0]?.physicalLocation.artifactLocation.uri, partialFingerprints]));
    expect(new Set(prints).size).toBe(prints.length);
  });
});

describe('a file can put nothing of its own into a build server’s pages', () => {
  test.each(HOSTILE.map((text) => [JSON.stringify(text), text] as const))('%s in every place stays text', (_, text) => {
    const log = sarifOf({ [THIS]: estimateWith(() => text) });
    expect(wrongIn(log)).toEqual([]);
    for (const says of (log.runs[0]?.results ?? []).map(({ message }) => message.text)) expect(says).not.toMatch(/[\u0000-\u001f\u007f-\u009f\u202a-\u202e\u2066-\u2069]/);
  });

  test('links, places to fill in and control characters of a file are text', () => {
    const log = sarifOf({ [THIS]: 'steelyard 1\noption a "A"\n  do [x](https://e.example/{0})\u001b[31m, {1}\u202e\n' });
    expect(wrongIn(log)).toEqual([]);
    expect(JSON.stringify(log)).not.toMatch(/\\u001b|\u202e/);
    const said = (log.runs[0]?.results ?? []).map(({ message }) => message.text).join('\n');
    expect(said).not.toContain('](');
  });
});
