import { writeFileSync, rmSync } from 'node:fs';
import path from 'node:path';
import { afterAll, beforeAll, expect, test, vi } from 'vitest';
import * as lsp from 'vscode-languageserver/node.js';
import { buildTool, Editor, removeFolder, sampleFolder } from './client.js';

const PILGRIM = 'pilgrim-v6.yard';
const SHOP = 'shop.yard';

/** What a full editor says of itself. */
const able: lsp.ClientCapabilities = {
  workspace: {
    configuration: true, workspaceFolders: true, workspaceEdit: { documentChanges: true, resourceOperations: ['create'] }, didChangeWatchedFiles: { dynamicRegistration: true },
    inlayHint: { refreshSupport: true }, codeLens: { refreshSupport: true }, semanticTokens: { refreshSupport: true },
  },
  textDocument: { completion: { completionItem: { snippetSupport: true } } },
};

let folder: string;
let program: string;
let editor: Editor;

vi.setConfig({ testTimeout: 60_000 });
const soon = { timeout: 20_000 };

beforeAll(async () => {
  folder = sampleFolder();
  program = await buildTool(folder);
  editor = await Editor.start(program, folder, able);
  await editor.open(PILGRIM);
  await editor.open(SHOP);
}, 120_000);

afterAll(async () => {
  expect(await editor.stop()).toBe(0);
  removeFolder(folder);
});

const base = (uri: string) => decodeURIComponent(path.posix.basename(uri));
const whole = { start: { line: 0, character: 0 }, end: { line: 999, character: 0 } };
const options = { tabSize: 2, insertSpaces: true };

test('it watches the estimate files of the workspace', async () => {
  await expect.poll(() => editor.asked, soon).toContain('client/registerCapability');
});

test('a sample has nothing published against it that must be mended', async () => {
  await expect.poll(() => editor.mends(PILGRIM), soon).toEqual([]);
});

test('hover tells the figure as plain text', async () => {
  const hover = await editor.ask<lsp.Hover>('hover', PILGRIM, { position: editor.position(PILGRIM, 'labour rear-head') });
  expect(hover.contents).toMatchObject({ kind: 'plaintext' });
  expect(JSON.stringify(hover.contents)).toContain('1,452.00');
});

test('completion offers names in scope, and the edit writes the name where it belongs', async () => {
  const position = editor.position(PILGRIM, 'diagnosis, rear-head', 'diagnosis, '.length);
  const items = await editor.ask<lsp.CompletionItem[]>('completion', PILGRIM, { position });
  const swap = items.find(({ label }) => label === 'swap');
  expect(editor.after(PILGRIM, [swap?.textEdit as lsp.TextEdit])).toContain('do          diagnosis, swap');
});

test('a day of the job is found by its digits as by its word', async () => {
  writeFileSync(path.join(folder, 'day.yard'), 'steelyard 1\nstarted on \n');
  await editor.open('day.yard');
  const items = await editor.ask<lsp.CompletionItem[]>('completion', 'day.yard', { position: { line: 1, character: 11 } });
  const today = /^today (\d{4}-\d\d-\d\d)$/.exec(items.find(({ label }) => label === 'today')?.filterText ?? '')?.[1] ?? 'no day';
  expect(items.map(({ label, textEdit }) => [label, textEdit?.newText])).toEqual([['today', today]]);
  // The clock of this machine, unless midnight passes meanwhile.
  expect(Math.abs(Date.parse(today) - Date.now())).toBeLessThan(2 * 24 * 60 * 60 * 1000);
});

