import * as vscode from 'vscode';
import { createLanguageService, type ServiceHost, type Side } from '../../service/index.js';
import type { Desk } from '../desk.js';
import type { Guarded } from '../guarded.js';
import { nameOf, pathFrom, type Key } from '../places.js';
import { commitOf, GitTrouble, textIn } from './commit-texts.js';
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
export function asSaved(key: Key, guarded: Guarded): Version {
  const name = 'as saved';
  const textOf: TextOf = async (one) => {
    const found = await guarded.text(vscode.Uri.parse(one, true), LARGEST);
    return found.kind === 'read' ? found.text : undefined;
  };
  return { name, read: () => sideOf(name, key, textOf) };
}

/** The estimate in a commit, and every file it uses as it was in that commit. A commit doesn't change, so it is read once. */
export function inCommit(key: Key, ref: string, name: string): Version {
  const keep = keeping();
  return {
    name,
    read: async () => {
      const uri = vscode.Uri.parse(key, true);
      const repository = await repositoryOf(uri);
      if ('why' in repository) return repository;
      const commit = commitOf(repository, ref);
      if (ref === 'HEAD' && commit === undefined) return { why: 'The repository has no commit yet.' };
      return await keep(commit, () => sideIn(repository, commit ?? ref, key, name));
    },
  };
}

async function sideIn(repository: Repository, ref: string, key: Key, name: string): Promise<Side | NoRepository> {
  const uri = vscode.Uri.parse(key, true);
  const textOf: TextOf = (one) => textIn(repository, ref, one);
  const there = (await textOf(key)) === undefined ? await nameThen(repository, ref, uri) : uri;
  const side = there === undefined ? undefined : await sideOf(name, there.toString(), textOf);
  return side === undefined || 'why' in side ? { why: `${nameOf(key)} is not in ${name}: it came later, or had another name.` } : side;
}

/** Keeps what was read of something that has an identity, until it is another. What could not be read is asked for again, and why is said. */
function keeping(): (identity: string | undefined, read: () => Promise<Side | NoRepository>) => Promise<Side | NoRepository> {
  let kept: { readonly identity: string; readonly side: Side } | undefined;
  return async (identity, read) => {
    if (kept !== undefined && kept.identity === identity) return kept.side;
    try {
      const side = await read();
      if (identity !== undefined && !('why' in side)) kept = { identity, side };
      return side;
    } catch (error) {
      if (error instanceof GitTrouble) return { why: error.message };
      throw error;
    }
  };
}

/** A text that some view of the editor shows, such as the left side of a difference. Files it uses are of its commit, where it has one. */
export function asShown(document: vscode.TextDocument, side: string, estimate: Key): Version {
  const name = nameOfShown(document.uri) ?? side;
  const keep = keeping();
  return {
    name,
    read: async () => {
      const ref = refOf(document.uri);
      const repository = ref === undefined ? undefined : await repositoryOf(vscode.Uri.parse(estimate, true));
      const inGit = repository === undefined || 'why' in repository || ref === undefined ? undefined : { repository, ref: commitOf(repository, ref) ?? ref };
      const others: TextOf = inGit === undefined
        ? async (key) => (await vscode.workspace.openTextDocument(vscode.Uri.parse(key, true))).getText()
        : (key) => textIn(inGit.repository, inGit.ref, key);
      const commit = inGit === undefined ? undefined : commitOf(inGit.repository, inGit.ref);
      return await keep(commit === undefined ? undefined : `${commit} ${document.version}`, () => sideOf(name, estimate, (key) => (key === estimate ? Promise.resolve(document.getText()) : others(key))));
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

async function sideOf(name: string, key: Key, textOf: TextOf): Promise<Side | NoRepository> {
  const texts = new Map<Key, ReturnType<ServiceHost['read']>>();
  const fetch = async (one: Key): Promise<void> => {
    const text = await textOf(one).catch((error: unknown) => {
      // A shared file that git failed at would change every price.
      if (error instanceof GitTrouble) throw error;
      return undefined;
    });
    texts.set(one, text === undefined || text.length > LARGEST ? 'missing' : { text });
  };
  const service = createLanguageService({ read: (one) => texts.get(one) ?? 'unknown', resolvePath: pathFrom });
  await fetch(key);
  if (texts.get(key) === 'missing') return { why: `${nameOf(key)} can’t be read ${name}.` };
  for (let waits = service.waitsFor(key); waits.length > 0; waits = service.waitsFor(key)) await Promise.all(waits.map(fetch));
  return { service, uri: key, name };
}
