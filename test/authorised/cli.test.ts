import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { run } from '../../src/cli/run.js';

const THEN = `steelyard 1
shop "Bench"
  currency USD
  rate bench 100.00
  overrun 10% at most 50.00
option repair "Repair the head"
  labour "Rear head" 8 h
option used "Fit a used engine"
  labour "Swap" 12 h
`;
const NOW = `${THEN.replace('8 h', '8.4 h')}authorised 800.00 for repair on 2026-11-25 by "the owner" phone\n`;

let folder: string;
const git = (...args: readonly string[]) => spawnSync('git', ['-c', 'user.name=A', '-c', 'user.email=a@example.invalid', ...args], { cwd: folder, encoding: 'utf8', env: { ...process.env, GIT_CONFIG_GLOBAL: '/dev/null', GIT_CONFIG_SYSTEM: '/dev/null' } });
beforeAll(() => {
  folder = mkdtempSync(path.join(tmpdir(), 'steelyard-authorised-'));
  writeFileSync(path.join(folder, 'job.yard'), THEN);
  git('init', '-q');
  git('add', '.');
  git('commit', '-q', '-m', 'as authorised');
  writeFileSync(path.join(folder, 'old.yard'), THEN);
  writeFileSync(path.join(folder, 'job.yard'), NOW);
  writeFileSync(path.join(folder, 'broken.yard'), NOW.replace('8.4 h', '8,4 h'));
});
afterAll(() => rmSync(folder, { recursive: true }));

function steelyard(...args: readonly string[]) {
  let out = '';
  let err = '';
  const code = run(args, '1.2.3', { cwd: folder, styled: false, stdin: () => NOW, out: (text) => void (out += text), err: (text) => void (err += text), today: '2026-11-26' });
  return { code, out, err };
}

describe('quote --supplement', () => {
  test.each([['a file', 'old.yard'], ['a revision', 'HEAD'], ['a file in a revision', 'HEAD:job.yard']])('since %s', (_, since) => {
    const { code, out, err } = steelyard('quote', 'job.yard', '--supplement', '--since', since);
    expect({ code, err }).toEqual({ code: 0, err: '' });
    expect(out).toContain('SUPPLEMENT TO A WRITTEN ESTIMATE');
    expect(out).toMatch(/- Rear head \(changed\)\n {4}Before: {6}\$800\.00\n {4}Now: {9}\$840\.00\n {4}Difference: {2}\+\$40\.00\n- All of it, with what stays as it was\n {4}Before: {6}\$800\.00\n {4}Now: {9}\$840\.00/);
  });

  test('without a version says what to name; in every form; from standard input', () => {
    const { code, out, err } = steelyard('quote', 'job.yard', '--supplement');
    expect(code).toBe(0);
    expect(out).toContain('What is new is not listed line by line');
    expect(err).toBe('What is new is not listed. Name the version that was authorised to list it: --since OLD.yard, or --since REV:path from the repository.\n');
    expect(steelyard('quote', '-', '--supplement', '--since', 'old.yard', '--as', 'html').out).toMatch(/^<!doctype html>[^]*Supplement to a written estimate/i);
    expect(steelyard('quote', 'job.yard', '--supplement', '--since', 'old.yard', '--output', 'add.md').err).toBe('Wrote add.md\n');
    expect(readFileSync(path.join(folder, 'add.md'), 'utf8')).toMatch(/^\*\*Bench\*\*\n\n# Supplement to a written estimate/);
  });

  test.each([
    [['quote', 'old.yard', '--supplement'], 2, 'Nothing is authorised, so there is nothing to add to. For the whole of it: steelyard quote old.yard\n'],
    [['quote', 'job.yard', '--supplement', '--option', 'used'], 2, 'Nothing is authorised for used, so there is nothing to add to. For the whole of it: steelyard quote job.yard --option used\n'],
    [['quote', 'job.yard', '--supplement', '--option', 'usd'], 2, 'There is no option usd. Did you mean used?'],
    [['quote', 'job.yard', '--supplement', '--since', 'none:job.yard'], 2, 'none'],
    [['quote', 'job.yard', '--since', 'old.yard'], 2, '--since goes with --supplement: a quote is of the file as it is.\n'],
    [['weigh', 'job.yard', '--supplement'], 2, '--supplement belongs to quote.\n'],
    [['quote', 'broken.yard', '--supplement'], 1, 'No supplement was made: Repair the head rests on a line'],
    [['quote', 'job.yard', '--supplement', '--since', 'broken.yard'], 1, 'What is new is not listed, and it says why in its place.\n'],
  ])('%j ends with %i', (args, wanted, says) => {
    const { code, err } = steelyard(...args);
    expect(code).toBe(wanted);
    expect(err).toContain(says);
  });
});

describe('weigh', () => {
  test('tells state, authorisation and room', () => {
    const { out } = steelyard('weigh', 'job.yard');
    expect(out).toMatch(/^Authorised since 2026-11-25: repair\n/);
    expect(out.replace(/\s+/g, ' ')).toContain('Authorised “Repair the head”: 800.00 was authorised on 2026-11-25 by the owner by telephone. Today’s total, tax and core charges included, is 840.00: 40.00 above it, of a room of 50.00; 10.00 is left.');
    expect(JSON.parse(steelyard('weigh', 'job.yard', '--json').out)).toMatchObject({ state: { state: 'authorised', asOf: '2026-11-26' }, authorised: [{ for: 'repair', mustAsk: false }] });
    expect(steelyard('weigh', 'job.yard', '--explain', 'repair.room-left').out).toMatch(/^Room left: 10\.00 {2}the first less the others/);
  });
});
