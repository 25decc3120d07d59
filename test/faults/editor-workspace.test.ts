import { expect, test } from 'vitest';
import type { ShopBook } from '../../src/editor/book.js';
import type { Desk } from '../../src/editor/desk.js';
import type { EstimatesView } from '../../src/editor/estimates-view.js';
import type { Guarded } from '../../src/editor/guarded.js';
import type * as InTurns from '../../src/editor/in-turns.js';
import type { Completions } from '../../src/editor/language/completions.js';
import type { Shelf } from '../../src/editor/language/shelf.js';
import { CLOSED_SHOP, closedEstimate } from '../../src/tools/bench/closed-estimates.js';
import { createLanguageService } from '../../src/service/index.js';
import { editorModule } from '../security/editor-modules.js';
import { fakeEditor, gate, type Happens } from './fake-editor.js';

const closed = Object.fromEntries([1, 2, 3].map((i) => [`job-${i}.yard`, closedEstimate(i)]));
const failing = (says: string) => (): never => { throw new Error(says); };

async function bookOver(files: Readonly<Record<string, string | Uint8Array>>) {
  const editor = fakeEditor({ 'shop.yard': CLOSED_SHOP, ...files });
  const changed = editor.emitter<string>();
  const { Guarded: Reader } = await editorModule<{ readonly Guarded: new (leadsOut: () => Promise<boolean>) => Guarded }>('guarded.ts', editor.vscode);
  const { ShopBook: Book } = await editorModule<{ readonly ShopBook: new (guarded: Guarded, onFileChanged: unknown) => ShopBook }>('book.ts', { ...editor.vscode, window: { ...editor.vscode.window, showTextDocument: () => Promise.resolve() }, workspace: Object.assign(editor.vscode.workspace, { openTextDocument: () => Promise.resolve({}) }) });
  const book = new Book(new Reader(() => Promise.resolve(false)), changed.event);
  return { editor, book, changed, text: async () => { await book.show(); return book.provideTextDocumentContent(); } };
}

test('a search of the workspace that failed once is told, and made again: the book is read', async () => {
  const { editor, book, text } = await bookOver(closed);
  editor.before.findFiles = failing('the search was stopped');
  expect(book.now().size).toBe(0);
  expect(await text()).toMatch(/^The files of this workspace could not be looked for, so this is what was read before: the search was stopped\n/);
  editor.before.findFiles = () => undefined;
  const said = await text();
  expect(said).not.toContain('could not be looked for');
  expect(said).toContain('4 files, 3 of them closed');
  expect(book.now().size).toBeGreaterThan(0);
});

test('what was read before stays while the search fails', async () => {
  const { editor, book, text } = await bookOver(closed);
  await text();
  const { size } = book.now();
  editor.before.findFiles = failing('the search was stopped');
  expect(await text()).toMatch(/read before: the search was stopped\n[^]*3 of them closed/);
  expect(book.now().size).toBe(size);
});

test.each([
  ['that can’t be read', (editor: Awaited<ReturnType<typeof bookOver>>['editor']) => { editor.before.readFile = (path) => { if (path.endsWith('bad.yard')) throw new Error('the disk failed'); }; }, 'the disk failed'],
  ['that is no text', (editor: Awaited<ReturnType<typeof bookOver>>['editor']) => { const { decode } = editor.vscode.workspace; editor.vscode.workspace.decode = (bytes) => (bytes.length < 20 ? Promise.reject(new Error('it seems to be binary')) : decode(bytes)); }, 'it seems to be binary'],
  ['that is larger than any estimate', (editor: Awaited<ReturnType<typeof bookOver>>['editor']) => editor.write('bad.yard', new Uint8Array(8_000_001)), 'It is larger than an estimate can be.'],
])('one file %s is named in the book, and the others are in it', async (_, make, why) => {
  const { editor, book, text } = await bookOver({ ...closed, 'bad.yard': 'closed for a' });
  make(editor);
  const said = await text();
  expect(said).toContain(`bad.yard: ${why}`);
  expect(said).toContain('5 files, 3 of them closed');
  expect(book.now().size).toBeGreaterThan(0);
});

