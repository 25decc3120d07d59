import { describe, expect, test } from 'vitest';
import { allChecks } from '../../../src/service/checks/index.js';
import * as allowRules from '../../../src/service/checks/allow-rules.js';
import type { Diagnostic } from '../../../src/service/index.js';
import { readMarks } from '../../../src/tools/marked-example.js';
import { serviceOver, uriOf } from '../../support/fixture.js';

const THIS = 'this.yard';
const rules = [...Object.values(allowRules), ...allChecks.map((check) => check.rule)];

function diagnose(text: string): readonly Diagnostic[] {
  return [...serviceOver({ [THIS]: text }).service.allDiagnostics(uriOf(THIS)).values()].flat();
}

/** What an example says beside its own rule, where that can't be helped. */
const besides: Readonly<{ [code: string]: readonly string[] }> = { 'allow-shape': ['thousands-comma'] };

describe('every check’s example shows it, at the marked place, and nothing else', () => {
  test.each(rules.map((rule) => [rule.code, rule] as const))('%s', (code, rule) => {
    expect(rule.example).toMatch(/^[^«»]*«[^«»]*»[^«»]*$/);
    const { text, start, end } = readMarks(rule.example);
    const said = diagnose(text).map((one) => `${one.range.start}–${one.range.end} ${one.code}`);
    const own = `${start}–${end} ${code}`;
    expect(said.filter((one) => one === own)).toEqual([own]);
    expect(said.filter((one) => one !== own).map((one) => one.split(' ')[1])).toEqual(besides[code] ?? []);
  });
});
