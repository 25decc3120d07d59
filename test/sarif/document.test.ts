import { spawnSync } from 'node:child_process';
import { cpSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { build } from 'esbuild';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { sarifStandard, wrongIn } from './standard.js';

const root = path.resolve(import.meta.dirname, '../..');
const document = readFileSync(path.join(root, 'samples/build-server.md'), 'utf8');
const blocks = [...document.matchAll(/^```sh\n([^]*?)^```$/gm)].map((found) => found[1] ?? '');

let folder: string;
const env = { ...process.env, GIT_CONFIG_GLOBAL: '/dev/null', GIT_CONFIG_SYSTEM: '/dev/null', GIT_AUTHOR_NAME: 'A', GIT_AUTHOR_EMAIL: 'a@e.example', GIT_COMMITTER_NAME: 'A', GIT_COMMITTER_EMAIL: 'a@e.example' };
const shell = (script: string) => spawnSync('sh', ['-c', `steelyard() { "${process.execPath}" "${folder}/cli.cjs" "$@"; }\n${script}`], { cwd: path.join(folder, 'clone'), env, encoding: 'utf8' });

beforeAll(async () => {
  folder = mkdtempSync(path.join(tmpdir(), 'steelyard-server-'));
  await build({ entryPoints: [path.join(root, 'src/cli/main.ts')], outfile: path.join(folder, 'cli.cjs'), bundle: true, platform: 'node', format: 'cjs', logLevel: 'silent' });
  const estimates = path.join(folder, 'clone/estimates');
  mkdirSync(estimates, { recursive: true });
  cpSync(path.join(root, 'samples/shop.yard'), path.join(estimates, 'shop.yard'));
  const text = readFileSync(path.join(root, 'samples/heron-pump.yard'), 'utf8');
  writeFileSync(path.join(estimates, 'job.yard'), text);
  writeFileSync(path.join(estimates, 'with space.yard'), text);
  const commit = (message: string) => shell(`git add -A && git commit -q -m "${message}"`);
  shell('git init -q -b main');
  commit('one');
  shell('git update-ref refs/remotes/origin/main HEAD && git checkout -q -b branch');
  for (const name of ['job.yard', 'with space.yard']) writeFileSync(path.join(estimates, name), text.replace('new  warranty', 'used  warranty').replace(/cost (\d+)\.00/, 'cost 9$1.00'));
  writeFileSync(path.join(estimates, 'new.yard'), 'steelyard 1\npart pump "Pump" 1,250.00 new\n');
  commit('two');
}, 60_000);
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const logAt = (file: string) => {
  const log = sarifStandard.parse(JSON.parse(readFileSync(path.join(folder, 'clone', file), 'utf8')));
  expect(wrongIn(log)).toEqual([]);
  return log.runs[0];
};

test('the steps of the document do what it says', () => {
  const [check = '', changes = '', list = ''] = blocks;
  expect(shell(check).status).toBe(1);
  expect(logAt('check.sarif')?.artifacts.map(({ location }) => location.uri)).toEqual(['estimates/job.yard', 'estimates/new.yard', 'estimates/shop.yard', 'estimates/with%20space.yard']);
  expect(shell(changes)).toMatchObject({ status: 0, stdout: '' });
  expect(logAt('job.sarif')?.results.map(({ ruleId }) => ruleId)).toContain('change-moved');
  expect(JSON.parse(shell(list).stdout)).toMatchObject({ report: 'list', unread: [] });
}, 60_000);

test('the job of the document runs in a real repository and gives the exit code of the check', () => {
  const run = shell(blocks[3] ?? '');
  expect(run.stderr.replace(/^Wrote .*\n/gm, '')).toBe('');
  expect(run.status).toBe(1);
  expect(logAt('check.sarif')?.results.some(({ level }) => level === 'error')).toBe(true);
  const logs = readdirSync(path.join(folder, 'clone/logs')).sort();
  expect(logs).toEqual(['estimates-job.yard.sarif', 'estimates-with space.yard.sarif']);
  for (const log of logs) expect(logAt(`logs/${log}`)?.results.length).toBeGreaterThan(0);
}, 60_000);
