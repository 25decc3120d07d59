// What is shown beside the text: amounts, totals, colours and problems; how they follow a shared file; the settings.
import * as vscode from 'vscode';
import type { Case } from './cases.js';
import { moneyIn } from './expected.js';
import { ok, same } from './expect.js';
import { ask, at, closeAll, codeOf, codes, everything, gone, inWorkspace, onDisk, open, problem, problemsOf, replace, serviceOver, until, wait, write } from './language-kit.js';

const hintsOf = async (document: vscode.TextDocument): Promise<string[]> => (await ask<vscode.InlayHint[]>('executeInlayHintProvider', document.uri, everything(document)))
  .map(({ position, label }) => `${position.line} ${(typeof label === 'string' ? label : label.map(({ value }) => value).join('')).trim()}`);
const lensesOf = async (document: vscode.TextDocument): Promise<string[]> => (await ask<vscode.CodeLens[]>('executeCodeLensProvider', document.uri)).map(({ range, command }) => `${range.start.line} ${command?.title ?? ''}`);

/** The same from the service over texts in memory. */
function expected(texts: Readonly<Record<string, string>>, name: string): { readonly hints: string[]; readonly lenses: string[] } {
  const service = serviceOver(texts);
  const text = texts[name] as string;
  const line = (offset: number): number => text.slice(0, offset).split('\n').length - 1;
  return {
    hints: service.inlayHints(`/${name}`, { start: 0, end: text.length }).map(({ offset, label }) => `${line(offset)} ${label}`),
    lenses: service.lenses(`/${name}`).map(({ range, label }) => `${line(range.start)} ${label}`),
  };
}

const set = async (name: string, value: unknown): Promise<void> => vscode.workspace.getConfiguration('steelyard').update(name, value, vscode.ConfigurationTarget.Workspace);

/** Words with the type and the modifiers that they are coloured by. */
async function colours(document: vscode.TextDocument): Promise<string[]> {
  const legend = await ask<vscode.SemanticTokensLegend>('provideDocumentSemanticTokensLegend', document.uri);
  const { data } = await ask<vscode.SemanticTokens>('provideDocumentSemanticTokens', document.uri);
  const found: string[] = [];
  let [line, column] = [0, 0];
  for (let i = 0; i < data.length; i += 5) {
    const [down, right, length, type, modifiers] = data.slice(i, i + 5) as unknown as [number, number, number, number, number];
    [line, column] = [line + down, down === 0 ? column + right : right];
    const names = legend.tokenModifiers.filter((_, bit) => (modifiers & (1 << bit)) !== 0);
    found.push([document.getText(new vscode.Range(line, column, line, column + length)), legend.tokenTypes[type], ...names].join(' '));
  }
  return found;
}

