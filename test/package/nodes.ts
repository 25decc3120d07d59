// `npm run test:nodes`: the terminal tool from its packed tarball on every Node that it is promised for. Everything that
// it prints has to be the same on each, except where the Unicode locale data of a Node writes figures in its own way.
import { spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, readdirSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { pack } from '../../src/tools/package/pack.js';
import { cacheDir, nodePackage, repository } from '../editor/host/paths.js';
import { tempFolder } from '../editor/host/temp.js';

const VERSIONS = ['20', '22', '24'] as const;
const samples = readdirSync(path.join(repository, 'samples')).filter((file) => file.endsWith('.yard') && file !== 'shop.yard').map((file) => `samples/${file}`);
const today = ['--today', '2026-12-01'];
const commands: readonly (readonly string[])[] = [
  ['--version'], ['--help'], ['check', 'samples'], ['check', 'samples', '--json'], ['check', 'samples', '--as', 'sarif'],
  ['list', 'samples', ...today], ['list', 'samples', '--json', ...today], ['history', 'samples'], ['history', 'samples', '--json'],
  ...samples.flatMap((file) => [['weigh', file], ['weigh', file, '--json'], ['export', file, '--as', 'html'], ['export', file, '--as', 'csv'], ['records', file], ['closing', file]]),
  ['weigh', 'samples/pilgrim-v6.yard', '--explain', 'used.penalty'],
  ['quote', 'samples/pilgrim-v6.yard'], ['quote', 'samples/pilgrim-v6.yard', '--as', 'html'], ['changes', 'samples/pilgrim-v6.yard', 'samples/tarn-inline.yard'],
  ['weigh', 'samples/none.yard'], ['weigh', 'samples/pilgrim-v6.yard', '--nonsense'],
];

/** A language client that says hello and goodbye. */
const conversation = [
  { id: 1, method: 'initialize', params: { processId: null, rootUri: null, capabilities: {} } },
  { method: 'initialized', params: {} }, { id: 2, method: 'shutdown' }, { method: 'exit' },
].map((message) => JSON.stringify({ jsonrpc: '2.0', ...message })).map((body) => `Content-Length: ${Buffer.byteLength(body)}\r\n\r\n${body}`).join('');

function must(command: string, args: readonly string[], cwd: string): void {
  const { status, stderr, error } = spawnSync(command, args, { cwd, encoding: 'utf8' });
  if (status !== 0) throw new Error(`${command} ${args.join(' ')}: ${error?.message ?? stderr}`);
}

/** The newest Node of a version, from its package; kept for the next time. */
function nodeOf(version: string): string {
  const dir = path.join(cacheDir, 'nodes', version);
  const node = path.join(dir, 'node_modules', nodePackage, 'bin', 'node');
  if (existsSync(node)) return node;
  mkdirSync(dir, { recursive: true });
  writeFileSync(path.join(dir, 'package.json'), '{ "private": true }\n');
  must('npm', ['install', '--no-save', '--ignore-scripts', '--no-audit', '--no-fund', '--loglevel=error', `${nodePackage}@${version}`], dir);
  return node;
}

const temp = tempFolder('nodes');
let passed = 0;
let failed = 0;
try {
  const { tarball } = await pack(repository, temp.dir);
  writeFileSync(path.join(temp.dir, 'package.json'), '{ "private": true }\n');
  must('npm', ['install', '--offline', '--ignore-scripts', '--no-audit', '--no-fund', tarball], temp.dir);
  const tool = path.join(temp.dir, 'node_modules', 'steelyard', 'dist', 'cli.js');
  const wanted = new Map<string, string>();
  for (const version of VERSIONS) {
    const node = nodeOf(version);
    const exact = spawnSync(node, ['--version'], { encoding: 'utf8' }).stdout.trim();
    const wrong: string[] = [];
    for (const words of [...commands, ['lsp', '--stdio']]) {
      const { status, stdout, stderr } = spawnSync(node, [tool, ...words], { cwd: repository, encoding: 'utf8', input: words[0] === 'lsp' ? conversation : '', env: { ...process.env, NO_COLOR: '1' }, timeout: 60_000, maxBuffer: 64 * 1024 * 1024 });
      const said = `${String(status)}\n${stdout}${stderr}`;
      const name = words.join(' ');
      const first = wanted.get(name) ?? said;
      wanted.set(name, first);
      const crashed = status === null || status > 2 || /^\s+at .*\.js:\d+/m.test(stderr);
      if (said === first && !crashed) passed++;
      else wrong.push(`${name}: ${crashed ? said.slice(-600) : firstDifference(first, said)}`);
    }
    failed += wrong.length;
    console.log(`${wrong.length === 0 ? 'ok    ' : 'FAILED'}  Node ${exact}: ${commands.length + 1} commands`);
    for (const one of wrong) console.log(`        ${one}`);
  }
} finally {
  await temp.remove();
}
console.log(`${passed} passed, ${failed} failed`);
process.exitCode = failed === 0 ? 0 : 1;

function firstDifference(one: string, other: string): string {
  const [a, b] = [one.split('\n'), other.split('\n')];
  const at = a.findIndex((line, i) => line !== b[i]);
  return `line ${at}: ${JSON.stringify(b[at] ?? '')} where Node ${VERSIONS[0]} says ${JSON.stringify(a[at] ?? '')}`;
}