test('definition leads into the shared file, references come back out of it', async () => {
  const [definition] = await editor.ask<lsp.Location[]>('definition', PILGRIM, { position: editor.position(PILGRIM, 'diagnosis, rear-head', 2) });
  expect(definition).toEqual({ uri: editor.uri(SHOP), range: { start: editor.position(SHOP, 'labour diagnosis', 7), end: editor.position(SHOP, 'labour diagnosis', 16) } });
  const at = { position: editor.position(SHOP, 'labour diagnosis', 8) };
  const references = await editor.ask<lsp.Location[]>('references', SHOP, { ...at, context: { includeDeclaration: true } });
  expect(new Set(references.map(({ uri }) => base(uri)))).toEqual(new Set([SHOP, PILGRIM, 'dunlin-closed.yard', 'osprey-tear-down.yard', 'tarn-inline.yard']));
  const uses = await editor.ask<lsp.Location[]>('references', SHOP, { ...at, context: { includeDeclaration: false } });
  expect(uses).toEqual(references.filter(({ uri }) => base(uri) !== SHOP));
});

test('rename edits all files, and refuses in a sentence', async () => {
  const position = editor.position(SHOP, 'labour road-test', 8);
  const edit = await editor.ask<lsp.WorkspaceEdit>('rename', SHOP, { position, newName: 'test-drive' });
  expect(Object.keys(edit.changes ?? {}).map(base).sort()).toEqual(['dunlin-closed.yard', 'heron-pump.yard', 'kestrel-flat.yard', 'osprey-tear-down.yard', PILGRIM, SHOP, 'tarn-inline.yard']);
  expect(editor.after('heron-pump.yard', edit.changes?.[editor.uri('heron-pump.yard')] ?? [])).toBe(editor.text('heron-pump.yard').replaceAll('road-test', 'test-drive'));
  await expect(editor.ask('rename', SHOP, { position, newName: '2nd' })).rejects.toThrow('A name starts with a letter.');
  await expect(editor.ask('rename', SHOP, { position, newName: 'diagnosis' })).rejects.toThrow(/already/);
  expect(await editor.ask('prepareRename', SHOP, { position })).toMatchObject({ placeholder: 'road-test' });
  await expect(editor.ask('prepareRename', SHOP, { position: editor.position(SHOP, '132.00') })).rejects.toThrow('There is no name here.');
});

test('outline, symbols of the workspace, folds, links, highlights and selections', async () => {
  const outline = await editor.ask<lsp.DocumentSymbol[]>('documentSymbol', PILGRIM);
  expect(outline.map(({ name }) => name).join('\n')).toContain('Fit a used engine');
  const found = await editor.connection.sendRequest<lsp.SymbolInformation[]>('workspace/symbol', { query: 'coolant pump replace' });
  expect(found.map(({ location }) => base(location.uri)).sort()).toEqual(['heron-pump.yard', PILGRIM, 'tarn-inline.yard']);
  const folds = await editor.ask<lsp.FoldingRange[]>('foldingRange', PILGRIM);
  expect(folds).toContainEqual({ startLine: editor.position(PILGRIM, 'labour pump').line, endLine: editor.position(PILGRIM, 'uses     pump, coolant').line });
  const links = await editor.ask<lsp.DocumentLink[]>('documentLink', PILGRIM);
  expect(links.map(({ target }) => target)).toEqual([editor.uri(SHOP)]);
  const position = editor.position(PILGRIM, 'labour swap', 8);
  const highlights = await editor.ask<lsp.DocumentHighlight[]>('documentHighlight', PILGRIM, { position });
  expect(highlights.map(({ kind }) => kind)).toEqual([lsp.DocumentHighlightKind.Write, lsp.DocumentHighlightKind.Read, lsp.DocumentHighlightKind.Read, lsp.DocumentHighlightKind.Read]);
  const [selection] = await editor.ask<lsp.SelectionRange[]>('selectionRange', PILGRIM, { positions: [position] });
  let range: lsp.SelectionRange | undefined = selection;
  let depth = 0;
  for (; range !== undefined; range = range.parent) depth++;
  expect(depth).toBeGreaterThan(2);
});

