import { describe, expect, test } from 'vitest';
import type * as AsText from '../../src/editor/as-text.js';
import type { ComparisonPanel } from '../../src/editor/panel.js';
import { readPageState, readToEditor, readToPage } from '../../src/page/messages.js';
import { serviceOver } from '../support/fixture.js';
import { editorModule } from './editor-modules.js';

// The real editor shows hostile texts and watches the console for what the policy refuses: test/editor/suite/hostile-panel.ts.

const webview = { cspSource: 'https://own.example', asWebviewUri: (uri: { readonly path: string }) => ({ toString: () => `https://own.example${uri.path}` }) };
const Uri = {
  joinPath: (uri: { readonly path: string }, ...more: readonly string[]) => ({ path: [uri.path, ...more].join('/'), toString: () => [uri.path, ...more].join('/') }),
  parse: (text: string) => ({ scheme: text.slice(0, text.indexOf(':')), path: text.replace(/^[a-z-]+:(?:\/\/[^/]*)?/i, ''), toString: () => text }),
};

describe('the policy of the page (W3C Content Security Policy Level 3)', () => {
  const shellOf = async () => (await editorModule<{ readonly shell: (view: unknown, dist: unknown) => string }>('shell.ts', { Uri })).shell(webview, { path: '/dist' });

  test('lets in one script by a nonce, style and pictures of the extension and the workspace, and nothing else', async () => {
    const page = await shellOf();
    const policy = /http-equiv="Content-Security-Policy" content="([^"]*)"/.exec(page)?.[1] ?? '';
    const rules = new Map(policy.split('; ').map((rule) => [rule.split(' ')[0], rule.split(' ').slice(1)] as const));
    const nonce = /'nonce-([0-9a-f]{32})'/.exec(policy)?.[1] ?? 'none';
    expect(Object.fromEntries(rules)).toEqual({ 'default-src': ["'none'"], 'img-src': [webview.cspSource], 'style-src': [webview.cspSource], 'script-src': [`'nonce-${nonce}'`], 'base-uri': ["'none'"], 'form-action': ["'none'"] });
    expect(policy).not.toMatch(/unsafe|\*|data:|blob:|wasm|strict-dynamic|http:/);
    // The policy stands before whatever it is to hold back.
    expect(page.indexOf('Content-Security-Policy')).toBeLessThan(page.search(/<script|<link|<style/));
    expect(page.match(/<script[^>]*>[^<]*<\/script>/g)).toEqual([`<script nonce="${nonce}" src="https://own.example/dist/page.js"></script>`]);
    expect(page.match(/\s(?:on\w+|style)=|<style|javascript:/gi)).toBeNull();
  });

  test('has another nonce each time', async () => {
    const { shell } = await editorModule<{ readonly shell: (view: unknown, dist: unknown) => string }>('shell.ts', { Uri });
    expect(new Set(Array.from({ length: 200 }, () => /nonce-([0-9a-f]+)/.exec(shell(webview, { path: '/d' }))?.[1])).size).toBe(200);
  });
});

/** Data as it may come out of a structured clone, and nobody's message. */
const KEYS = ['kind', 'estimate', 'figure', 'row', 'value', 'rows', 'markup', 'kept', 'unfolded', 'tried', 'scroll', 'open', '__proto__', 'constructor', 'toString', 'length', '0'];
const deep = (levels: number): unknown => { let one: unknown = 'x'; for (let i = 0; i < levels; i++) one = [one]; return one; };
const cycle: Record<string, unknown> = {}; cycle['kept'] = cycle;
const VALUES: readonly unknown[] = [
  undefined, null, true, 0, -1, Number.NaN, Number.POSITIVE_INFINITY, 10n, '', 'ready', 'go', 'try', 'write', 'show', 'seek', 'file:///w/a.yard', '5', '__proto__', 'constructor', 'x'.repeat(1_000_000), [], {}, [['ready']], new Date(0), /x/, new Map([['kind', 'ready']]), new Set(['ready']),
  new Uint8Array(8), new Error('ready'), deep(5_000), cycle, Array<string>(1_000_000).fill('x'), Object.create(null) as object, JSON.parse('{"__proto__":{"kind":"ready"}}') as unknown, Object.create({ kind: 'ready' }) as object,
];
function* forged(): Generator<unknown> {
  yield* VALUES;
  for (const [i, key] of KEYS.entries()) for (const [j, value] of VALUES.entries()) {
    const one = VALUES[(i * 7 + j * 3) % VALUES.length];
    yield { [key]: value };
    for (const kind of ['ready', 'go', 'try', 'unfold', 'fold', 'write', 'back', 'show', 'later', 'seek', 'here']) yield { kind, [key]: value, [KEYS[(i + j) % KEYS.length] as string]: one };
  }
}

