import { spawn, spawnSync } from 'node:child_process';
import { existsSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { buildTool, removeFolder, sampleFolder } from '../lsp/client.js';

/** Loaded before the tool: whatever would reach out of the machine is written down, and refused. */
const WATCH = `
const { appendFileSync } = require('node:fs');
const refuse = (what) => function () { appendFileSync(process.env.WATCHED, what + '\\n'); throw new Error('no network here: ' + what); };
const replace = (module, ...names) => { const found = require(module); for (const name of names) if (typeof found[name] === 'function') found[name] = refuse(module + '.' + name); };
const net = require('node:net');
net.Socket.prototype.connect = refuse('net.Socket.connect');
net.Server.prototype.listen = refuse('net.Server.listen');
replace('node:net', 'connect', 'createConnection', 'createServer');
replace('node:tls', 'connect', 'createServer');
replace('node:http', 'request', 'get', 'createServer');
replace('node:https', 'request', 'get', 'createServer');
replace('node:http2', 'connect', 'createServer', 'createSecureServer');
replace('node:dgram', 'createSocket');
replace('node:dns', 'lookup', 'lookupService', 'resolve', 'resolve4', 'resolve6', 'resolveAny', 'resolveTxt', 'resolveSrv', 'reverse');
for (const name of Object.keys(require('node:dns').promises)) if (/^(lookup|resolve|reverse)/.test(name)) require('node:dns').promises[name] = refuse('dns.promises.' + name);
require('node:module').syncBuiltinESMExports();
for (const name of ['fetch', 'WebSocket', 'EventSource']) globalThis[name] = refuse(name);
const spawned = require('node:child_process');
for (const name of ['spawn', 'spawnSync', 'exec', 'execSync', 'execFile', 'execFileSync', 'fork']) {
  const own = spawned[name];
  spawned[name] = function (program, args, ...rest) { appendFileSync(process.env.WATCHED, 'program ' + require('node:path').basename(String(program)) + ' ' + (Array.isArray(args) ? args.join(' ') : '') + '\\n'); return own.call(this, program, args, ...rest); };
}
`;

let folder: string;
let program: string;
let watched: string;
beforeAll(async () => {
  folder = sampleFolder();
  program = await buildTool(folder);
  watched = path.join(folder, 'watched.txt');
  writeFileSync(path.join(folder, 'watch.cjs'), WATCH);
  const git = (...args: readonly string[]) => spawnSync('git', args, { cwd: folder, encoding: 'utf8', env: { ...process.env, GIT_AUTHOR_NAME: 'W', GIT_AUTHOR_EMAIL: 'w@example.org', GIT_COMMITTER_NAME: 'W', GIT_COMMITTER_EMAIL: 'w@example.org', GIT_CONFIG_GLOBAL: '/dev/null' } });
  git('init', '--quiet');
  git('add', '--', 'pilgrim-v6.yard', 'osprey-tear-down.yard', 'shop.yard');
  git('commit', '--quiet', '--message', 'Work');
  // A host that a careless reader would ask.
  git('remote', 'add', 'origin', 'https://example.invalid/shop.git');
}, 120_000);
afterAll(() => removeFolder(folder));

const environment = () => ({ ...process.env, WATCHED: watched, NODE_OPTIONS: '', GIT_CONFIG_GLOBAL: '/dev/null' });

/** What was written down while the tool ran, and how the run ended. */
function watching(args: readonly string[]) {
  rmSync(watched, { force: true });
  const { status, stdout, stderr } = spawnSync(process.execPath, ['--require', path.join(folder, 'watch.cjs'), ...args], { cwd: folder, encoding: 'utf8', env: environment(), maxBuffer: 100_000_000 });
  return { code: status, out: stdout, err: stderr, seen: seenSoFar() };
}
function seenSoFar(): string[] {
  return existsSync(watched) ? readFileSync(watched, 'utf8').trimEnd().split('\n') : [];
}

test.each([
  "require('node:net').connect(9)", "require('node:http').get('http://127.0.0.1:9')", "fetch('http://127.0.0.1:9')", "require('node:dns').lookup('localhost', () => 0)", "require('node:dgram').createSocket('udp4')",
  "import('node:https').then(({ get }) => get('https://127.0.0.1:9'))", "new (require('node:net').Socket)().connect(9)", "new WebSocket('ws://127.0.0.1:9')",
])('whoever reaches out is caught: %s', (script) => {
  expect(watching(['--eval', script]).seen).toHaveLength(1);
});

describe('the terminal tool opens no socket and asks no server', () => {
  const samples = ['pilgrim-v6.yard', 'osprey-tear-down.yard', 'tarn-inline.yard', 'kestrel-flat.yard', 'heron-pump.yard', 'shop.yard'];
  const perFile = [['check'], ['weigh'], ['weigh', '--json'], ['quote', '--as', 'html'], ['export', '--as', 'html'], ['records']];
  const once: readonly (readonly string[])[] = [
    ['check', '.', '--as', 'sarif'], ['check', '.', '--as', 'json'], ['quote', 'pilgrim-v6.yard', '--as', 'markdown', '--output', 'quote.md'], ['quote', 'osprey-tear-down.yard', '--stage', 'tear-down'], ['export', 'pilgrim-v6.yard', '--as', 'csv'],
    ['list', '.'], ['list', '.', '--json'], ['history', '.'], ['closing', 'pilgrim-v6.yard'], ['weigh', 'pilgrim-v6.yard', '--explain', 'used.total'], ['quote', 'pilgrim-v6.yard', '--supplement', '--since', 'HEAD:pilgrim-v6.yard'],
    ['changes', 'pilgrim-v6.yard'], ['changes', 'HEAD:pilgrim-v6.yard', 'osprey-tear-down.yard', '--as', 'html'], ['changes', 'HEAD~9:none.yard', 'pilgrim-v6.yard'], ['git'], ['git', 'staged'], ['git', 'text', 'pilgrim-v6.yard'],
    ['git', 'totals', 'on'], ['git', 'totals', 'off'], ['git', 'check', 'on'], ['git', 'check', 'off'], ['--help'], ['--version'], ['none'],
  ];
  const all = [...samples.flatMap((sample) => perFile.map(([command = '', ...rest]) => [command, sample, ...rest])), ...once];

  test('whatever it is asked', { timeout: 240_000 }, () => {
    // One process after the other would take a minute: the tool is loaded anew for each command line.
    writeFileSync(path.join(folder, 'drive.cjs'), `
      const { appendFileSync } = require('node:fs');
      const program = process.argv[2];
      const codes = JSON.parse(process.argv[3]).map((args) => {
        appendFileSync(process.env.WATCHED, 'now ' + args.join(' ') + '\\n');
        process.argv.splice(1, process.argv.length, program, ...args);
        process.exitCode = undefined;
        delete require.cache[require.resolve(program)];
        require(program);
        return process.exitCode;
      });
      process.exitCode = 0;
      console.error('codes ' + JSON.stringify(codes));`);
    const { code, err, seen } = watching([path.join(folder, 'drive.cjs'), program, JSON.stringify(all)]);
    expect(code, err).toBe(0);
    expect(err).not.toMatch(/no network here|\n {4}at /);
    const codes = JSON.parse(/codes (\[.*\])/.exec(err)?.[1] ?? '[]') as (number | null)[];
    expect(codes).toHaveLength(all.length);
    expect(codes.filter((one) => one !== 0).length).toBeLessThan(all.length / 2);
    expect(seen.filter((line) => line.startsWith('now '))).toHaveLength(all.length);
    // The only program that is ever run is git, and where it only reads it is told to reach nowhere.
    const programs = seen.filter((line) => !line.startsWith('now '));
    expect(programs.length).toBeGreaterThan(20);
    for (const one of programs) expect(one).toMatch(/^program git (?:-c core\.fsmonitor=false .*-c protocol\.allow=never .*--no-pager |--no-pager (?:config --local|rev-parse) )/);
  });

  test('steelyard lsp', { timeout: 60_000 }, async () => {
    rmSync(watched, { force: true });
    const server = spawn(process.execPath, ['--require', path.join(folder, 'watch.cjs'), program, 'lsp', '--stdio'], { cwd: folder, env: environment(), stdio: ['pipe', 'pipe', 'inherit'] });
    let out = '';
    server.stdout.on('data', (data: Buffer) => void (out += data.toString()));
    const send = (message: object) => {
      const body = JSON.stringify({ jsonrpc: '2.0', ...message });
      server.stdin.write(`Content-Length: ${Buffer.byteLength(body)}\r\n\r\n${body}`);
    };
    const uri = `file://${encodeURI(path.join(folder, 'pilgrim-v6.yard'))}`;
    const ended = new Promise<number | null>((resolve) => void server.once('exit', resolve));
    send({ id: 1, method: 'initialize', params: { processId: null, rootUri: `file://${encodeURI(folder)}`, capabilities: {} } });
    send({ method: 'initialized', params: {} });
    send({ method: 'textDocument/didOpen', params: { textDocument: { uri, languageId: 'steelyard', version: 1, text: readFileSync(path.join(folder, 'pilgrim-v6.yard'), 'utf8') } } });
    for (const [i, method] of ['hover', 'completion', 'definition', 'documentSymbol', 'codeLens', 'documentLink', 'formatting'].entries()) send({ id: 2 + i, method: `textDocument/${method}`, params: { textDocument: { uri }, position: { line: 1, character: 2 }, options: { tabSize: 2, insertSpaces: true } } });
    send({ id: 20, method: 'workspace/symbol', params: { query: 'pump' } });
    send({ id: 21, method: 'shutdown' });
    await expect.poll(() => out.includes('"id":21'), { timeout: 30_000 }).toBe(true);
    send({ method: 'exit' });
    expect(await ended).toBe(0);
    expect(out).toContain('publishDiagnostics');
    expect(seenSoFar()).toEqual([]);
  });
});
