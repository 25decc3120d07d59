import { existsSync, readFileSync, realpathSync, statSync } from 'node:fs';
import path from 'node:path';
import { resolveWithin, type ServiceHost } from '../service/index.js';

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

  const readFile = (uri: string): { readonly text: string } | 'missing' => {
    const stats = statSync(uri, { throwIfNoEntry: false });
    if (stats === undefined) return 'missing';
    if (!stats.isFile()) throw new InputError(`${nameOf(uri)} is not a file.`);
    if (stats.size > LARGEST) throw new InputError(`${nameOf(uri)} is larger than an estimate can be (${LARGEST / 1_000_000} MB).`);
    return { text: textOf(readFileSync(uri), nameOf(uri)) };
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
        if (target === undefined || !existsSync(target)) return target;
        const real = realpathSync(target);
        const realRoot = realpathSync(root);
        return real === realRoot || real.startsWith(realRoot + path.sep) ? target : undefined;
      },
    },
    open: (file) => {
      if (file === STDIN) {
        const uri = path.join(cwd, 'stdin.yard');
        texts.set(uri, { text: stdin() });
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

/** The text that the bytes of a file stand for. */
export function textOf(bytes: Uint8Array, name: string): string {
  try {
    return new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(bytes);
  } catch {
    throw new InputError(`${name} is not text in UTF-8. Save it in UTF-8 and try again.`);
  }
}