describe('forged messages', () => {
  test('are dropped by both sides, or are of a known shape and of sensible size; nothing is changed by reading them', () => {
    const before = Object.getOwnPropertyNames(Object.prototype).join();
    for (const data of forged()) {
      const found = readToEditor(data) ?? readToPage(data) ?? readPageState(data);
      if (found === undefined) continue;
      for (const [key, value] of Object.entries(found)) if (typeof value === 'string' && key !== 'markup') expect(value.length).toBeLessThanOrEqual(4_000);
    }
    expect(Object.getOwnPropertyNames(Object.prototype).join()).toBe(before);
    expect(({} as { kind?: string }).kind).toBeUndefined();
  });

  test('into the panel write nothing, open nothing and leave it whole; a true one still works', async () => {
    const done: string[] = [];
    const uri = 'file:///shop/estimate.yard';
    const listeners: ((data: unknown) => void)[] = [];
    const posted: { readonly kind: string }[] = [];
    const event = () => ({ dispose: () => undefined });
    const panel = {
      title: '', visible: true, viewColumn: 2, reveal: () => undefined, dispose: () => done.push('disposed'), onDidDispose: event, onDidChangeViewState: event,
      webview: { ...webview, html: '', options: {}, postMessage: (message: { readonly kind: string }) => Promise.resolve(posted.push(message) > 0), onDidReceiveMessage: (listener: (data: unknown) => void) => { listeners.push(listener); return event(); } },
    };
    class WorkspaceEdit { replace() { done.push('an edit was made'); } }
    const vscode = {
      Uri, ViewColumn: { Beside: -2 }, WorkspaceEdit, Disposable: class {},
      window: { createWebviewPanel: () => panel, onDidChangeActiveTextEditor: event, onDidChangeTextEditorSelection: event, activeTextEditor: undefined, visibleTextEditors: [], showTextDocument: () => { done.push('a text was opened'); return Promise.resolve({}); } },
      workspace: { workspaceFolders: [], textDocuments: [], getWorkspaceFolder: () => undefined, applyEdit: (edit: unknown) => { done.push(edit instanceof WorkspaceEdit ? 'edits were applied' : 'odd'); return Promise.resolve(true); }, openTextDocument: () => { done.push('a text was opened'); return Promise.resolve({}); } },
      commands: { executeCommand: () => done.push('a command was run') }, env: { openExternal: () => done.push('a browser was opened') },
      Position: class {}, Range: class {}, Location: class {}, Selection: class {}, TextEditorRevealType: {},
    };
    const { service } = serviceOver({ 'estimate.yard': '' });
    const desk = { service, onFresh: event, keep: () => undefined, usedBy: () => [], whole: () => Promise.resolve(true), positions: { range: () => undefined } };
    const { ComparisonPanel: Panel } = await editorModule<{ readonly ComparisonPanel: new (desk: unknown, dist: unknown, leadsOut: unknown) => ComparisonPanel }>('panel.ts', vscode);
    const shown = new Panel(desk, { path: '/dist' }, () => Promise.resolve(false));
    shown.show(uri, undefined);
    const [send] = listeners;
    expect(send).toBeDefined();
    for (const data of forged()) send?.(data);
    for (const kind of ['go', 'try', 'unfold', 'fold', 'write', 'back']) for (const estimate of ['file:///etc/passwd', 'https://example.invalid/', `${uri}/../../x`, '__proto__']) send?.({ kind, estimate, ...(kind === 'go' ? { figure: 'one.total' } : kind === 'try' ? { figure: 'one.total', value: '5' } : /fold/.test(kind) ? { row: 'one.total' } : {}) });
    for (let i = 0; i < 2_000; i++) send?.({ kind: 'unfold', estimate: uri, row: `row ${i}` });
    for (const figure of ['none', '__proto__', 'constructor', '../x', '<img>']) {
      send?.({ kind: 'go', estimate: uri, figure });
      send?.({ kind: 'try', estimate: uri, figure, value: '5' });
    }
    await new Promise((resolve) => setTimeout(resolve, 50));
    expect(done).toEqual([]);
    const before = posted.length;
    send?.({ kind: 'ready' });
    await expect.poll(() => posted.slice(before).map(({ kind }) => kind)).toContain('show');
    shown.dispose();
  });
});

