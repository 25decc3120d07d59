import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { build } from 'esbuild';
import ts from 'typescript';
import { describe, expect, test, vi } from 'vitest';

vi.setConfig({ testTimeout: 60_000 });

const root = path.resolve(import.meta.dirname, '../..');
const parsed = (file: string, text: string) => ts.createSourceFile(file, text, ts.ScriptTarget.ES2022, true);
const sources = new Map(readdirSync(path.join(root, 'src'), { recursive: true, encoding: 'utf8' }).filter((file) => file.endsWith('.ts') && !file.startsWith('tools')).map((file) => [file.split(path.sep).join('/'), parsed(file, readFileSync(path.join(root, 'src', file), 'utf8'))] as const));

/** Files in which a node of the program's tree is of some sort; comments and texts don't count. */
function filesWith(is: (node: ts.Node) => boolean, among = [...sources.keys()]): string[] {
  return among.filter((file) => {
    const has = (node: ts.Node): boolean => is(node) || ts.forEachChild(node, has) === true;
    return has(sources.get(file) as ts.SourceFile);
  }).sort();
}
const imports = (module: RegExp) => filesWith((node) => (ts.isImportDeclaration(node) || ts.isExportDeclaration(node)) && node.moduleSpecifier !== undefined && module.test(node.moduleSpecifier.getText().slice(1, -1)));
const named = (name: RegExp, among?: string[]) => filesWith((node) => ts.isIdentifier(node) && name.test(node.text), among);
const callsMember = (name: RegExp, among?: string[]) => filesWith((node) => ts.isCallExpression(node) && ts.isPropertyAccessExpression(node.expression) && name.test(node.expression.name.text), among);
const inRoom = (room: string) => [...sources.keys()].filter((file) => file.startsWith(`${room}/`));