export const shownCases: readonly Case[] = [
  {
    name: 'shows what lines come to behind them, and what options come to above them',
    async run() {
      const texts = { 'heron-pump.yard': await onDisk('heron-pump.yard'), 'shop.yard': await onDisk('shop.yard') };
      const heron = await open('heron-pump.yard');
      const hints = await hintsOf(heron);
      same(hints, expected(texts, 'heron-pump.yard').hints);
      // 24.50, and 80% on parts up to 40.00.
      ok(hints.includes(`${at(heron, 'part belt').line} 44.10`), hints.join('; '));
      const lenses = await lensesOf(heron);
      same(lenses, expected(texts, 'heron-pump.yard').lenses);
      const total = moneyIn(texts, 'heron-pump.yard')('lifted.total');
      ok(lenses.some((one) => one.startsWith(`${at(heron, 'option lifted').line} ${total}`)), lenses.join('; '));
    },
  },
  {
    name: 'colours names by what they mean',
    async run() {
      const heron = await open('heron-pump.yard');
      const words = await colours(heron);
      for (const word of ['leaks estimate-finding declaration', 'leaks estimate-finding', 'road-test estimate-labour', 'belt estimate-part declaration', 'engine-lifted estimate-access', 'out estimate-option declaration']) {
        ok(words.includes(word), `${word} is not among ${words.join('; ')}`);
      }
    },
  },
  {
    name: 'says what a name means in a hover',
    async run() {
      const heron = await open('heron-pump.yard');
      const hovers = await ask<vscode.Hover[]>('executeHoverProvider', heron.uri, at(heron, 'way engine-|out'));
      const text = hovers.flatMap(({ contents }) => contents).map((one) => (typeof one === 'string' ? one : one.value)).join('\n');
      ok(text.includes('Engine and gearbox lowered on the subframe'), text);
      same(heron.getText(hovers[0]?.range), 'engine-out');
    },
  },
  {
    name: 'follows a rate that is changed in an open shared file; what does not use it is left alone',
    async run() {
      await closeAll();
      await write('alone.yard', 'steelyard 1\noption one "One"\n  labour "Work" 2h\n');
      const alone = await open('alone.yard');
      await problem(alone.uri, 'glued-unit');
      const pilgrim = await open('pilgrim-v6.yard');
      const shop = await open('shop.yard', vscode.ViewColumn.Two);
      const text = await onDisk('pilgrim-v6.yard');
      await until('problems of the estimate', () => (problemsOf(pilgrim.uri).length > 0 ? true : undefined));
      await wait(300);
      const told: string[] = [];
      const listening = vscode.languages.onDidChangeDiagnostics(({ uris }) => void told.push(...uris.map(({ path }) => path)));
      await replace(shop, '132.00', '140.00');
      const after = expected({ 'pilgrim-v6.yard': text, 'shop.yard': shop.getText() }, 'pilgrim-v6.yard');
      await until('the new amounts', async () => (JSON.stringify(await hintsOf(pilgrim)) === JSON.stringify(after.hints) ? true : undefined));
      await until('the new totals', async () => (JSON.stringify(await lensesOf(pilgrim)) === JSON.stringify(after.lenses) ? true : undefined));
      await until('the estimate checked again', () => (told.includes(pilgrim.uri.path) ? true : undefined));
      await replace(shop, 'part coolant', 'part cool-mix');
      await problem(pilgrim.uri, 'unknown-name');
      await replace(shop, 'part cool-mix', 'part coolant');
      await gone(pilgrim.uri, 'unknown-name');
      await replace(shop, '140.00', '132.00');
      listening.dispose();
      same(told.includes(alone.uri.path), false);
      same(codes(alone.uri), ['glued-unit']);
      await closeAll();
    },
  },
  {
    name: 'keeps to its settings, at once',
    async run() {
      const pilgrim = await open('pilgrim-v6.yard');
      await problem(pilgrim.uri, 'compression-uneven');
      ok((await hintsOf(pilgrim)).length > 0 && (await lensesOf(pilgrim)).length > 0);
      await set('show.amounts', false);
      same(await hintsOf(pilgrim), []);
      await set('show.totals', false);
      same(await lensesOf(pilgrim), []);
      await set('severities', { 'compression-uneven': 'off', 'glued-unit': 'off', 'not-a-code': 3 });
      await gone(pilgrim.uri, 'compression-uneven');
      await set('severities', { 'compression-uneven': 'error', 'glued-unit': 'off' });
      same((await problem(pilgrim.uri, 'compression-uneven')).severity, vscode.DiagnosticSeverity.Error);
      // How a line is written can't be switched off: it would be left out of the totals in silence.
      await replace(pilgrim, 'takes 1.9 h', 'takes 1.9h');
      await problem(pilgrim.uri, 'glued-unit');
      for (const name of ['show.amounts', 'show.totals', 'severities']) await set(name, undefined);
      await until('advice again', () => (problemsOf(pilgrim.uri).some((one) => codeOf(one) === 'compression-uneven' && one.severity === vscode.DiagnosticSeverity.Information) ? true : undefined));
      await vscode.workspace.fs.delete(inWorkspace('.vscode'), { recursive: true });
      await closeAll();
    },
  },
  {
    name: 'tells of a picture that is missing, takes it back once it is there, and tells of it again when it goes',
    async run() {
      const text = 'steelyard 1\nshop "S"\n  workday 8 h\n  rate bench 100.00\nestimate "E"\nfinding seen "Seen"\n  picture "pictures/here.png"\noption one "One"\n  labour "Seal" 2 h\n    because seen\n';
      const uri = await write('pictured.yard', text);
      await vscode.commands.executeCommand('steelyard.checkAll');
      await problem(uri, 'picture-missing');
      const pictured = await open('pictured.yard');
      await problem(uri, 'picture-missing');
      const picture = await write('pictures/here.png', 'as good as a picture');
      await gone(uri, 'picture-missing');
      // The editor asks for fixes as soon as the text changes, before the problems are looked for.
      await replace(pictured, 'here.png', 'gone.png');
      for (let i = 0; i < 5; i++) await ask('executeCodeActionProvider', uri, everything(pictured));
      await problem(uri, 'picture-missing');
      await replace(pictured, 'gone.png', 'here.png');
      await gone(uri, 'picture-missing');
      await vscode.workspace.fs.delete(picture);
      await problem(uri, 'picture-missing');
      await vscode.commands.executeCommand('workbench.action.files.revert');
      await closeAll();
      await vscode.workspace.fs.delete(uri);
    },
  },
  {
    name: 'checks the estimates that are not open when asked to',
    async run() {
      const uri = await write('closed.yard', 'steelyard 1\noption one "One"\n  labour "Work" 2h\n');
      same(codes(uri), []);
      await vscode.commands.executeCommand('steelyard.checkAll');
      await problem(uri, 'glued-unit');
      await vscode.workspace.fs.delete(uri);
    },
  },
];