test('a file that changes while the book is read is read again', async () => {
  const { editor, book, changed, text } = await bookOver(closed);
  const slow = gate();
  editor.before.readFile = (path) => (path.endsWith('job-2.yard') ? slow.wait() : undefined);
  const first = text();
  await expect.poll(() => editor.reads).toContain('/shop/job-2.yard');
  // Its size and time of change are what they were, as on disks that count whole seconds: only the watcher tells.
  const { readFile } = editor.vscode.workspace.fs;
  editor.vscode.workspace.fs.readFile = (uri) => (uri.path.endsWith('job-2.yard') ? Promise.resolve(new TextEncoder().encode('steelyard 1\n# not closed any more\n')) : readFile(uri));
  changed.fire(editor.key('job-2.yard'));
  slow.open();
  await first;
  await expect.poll(() => book.provideTextDocumentContent()).toContain('4 files, 2 of them closed');
});

test('the files of the workspace are looked for again after a search that failed', async () => {
  const editor = fakeEditor({ 'a.yard': '' });
  const { Shelf: Keys } = await editorModule<{ readonly Shelf: new () => Shelf }>('language/shelf.ts', editor.vscode);
  const shelf = new Keys();
  editor.before.findFiles = failing('the search was stopped');
  await expect(shelf.all()).rejects.toThrow('the search was stopped');
  // Whoever types is not stopped by it.
  await expect(shelf.soon()).resolves.toBe(false);
  editor.before.findFiles = () => undefined;
  expect(await shelf.all()).toEqual([editor.key('a.yard')]);
  await expect(shelf.soon()).resolves.toBe(true);
});

test('suggestions that were made before all files were found are asked for again by the editor, and no others', async () => {
  const editor = fakeEditor({ 'a.yard': 'steelyard 1\nuse "\n', 'shop.yard': 'steelyard 1\nshop "S"\n' });
  const lists = {
    CompletionList: class { constructor(readonly items: readonly object[] = [], readonly isIncomplete = false) {} },
    CompletionItem: class { constructor(readonly label: string) {} }, SnippetString: class { constructor(readonly value: string) {} }, CompletionItemKind: {},
  };
  const { Completions: Offers } = await editorModule<{ readonly Completions: new (desk: object, shelf: object) => Completions }>('language/completions.ts', { ...editor.vscode, ...lists });
  const { Shelf: Keys } = await editorModule<{ readonly Shelf: new () => Shelf }>('language/shelf.ts', editor.vscode);
  const shelf = new Keys();
  const text = 'steelyard 1\nuse "\n';
  const service = createLanguageService({ read: () => ({ text }), resolvePath: (_, written) => editor.key(written), files: () => shelf.keys });
  const offers = new Offers({ service, whole: () => Promise.resolve(true), positions: { range: () => undefined } }, shelf);
  const document = { uri: { toString: () => editor.key('a.yard'), scheme: 'file', path: '/shop/a.yard' }, languageId: 'steelyard', offsetAt: () => text.length - 1 };
  const asked = async () => {
    const { items, isIncomplete } = await offers.provideCompletionItems(document as never, {} as never);
    return { files: items.map(({ label }) => label), isIncomplete };
  };
  const slow = gate();
  editor.before.findFiles = slow.wait;
  expect(await asked()).toEqual({ files: [], isIncomplete: true });
  slow.open();
  expect(await asked()).toEqual({ files: ['shop.yard'], isIncomplete: false });
});

