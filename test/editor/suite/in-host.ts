// Runs inside the extension host, where `vscode` is the real API: what other extensions and the editor itself see.
import * as vscode from 'vscode';
import { runCases, type Case } from './cases.js';
import { ok, same } from './expect.js';
import { closeAll, codes, gone, inWorkspace, open, problem, problemsOf, until, wait, write } from './language-kit.js';

async function openNew(name: string, text: string): Promise<vscode.TextDocument> {
  await write(name, text);
  return open(name);
}

async function append(document: vscode.TextDocument, text: string): Promise<void> {
  const edit = new vscode.WorkspaceEdit();
  edit.insert(document.uri, document.positionAt(document.getText().length), text);
  await vscode.workspace.applyEdit(edit);
}

const hoverAt = async (uri: vscode.Uri, position: vscode.Position): Promise<string> => {
  const hovers = await vscode.commands.executeCommand<vscode.Hover[]>('vscode.executeHoverProvider', uri, position);
  return hovers.flatMap(({ contents }) => contents).map((one) => (typeof one === 'string' ? one : one.value)).join('\n');
};

const shared = (price: string) => `steelyard 1\nshop "S"\n  currency USD\n  rate plain "Plain" ${price} usual\n`;
const using = (path: string) => `steelyard 1\nuse "${path}"\noption one "One"\n  labour "Work" 2 h\n`;