test('amounts behind lines, standings above options, and what each name is', async () => {
  const hints = await editor.ask<lsp.InlayHint[]>('inlayHint', PILGRIM, { range: whole });
  expect(JSON.stringify(hints)).toContain('1,452.00');
  const lenses = await editor.ask<lsp.CodeLens[]>('codeLens', PILGRIM);
  expect(lenses.map(({ command }) => command?.title).join('\n')).toContain('cheapest');
  const { data } = await editor.ask<lsp.SemanticTokens>('semanticTokens/full', PILGRIM);
  expect(data.length % 5).toBe(0);
  expect(data.length).toBeGreaterThan(100);
  // Lines never go back, and characters only on a new line.
  for (let i = 0; i < data.length; i += 5) expect((data[i] as number) > 0 || (data[i + 1] as number) >= 0).toBe(true);
});

test('formatting keeps a formatted file, and puts a new line into columns while typing', async () => {
  const once = editor.after(PILGRIM, await editor.ask<lsp.TextEdit[]>('formatting', PILGRIM, { options }));
  expect(once.replace(/ +/g, ' ')).toBe(editor.text(PILGRIM).replace(/ +/g, ' '));
  const old = 'part belt "Drive belt"              cost 24.50 new\n';
  const file = 'heron-pump.yard';
  await editor.open(file);
  await editor.change(file, editor.text(file).match(/^part belt .*\n/m)?.[0] ?? old, 'part belt "Drive belt" cost 24.50 new\n');
  const edits = await editor.ask<lsp.TextEdit[]>('onTypeFormatting', file, { position: { line: editor.position(file, 'part belt').line + 1, character: 0 }, ch: '\n', options });
  expect(editor.after(file, edits)).toMatch(/^part belt "Drive belt" {2,}cost 24.50 new$/m);
  const ranged = await editor.ask<lsp.TextEdit[]>('rangeFormatting', file, { range: whole, options });
  expect(editor.after(file, ranged)).toMatch(/^part belt "Drive belt" {2,}cost 24.50 new$/m);
  await editor.close(file);
});

test('a wrong line is told while typing, mended by a fix, and cleared on close', async () => {
  await editor.change(PILGRIM, 'worth       7900.00', 'wroth       7900.00');
  await expect.poll(() => editor.codes(PILGRIM), soon).toContain('unknown-fact');
  const wrong = editor.published.get(editor.uri(PILGRIM))?.diagnostics.find(({ code }) => code === 'unknown-fact') as lsp.Diagnostic;
  expect(wrong).toMatchObject({ source: 'Steelyard', severity: lsp.DiagnosticSeverity.Error });
  const ask = (only?: string[]) => editor.ask<lsp.CodeAction[]>('codeAction', PILGRIM, { range: wrong.range, context: { diagnostics: [wrong], ...(only === undefined ? {} : { only }) } });
  const fix = (await ask()).find(({ title }) => title === 'Write worth');
  expect(fix).toMatchObject({ kind: 'quickfix', diagnostics: [{ code: 'unknown-fact' }] });
  expect(editor.after(PILGRIM, fix?.edit?.changes?.[editor.uri(PILGRIM)] ?? [])).toContain('worth       7900.00');
  expect(await ask(['source.organizeImports'])).toEqual([]);
  await editor.change(PILGRIM, 'wroth       7900.00', 'worth       7900.00');
  await expect.poll(() => editor.mends(PILGRIM), soon).toEqual([]);
});

test('a change of the shared file reaches the estimates that use it, also when it is closed', async () => {
  editor.asked.length = 0;
  await editor.change(SHOP, ' usual', '');
  await expect.poll(() => editor.codes(PILGRIM), soon).toContain('which-rate');
  await expect.poll(() => [...new Set(editor.asked)].sort(), soon).toEqual(['workspace/codeLens/refresh', 'workspace/inlayHint/refresh', 'workspace/semanticTokens/refresh']);
  // Closed without saving: what counts is the file on disk again.
  await editor.close(SHOP);
  await expect.poll(() => editor.mends(PILGRIM), soon).toEqual([]);
  expect(editor.mends(SHOP)).toEqual([]);
  await editor.open(SHOP);
});

