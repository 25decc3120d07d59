// Names: where they are given and used, and what a rename does to every file concerned.
import * as vscode from 'vscode';
import type { Case } from './cases.js';
import { ok, same } from './expect.js';
import { ask, at, closeAll, codes, inWorkspace, nameOf, onDisk, open, refusal, squeeze, until, wait, write } from './language-kit.js';

const samples = ['heron-pump.yard', 'kestrel-flat.yard', 'pilgrim-v6.yard', 'shop.yard', 'tarn-inline.yard'];

/** How often a part of the shop is named in a file, as can be read in the samples: where it is given, and behind `uses`. */
const mentions = (text: string, name: string): number => text.split('\n').filter((line) => new RegExp(`^ *(part|uses) .*\\b${name}\\b`).test(line)).length;

async function textOf(location: vscode.Location): Promise<string> {
  return (await vscode.workspace.openTextDocument(location.uri)).getText(location.range);
}

/** Renames and saves every file that this changes. */
async function rename(document: vscode.TextDocument, place: vscode.Position, name: string): Promise<void> {
  const edit = await ask<vscode.WorkspaceEdit>('executeDocumentRenameProvider', document.uri, place, name);
  await vscode.workspace.applyEdit(edit);
  for (const [uri] of edit.entries()) same([uri.path, await (await vscode.workspace.openTextDocument(uri)).save()], [uri.path, true]);
}

export const nameCases: readonly Case[] = [
  {
    name: 'goes to where a name is given, in this file and in a shared one',
    async run() {
      const heron = await open('heron-pump.yard');
      const [own, ...more] = await ask<vscode.Location[]>('executeDefinitionProvider', heron.uri, at(heron, 'because |leaks'));
      ok(own);
      same(more.length, 0);
      same([squeeze(heron.lineAt(own.range.start).text), heron.getText(own.range)], ['finding leaks "Coolant at the weep hole, bearing loose"', 'leaks']);
      const [there] = await ask<vscode.Location[]>('executeDefinitionProvider', heron.uri, at(heron, 'road-|test\n way in-car'));
      ok(there);
      same([nameOf(there.uri), await textOf(there)], ['shop.yard', 'road-test']);
      const [file] = await ask<vscode.Location[]>('executeDefinitionProvider', heron.uri, at(heron, 'shop|.yard'));
      same(nameOf(file?.uri ?? heron.uri), 'shop.yard');
    },
  },
  {
    name: 'finds every use of a shared part, in files that are not open too',
    async run() {
      const shop = await open('shop.yard');
      const found = await ask<vscode.Location[]>('executeReferenceProvider', shop.uri, at(shop, 'part |coolant'));
      for (const name of samples) same([name, found.filter(({ uri }) => nameOf(uri) === name).length], [name, mentions(await onDisk(name), 'coolant')]);
      for (const one of found) same(await textOf(one), 'coolant');
    },
  },
  {
    name: 'marks a name’s other places in the file',
    async run() {
      const heron = await open('heron-pump.yard');
      const found = await ask<vscode.DocumentHighlight[]>('executeDocumentHighlights', heron.uri, at(heron, 'includes |engine-lifted'));
      same(found.map(({ range }) => heron.lineAt(range.start).text.trim().split(' ')[0]), ['access', 'includes', 'takes', 'way']);
      same(found.map(({ kind }) => kind === vscode.DocumentHighlightKind.Write), [true, false, false, false]);
    },
  },
  {
    name: 'renames over all files, and back to the same bytes',
    async run() {
      await closeAll();
      const before = await Promise.all(samples.map(onDisk));
      const heron = await open('heron-pump.yard');
      const place = at(heron, 'belt, |coolant');
      const ready = await ask<{ range: vscode.Range; placeholder: string }>('prepareRename', heron.uri, place);
      same([ready.placeholder, heron.getText(ready.range)], ['coolant', 'coolant']);
      await rename(heron, place, 'cool-mix');
      for (const [i, name] of samples.entries()) {
        const after = await onDisk(name);
        same([name, mentions(after, 'cool-mix'), mentions(after, 'coolant')], [name, mentions(before[i] as string, 'coolant'), 0]);
        same(after.replaceAll('cool-mix', 'coolant'), before[i]);
      }
      await wait(200);
      same(codes(heron.uri).filter((code) => code.endsWith('-name')), []);
      await rename(heron, at(heron, 'belt, |cool-mix'), 'coolant');
      same(await Promise.all(samples.map(onDisk)), before);
    },
  },
  {
    name: 'refuses a rename that would change what a line means, and says why',
    async run() {
      const heron = await open('heron-pump.yard');
      const fixed = await refusal(ask('prepareRename', heron.uri, at(heron, 'way in-|car')));
      ok(fixed.includes('in-car is a fixed word'), fixed);
      const taken = await refusal(ask('executeDocumentRenameProvider', heron.uri, at(heron, 'part |belt'), 'pump'));
      ok(taken.includes('pump'), taken);
      const bad = await refusal(ask('executeDocumentRenameProvider', heron.uri, at(heron, 'part |belt'), 'two words'));
      ok(bad.includes('only letters, digits and hyphens'), bad);
    },
  },
  {
    name: 'lists lines of the whole workspace, and follows a file that changes on disk',
    async run() {
      await closeAll();
      const look = (words: string) => ask<vscode.SymbolInformation[]>('executeWorkspaceSymbolProvider', words);
      const pumps = await until('pumps of three files', async () => {
        const found = (await look('pump, coolant')).filter(({ name }) => name.startsWith('pump, Coolant pump'));
        return found.length >= 6 ? found : undefined;
      });
      same([...new Set(pumps.map(({ location }) => nameOf(location.uri)))].sort(), ['heron-pump.yard', 'pilgrim-v6.yard', 'tarn-inline.yard']);
      for (const { location } of pumps) same(await textOf(location), 'pump');
      await write('later.yard', 'steelyard 1\nfinding grumble "Grumbles"\n');
      const place = (words: string) => until(words, async () => (await look(words)).find(({ location }) => nameOf(location.uri) === 'later.yard')?.location.range.start.line);
      same(await place('grumble'), 1);
      await write('later.yard', 'steelyard 1\n\n\nfinding whine "Whines"\n');
      same(await place('whines'), 3);
      await vscode.workspace.fs.delete(inWorkspace('later.yard'));
      await closeAll();
    },
  },
];
