import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';

/** A package of other people, of which something is in a bundle. */
export interface Component {
  readonly name: string;
  readonly version: string;
  /** As its own manifest says: an identifier of the SPDX list. */
  readonly licence: string;
  /** SHA-512 of its archive, in hexadecimal digits, as the lock file pins it. */
  readonly sha512: string;
  /** Names of the packages that it needs itself. */
  readonly needs: readonly string[];
  /** Its licence and its own notices, word for word. */
  readonly texts: readonly string[];
}

interface Locked {
  readonly version: string;
  readonly integrity?: string;
  readonly license?: string;
  readonly dependencies?: Readonly<Record<string, string>>;
}

/** Licences that ask for no more than to be passed on with their text, by their identifiers in the SPDX list. */
const ALLOWED: readonly string[] = ['0BSD', 'BSD-2-Clause', 'BSD-3-Clause', 'ISC', 'MIT'];

/**
 * What the lock file and the packages themselves say of the packages in these folders, by name. Throws where a person
 * has to decide or look: a licence that isn't allowed, no licence text, an archive that isn't pinned, two versions.
 */
export function componentsAt(root: string, folders: readonly string[]): readonly Component[] {
  const { packages } = JSON.parse(readFileSync(path.join(root, 'package-lock.json'), 'utf8')) as { readonly packages: Readonly<Record<string, Locked>> };
  const components = folders.map((folder) => componentOf(path.join(root, folder), folder, packages[folder])).sort((a, b) => (a.name < b.name ? -1 : 1));
  const twice = components.find(({ name }, i) => components[i + 1]?.name === name);
  if (twice !== undefined) throw new Error(`${twice.name} is bundled in two versions: each costs its size, and one of them is not the one that was tested with the rest.`);
  return components;
}

function componentOf(dir: string, folder: string, locked: Locked | undefined): Component {
  const name = folder.slice(folder.lastIndexOf('node_modules/') + 'node_modules/'.length);
  if (locked === undefined) throw new Error(`${folder} is bundled, but package-lock.json doesn't have it: run "npm ci".`);
  const manifest = JSON.parse(readFileSync(path.join(dir, 'package.json'), 'utf8')) as { readonly version: string; readonly license?: unknown };
  if (manifest.version !== locked.version) throw new Error(`${folder} is ${manifest.version}, but package-lock.json has ${locked.version}: run "npm ci".`);
  const licence = allowed(name, manifest.license, locked.license);
  const texts = readdirSync(dir).filter((file) => /^(licen[cs]e|copying|notice|third-?party-?notices)(\.(txt|md))?$/i.test(file)).sort();
  if (!texts.some((file) => /^(licen[cs]e|copying)/i.test(file))) throw new Error(`${name} has no licence text, and it must be passed on with the bundle.`);
  return {
    name, version: locked.version, licence,
    sha512: hexOf(name, locked.integrity),
    needs: Object.keys(locked.dependencies ?? {}).sort(),
    texts: texts.map((file) => readFileSync(path.join(dir, file), 'utf8').replace(/\r\n?/g, '\n').trim()),
  };
}

function allowed(name: string, said: unknown, locked: string | undefined): string {
  if (typeof said !== 'string' || !ALLOWED.includes(said)) throw new Error(`${name} has the licence ${JSON.stringify(said)}. May it be passed on in a bundle? If so, add it to ALLOWED in src/tools/package/components.ts.`);
  if (locked !== said) throw new Error(`${name} has the licence ${said}, but package-lock.json says ${String(locked)}.`);
  return said;
}

/** The lock file pins an archive by Subresource Integrity (W3C): the hash in base 64. */
function hexOf(name: string, integrity: string | undefined): string {
  const base64 = /^sha512-([A-Za-z0-9+/]{86}==)$/.exec(integrity ?? '')?.[1];
  if (base64 === undefined) throw new Error(`package-lock.json doesn't pin the archive of ${name} by a SHA-512 hash.`);
  return Buffer.from(base64, 'base64').toString('hex');
}