test('a shared file that comes and goes on disk is noticed; until it is there, a fix makes it', async () => {
  writeFileSync(path.join(folder, 'fresh.yard'), 'steelyard 1\nuse "new/branch.yard"\noption none "Nothing"\n  fee "Fee" 1.00\n');
  await editor.open('fresh.yard');
  await expect.poll(() => editor.codes('fresh.yard'), soon).toContain('use-missing');
  const missing = editor.published.get(editor.uri('fresh.yard'))?.diagnostics.find(({ code }) => code === 'use-missing') as lsp.Diagnostic;
  const actions = await editor.ask<lsp.CodeAction[]>('codeAction', 'fresh.yard', { range: missing.range, context: { diagnostics: [missing] } });
  const create = actions.find(({ edit }) => edit?.documentChanges !== undefined);
  expect(create?.edit?.documentChanges?.slice(0, 2)).toMatchObject([
    { kind: 'create', uri: editor.uri('new/branch.yard'), options: { ignoreIfExists: true } },
    { textDocument: { uri: editor.uri('new/branch.yard'), version: null }, edits: [{ newText: expect.stringMatching(/^steelyard 1\n/) as string }] },
  ]);
  writeFileSync(path.join(folder, 'branch.yard'), 'steelyard 1\nshop "Branch"\n  rate bench 100.00\n');
  await editor.change('fresh.yard', 'new/branch.yard', 'branch.yard');
  await expect.poll(() => editor.codes('fresh.yard'), soon).not.toContain('use-missing');
  rmSync(path.join(folder, 'branch.yard'));
  await editor.connection.sendNotification('workspace/didChangeWatchedFiles', { changes: [{ uri: editor.uri('branch.yard'), type: lsp.FileChangeType.Deleted }] });
  await expect.poll(() => editor.codes('fresh.yard'), soon).toContain('use-missing');
  await editor.close('fresh.yard');
  await expect.poll(() => editor.codes('fresh.yard'), soon).toEqual([]);
});

test('a shared file that is there and is no text is told by what it is, and nobody is offered to make it', async () => {
  const shop = 'steelyard 1\nshop "Branch"\n  rate bench 100.00\n';
  writeFileSync(path.join(folder, 'wide.yard'), Buffer.from(shop, 'utf16le'));
  writeFileSync(path.join(folder, 'uses-wide.yard'), 'steelyard 1\nuse "wide.yard"\noption none "Nothing"\n  fee "Fee" 1.00\n');
  await editor.open('uses-wide.yard');
  await expect.poll(() => editor.codes('uses-wide.yard'), soon).toContain('use-missing');
  const missing = editor.published.get(editor.uri('uses-wide.yard'))?.diagnostics.find(({ code }) => code === 'use-missing') as lsp.Diagnostic;
  expect(missing.message).toMatch(/^“wide\.yard” is text in UTF-16, not in UTF-8\. .* Save it in UTF-8 and try again\.$/);
  const actions = await editor.ask<lsp.CodeAction[]>('codeAction', 'uses-wide.yard', { range: missing.range, context: { diagnostics: [missing] } });
  expect(actions.filter(({ edit }) => edit?.documentChanges !== undefined)).toEqual([]);
  writeFileSync(path.join(folder, 'wide.yard'), shop);
  await editor.connection.sendNotification('workspace/didChangeWatchedFiles', { changes: [{ uri: editor.uri('wide.yard'), type: lsp.FileChangeType.Changed }] });
  await expect.poll(() => editor.codes('uses-wide.yard'), soon).not.toContain('use-missing');
  await editor.close('uses-wide.yard');
});