const cases: readonly Case[] = [
  {
    name: 'is not active before an estimate is opened, and then at once',
    async run() {
      const extension = vscode.extensions.getExtension('steelyard.steelyard');
      ok(extension);
      same(extension.isActive, false);
      const started = performance.now();
      await extension.activate();
      console.log(`activation: ${(performance.now() - started).toFixed(0)} ms`);
    },
  },
  {
    name: 'shows problems on their place, with code, source and severity',
    async run() {
      const document = await open('pilgrim-v6.yard');
      const advice = await problem(document.uri, 'compression-uneven');
      same(advice.severity, vscode.DiagnosticSeverity.Information);
      await append(document, '\nlabour extra "Extra"\n  takes 11h\nlabour extra "Again" 1 h\n');
      const glued = await problem(document.uri, 'glued-unit');
      same(glued.severity, vscode.DiagnosticSeverity.Error);
      same(document.getText(glued.range), '11h');
      const [related] = (await problem(document.uri, 'name-taken')).relatedInformation ?? [];
      ok(related);
      same(related.location.uri.toString(), document.uri.toString());
      same(document.lineAt(related.location.range.start).text, 'labour extra "Extra"');
    },
  },
  {
    name: 'mends a problem in one step',
    async run() {
      const { uri } = await open('pilgrim-v6.yard');
      const { range } = await problem(uri, 'glued-unit');
      const actions = await vscode.commands.executeCommand<vscode.CodeAction[]>('vscode.executeCodeActionProvider', uri, range);
      const action = actions.find(({ title }) => title === 'Write 11 h');
      ok(action?.edit);
      same(action.isPreferred, true);
      await vscode.workspace.applyEdit(action.edit);
      await gone(uri, 'glued-unit');
      ok(vscode.window.activeTextEditor?.document.getText().includes('takes 11 h'));
    },
  },
  {
    name: 'clears problems when an estimate is closed',
    async run() {
      const uri = inWorkspace('pilgrim-v6.yard');
      await closeAll();
      await until('no problems', () => (problemsOf(uri).length === 0 ? true : undefined));
    },
  },
  {
    name: 'shows nothing on an old version beside the file',
    async run() {
      const uri = inWorkspace('pilgrim-v6.yard');
      const old = uri.with({ scheme: 'git', authority: '', query: JSON.stringify({ path: uri.path, ref: 'HEAD' }) });
      // The editor's git knows the repository a few seconds after the start.
      const document = await until('the committed text', async () => {
        try {
          return await vscode.workspace.openTextDocument(old);
        } catch {
          return undefined;
        }
      });
      same(document.languageId, 'steelyard');
      ok(/compression +171/.test(document.getText()));
      await wait(300);
      same(codes(document.uri), []);
    },
  },
  {
    name: 'follows a shared file, on disk and open, and shows its problems in it',
    async run() {
      const shop = await write('own-shop.yard', shared('100.00'));
      const { uri } = await openNew('own.yard', using('own-shop.yard'));
      const title = new vscode.Position(3, 12);
      await until('200.00', async () => ((await hoverAt(uri, title)).includes('200.00') ? true : undefined));
      await write('own-shop.yard', shared('1.0.0'));
      await problem(shop, 'not-a-number');
      await write('own-shop.yard', shared('150.00'));
      await until('300.00', async () => ((await hoverAt(uri, title)).includes('300.00') ? true : undefined));
      await gone(shop, 'not-a-number');
      await vscode.workspace.fs.delete(shop);
      await problem(uri, 'use-missing');
      await write('own-shop.yard', shared('150.00'));
      await gone(uri, 'use-missing');
      await closeAll();
    },
  },
  {
    name: 'reads nothing outside the workspace, also not by way of a link',
    async run() {
      const { uri } = await openNew('outside.yard', using('../beside/shop.yard'));
      await problem(uri, 'use-outside');
      const linked = await openNew('linked.yard', using('leads-out.yard'));
      await problem(linked.uri, 'use-outside');
      const direct = await openNew('inside.yard', using('shop.yard'));
      await until('a price', async () => ((await hoverAt(direct.uri, new vscode.Position(3, 12))).includes('264.00') ? true : undefined));
      same(codes(direct.uri).filter((code) => code.startsWith('use-')), []);
      await closeAll();
    },
  },
  {
    name: 'shows texts of a file in a hover as text',
    async run() {
      const { uri } = await openNew('hostile.yard', 'steelyard 1\nshop "S"\n  rate plain "Plain" 100.00 usual\noption one "One"\n  labour "[x](command:a) <img src=y> **b**" 1 h\n');
      const text = await until('a hover', async () => ((await hoverAt(uri, new vscode.Position(4, 8))) || undefined));
      ok(!/(^|[^\\])\[x\]|(^|[^\\])\*\*/.test(text), text);
      const hovers = await vscode.commands.executeCommand<vscode.Hover[]>('vscode.executeHoverProvider', uri, new vscode.Position(4, 8));
      for (const one of hovers.flatMap(({ contents }) => contents)) ok(typeof one !== 'string' && !('language' in one) && one.isTrusted !== true && one.supportHtml !== true);
      await closeAll();
    },
  },
  {
    name: 'opens one panel beside the text and reuses it',
    async run() {
      const tabs = (): vscode.Tab[] => vscode.window.tabGroups.all.flatMap((group) => group.tabs).filter(({ input }) => input instanceof vscode.TabInputWebview);
      await open('pilgrim-v6.yard');
      await vscode.commands.executeCommand('steelyard.showComparison');
      const [tab] = await until('a panel', () => (tabs().length > 0 ? tabs() : undefined));
      ok(tab);
      same(tab.label, 'Comparison: pilgrim-v6.yard');
      same(tab.group.viewColumn, vscode.ViewColumn.Two);
      ok(vscode.window.activeTextEditor?.document.uri.path.endsWith('pilgrim-v6.yard'));
      await open('shop.yard');
      await wait(200);
      same(tabs()[0]?.label, 'Comparison: pilgrim-v6.yard');
      await open('tarn-inline.yard');
      await until('the other estimate', () => (tabs()[0]?.label === 'Comparison: tarn-inline.yard' ? true : undefined));
      await vscode.commands.executeCommand('steelyard.showComparison');
      await wait(200);
      same(tabs().length, 1);
      await vscode.commands.executeCommand('steelyard.goToEstimate');
      ok(vscode.window.activeTextEditor?.document.uri.path.endsWith('tarn-inline.yard'));
      await closeAll();
    },
  },
];

export async function run(): Promise<void> {
  const { passed, failed } = await runCases('in host', cases, (line) => console.log(line));
  console.log(`counted ${passed} ${failed}`);
}