test('an estimate named by a forged state of a page is shown at most where one of this machine or of the workspace is; git is not asked in a workspace that is not trusted', async () => {
  const asked: string[] = [];
  const vscode = {
    workspace: { isTrusted: false, workspaceFolders: [], getWorkspaceFolder: () => undefined },
    extensions: { getExtension: (name: string) => { asked.push(name); return undefined; } },
    Uri,
  };
  const { repositoryOf } = await editorModule<{ readonly repositoryOf: (uri: unknown) => Promise<{ readonly why: string }> }>('changes/git-extension.ts', vscode);
  expect((await repositoryOf(Uri.parse('file:///shop/a.yard'))).why).toContain('restricted mode');
  expect(asked).toEqual([]);
  vscode.workspace.isTrusted = true;
  await repositoryOf(Uri.parse('file:///shop/a.yard'));
  expect(asked).toEqual(['vscode.git']);

  const event = () => ({ dispose: () => undefined });
  const read: string[] = [];
  const window = { activeTextEditor: undefined, visibleTextEditors: [], onDidChangeActiveTextEditor: event, onDidChangeTextEditorSelection: event };
  const { ComparisonPanel: Panel } = await editorModule<{ readonly ComparisonPanel: new (desk: unknown, dist: unknown, leadsOut: unknown) => ComparisonPanel }>('panel.ts', { ...vscode, window, workspace: { ...vscode.workspace, textDocuments: [] } });
  const desk = { service: serviceOver({}).service, onFresh: event, keep: () => undefined, usedBy: () => [], whole: (key: string) => { read.push(key); return Promise.resolve(false); }, positions: { range: () => undefined } };
  const state = (estimate: string) => ({ estimate, scroll: 0, open: [], unfolded: [], tried: [] });
  for (const one of [...forged(), ...['https://example.invalid/a.yard', 'command:x', 'javascript:x', 'data:text/plain,x', 'vscode-remote://x/a.yard', 'untitled:Untitled-1', 'not an address', 'git:/a.yard?x'].map(state)]) {
    let gone = false;
    const panel = { webview: { ...webview, options: {}, html: '', onDidReceiveMessage: event, postMessage: () => Promise.resolve(true) }, onDidDispose: event, onDidChangeViewState: event, visible: false, dispose: () => (gone = true) };
    await new Panel(desk, { path: '/dist' }, () => Promise.resolve(true)).deserializeWebviewPanel(panel as never, one);
    expect(gone).toBe(true);
  }
  expect(read).toEqual([]);
});

test('words of a file make no link, no icon and no command in a notification, a list or the status', async () => {
  const { asNotice, asLabel, asStatus, asItems } = await editorModule<typeof AsText>('as-text.ts', {});
  // As an editor reads its notifications and labels, from memory of its open source.
  const LINK = /\[([^\]]+)\]\(((?:https?:\/\/|command:|file:)[^)\s]+)(?: (["'])(.+?)(\3))?\)/gi;
  const ICON = /(\\)?\$\(([A-Za-z0-9-]+(?:~[A-Za-z]+)?)\)/g;
  const shownLabel = (text: string) => text.replace(ICON, (whole: string, escaped: string | undefined) => (escaped === undefined ? 'ICON' : whole.slice(1)));
  for (const text of ['[press](command:workbench.action.quit)', '[a](https://example.invalid "t")', '[a][b](file:///x)', '[[a]](command:x)', '](command:x)[b](command:y)']) {
    for (const as of [asNotice, asStatus]) expect(as(text).match(LINK), text).toBeNull();
    expect(asNotice(text).replaceAll('] (', '](')).toBe(text);
  }
  for (const text of ['$(trash)', 'a $(law~spin) b', '\\$(law)', '$$(a)$(b)', '$(not an icon)', '$()', '$ (law)', '5 $']) {
    expect(shownLabel(asLabel(text)), text).toBe(text);
    expect(shownLabel(asStatus(text)), text).toBe(text);
  }
  expect(asItems([{ label: '$(a)\u202e', description: '$(b)', detail: '$(c)', name: '$(d)' }])).toEqual([{ label: '\\$(a)‹U+202E›', description: '\\$(b)', detail: '\\$(c)', name: '$(d)' }]);
});