test('what the shop makes of a problem is asked of the editor, and asked again when it changes', async () => {
  writeFileSync(path.join(folder, 'judged.yard'), 'steelyard 1\npart pump "Pump" 64.30\n');
  await editor.open('judged.yard');
  await expect.poll(() => editor.published.get(editor.uri('judged.yard'))?.diagnostics.length, soon).toBeGreaterThan(0);
  const first = editor.published.get(editor.uri('judged.yard'))?.diagnostics[0] as lsp.Diagnostic;
  const severity = () => editor.published.get(editor.uri('judged.yard'))?.diagnostics.find(({ code }) => code === first.code)?.severity;
  const judge = async (word: string) => {
    editor.settings = { severities: { [String(first.code)]: word, nonsense: 3 } };
    await editor.connection.sendNotification('workspace/didChangeConfiguration', { settings: null });
  };
  expect(severity()).toBe(lsp.DiagnosticSeverity.Warning);
  await judge('error');
  await expect.poll(severity, soon).toBe(lsp.DiagnosticSeverity.Error);
  await judge('advice');
  await expect.poll(severity, soon).toBe(lsp.DiagnosticSeverity.Information);
  await judge('off');
  await expect.poll(severity, soon).toBeUndefined();
  editor.settings = null;
  await editor.connection.sendNotification('workspace/didChangeConfiguration', { settings: null });
  await expect.poll(severity, soon).toBe(lsp.DiagnosticSeverity.Warning);
  await editor.close('judged.yard');
});

test('an address spelled the editor’s way is the same file', async () => {
  const spelled = editor.uri('tarn-inline.yard').replace('tarn-inline', 'tarn%2Dinline');
  await editor.open('tarn-inline.yard', spelled);
  await expect.poll(() => editor.mends('tarn-inline.yard', spelled), soon).toEqual([]);
  const references = await editor.ask<lsp.Location[]>('references', SHOP, { position: editor.position(SHOP, 'labour diagnosis', 8), context: { includeDeclaration: true } });
  expect(references.map(({ uri }) => uri)).toContain(spelled);
  expect(references.map(({ uri }) => uri)).not.toContain(editor.uri('tarn-inline.yard'));
  await editor.close('tarn-inline.yard', spelled);
});

test('an editor that can do little still gets answers it can use', async () => {
  const plain = await Editor.start(program, folder, { workspace: { configuration: true } }, { workspaceFolders: null, rootUri: editor.uri(''), initializationOptions: { severities: { 'use-missing': 'warning' } } });
  writeFileSync(path.join(folder, 'plain.yard'), 'steelyard 1\nuse "none.yard"\n\n');
  await plain.open('plain.yard');
  await expect.poll(() => plain.published.get(plain.uri('plain.yard'))?.diagnostics.find(({ code }) => code === 'use-missing')?.severity, soon).toBe(lsp.DiagnosticSeverity.Warning);
  const items = await plain.ask<lsp.CompletionItem[]>('completion', 'plain.yard', { position: { line: 2, character: 0 } });
  expect(items.length).toBeGreaterThan(0);
  for (const { insertTextFormat, textEdit } of items) {
    expect(insertTextFormat).toBe(lsp.InsertTextFormat.PlainText);
    expect(textEdit?.newText).not.toMatch(/\$\{/);
  }
  const actions = await plain.ask<lsp.CodeAction[]>('codeAction', 'plain.yard', { range: whole, context: { diagnostics: [] } });
  expect(actions.filter(({ edit }) => edit?.documentChanges !== undefined)).toEqual([]);
  // It doesn't tell of changes on disk, so they are looked for when something is saved.
  writeFileSync(path.join(folder, 'none.yard'), 'steelyard 1\nshop "None"\n');
  await plain.connection.sendNotification('textDocument/didSave', { textDocument: { uri: plain.uri('plain.yard') } });
  await expect.poll(() => plain.codes('plain.yard'), soon).not.toContain('use-missing');
  expect(await plain.stop()).toBe(0);
});
