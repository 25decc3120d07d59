import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { build } from 'esbuild';
import { afterAll, beforeAll, expect, test } from 'vitest';

const root = path.resolve(import.meta.dirname, '../..');
const folder = mkdtempSync(path.join(tmpdir(), 'steelyard-pipe-'));
const program = path.join(folder, 'cli.cjs');

beforeAll(() => build({ entryPoints: [path.join(root, 'src/cli/main.ts')], outfile: program, bundle: true, platform: 'node', format: 'cjs', logLevel: 'silent' }), 60_000);
afterAll(() => rmSync(folder, { recursive: true, force: true }));

test('a reader that has read enough is no fault: nothing is said about it', () => {
  // More than a pipe holds, and nobody who takes it.
  const run = spawnSync('sh', ['-c', `"${process.execPath}" "${program}" weigh samples/pilgrim-v6.yard --json | head -c 100 > /dev/null`], { cwd: root, encoding: 'utf8' });
  expect(run.stderr).toBe('');
  expect(run.status).toBe(0);
}, 60_000);