describe('what runs or reaches out stands in one place, or nowhere', () => {
  test('processes are started in one file of the terminal tool, and never by way of a shell', () => {
    expect(imports(/child_process|worker_threads|cluster/)).toEqual(['cli/git/run-git.ts']);
    expect(filesWith((node) => ts.isPropertyAssignment(node) && node.name.getText() === 'shell')).toEqual([]);
    const calls = sources.get('cli/git/run-git.ts')?.text.match(/\bspawn\w*\(|\bexec\w*\(/g);
    expect(calls).toEqual(['spawnSync(']);
  });

  test('nothing of the network is imported or called', () => {
    // Some files have a function of their own of that name.
    const declares = (file: string) => filesWith((node) => (ts.isVariableDeclaration(node) || ts.isFunctionDeclaration(node)) && node.name?.getText() === 'fetch', [file]).length > 0;
    expect(filesWith((node) => ts.isIdentifier(node) && node.text === 'fetch' && !(ts.isPropertyAccessExpression(node.parent) && node.parent.expression.getText() !== 'globalThis') && !ts.isMethodDeclaration(node.parent)).filter((file) => !declares(file))).toEqual([]);
    expect(imports(/^(?:node:)?(?:net|tls|http|https|http2|dgram|dns|dns\/promises|inspector|undici|ws)$/)).toEqual([]);
    expect(named(/^(?:XMLHttpRequest|WebSocket|EventSource|sendBeacon|importScripts|RTCPeerConnection|WebTransport)$/)).toEqual([]);
  });

  test('no text becomes a program', () => {
    expect(filesWith((node) => (ts.isCallExpression(node) || ts.isNewExpression(node)) && ['eval', 'Function'].includes(node.expression.getText()))).toEqual([]);
    expect(imports(/^(?:node:)?vm$/)).toEqual([]);
    // A module is loaded by its own name, known when the product is built.
    expect(filesWith((node) => ts.isCallExpression(node) && node.expression.kind === ts.SyntaxKind.ImportKeyword && !ts.isStringLiteral(node.arguments[0] as ts.Node))).toEqual([]);
    expect(filesWith((node) => ts.isCallExpression(node) && /^set(?:Timeout|Interval)$/.test(node.expression.getText()) && (node.arguments[0] === undefined || ts.isStringLiteralLike(node.arguments[0])))).toEqual([]);
  });

  test('the script of the page makes elements by parsing alone, which runs nothing', () => {
    const page = inRoom('page');
    expect(page.length).toBeGreaterThan(5);
    expect(named(/^(?:innerHTML|outerHTML|insertAdjacentHTML|createContextualFragment|setHTMLUnsafe|srcdoc|write|writeln)$/, page)).toEqual([]);
    expect(callsMember(/^parseFromString$/, page)).toEqual(['page/page.ts']);
  });

  test('the editor is asked to run, open or trust nothing, but for these', () => {
    const editor = inRoom('editor');
    expect(callsMember(/^(?:createTerminal|executeTask|startDebugging|registerTaskProvider|registerUriHandler|registerAuthenticationProvider|getSession|sendText|asExternalUri)$/, editor)).toEqual([]);
    expect(named(/^(?:ShellExecution|ProcessExecution|isTrusted|supportHtml|enableForms|portMapping)$/, editor)).toEqual(['editor/changes/git-extension.ts']); // asks whether the workspace is trusted
    expect(callsMember(/^openExternal$/, editor)).toEqual(['editor/quote.ts']); // the page that was just written, when it is asked for
    expect(callsMember(/^executeCommand$/, editor)).toEqual(['editor/language/totals-using.ts', 'editor/manual.ts']);
    expect(callsMember(/^appendMarkdown$/, editor)).toEqual(['editor/hovers.ts']); // a space
    expect(filesWith((node) => ts.isNewExpression(node) && node.expression.getText().endsWith('MarkdownString') && (node.arguments?.length ?? 0) > 0, editor)).toEqual([]);
  });

  test('words of a file come into notifications, lists and the status as text', () => {
    const editor = inRoom('editor');
    const first = (call: ts.CallExpression): string => call.arguments[0]?.getText() ?? '';
    const member = (node: ts.Node): string => (ts.isCallExpression(node) && ts.isPropertyAccessExpression(node.expression) ? node.expression.name.text : '');
    expect(filesWith((node) => /^show(?:Information|Warning|Error)Message$/.test(member(node)) && !/^asNotice\(|^'[^']*'$/.test(first(node as ts.CallExpression)), editor)).toEqual([]);
    expect(filesWith((node) => member(node) === 'showQuickPick' && !first(node as ts.CallExpression).startsWith('asItems('), editor.filter((file) => file !== 'editor/changes/what-changed.ts'))).toEqual([]);
    expect(callsMember(/^(?:setStatusBarMessage|createStatusBarItem|createQuickPick|showInputBox)$/, editor)).toEqual([]);
    expect(filesWith((node) => ts.isBinaryExpression(node) && /^this\.item\.(?:text|detail)$/.test(node.left.getText()) && !node.right.getText().startsWith('asStatus('), editor)).toEqual([]);
  });
});

describe('the manifest', () => {
  const manifest = JSON.parse(readFileSync(path.join(root, 'package.json'), 'utf8')) as { readonly capabilities: unknown; readonly contributes: { readonly configuration: { readonly properties: Readonly<Record<string, { readonly scope: string }>> } }; readonly activationEvents: readonly string[]; readonly dependencies: object; readonly scripts: Readonly<Record<string, string>> };

  test('works in a workspace that is not trusted, since nothing of one is run', () => {
    expect(manifest.capabilities).toEqual({ untrustedWorkspaces: { supported: true }, virtualWorkspaces: true });
    // No setting names a program, so a workspace's own settings can do no harm.
    expect(Object.keys(manifest.contributes.configuration.properties).filter((name) => /path|command|program|exec|shell|args|env|url|server/i.test(name))).toEqual([]);
    expect(manifest.activationEvents).toEqual(['onWebviewPanel:steelyard.comparison']);
  });

  test('runs nothing when it is installed', () => {
    expect(Object.keys(manifest.scripts).filter((name) => /^(?:pre|post)?install$|prepare$/.test(name))).toEqual([]);
  });
});

describe('what is shipped', () => {
  const bundle = async (entry: string, platform: 'node' | 'browser') => (await build({ entryPoints: [path.join(root, entry)], bundle: true, write: false, platform, format: 'cjs', external: ['vscode', '../dist/*', './web/*'], logLevel: 'error' })).outputFiles[0]?.text ?? '';
  const asked = (text: string) => [...new Set([...text.matchAll(/\brequire\("([^"]+)"\)/g)].map(([, name]) => name))].sort();

  test('the extension asks its editor for nothing but the disk’s own links', async () => {
    expect(asked(await bundle('src/editor/extension.ts', 'node'))).toEqual(['node:fs/promises', 'node:path', 'vscode']);
    const web = await bundle('src/editor/web.ts', 'browser');
    expect(asked(web)).toEqual(['vscode']);
    expect(web.match(/\b(?:XMLHttpRequest|WebSocket|EventSource|importScripts)\s*\(/g)).toBeNull();
    // Addresses are names of standards, and where a library says where it comes from; none is asked.
    expect(web.match(/https?:\/\/(?!github\.com\/MikeMcl\/decimal\.js\b|www\.w3\.org\/|docs\.oasis-open\.org\/|json-schema\.org\/)[a-z][^\s'"`]*/g)).toBeNull();
  });

  test('the page’s script compiles nothing, writes no markup and asks no server', async () => {
    const page = await bundle('src/page/page.ts', 'browser');
    expect(page.length).toBeGreaterThan(5_000);
    expect(page.match(/\beval\s*\(|\bFunction\s*\(|innerHTML|outerHTML|insertAdjacentHTML|document\.write|\bfetch\s*\(|XMLHttpRequest|WebSocket|https?:\/\//g)).toBeNull();
  });

  test('the extension compiles nothing at run time, nor does any library in it', async () => {
    const web = await bundle('src/editor/web.ts', 'browser');
    expect(web.match(/(?<![\w.])eval\s*\(|\bnew Function\b|(?<![\w.])Function\s*\(/g)).toBeNull();
  });
});
