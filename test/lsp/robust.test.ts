import { spawn, type ChildProcess } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { afterAll, beforeAll, expect, test, vi } from 'vitest';
import { build } from 'esbuild';
import { buildTool, Editor, exitOf, removeFolder, root, sampleFolder } from './client.js';

let folder: string;
let program: string;

vi.setConfig({ testTimeout: 60_000 });
beforeAll(async () => {
  folder = sampleFolder();
  program = await buildTool(folder);
}, 120_000);
afterAll(() => removeFolder(folder));

const frame = (body: string) => `Content-Length: ${Buffer.byteLength(body)}\r\n\r\n${body}`;
const message = (fields: object) => frame(JSON.stringify({ jsonrpc: '2.0', ...fields }));

/** A server that is spoken to in bytes; every byte of its standard output is kept. */
function raw() {
  const server: ChildProcess = spawn(process.execPath, [program, 'lsp', '--stdio'], { stdio: ['pipe', 'pipe', 'pipe'] });
  let out = Buffer.alloc(0);
  server.stdout?.on('data', (data: Buffer) => void (out = Buffer.concat([out, data])));
  return { server, ended: exitOf(server), write: (text: string) => void server.stdin?.write(text), frames: () => framesIn(out) };
}

/** Cuts an output into messages; throws where anything else stands between them. */
function framesIn(out: Buffer): { readonly id?: number; readonly method?: string; readonly error?: { readonly code: number; readonly message: string }; readonly result?: unknown }[] {
  const frames = [];
  for (let at = 0; at < out.length;) {
    const head = /^Content-Length: (\d+)\r\n\r\n/.exec(out.subarray(at, at + 60).toString('latin1'));
    if (head === null) throw new Error(`Not the protocol: ${out.subarray(at, at + 80).toString()}`);
    const start = at + head[0].length;
    const end = start + Number(head[1]);
    if (end > out.length) break;
    frames.push(JSON.parse(out.subarray(start, end).toString('utf8')) as object);
    at = end;
  }
  return frames;
}

const initialize = message({ id: 1, method: 'initialize', params: { processId: null, rootUri: null, capabilities: {} } });
const soon = { timeout: 20_000 };

test('standard output carries the protocol and nothing else; what makes no sense is answered as an error', async () => {
  const { write, frames, ended } = raw();
  write(initialize + message({ method: 'initialized', params: {} }));
  write(message({ id: 2, method: 'textDocument/hover', params: { textDocument: { uri: 'file:///nowhere/none.yard' }, position: { line: 0, character: 0 } } }));
  write(message({ id: 3, method: 'textDocument/definition', params: { textDocument: { uri: 'untitled:Untitled-1' }, position: { line: 7, character: 7 } } }));
  write(message({ id: 4, method: 'steelyard/noSuchThing', params: {} }));
  write(message({ id: 5, method: 'textDocument/hover', params: null }));
  write(message({ id: 6, method: 'textDocument/rename' }));
  write(message({ method: 'textDocument/didChange', params: { textDocument: { uri: 'file:///never/opened.yard', version: 2 }, contentChanges: [{ text: 'x' }] } }));
  write(message({ method: 'textDocument/didClose', params: { textDocument: { uri: 'file:///never/opened.yard' } } }));
  write(message({ method: 'textDocument/didOpen', params: { textDocument: { uri: 'file:///bad%ZZname.yard', languageId: 'steelyard', version: 1, text: 'steelyard 1\nuse "../../etc/passwd"\n' } } }));
  write(message({ id: 7, method: 'textDocument/documentSymbol', params: { textDocument: { uri: 'file:///bad%ZZname.yard' } } }));
  write(message({ id: 8, method: 'workspace/symbol', params: { query: 'x' } }));
  write(message({ id: 9, method: 'shutdown' }));
  await expect.poll(() => frames().some(({ id }) => id === 9), soon).toBe(true);
  const byId = new Map(frames().map((one) => [one.id, one]));
  expect(byId.get(2)?.result).toBeNull();
  expect(byId.get(3)?.result).toBeNull();
  expect(byId.get(4)?.error?.code).toBe(-32601);
  expect(byId.get(5)?.error).toBeDefined();
  expect(byId.get(6)?.error).toBeDefined();
  expect(byId.get(7)?.result).toBeDefined();
  expect(byId.get(8)?.result).toEqual([]);
  write(message({ method: 'exit' }));
  expect(await ended).toBe(0);
});

test('broken JSON and a broken header don’t end it', async () => {
  const { write, frames, server, ended } = raw();
  write(initialize);
  await expect.poll(() => frames().length, soon).toBeGreaterThan(0);
  write('Content-Type: none\r\n\r\n');
  // What comes in one piece behind a broken header waits for the next piece.
  await new Promise((resolve) => setTimeout(resolve, 300));
  write(frame('{"jsonrpc":"2.0","id":2,"meth'));
  write(message({ id: 3, method: 'workspace/symbol', params: { query: '' } }));
  await expect.poll(() => frames().some(({ id }) => id === 3), soon).toBe(true);
  server.stdin?.end();
  expect(await ended).not.toBe(0);
});

test('an exit without a shutdown, and an editor that is gone, end it', async () => {
  const first = raw();
  first.write(initialize + message({ method: 'exit' }));
  expect(await first.ended).toBe(1);
  const second = raw();
  second.write(initialize);
  await expect.poll(() => second.frames().length, soon).toBeGreaterThan(0);
  second.server.stdin?.end();
  expect(await second.ended).toBe(1);
});

test('a file outside of the workspace is not read', async () => {
  const editor = await Editor.start(program, path.join(folder, 'pictures'), {});
  const uri = editor.uri('inside.yard');
  await editor.connection.sendNotification('textDocument/didOpen', { textDocument: { uri, languageId: 'steelyard', version: 1, text: 'steelyard 1\nuse "../shop.yard"\n' } });
  await expect.poll(() => editor.codes('inside.yard'), soon).toEqual(['use-outside']);
  expect(await editor.stop()).toBe(0);
});

test('nothing of it is in the extension', async () => {
  const { outputFiles } = await build({ entryPoints: [path.join(root, 'src/editor/extension.ts')], bundle: true, write: false, platform: 'node', format: 'cjs', external: ['vscode'], logLevel: 'error' });
  const built = path.join(root, 'dist/web/extension.js');
  for (const text of [outputFiles[0]?.text ?? '', ...(existsSync(built) ? [readFileSync(built, 'utf8')] : [])]) {
    expect(text.length).toBeGreaterThan(100_000);
    expect(text).not.toMatch(/vscode-languageserver|vscode-jsonrpc/);
  }
});
