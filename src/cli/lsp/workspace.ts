import { existsSync, readdirSync, readFileSync, realpathSync, statSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import type { TextDocument } from 'vscode-languageserver-textdocument';
import { resolveWithin, type ServiceHost } from '../../service/index.js';

const LARGEST = 8_000_000;
const MOST_FILES = 5_000;

/** The files of an editor's workspace: open ones as they stand in the editor, all others as they are on disk. */
export class Workspace {
  private readonly onDisk = new Map<string, { readonly text: string } | 'missing'>();
  private roots: readonly string[] = [];
  private found: readonly string[] | undefined;

  constructor(private readonly open: { readonly get: (uri: string) => TextDocument | undefined }) {}

  setRoots(uris: readonly string[]): void {
    this.roots = uris.filter((uri) => uri.startsWith('file:')).map((uri) => fileURLToPath(uri));
  }

  /** What the service reads; it knows files by their file: address. */
  readonly host: ServiceHost = {
    read: (uri) => {
      const document = this.open.get(uri);
      return document === undefined ? this.readDisk(uri) : { text: document.getText() };
    },
    resolvePath: (fromUri, written) => {
      if (!fromUri.startsWith('file:')) return undefined;
      const from = fileURLToPath(fromUri);
      const root = this.rootOf(from);
      const target = resolveWithin(root, from, written);
      if (target === undefined || (existsSync(target) && !isBelow(realpathSync(target), realpathSync(root)))) return undefined;
      return pathToFileURL(target).href;
    },
    files: () => this.estimates(),
  };

  /** A file changed on disk, came or went. */
  changed(uri: string): void {
    this.onDisk.delete(uri);
    this.found = undefined;
  }

  /** Every estimate file below the roots; hidden folders and node_modules are passed over. */
  estimates(): readonly string[] {
    if (this.found === undefined) {
      const found: string[] = [];
      for (const root of this.roots) collect(root, found);
      this.found = found;
    }
    return this.found;
  }

  private rootOf(file: string): string {
    return this.roots.find((root) => isBelow(file, root)) ?? path.dirname(file);
  }

  private readDisk(uri: string): { readonly text: string } | 'missing' {
    let found = this.onDisk.get(uri);
    if (found === undefined) {
      found = readText(uri);
      this.onDisk.set(uri, found);
    }
    return found;
  }
}

/** A file that can't be read is missing: the service says so at the line that names it. */
function readText(uri: string): { readonly text: string } | 'missing' {
  try {
    const file = fileURLToPath(uri);
    const stats = statSync(file);
    return stats.isFile() && stats.size <= LARGEST ? { text: readFileSync(file, 'utf8') } : 'missing';
  } catch {
    return 'missing';
  }
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
