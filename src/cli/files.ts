import { existsSync, realpathSync } from 'node:fs';
import path from 'node:path';
import { resolveWithin, type ServiceHost } from '../service/index.js';
import { readWhole } from './read-whole.js';
import { textOf } from './text-of.js';

/** What went wrong with a file that was named on the command line. */
export class InputError extends Error {}

/** No estimate is larger, in bytes. */
export const LARGEST = 8_000_000;

/** The files of a run: what is on disk, and what came in on standard input under the name of a file. */
export interface Files {
  readonly host: ServiceHost;
  /** The identity of a file that was named; throws InputError where it can't be read. */
  readonly open: (file: string) => string;
  readonly nameOf: (uri: string) => string;
}

/** Files that many may be read of, one after the other. */
export interface ManyFiles extends Files {
  /** Lets go of a file's text; what came in on standard input is kept, since it can't be read again. */
  readonly forget: (uri: string) => void;
}

export const STDIN = '-';

/**
 * Files below the workspace: the folder of the repository that holds the file, or else the file's own folder.
 * Shared files outside of it, also by way of links, are not opened.
 */
export function filesFrom(cwd: string, stdin: () => string): ManyFiles {
  const texts = new Map<string, { readonly text: string } | 'missing'>();
  const roots = new Map<string, string>();
  let input: string | undefined;

  const readFile = (uri: string): { readonly text: string } | 'missing' => {
    const found = readWhole(uri, LARGEST);
    if (found.kind === 'missing') return 'missing';
    if (found.kind !== 'read') throw new InputError(`${nameOf(uri)} ${found.why}`);
    const text = textOf(found.bytes);
    if (text.kind !== 'text') throw new InputError(`${nameOf(uri)} ${text.why}`);
    return text;
  };
  const nameOf = (uri: string): string => {
    const name = path.relative(cwd, uri);
    return name === '' || name.startsWith('..') ? uri : name;
  };
  const rootOf = (uri: string): string => {
    const folder = path.dirname(uri);
    let root = roots.get(folder);
    if (root === undefined) {
      root = repositoryOf(folder) ?? folder;
      roots.set(folder, root);
    }
    return root;
  };

  const read = (uri: string): { readonly text: string } | 'missing' => {
    let found = texts.get(uri);
    if (found === undefined) {
      found = readFile(uri);
      texts.set(uri, found);
    }
    return found;
  };
  return {
    host: {
      read,
      resolvePath: (fromUri, written) => {
        const root = rootOf(fromUri);
        const target = resolveWithin(root, fromUri, written);
        if (target === undefined) return undefined;
        const real = realOf(target);
        // What isn’t there leads nowhere; whoever reads it says so.
        if (real === undefined) return target;
        const realRoot = realpathSync(root);
        return real === realRoot || real.startsWith(realRoot + path.sep) ? target : undefined;
      },
      exists: existsSync,
    },
    open: (file) => {
      if (file === STDIN) {
        const uri = path.join(cwd, 'stdin.yard');
        // It can be read once, however often it is named.
        input ??= stdin();
        texts.set(uri, { text: input });
        return uri;
      }
      const uri = path.resolve(cwd, file);
      if (read(uri) === 'missing') throw new InputError(`There is no file ${file}.`);
      return uri;
    },
    nameOf: (uri) => (uri === path.join(cwd, 'stdin.yard') && !existsSync(uri) ? 'standard input' : nameOf(uri)),
    forget: (uri) => {
      if (uri !== path.join(cwd, 'stdin.yard')) texts.delete(uri);
    },
  };
}

/** The top folder of the repository that holds a folder; undefined where there is none. */
export function repositoryOf(folder: string): string | undefined {
  for (let up = folder; ; up = path.dirname(up)) {
    if (existsSync(path.join(up, '.git'))) return up;
    if (up === path.dirname(up)) return undefined;
  }
}

/** With its links followed; undefined where there is nothing, or nothing any more. */
export function realOf(file: string): string | undefined {
  try {
    return existsSync(file) ? realpathSync(file) : undefined;
  } catch {
    return undefined;
  }
}
