import { describe, expect, test } from 'vitest';
import { allChecks } from '../../../src/service/checks/index.js';
import { readMarks } from '../../../src/tools/marked-example.js';
import { serviceOver, uriOf } from '../../support/fixture.js';

const THIS = 'this.yard';
const codes = (text: string, more: Readonly<Record<string, string>> = {}) => serviceOver({ ...more, [THIS]: text }).service.diagnostics(uriOf(THIS)).map(({ code }) => code);

const bare = (behind: string, above = '') => `steelyard 1\n${above}part pump "Coolant pump" 64.30${behind}\n`;

describe('allowing a problem where it stands', () => {
  test('behind the line, or on the line above', () => {
    expect(codes(bare(''))).toEqual(['condition-missing']);
    expect(codes(bare('  # allow condition-missing: told on the phone'))).toEqual([]);
    expect(codes(bare('', '# allow condition-missing: told on the phone\n'))).toEqual([]);
    expect(codes(bare('', '# allow condition-missing: told on the phone\n\n# and a remark\n'))).toEqual([]);
    expect(codes('steelyard 1\noption one "One"\n  # allow condition-missing: as it is\n  part "Pump" 64.30\n  part "Belt" 9.00\n')).toEqual(['condition-missing']);
  });

  test('on no other line', () => {
    expect(codes(`${bare('')}# allow condition-missing: too late\n`)).toEqual(['condition-missing', 'allow-unused']);
    expect(codes('steelyard 1\n# allow condition-missing: the next line only\npart a "A" 1.00 new\npart b "B" 1.00\n')).toEqual(['allow-unused', 'condition-missing']);
  });

  test('with a reason', () => {
    expect(codes(bare(' # allow condition-missing'))).toEqual(['allow-without-reason']);
    expect(codes(bare(' # allow condition-missing:  '))).toEqual(['allow-without-reason']);
  });

  test('but not a line that can’t be read', () => {
    expect(codes(bare(' new # allow thousands-comma: as printed').replace('64.30', '1,064.30'))).toEqual(['thousands-comma', 'allow-shape']);
  });

  test('and a plain remark is a plain remark', () => {
    expect(codes(bare(' new # allow time for curing'))).toEqual([]);
    expect(codes(bare(' new # we allow no-one in'))).toEqual([]);
    expect(codes(bare(' new # allow tme: x'))).toEqual(['allow-unknown']);
  });

  test('in a shared file, whose own file it is told of', () => {
    const shared = 'steelyard 1\npart pump "Pump" 64.30 # allow condition-missing: asked for each time\npart belt "Belt" 9.00 new # allow condition-missing: not needed\n';
    const { service } = serviceOver({ [THIS]: 'steelyard 1\nuse "shared.yard"\n', 'shared.yard': shared });
    expect([...service.allDiagnostics(uriOf(THIS)).values()].flat()).toEqual([]);
    expect(service.diagnostics(uriOf('shared.yard')).map(({ code }) => code)).toEqual(['allow-unused']);
  });

  test('is not called useless while a line can’t be read', () => {
    expect(codes('steelyard 1\nestimate "E"  # allow no-start: asked\nlabour "x" 1,000 h\noption one "One"\n  labour "Work" 2 h\n')).not.toContain('allow-unused');
  });

  test.each(allChecks.map((check) => [check.rule.code, check.rule] as const))('%s', (code, rule) => {
    const { text, start } = readMarks(rule.example);
    const lineStart = text.lastIndexOf('\n', start) + 1;
    expect(codes(`${text.slice(0, lineStart)}# allow ${code}: as agreed\n${text.slice(lineStart)}`)).toEqual([]);
  });
});

describe('what the shop makes of problems', () => {
  const { service } = serviceOver({ [THIS]: `${bare('')}part belt "Belt" 1,200.00 new\n` });
  const seen = () => service.diagnostics(uriOf(THIS)).map(({ code, severity }) => `${code} ${severity}`);

  test('changes how much they matter, or switches them off, and back', () => {
    expect(seen()).toEqual(['condition-missing warning', 'thousands-comma error']);
    service.configure({ severities: { 'condition-missing': 'error' } });
    expect(seen()).toEqual(['condition-missing error', 'thousands-comma error']);
    service.configure({ severities: { 'condition-missing': 'off' } });
    expect(seen()).toEqual(['thousands-comma error']);
    service.configure({ severities: {} });
    expect(seen()).toHaveLength(2);
  });

  test('but a line that can’t be read stays an error', () => {
    service.configure({ severities: { 'thousands-comma': 'off', 'condition-missing': 'advice', nonsense: 'error' } });
    expect(seen()).toEqual(['condition-missing advice', 'thousands-comma error']);
  });

  test('what is switched off and allowed is not told as useless', () => {
    const { service: other } = serviceOver({ [THIS]: bare(' # allow condition-missing: told on the phone') });
    other.configure({ severities: { 'condition-missing': 'off' } });
    expect(other.diagnostics(uriOf(THIS))).toEqual([]);
  });
});

test('a diagnostic leads to its section of the manual', () => {
  const { service } = serviceOver({ [THIS]: bare('') });
  expect(service.diagnostics(uriOf(THIS)).map(({ href }) => href)).toEqual(['schemas/manual.md#condition-missing']);
});
