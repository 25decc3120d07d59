// What is offered while writing, and how a file is taken apart and put into columns.
import * as vscode from 'vscode';
import type { Case } from './cases.js';
import { ok, same } from './expect.js';
import { applyTo, ask, at, closeAll, everything, gone, nameOf, onDisk, open, problem, problemsOf, serviceOver, squeeze, until, write } from './language-kit.js';

/** What this extension offers, without the editor's own words of the file. */
async function offered(document: vscode.TextDocument, position: vscode.Position): Promise<vscode.CompletionItem[]> {
  const { items } = await ask<vscode.CompletionList>('executeCompletionItemProvider', document.uri, position);
  return items.filter(({ kind }) => kind !== vscode.CompletionItemKind.Text);
}

const labelOf = ({ label }: vscode.CompletionItem): string => (typeof label === 'string' ? label : label.label);

const untidy = 'steelyard 1\nuse "shop.yard"\n\nlabour job "Job"\n  takes 2 h\n  uses first, second\n  caution oil\n\npart first "The first part" cost 4.00 new\npart second "Second"  cost 112.50 new\n';
const tidy = 'steelyard 1\nuse "shop.yard"\n\nlabour job "Job"\n  takes    2 h\n  uses     first, second\n  caution  oil\n\npart first  "The first part"  cost   4.00 new\npart second "Second"          cost 112.50 new\n';

