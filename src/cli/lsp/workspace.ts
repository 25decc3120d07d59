import { readdirSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import type { TextDocument } from 'vscode-languageserver-textdocument';
import { resolveWithin, type ServiceHost } from '../../service/index.js';
import { LARGEST, realOf } from '../files.js';
import { readWhole } from '../read-whole.js';
import { textOf } from '../text-of.js';

const MOST_FILES = 5_000;

/** Where the open documents stand. */
export interface OpenDocuments {
  readonly get: (uri: string) => TextDocument | undefined;
}

/** A text; or why there is none of a file that is there, as the end of a sentence that starts with its name. */
type OnDisk = { readonly text: string } | 'missing' | { readonly why: string };

/**
 * The files of an editor's workspace: open ones as they stand in the editor, all others as they are on disk. Editors
 * spell one address in several ways (`%20`, `%3A`), so a file is known by its key, the address as Node spells it.
 */
export class Workspace {
  private readonly onDisk = new Map<string, OnDisk>();
  /** The editor's spelling of each open document, by its key. */
  private readonly spellings = new Map<string, string>();
  private roots: readonly string[] = [];
  private found: readonly string[] | undefined;

  constructor(private readonly open: OpenDocuments) {}

  setRoots(uris: readonly string[]): void {
    this.roots = uris.flatMap((uri) => pathOf(uri) ?? []);
    this.found = undefined;
  }

  /** What the service reads. */
  readonly host: ServiceHost = {
    read: (key) => {
      const document = this.document(key);
      if (document !== undefined) return { text: document.getText() };
      const found = this.readDisk(key);
      return typeof found === 'object' && 'text' in found ? found : 'missing';
    },
    whyMissing: (key) => {
      const found = this.document(key) === undefined ? this.readDisk(key) : undefined;
      return typeof found === 'object' && 'why' in found ? found.why : undefined;
    },
    resolvePath: (fromKey, written) => {
      const from = pathOf(fromKey);
      if (from === undefined) return undefined;
      const root = this.rootOf(from);
      const target = resolveWithin(root, from, written);
      if (target === undefined) return undefined;
      const real = realOf(target);
      if (real !== undefined && !isBelow(real, realOf(root) ?? root)) return undefined;
      return pathToFileURL(target).href;
    },
    exists: (key) => realOf(pathOf(key) ?? '') !== undefined,
    files: () => this.estimates(),
  };

  opened(uri: string): void {
    this.spellings.set(keyOf(uri), uri);
  }

  closed(uri: string): void {
    this.spellings.delete(keyOf(uri));
    this.changed(uri);
  }

  /** A file changed on disk, came or went. */
  changed(uri: string): void {
    this.onDisk.delete(keyOf(uri));
    this.found = undefined;
  }

  /** For editors that don't tell of changes on disk: everything is read again. */
  readAgain(): void {
    this.onDisk.clear();
    this.found = undefined;
  }

  /** The open document of a file. */
  document(key: string): TextDocument | undefined {
    const uri = this.spellings.get(key);
    return uri === undefined ? undefined : this.open.get(uri);
  }

  openKeys(): readonly string[] {
    return [...this.spellings.keys()];
  }

  /** The address as the editor spells it. */
  shown(key: string): string {
    return this.spellings.get(key) ?? key;
  }

  /** Every estimate file below the roots, and the open ones; hidden folders and node_modules are passed over. */
  estimates(): readonly string[] {
    if (this.found === undefined) {
      const found: string[] = [];
      for (const root of this.roots) collect(root, found);
      this.found = found;
    }
    return [...new Set([...this.found, ...this.spellings.keys()])];
  }

  private rootOf(file: string): string {
    return this.roots.find((root) => isBelow(file, root)) ?? path.dirname(file);
  }

  private readDisk(key: string): OnDisk {
    let found = this.onDisk.get(key);
    if (found === undefined) {
      found = readText(key);
      this.onDisk.set(key, found);
    }
    return found;
  }
}

/** The one spelling of an address that the service knows a file by. */
export function keyOf(uri: string): string {
  const file = pathOf(uri);
  return file === undefined ? uri : pathToFileURL(file).href;
}

function pathOf(uri: string): string | undefined {
  try {
    return uri.startsWith('file:') ? fileURLToPath(uri) : undefined;
  } catch {
    return undefined;
  }
}

function readText(key: string): OnDisk {
  const file = pathOf(key);
  const found = file === undefined ? undefined : readWhole(file, LARGEST);
  if (found === undefined || found.kind === 'missing') return 'missing';
  return found.kind === 'read' ? textOf(found.bytes) : found;
}

function isBelow(file: string, root: string): boolean {
  return file === root || file.startsWith(root.endsWith(path.sep) ? root : root + path.sep);
}

function collect(folder: string, found: string[]): void {
  let entries;
  try {
    entries = readdirSync(folder, { withFileTypes: true });
  } catch {
    return;
  }
  for (const entry of entries) {
    if (found.length >= MOST_FILES || entry.name.startsWith('.') || entry.name === 'node_modules') continue;
    const full = path.join(folder, entry.name);
    if (entry.isDirectory()) collect(full, found);
    else if (entry.isFile() && entry.name.endsWith('.yard')) found.push(pathToFileURL(full).href);
  }
}
