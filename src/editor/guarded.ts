import * as vscode from 'vscode';
import { wordsOf } from '../report/index.js';
import type { LeadsOut } from './links.js';
import { rootOf } from './places.js';

/** Why a file is not read. `outside`: it lies elsewhere, by way of a link; it is not opened, and nothing is known of it. */
export type Refused = { readonly kind: 'missing' | 'outside' | 'too-large' } | { readonly kind: 'unreadable'; readonly why: string };

/** A file that may be read, as it was looked at. */
interface Looked {
  readonly kind: 'file';
  readonly size: number;
  /** When it last changed, in milliseconds since 1970. */
  readonly mtime: number;
}

/** Whoever writes a file while it is read is given so many chances to be done with it. */
const MOST_TRIES = 3;

/** Reads files that an estimate may read, and no others. `largest` is in bytes; what is larger is not opened. */
export class Guarded {
  constructor(private readonly leadsOut: LeadsOut) {}

  /** Whether a file may be read: it is one, lies inside, also by its links, and is of a sensible size. */
  async look(uri: vscode.Uri, largest: number): Promise<Looked | Refused> {
    return await orRefused(async () => {
      const { type, size, mtime } = await vscode.workspace.fs.stat(uri);
      if ((type & vscode.FileType.File) === 0) return { kind: 'missing' };
      if (size > largest) return { kind: 'too-large' };
      return (await this.leadsOut(rootOf(uri).root, uri)) ? { kind: 'outside' } : { kind: 'file', size, mtime };
    });
  }

  /** The bytes of a file, whole. One that changes meanwhile is read again: nobody wrote half of each. */
  async bytes(uri: vscode.Uri, largest: number): Promise<{ readonly kind: 'read'; readonly bytes: Uint8Array } | Refused> {
    for (let tries = 0; tries < MOST_TRIES; tries++) {
      const before = await this.look(uri, largest);
      if (before.kind !== 'file') return before;
      const found = await orRefused(async () => ({ kind: 'read', bytes: await vscode.workspace.fs.readFile(uri) } as const));
      if (found.kind !== 'read') return found;
      if (found.bytes.length > largest) return { kind: 'too-large' };
      const after = await this.look(uri, largest);
      if (after.kind !== 'file') return after;
      if (after.mtime === before.mtime && after.size === before.size) return found;
    }
    return { kind: 'unreadable', why: 'It changes while it is read.' };
  }

  /** The text of a file, in the encoding that the editor is set to. */
  async text(uri: vscode.Uri, largest: number): Promise<{ readonly kind: 'read'; readonly text: string } | Refused> {
    const found = await this.bytes(uri, largest);
    if (found.kind !== 'read') return found;
    return await orRefused(async () => ({ kind: 'read', text: await vscode.workspace.decode(found.bytes, { uri }) }));
  }
}

async function orRefused<T>(read: () => Promise<T | Refused>): Promise<T | Refused> {
  try {
    return await read();
  } catch (error) {
    // The editor's own word for it, or the disk's where its links were followed.
    if (error instanceof Error && 'code' in error && (error.code === 'FileNotFound' || error.code === 'ENOENT')) return { kind: 'missing' };
    return { kind: 'unreadable', why: wordsOf(error) };
  }
}
