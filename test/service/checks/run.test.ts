import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, test } from 'vitest';
import { optionCheck, wholeCheck } from '../../../src/service/checks/check.js';
import { allChecks } from '../../../src/service/checks/index.js';
import { runChecks } from '../../../src/service/checks/run.js';
import { viewOf } from '../../../src/service/checks/view.js';
import { oneOption } from '../../../src/service/checks/one-option.js';
import { readMarks } from '../../../src/tools/marked-example.js';
import { serviceOver, uriOf } from '../../support/fixture.js';

const THIS = 'this.yard';
const folder = path.join(import.meta.dirname, '../../../samples');
const samples = Object.fromEntries(readdirSync(folder).filter((file) => file.endsWith('.yard')).map((file) => [file, readFileSync(path.join(folder, file), 'utf8')]));
const codesIn = (files: Readonly<Record<string, string>>, name = THIS) => [...serviceOver(files).service.allDiagnostics(uriOf(name)).values()].flat().map(({ code }) => code);

describe('the checks of the trade', () => {
  test.each([
    ['heron-pump.yard', []],
    ['kestrel-flat.yard', ['ranges-overlap']],
    ['pilgrim-v6.yard', ['compression-uneven', 'ranges-overlap', 'dearer-than-worth']],
    ['tarn-inline.yard', ['compression-uneven', 'dearer-than-worth']],
    ['shop.yard', []],
  ])('say of %s only what is true', (name, codes) => {
    expect(codesIn(samples, name)).toEqual(codes);
  });

  test('are silent until a file is an estimate with work', () => {
    const { text } = readMarks(oneOption.example);
    expect(codesIn({ [THIS]: text })).toEqual(['one-option']);
    expect(codesIn({ [THIS]: text.replace(/^estimate "E"\n.*\n.*\n/m, '') })).toEqual([]);
  });

  test('are not asked of what can’t be read', () => {
    const { text } = readMarks(oneOption.example);
    expect(codesIn({ [THIS]: text.replace('2 h', '2,5 h') })).toEqual([expect.stringMatching(/comma/)]);
  });

  test('one that throws takes nothing along, and says so on the first line', () => {
    const { service } = serviceOver({ [THIS]: readMarks(oneOption.example).text });
    const { resolved, comparison } = service.weighing(uriOf(THIS));
    const view = viewOf(resolved, comparison);
    if (view === undefined) throw new Error('no view');
    const broken = [
      optionCheck({ ...oneOption, code: 'broken-one' }, () => { throw new Error('of an option'); }),
      wholeCheck({ ...oneOption, code: 'broken-two' }, () => { throw new Error('of the whole'); }),
      ...allChecks,
    ];
    const found = runChecks(broken, view, true);
    expect(found.map(({ code }) => code)).toEqual(['check-failed', 'check-failed', 'one-option']);
    expect(found[0]?.message.what).toBe('The check broken-one stopped with “of an option”.');
    expect(found[0]).toMatchObject({ severity: 'advice', at: { start: 0, end: 'steelyard 1'.length } });
  });

  test('each tells one cause once, however many options share it', () => {
    const { text } = readMarks(allChecks.find(({ rule }) => rule.code === 'head-without-gasket')?.rule.example ?? '');
    expect(codesIn({ [THIS]: `${text}option three "Mend it too"\n  warranty 3 mo\n  do head\n` })).toEqual(['head-without-gasket']);
  });

  test('are one module each, with codes of their own', () => {
    const codes = allChecks.map(({ rule }) => rule.code);
    expect(new Set(codes).size).toBe(codes.length);
    const modules = readdirSync(path.join(import.meta.dirname, '../../../src/service/checks')).map((file) => file.replace('.ts', ''));
    expect(codes.filter((code) => !modules.includes(code))).toEqual([]);
  });

  test('counts as nothing switches recognition off, and any line may answer', () => {
    const { text } = readMarks(allChecks.find(({ rule }) => rule.code === 'head-without-gasket')?.rule.example ?? '');
    expect(codesIn({ [THIS]: text.replace('" 8 h\n', '" 8 h counts as nothing\n') })).toEqual([]);
    expect(codesIn({ [THIS]: text.replace('" 8 h\n', '" 8 h counts as head-off, head-gasket\n') })).toEqual([]);
  });

  test('a head set of the way in answers for the work', () => {
    const { text } = readMarks(allChecks.find(({ rule }) => rule.code === 'head-without-gasket')?.rule.example ?? '');
    const withWay = text.replace('" 8 h\n', '" 8 h with raised\n').replace('option one', 'access raised "Raised"\n  remove 1 h\n  refit 1 h\n  part "Head gasket" 30.00 new\noption one');
    expect(codesIn({ [THIS]: withWay })).toEqual([]);
  });

  test('a shared job is told of at the option', () => {
    const { text } = readMarks(allChecks.find(({ rule }) => rule.code === 'head-without-gasket')?.rule.example ?? '');
    const job = /labour head.*\n {2}because seen\n.*\n/.exec(text)?.[0] ?? '';
    const files = { 'jobs.yard': `steelyard 1\n${job.replace('  because seen\n', '')}`, [THIS]: text.replace(job, '').replace('steelyard 1', 'steelyard 1\nuse "jobs.yard"') };
    const { service } = serviceOver(files);
    expect(service.diagnostics(uriOf(THIS)).filter(({ code }) => code === 'head-without-gasket')).toHaveLength(1);
    expect(service.allDiagnostics(uriOf(THIS)).get(uriOf('jobs.yard')) ?? []).toEqual([]);
  });
});
