import { spawn, type ChildProcess } from 'node:child_process';
import { cpSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import { build } from 'esbuild';
import { afterAll, beforeAll, expect, test } from 'vitest';
import * as lsp from 'vscode-languageserver/node.js';

const root = path.resolve(import.meta.dirname, '../..');
let folder: string;
let server: ChildProcess;
let client: lsp.MessageConnection;
const published = new Map<string, lsp.Diagnostic[]>();

const uriOf = (file: string) => pathToFileURL(path.join(folder, file)).href;
const textOf = (file: string) => readFileSync(path.join(folder, file), 'utf8');

function open(file: string): void {
  void client.sendNotification('textDocument/didOpen', { textDocument: { uri: uriOf(file), languageId: 'steelyard', version: 1, text: textOf(file) } });
}

/** Where a piece of text stands in a file, `into` characters behind its start. */
function positionOf(file: string, text: string, into = 0): lsp.Position {
  const at = textOf(file).indexOf(text) + into;
  const before = textOf(file).slice(0, at).split('\n');
  return { line: before.length - 1, character: before[before.length - 1]?.length ?? 0 };
}

const ask = (method: string, file: string, params: object = {}) => client.sendRequest<unknown>(`textDocument/${method}`, { textDocument: { uri: uriOf(file) }, ...params });

beforeAll(async () => {
  folder = mkdtempSync(path.join(tmpdir(), 'steelyard-lsp-'));
  cpSync(path.join(root, 'samples'), folder, { recursive: true, filter: (file) => !file.endsWith('.png') });
  const program = path.join(folder, 'cli.cjs');
  await build({ entryPoints: [path.join(root, 'src/cli/main.ts')], outfile: program, bundle: true, platform: 'node', format: 'cjs', logLevel: 'error' });
  server = spawn(process.execPath, [program, 'lsp', '--stdio'], { stdio: ['pipe', 'pipe', 'inherit'] });
  client = lsp.createProtocolConnection(new lsp.StreamMessageReader(server.stdout as NodeJS.ReadableStream), new lsp.StreamMessageWriter(server.stdin as NodeJS.WritableStream));
  client.onNotification('textDocument/publishDiagnostics', ({ uri, diagnostics }: lsp.PublishDiagnosticsParams) => void published.set(uri, diagnostics));
  client.listen();
  await client.sendRequest('initialize', { processId: process.pid, rootUri: null, capabilities: {}, workspaceFolders: [{ uri: pathToFileURL(folder).href, name: 'samples' }] });
  await client.sendNotification('initialized', {});
  open('pilgrim-v6.yard');
  open('shop.yard');
}, 60_000);

afterAll(async () => {
  await client.sendRequest('shutdown');
  await client.sendNotification('exit');
  client.dispose();
  server.kill();
  rmSync(folder, { recursive: true });
});

test('hover tells the figure', async () => {
  const hover = (await ask('hover', 'pilgrim-v6.yard', { position: positionOf('pilgrim-v6.yard', 'labour rear-head') })) as lsp.Hover;
  expect(JSON.stringify(hover.contents)).toContain('1,452.00');
});

test('completion offers names in scope', async () => {
  const items = (await ask('completion', 'pilgrim-v6.yard', { position: positionOf('pilgrim-v6.yard', 'diagnosis, rear-head') })) as lsp.CompletionItem[];
  expect(items.map(({ label }) => label)).toContain('swap');
});

test('definition leads into the shared file, references come back out of it', async () => {
  const [definition] = (await ask('definition', 'pilgrim-v6.yard', { position: positionOf('pilgrim-v6.yard', 'diagnosis, rear-head', 2) })) as lsp.Location[];
  expect(definition?.uri).toBe(uriOf('shop.yard'));
  const references = (await ask('references', 'shop.yard', { position: positionOf('shop.yard', 'labour diagnosis', 8), context: { includeDeclaration: true } })) as lsp.Location[];
  expect(new Set(references.map(({ uri }) => path.basename(uri)))).toEqual(new Set(['shop.yard', 'pilgrim-v6.yard', 'tarn-inline.yard']));
});

test('rename edits all files, and refuses a bad name in a sentence', async () => {
  const position = positionOf('shop.yard', 'labour road-test', 8);
  const edit = (await ask('rename', 'shop.yard', { position, newName: 'test-drive' })) as lsp.WorkspaceEdit;
  expect(Object.keys(edit.changes ?? {}).map((uri) => path.basename(uri)).sort()).toEqual(['heron-pump.yard', 'kestrel-flat.yard', 'pilgrim-v6.yard', 'shop.yard', 'tarn-inline.yard']);
  await expect(ask('rename', 'shop.yard', { position, newName: '2nd' })).rejects.toThrow(/letter/);
});

test('outline, folds, links, highlights, hints, tokens and formatting answer', async () => {
  for (const method of ['documentSymbol', 'foldingRange', 'documentLink', 'semanticTokens/full']) {
    const answer = await ask(method, 'pilgrim-v6.yard');
    expect((answer as lsp.SemanticTokens).data ?? answer, method).not.toHaveLength(0);
  }
  const range = { start: { line: 0, character: 0 }, end: { line: 200, character: 0 } };
  expect(await ask('inlayHint', 'pilgrim-v6.yard', { range })).not.toHaveLength(0);
  expect(await ask('documentHighlight', 'pilgrim-v6.yard', { position: positionOf('pilgrim-v6.yard', 'labour swap', 8) })).not.toHaveLength(0);
  expect(await ask('selectionRange', 'pilgrim-v6.yard', { positions: [positionOf('pilgrim-v6.yard', 'labour swap', 8)] })).toHaveLength(1);
  // The samples stand in the formatter's own columns.
  expect(await ask('formatting', 'pilgrim-v6.yard', { options: { tabSize: 2, insertSpaces: true } })).toEqual([]);
});

test('a wrong line is told while typing, a fix is offered, and a change of the shop reaches the estimate', async () => {
  const position = positionOf('pilgrim-v6.yard', 'worth    ', 0);
  await client.sendNotification('textDocument/didChange', { textDocument: { uri: uriOf('pilgrim-v6.yard'), version: 2 }, contentChanges: [{ range: { start: position, end: { ...position, character: position.character + 5 } }, text: 'wroth' }] });
  await expect.poll(() => published.get(uriOf('pilgrim-v6.yard'))?.map(({ code }) => code), { timeout: 5000 }).toContain('unknown-fact');
  const wrong = published.get(uriOf('pilgrim-v6.yard'))?.find(({ code }) => code === 'unknown-fact');
  const actions = (await ask('codeAction', 'pilgrim-v6.yard', { range: wrong?.range, context: { diagnostics: [wrong] } })) as lsp.CodeAction[];
  expect(actions.map(({ title }) => title)).toContain('Write worth');

  const rate = positionOf('shop.yard', 'usual');
  await client.sendNotification('textDocument/didChange', { textDocument: { uri: uriOf('shop.yard'), version: 2 }, contentChanges: [{ range: { start: rate, end: { ...rate, character: rate.character + 5 } }, text: '' }] });
  await expect.poll(() => published.get(uriOf('pilgrim-v6.yard'))?.map(({ code }) => code), { timeout: 5000 }).toContain('which-rate');
});
