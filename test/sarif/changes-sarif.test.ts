import { spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { Decimal } from 'decimal.js';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import * as z from 'zod';
import { run } from '../../src/cli/run.js';
import { sarifStandard, textIn, wrongIn, type Log } from './standard.js';

const samples = path.resolve(import.meta.dirname, '../../samples');
const OLD = readFileSync(path.join(samples, 'pilgrim-v6.yard'), 'utf8');
const SHOP = readFileSync(path.join(samples, 'shop.yard'), 'utf8');

/** Edits of a day's work; every one of them changes something. */
const edits: Readonly<Record<string, (text: string) => string>> = {
  'a price, and hours that count': (text) => text.replace('cost 92.00 new', 'cost 99.00 new').replace('remove    6.0 / 6.5 / 8.0 h', 'remove    6.5 / 7.0 / 8.5 h'),
  'a line that is gone': (text) => text.replace(/labour accept [^]*?\n\n/, '').replace(', accept,', ','),
  'a line that is new, in letters beyond ASCII': (text) => `${text.replace('option rebuild "Rebuild the rear head"\n', 'option rebuild "Rebuild the rear head"\n  fee "Kühlmittel 🚗 {0} [x](https://e.example)" 20.00\n')}`,
  'another name': (text) => text.replaceAll('head-work', 'machining'),
  'an option that is gone': (text) => text.replace(/option exchange [^]*?\n\n/, ''),
  'a line that can’t be read': (text) => text.replace('cost 92.00 new', 'cost 1,092.00 new'),
};

let folder: string;
beforeAll(() => {
  folder = mkdtempSync(path.join(tmpdir(), 'steelyard-sarif-changes-'));
  mkdirSync(path.join(folder, 'jobs'));
  writeFileSync(path.join(folder, 'jobs/shop.yard'), SHOP);
  writeFileSync(path.join(folder, 'jobs/old.yard'), OLD);
  Object.values(edits).forEach((edit, i) => writeFileSync(path.join(folder, `jobs/new-${i}.yard`), edit(OLD)));
});
afterAll(() => rmSync(folder, { recursive: true }));

const wholeShape = z.object({ before: z.string(), after: z.string(), options: z.array(z.object({ name: z.string(), before: z.object({ total: z.string(), inAll: z.string() }).nullable(), after: z.object({ total: z.string(), inAll: z.string() }).nullable() })) });
const effectsShape = z.object({ effects: z.array(z.object({ option: z.string(), total: z.string(), inAll: z.string() })) });

function changesLog(args: readonly string[], cwd = 'jobs'): Log {
  let out = '';
  let err = '';
  const code = run(['changes', ...args, '--as', 'sarif'], '1.2.3', { cwd: path.join(folder, cwd), styled: false, stdin: () => '', out: (text) => void (out += text), err: (text) => void (err += text) });
  expect(code, err).toBeLessThan(2);
  const log = sarifStandard.parse(JSON.parse(out));
  expect(wrongIn(log)).toEqual([]);
  expect(out).not.toContain(folder);
  expect(log.runs[0]?.invocations).toEqual([{ executionSuccessful: true, exitCode: code }]);
  return log;
}

describe('changes as a log', () => {
  test.each(Object.keys(edits).map((title, i) => [title, `new-${i}.yard`] as const))('%s: as the standard has it, effects add up to the cent, places are right', (title, file) => {
    const [log] = changesLog(['old.yard', file]).runs;
    const results = log?.results ?? [];
    const text = readFileSync(path.join(folder, 'jobs', file), 'utf8');
    expect(results.length).toBeGreaterThan(0);
    expect(new Set(results.map(({ level }) => level))).toEqual(new Set(['note']));
    const whole = wholeShape.parse(log?.properties);
    for (const figure of ['total', 'inAll'] as const) {
      for (const { name, before, after } of whole.options) {
        const sum = results.flatMap(({ properties }) => effectsShape.parse(properties).effects).filter(({ option }) => option === name).reduce((all, one) => all.plus(one[figure]), new Decimal(0));
        expect(sum.toFixed(2), `${title}: ${figure} of ${name}`).toBe(new Decimal(after?.[figure] ?? 0).minus(before?.[figure] ?? 0).toFixed(2));
      }
    }
    for (const { properties, locations } of results) {
      const said = z.object({ change: z.object({ sort: z.string(), after: z.object({ kind: z.string() }).nullable() }) }).safeParse(properties).data?.change;
      const region = locations[0]?.physicalLocation.region;
      if (locations[0]?.physicalLocation.artifactLocation.uri !== file || region === undefined) continue;
      const { start, end } = textIn(text, region);
      if (said?.after !== null && said?.after !== undefined) expect(text.slice(start, end)).toContain(said.after.kind);
    }
  });

  test('what a file says puts no link and no place to fill in into a message', () => {
    const said = (changesLog(['old.yard', 'new-2.yard']).runs[0]?.results ?? []).map(({ message }) => message.text).join('\n');
    expect(said).toContain('Kühlmittel 🚗 {{0}} [x] (https://e.example)');
  });

  test('a line that is gone is told of the file as a whole; one that stays keeps its fingerprint when it moves', () => {
    const went = changesLog(['old.yard', 'new-1.yard']).runs[0]?.results.find(({ ruleId }) => ruleId === 'change-went');
    expect(went?.locations[0]?.physicalLocation).toEqual({ artifactLocation: { uri: 'new-1.yard', uriBaseId: '%SRCROOT%', index: 0 } });
    const text = readFileSync(path.join(folder, 'jobs/new-0.yard'), 'utf8');
    writeFileSync(path.join(folder, 'jobs/moved.yard'), text.replace('# Work', '\n\n# Work'));
    const prints = (file: string) => changesLog(['old.yard', file]).runs[0]?.results.map(({ ruleId, partialFingerprints }) => [ruleId, partialFingerprints]);
    expect(prints('moved.yard')).toEqual(prints('new-0.yard'));
  });

  test('no change is an empty list, and says so', () => {
    const [log] = changesLog(['old.yard', 'old.yard']).runs;
    expect(log?.results).toEqual([]);
    expect(JSON.stringify(log?.properties)).toContain('Nothing changed.');
  });
});

describe('in a repository', () => {
  const env = { ...process.env, GIT_CONFIG_GLOBAL: '/dev/null', GIT_CONFIG_SYSTEM: '/dev/null', GIT_AUTHOR_NAME: 'A', GIT_AUTHOR_EMAIL: 'a@e.example', GIT_COMMITTER_NAME: 'A', GIT_COMMITTER_EMAIL: 'a@e.example' };
  const git = (...args: string[]) => expect(spawnSync('git', args, { cwd: folder, env, encoding: 'utf8' }).status, args.join(' ')).toBe(0);

  test('files of a commit and of the disk have the same address, from the top of the repository', () => {
    git('init', '-q');
    git('add', 'jobs/old.yard', 'jobs/shop.yard');
    git('commit', '-q', '-m', 'one');
    writeFileSync(path.join(folder, 'jobs/old.yard'), edits['a price, and hours that count']?.(OLD) ?? '');
    git('add', 'jobs/old.yard');
    const urisOf = (log: Log) => (log.runs[0]?.artifacts ?? []).map(({ location }) => [location.uri, location.uriBaseId]);
    const onDisk = changesLog(['old.yard']);
    const inIndex = changesLog(['HEAD:jobs/old.yard', ':jobs/old.yard']);
    expect(urisOf(onDisk)).toEqual([['jobs/old.yard', '%SRCROOT%']]);
    expect(urisOf(inIndex)).toEqual(urisOf(onDisk));
    expect(inIndex.runs[0]?.results).toEqual(onDisk.runs[0]?.results);
    writeFileSync(path.join(folder, 'jobs/old.yard'), OLD);
  });
});