export const textCases: readonly Case[] = [
  {
    name: 'offers the names that can stand here, and writes the one that is taken',
    async run() {
      await write('writing.yard', 'steelyard 1\nuse "shop.yard"\nlabour job "Job"\n  takes 2 h\n  uses engine-oil, \n');
      const document = await open('writing.yard');
      const items = await offered(document, at(document, 'engine-oil, |'));
      const names = items.filter(({ kind }) => kind === vscode.CompletionItemKind.Reference).map(labelOf);
      for (const name of ['coolant', 'oil-filter', 'plugs']) ok(names.includes(name), `${name} is not among ${names.join(', ')}`);
      ok(!names.includes('job') && !names.includes('mechanical'), names.join(', '));
      const filter = items.find((one) => labelOf(one) === 'oil-filter');
      ok(filter?.insertText !== undefined && filter.range instanceof vscode.Range);
      await applyTo(document, [vscode.TextEdit.replace(filter.range, typeof filter.insertText === 'string' ? filter.insertText : filter.insertText.value)]);
      same(document.lineAt(4).text, '  uses engine-oil, oil-filter');
    },
  },
  {
    name: 'offers kinds at the start of a line, facts below it, and files behind use',
    async run() {
      await write('writing.yard', 'steelyard 1\nuse ""\n\nlabour job "Job"\n  \n');
      await closeAll();
      const document = await open('writing.yard');
      const at1 = (await offered(document, new vscode.Position(2, 0))).map(labelOf);
      for (const kind of ['labour', 'option', 'access', 'finding']) ok(at1.includes(kind), `${kind} is not among ${at1.join(', ')}`);
      const below = (await offered(document, new vscode.Position(4, 2))).map(labelOf);
      for (const fact of ['takes', 'because', 'uses']) ok(below.includes(fact), `${fact} is not among ${below.join(', ')}`);
      ok(!below.includes('option'), below.join(', '));
      const file = await until('shop.yard behind use', async () => (await offered(document, new vscode.Position(1, 5))).find((one) => labelOf(one).includes('shop.yard')));
      ok(file.range instanceof vscode.Range);
      await applyTo(document, [vscode.TextEdit.replace(file.range, typeof file.insertText === 'string' ? file.insertText : (file.insertText?.value ?? ''))]);
      same(document.lineAt(1).text, 'use "shop.yard"');
    },
  },
  {
    name: 'offers today and the job’s own days where a day is said, and what is taken can be read',
    async run() {
      await write('writing.yard', 'steelyard 1\nestimate "E-2 Van"\n  written 2026-11-20\n\noption fix "Fix"\n  labour "Clean the pan" 0.5 h\n\nclosed for fix on 2026-11-24\n  clocked \n');
      await closeAll();
      const document = await open('writing.yard');
      const day = new Date();
      const today = [day.getFullYear(), day.getMonth() + 1, day.getDate()].map((part) => String(part).padStart(2, '0')).join('-');
      // In the middle of a date each is found by what stands there.
      const days = await offered(document, at(document, 'closed for fix on 2026|-11-24'));
      same(days.map((one) => [labelOf(one), one.filterText?.startsWith('2026-11-24 ')]), [['today', true], ['2026-11-20', true]]);
      same(days[0]?.insertText, today);
      const clocked = (await offered(document, new vscode.Position(8, 10))).filter(({ kind }) => kind === vscode.CompletionItemKind.Reference);
      same(clocked.map((one) => [labelOf(one), one.insertText]), [['Clean the pan', '"Clean the pan"']]);
    },
  },
  {
    name: 'puts a file into columns, and leaves one alone that is',
    async run() {
      await write('untidy.yard', untidy);
      const document = await open('untidy.yard');
      const options = { tabSize: 2, insertSpaces: true };
      const part = await ask<vscode.TextEdit[]>('executeFormatRangeProvider', document.uri, new vscode.Range(8, 0, 9, 4), options);
      ok(part.length > 0);
      for (const { range } of part) ok(range.start.line >= 8, 'a line outside of the range is changed');
      same(await applyTo(document, await ask('executeFormatDocumentProvider', document.uri, options)), tidy);
      same((await ask<vscode.TextEdit[] | undefined>('executeFormatDocumentProvider', document.uri, options)) ?? [], []);
      const pilgrim = await open('pilgrim-v6.yard');
      same((await ask<vscode.TextEdit[] | undefined>('executeFormatDocumentProvider', pilgrim.uri, options)) ?? [], []);
    },
  },
  {
    name: 'mends what is wrong in a line, and offers to make a file that is missing',
    async run() {
      await write('mending.yard', 'steelyard 1\nuse "our-own.yard"\n\noption one "One"\n  labour "Work" 2h\n');
      const { uri } = await open('mending.yard');
      const fix = async (code: string, title: string): Promise<vscode.CodeAction> => {
        const { range } = await problem(uri, code);
        const found = (await ask<vscode.CodeAction[]>('executeCodeActionProvider', uri, range)).find((one) => one.title.startsWith(title));
        ok(found?.edit, title);
        return found;
      };
      const { edit, isPreferred } = await fix('glued-unit', 'Write 2 h');
      same([isPreferred, await vscode.workspace.applyEdit(edit as vscode.WorkspaceEdit)], [true, true]);
      await gone(uri, 'glued-unit');
      // What a file is made with can't be handed back by a test; the driven tests take this one by keyboard.
      same((await fix('use-missing', 'Create our-own.yard')).isPreferred ?? false, false);
      await closeAll();
    },
  },
  {
    name: 'outlines the lines, with what options come to',
    async run() {
      const heron = await open('heron-pump.yard');
      const texts = { 'heron-pump.yard': await onDisk('heron-pump.yard'), 'shop.yard': await onDisk('shop.yard') };
      const symbols = await ask<vscode.DocumentSymbol[]>('executeDocumentSymbolProvider', heron.uri);
      const option = symbols.find(({ name }) => name === 'Pump, engine in its place');
      ok(option);
      const { comparison } = serviceOver(texts).weighing('/heron-pump.yard');
      same(option.detail.replaceAll(',', ''), comparison.options[0]?.totals.total.likely.toFixed(2));
      same(option.children.map(({ name }) => name).slice(0, 2), ['Coolant pump: replace', 'Fill, bleed, road test, recheck']);
      same(option.kind, vscode.SymbolKind.Class);
      same(symbols.map(({ kind }) => kind).slice(0, 2), [vscode.SymbolKind.File, vscode.SymbolKind.Key]);
      const access = symbols.find(({ name }) => name === 'Engine and gearbox lowered on the subframe');
      same(squeeze(heron.lineAt(access?.range.end ?? heron.positionAt(0)).text), 'caution lifting, refrigerant, fuel, battery');
    },
  },
  {
    name: 'folds lines with what stands below them, and comments',
    async run() {
      const heron = await open('heron-pump.yard');
      const folds = await ask<vscode.FoldingRange[]>('executeFoldingRangeProvider', heron.uri);
      const first = at(heron, 'access engine-out').line;
      same(folds.find(({ start }) => start === first)?.end, at(heron, 'caution lifting, refrigerant').line);
      same(folds.find(({ kind }) => kind === vscode.FoldingRangeKind.Comment)?.start, 3);
      same(folds.some(({ start, end }) => end <= start), false);
    },
  },
  {
    name: 'grows a selection from the word to the file, and links used files',
    async run() {
      const heron = await open('heron-pump.yard');
      const [range] = await ask<vscode.SelectionRange[]>('executeSelectionRangeProvider', heron.uri, [at(heron, 'uses |pump')]);
      const steps: string[] = [];
      for (let one = range; one !== undefined; one = one.parent as vscode.SelectionRange) steps.push(heron.getText(one.range));
      same(steps[0], 'pump');
      ok(steps.includes('pump, belt, coolant') && steps.some((step) => squeeze(step) === 'uses pump, belt, coolant'), JSON.stringify(steps.slice(0, 4)));
      ok(steps.some((step) => step.startsWith('labour pump') && squeeze(step).endsWith('caution coolant')));
      same(steps[steps.length - 1], heron.getText());
      const [link, ...more] = await ask<vscode.DocumentLink[]>('executeLinkProvider', heron.uri);
      ok(link?.target);
      same([nameOf(link.target), heron.getText(link.range), more.length], ['shop.yard', 'shop.yard', 0]);
    },
  },
  {
    name: 'begins a new estimate that has no errors and uses the shop’s file',
    async run() {
      await closeAll();
      await vscode.commands.executeCommand('steelyard.newEstimate');
      const document = vscode.window.activeTextEditor?.document;
      ok(document);
      same([document.languageId, document.uri.scheme], ['steelyard', 'untitled']);
      ok(document.getText().startsWith('steelyard 1\nuse "shop.yard"\n'), document.getText().slice(0, 60));
      await until('hints in it', async () => ((await ask<vscode.InlayHint[]>('executeInlayHintProvider', document.uri, everything(document))).length > 0 ? true : undefined));
      same(problemsOf(document.uri).filter(({ severity }) => severity === vscode.DiagnosticSeverity.Error).map(({ message }) => message), []);
      await closeAll();
    },
  },
];
