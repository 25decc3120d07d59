// A tiny extension and workspace that exist only for the self-test: what the host promises must not depend on ours.
import { mkdir, writeFile } from 'node:fs/promises';
import path from 'node:path';

const manifest = {
  name: 'host-smoke',
  publisher: 'self-test',
  version: '0.0.1',
  engines: { vscode: '^1.100.0' },
  main: './main.js',
  browser: './main.js',
  activationEvents: ['onLanguage:yard'],
  contributes: {
    languages: [{ id: 'yard', extensions: ['.yard'], aliases: ['Yard self-test'] }],
    commands: [{ command: 'smoke.open', title: 'Smoke: Open Panel', icon: '$(graph)' }],
    menus: { 'editor/title': [{ command: 'smoke.open', when: 'editorLangId == yard', group: 'navigation' }] },
  },
};

const main = `
const vscode = require('vscode');
exports.activate = (context) => {
  const found = vscode.languages.createDiagnosticCollection('smoke');
  const check = (document) => {
    if (document.languageId !== 'yard') return;
    const lines = document.getText().split('\\n');
    found.set(document.uri, lines.flatMap((line, i) => {
      const at = line.indexOf('WRONG');
      if (at < 0) return [];
      const problem = new vscode.Diagnostic(new vscode.Range(i, at, i, at + 5), 'first line\\nsecond line');
      return [Object.assign(problem, { source: 'smoke', code: 'S1' })];
    }));
  };
  vscode.workspace.textDocuments.forEach(check);
  context.subscriptions.push(
    vscode.workspace.onDidOpenTextDocument(check),
    vscode.workspace.onDidChangeTextDocument((event) => check(event.document)),
    vscode.languages.registerHoverProvider('yard', { provideHover: () => new vscode.Hover('hover of the self-test') }),
    vscode.commands.registerCommand('smoke.open', () => {
      const panel = vscode.window.createWebviewPanel('smoke', 'Smoke panel', vscode.ViewColumn.Beside, { enableScripts: true });
      const script = panel.webview.asWebviewUri(vscode.Uri.joinPath(context.extensionUri, 'page.js'));
      panel.webview.onDidReceiveMessage((text) => vscode.window.showInformationMessage(text));
      panel.webview.html = '<!doctype html><h1>static</h1><button>Send</button><script src="' + script + '"></script>';
    }));
};`;

const pageScript = `
const editor = acquireVsCodeApi();
document.querySelector('h1').textContent = 'scripted ' + 6 * 7;
document.querySelector('button').onclick = () => editor.postMessage('sent from the page');
`;

const suite = (statement: string): string => `
const vscode = require('vscode');
exports.run = async () => {
  const commands = await vscode.commands.getCommands(true);
  console.log('extension', vscode.extensions.getExtension('self-test.host-smoke')?.id, 'commands', commands.length > 0);
  ${statement}
};`;

export interface Throwaway {
  readonly extensionDir: string;
  readonly workspace: string;
  readonly passing: string;
  readonly failing: string;
}

export async function writeThrowaway(dir: string): Promise<Throwaway> {
  const at = (...names: string[]): string => path.join(dir, ...names);
  // A space in the path: users have them, and addresses must survive them.
  const [extensionDir, workspace] = [at('the extension'), at('the workspace')];
  await Promise.all([mkdir(extensionDir), mkdir(workspace)]);
  await writeFile(path.join(extensionDir, 'package.json'), JSON.stringify(manifest));
  await writeFile(path.join(extensionDir, 'main.js'), main);
  await writeFile(path.join(extensionDir, 'page.js'), pageScript);
  await writeFile(path.join(workspace, 'a.yard'), 'one\ntwo WRONG\nthree\n');
  await writeFile(path.join(workspace, 'b.yard'), 'all well\n');
  await writeFile(at('passing.js'), suite(''));
  await writeFile(at('failing.js'), suite("throw new Error('failed on purpose');"));
  return { extensionDir, workspace, passing: at('passing.js'), failing: at('failing.js') };
}
