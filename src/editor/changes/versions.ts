import * as vscode from 'vscode';
import type { Side } from '../../service/changes.js';
import { createLanguageService, type ServiceHost } from '../../service/index.js';
import type { Desk } from '../desk.js';
import type { LeadsOut } from '../links.js';
import { nameOf, pathFrom, rootOf, type Key } from '../places.js';
import { nameThen, repositoryOf, type NoRepository, type Repository } from './git-extension.js';

/** A version of an estimate that can be read, now and again; or why it can't. */
export interface Version {
  readonly name: string;
  readonly read: () => Promise<Side | NoRepository>;
}

/** A larger text is no estimate. */
const LARGEST = 8_000_000;

type TextOf = (key: Key) => Promise<string | undefined>;

/** The estimate as it stands in the editor, or on disk where it is not open, with the files it uses as they stand there. */
export function asItStands(key: Key, desk: Desk, name = 'as it stands'): Version {
  return { name, read: async () => ((await desk.whole(key)) ? { service: desk.service, uri: key, name } : { why: `${nameOf(key)} can’t be read.` }) };
}

/** The estimate as it was last saved, with the files it uses as they were saved. */
export function asSaved(key: Key, leadsOut: LeadsOut): Version {
  const name = 'as saved';
  const textOf: TextOf = async (one) => {
    const uri = vscode.Uri.parse(one, true);
    if (await leadsOut(rootOf(uri).root, uri)) return undefined;
    return await vscode.workspace.decode(await vscode.workspace.fs.readFile(uri), { uri });
  };
  return { name, read: () => sideOf(name, key, textOf) };
}

/** The estimate in a commit, and every file it uses as it was in that commit. */
export function inCommit(key: Key, ref: string, name: string): Version {
  return {
    name,
    read: async () => {
      const uri = vscode.Uri.parse(key, true);
      const repository = await repositoryOf(uri);
      if ('why' in repository) return repository;
      if (ref === 'HEAD' && repository.state.HEAD?.commit === undefined) return { why: 'The repository has no commit yet.' };
      const textOf: TextOf = (one) => textIn(repository, ref, vscode.Uri.parse(one, true));
      const there = (await textOf(key)) === undefined ? await nameThen(repository, ref, uri) : uri;
      const side = there === undefined ? undefined : await sideOf(name, there.toString(), textOf);
      return side === undefined || 'why' in side ? { why: `${nameOf(key)} is not in ${name}: it came later, or had another name.` } : side;
    },
  };
}

/** A text that some view of the editor shows, such as the left side of a difference. Files it uses are of its commit, where it has one. */
export function asShown(document: vscode.TextDocument, side: string, estimate: Key): Version {
  const name = nameOfShown(document.uri) ?? side;
  return {
    name,
    read: async () => {
      const ref = refOf(document.uri);
      const repository = ref === undefined ? undefined : await repositoryOf(vscode.Uri.parse(estimate, true));
      const others: TextOf = repository === undefined || 'why' in repository || ref === undefined
        ? async (key) => (await vscode.workspace.openTextDocument(vscode.Uri.parse(key, true))).getText()
        : (key) => textIn(repository, ref, vscode.Uri.parse(key, true));
      return await sideOf(name, estimate, (key) => (key === estimate ? Promise.resolve(document.getText()) : others(key)));
    },
  };
}

/** What a text of the editor's git is called; undefined for others. */
function nameOfShown(uri: vscode.Uri): string | undefined {
  const ref = refOf(uri);
  return ref === undefined ? undefined : ref === '' ? 'as staged' : ref === 'HEAD' ? 'the last commit' : ref.replace(/^([0-9a-f]{8})[0-9a-f]+/, '$1');
}

/** The commit that a text of the editor's git is from: its address says so. An empty one means the index. */
function refOf({ scheme, query }: vscode.Uri): string | undefined {
  if (scheme !== 'git') return undefined;
  try {
    const { ref } = JSON.parse(query) as { ref?: unknown };
    return typeof ref !== 'string' || !isPlain(ref) ? undefined : ref === '~' ? '' : ref;
  } catch {
    return undefined;
  }
}

/** What git would take for an option, or nobody can read, is no commit. */
function isPlain(ref: string): boolean {
  return !ref.startsWith('-') && /^[\x21-\x7e]*$/.test(ref);
}

async function textIn(repository: Repository, ref: string, uri: vscode.Uri): Promise<string | undefined> {
  return await repository.show(ref, uri.fsPath).catch(() => undefined);
}

async function sideOf(name: string, key: Key, textOf: TextOf): Promise<Side | NoRepository> {
  const texts = new Map<Key, ReturnType<ServiceHost['read']>>();
  const fetch = async (one: Key): Promise<void> => {
    const text = await textOf(one).catch(() => undefined);
    texts.set(one, text === undefined || text.length > LARGEST ? 'missing' : { text });
  };
  const service = createLanguageService({ read: (one) => texts.get(one) ?? 'unknown', resolvePath: pathFrom });
  await fetch(key);
  if (texts.get(key) === 'missing') return { why: `${nameOf(key)} can’t be read ${name}.` };
  for (let waits = service.waitsFor(key); waits.length > 0; waits = service.waitsFor(key)) await Promise.all(waits.map(fetch));
  return { service, uri: key, name };
}
