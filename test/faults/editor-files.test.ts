import { describe, expect, test } from 'vitest';
import type { Guarded } from '../../src/editor/guarded.js';
import type { Texts } from '../../src/editor/texts.js';
import { editorModule } from '../security/editor-modules.js';
import { fakeEditor, gate, type Address } from './fake-editor.js';

const never = (): Promise<boolean> => Promise.resolve(false);
type GuardedClass = new (leadsOut: (root: Address, file: Address) => Promise<boolean>) => Guarded;
async function guardedIn(editor: ReturnType<typeof fakeEditor>, leadsOut: ConstructorParameters<GuardedClass>[0] = never): Promise<Guarded> {
  return new (await editorModule<{ readonly Guarded: GuardedClass }>('guarded.ts', editor.vscode)).Guarded(leadsOut);
}
async function textsIn(editor: ReturnType<typeof fakeEditor>): Promise<Texts> {
  return new (await editorModule<{ readonly Texts: new (guarded: Guarded) => Texts }>('texts.ts', editor.vscode)).Texts(await guardedIn(editor));
}
const uri = (editor: ReturnType<typeof fakeEditor>, name: string) => editor.vscode.Uri.parse(editor.key(name)) as never;
const failing = (code: string) => (): never => { throw Object.assign(new Error(`${code} of a test`), { code }); };

describe('a file that may be read', () => {
  test.each([
    ['is not there', 'missing', () => undefined, 'none.yard'],
    ['is gone once it was looked at', 'missing', (editor: ReturnType<typeof fakeEditor>) => (editor.before.readFile = failing('FileNotFound')), 'a.yard'],
    ['can’t be looked at', 'unreadable', (editor: ReturnType<typeof fakeEditor>) => (editor.before.stat = failing('Unavailable')), 'a.yard'],
    ['may not be read', 'unreadable', (editor: ReturnType<typeof fakeEditor>) => (editor.before.readFile = failing('NoPermissions')), 'a.yard'],
    ['is no text', 'unreadable', (editor: ReturnType<typeof fakeEditor>) => (editor.vscode.workspace.decode = () => Promise.reject(new Error('it is binary'))), 'a.yard'],
    ['is too large', 'too-large', () => undefined, 'large.yard'],
    ['grows too large while it is read', 'too-large', (editor: ReturnType<typeof fakeEditor>) => (editor.before.stat = (path) => { if (editor.reads.length > 0) editor.write(path.slice(6), 'x'.repeat(2_000)); }), 'a.yard'],
  ] as const)('and %s is %s, without a text', async (_, kind, make, name) => {
    const editor = fakeEditor({ 'a.yard': 'steelyard 1\n', 'large.yard': 'x'.repeat(2_000) });
    make(editor);
    expect(await (await guardedIn(editor)).text(uri(editor, name), 1_000)).toMatchObject({ kind });
  });

  test('lies outside, by way of a link: it is not opened', async () => {
    const editor = fakeEditor({ 'a.yard': 'steelyard 1\n' });
    expect(await (await guardedIn(editor, () => Promise.resolve(true))).text(uri(editor, 'a.yard'), 1_000)).toEqual({ kind: 'outside' });
    expect(editor.reads).toEqual([]);
  });

  test('and changes while it is read is read again; one that goes on changing is given up', async () => {
    const editor = fakeEditor({ 'a.yard': 'old' });
    let left = 1;
    editor.before.readFile = () => { if (left-- > 0) editor.write('a.yard', `new ${left}`); };
    const guarded = await guardedIn(editor);
    expect(await guarded.text(uri(editor, 'a.yard'), 1_000)).toEqual({ kind: 'read', text: 'new 0' });
    left = 1_000;
    expect(await guarded.text(uri(editor, 'a.yard'), 1_000)).toEqual({ kind: 'unreadable', why: 'It changes while it is read.' });
    expect(left).toBeGreaterThan(990);
  });
});

describe('the texts that the language service reads from', () => {
  test('a file that is told to have changed while it is read is not taken for what it was before', async () => {
    const editor = fakeEditor({ 'shop.yard': 'old' });
    const texts = await textsIn(editor);
    const slow = gate();
    editor.before.readFile = slow.wait;
    const first = texts.fetch(editor.key('shop.yard'));
    await expect.poll(() => editor.reads.length).toBe(1);
    // Of the same size at the same time of the clock: only the watcher tells.
    editor.vscode.workspace.fs.readFile = () => Promise.resolve(new TextEncoder().encode('new'));
    texts.forget(editor.key('shop.yard'));
    const second = texts.fetch(editor.key('shop.yard'));
    await second;
    slow.open();
    await first;
    expect(texts.read(editor.key('shop.yard'))).toMatchObject({ text: 'new' });
  });

  test.each([
    ['is no text', (editor: ReturnType<typeof fakeEditor>): void => void (editor.vscode.workspace.decode = () => Promise.reject(new Error('it is binary'))), 'could not be read: it is binary'],
    ['is larger than any estimate', (editor: ReturnType<typeof fakeEditor>): void => editor.write('shop.yard', new Uint8Array(16_000_001)), 'is larger than an estimate can be.'],
    ['is not there', (editor: ReturnType<typeof fakeEditor>): void => editor.remove('shop.yard'), undefined],
  ] as const)('a file that %s is missing, and why is kept until it changes', async (_, make, why) => {
    const editor = fakeEditor({ 'shop.yard': 'text' });
    const texts = await textsIn(editor);
    const { decode } = editor.vscode.workspace;
    make(editor);
    await texts.fetch(editor.key('shop.yard'));
    expect([texts.read(editor.key('shop.yard')), texts.whyMissing(editor.key('shop.yard'))]).toEqual(['missing', why]);
    editor.vscode.workspace.decode = decode;
    editor.write('shop.yard', 'text');
    texts.forget(editor.key('shop.yard'));
    await texts.fetch(editor.key('shop.yard'));
    expect([texts.read(editor.key('shop.yard')), texts.whyMissing(editor.key('shop.yard'))]).toEqual([expect.objectContaining({ text: 'text' }), undefined]);
  });

  test('a file that is asked for twice at once is read once', async () => {
    const editor = fakeEditor({ 'shop.yard': 'text' });
    const texts = await textsIn(editor);
    await Promise.all([1, 2, 3].map(() => texts.fetch(editor.key('shop.yard'))));
    expect(editor.reads).toEqual(['/shop/shop.yard']);
  });

  test('a file that failed is missing until it is told of again, and then there', async () => {
    const editor = fakeEditor({ 'shop.yard': 'text' });
    const texts = await textsIn(editor);
    editor.before.stat = failing('Unavailable');
    await texts.fetch(editor.key('shop.yard'));
    expect(texts.read(editor.key('shop.yard'))).toBe('missing');
    editor.before.stat = () => undefined;
    texts.forget(editor.key('shop.yard'));
    await texts.fetch(editor.key('shop.yard'));
    expect(texts.read(editor.key('shop.yard'))).toMatchObject({ text: 'text' });
  });
});