/** The list of estimates over texts, with what can fail of it. */
async function listOver(texts: Record<string, string>) {
  const editor = fakeEditor({});
  const changed = editor.emitter<string>();
  const list = { message: '', visible: true, dispose: () => undefined };
  const service = createLanguageService({ read: (key) => (texts[key] === undefined ? 'missing' : { text: texts[key] }), resolvePath: () => undefined });
  const before: { whole: Happens; all: () => void } = { whole: () => undefined, all: () => undefined };
  const desk = { service, whole: async (key: string) => { await before.whole(key); return key in texts; }, letGo: () => undefined, onFresh: editor.emitter().event };
  const shelf = { onChanged: changed.event, all: async () => { before.all(); return await Promise.resolve(Object.keys(texts)); } };
  const { EstimatesView: View } = await editorModule<{ readonly EstimatesView: new (desk: Desk, shelf: Shelf) => EstimatesView }>('estimates-view.ts', { ...editor.vscode, window: { ...editor.vscode.window, createTreeView: () => list } });
  const view = new View(desk as never, shelf as never);
  let refreshed = 0;
  view.onDidChangeTreeData(() => refreshed++);
  const rows = async (): Promise<string[]> => (await view.getChildren()).flatMap((node) => ('own' in node ? node.own.map(({ file, row }) => `${file} ${row.title ?? ''}`) : []));
  return { list, before, changed, rows, view, refreshed: () => refreshed };
}

const titled = (title: string): string => `steelyard 1\nestimate "${title}"\noption a "A"\n  part "P" 5.00 new\n`;

test('the list of estimates says why it could not be made, and is there the next time', async () => {
  const { list, before, rows, view } = await listOver({ 'file:///a.yard': titled('One') });
  before.all = failing('the search was stopped');
  expect(await rows()).toEqual([]);
  expect(list.message).toBe('The workspace could not be searched for estimates: the search was stopped');
  before.all = () => undefined;
  expect(await rows()).toEqual(['file:///a.yard One']);
  expect(list.message).toBe('');
  view.dispose();
});

test('one estimate that can’t be worked out is named above the list, and the others are in it', async () => {
  const { list, before, rows, view } = await listOver({ 'file:///a.yard': titled('One'), 'file:///bad.yard': titled('Two'), 'file:///c.yard': titled('Three') });
  before.whole = (key) => { if (key.endsWith('bad.yard')) throw new Error('of a test'); };
  expect(await rows()).toEqual(['file:///a.yard One', 'file:///c.yard Three']);
  expect(list.message).toBe('Not among them, since they could not be worked out: bad.yard');
  view.dispose();
});

test('an estimate that changes while the list is made is read again', async () => {
  const texts = { 'file:///a.yard': titled('Old') };
  const { before, changed, rows, view, refreshed } = await listOver(texts);
  before.whole = () => { before.whole = () => undefined; changed.fire('file:///a.yard'); };
  await rows();
  texts['file:///a.yard'] = titled('New');
  await expect.poll(refreshed).toBeGreaterThan(0);
  expect(await rows()).toEqual(['file:///a.yard New']);
  view.dispose();
});

test('many files are gone through in turns: others get theirs, each is worked on once, and what one throws is told of it alone', async () => {
  const { inTurns } = await editorModule<typeof InTurns>('in-turns.ts', {});
  const all = Array.from({ length: 50 }, (_, i) => i);
  const worked: number[] = [];
  const told: number[] = [];
  const failed: unknown[] = [];
  let others = 0;
  let most = 0;
  let now = 0;
  const timer = setInterval(() => others++, 1);
  await inTurns(all, 4, {
    work: async (one) => {
      most = Math.max(most, ++now);
      worked.push(one);
      for (const end = performance.now() + 2; performance.now() < end;);
      await Promise.resolve();
      now--;
      if (one === 17) throw new Error('seventeen');
    },
    tell: (done) => void told.push(done),
    failed: (one, error) => void failed.push([one, String(error)]),
  });
  clearInterval(timer);
  expect(worked).toEqual(all);
  expect(failed).toEqual([[17, 'Error: seventeen']]);
  expect(told.at(-1)).toBe(50);
  expect(told).toEqual([...told].sort((a, b) => a - b));
  expect(most).toBe(4);
  expect(others).toBeGreaterThan(2);
});
