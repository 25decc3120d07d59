// Where the editor host lives on disk. The tools run from a bundle in dist/tools and the tests from their sources, so
// the repository is found by its package.json and never by a fixed number of parent folders.
import { existsSync, readFileSync } from 'node:fs';
import path from 'node:path';

function isRepository(dir: string): boolean {
  const manifest = path.join(dir, 'package.json');
  if (!existsSync(manifest)) return false;
  const parsed: unknown = JSON.parse(readFileSync(manifest, 'utf8'));
  return typeof parsed === 'object' && parsed !== null && 'name' in parsed && parsed.name === 'steelyard';
}

function findRepository(from: string): string {
  let dir = from;
  while (!isRepository(dir)) {
    const parent = path.dirname(dir);
    if (parent === dir) throw new Error(`no Steelyard repository above ${from}`);
    dir = parent;
  }
  return dir;
}

export const repository = findRepository(import.meta.dirname);

/** Everything downloaded or produced for editor tests; git ignores it. */
export const cacheDir = path.join(repository, '.vscode-test');
export const shotsDir = path.join(cacheDir, 'shots');

/** The editors that the tests can run on, and the Node that each needs: `STEELYARD_EDITOR=oldest` asks for another than the newest. */
const editors = {
  newest: { editor: '4.139.1', node: '24', folder: 'host' },
  between: { editor: '4.103.2', node: '22', folder: 'host-between' },
  oldest: { editor: '4.100.3', node: '20', folder: 'host-oldest' },
} as const;

function chosenEditor(): (typeof editors)[keyof typeof editors] {
  const asked = process.env['STEELYARD_EDITOR'] ?? 'newest';
  if (!Object.hasOwn(editors, asked)) throw new Error(`STEELYARD_EDITOR is “${asked}”: write ${Object.keys(editors).join(', ')}.`);
  return editors[asked as keyof typeof editors];
}

export const chosen = chosenEditor();

/** The finished installation. It appears by one rename, so it is complete whenever it exists with its stamp. */
export const installDir = path.join(cacheDir, chosen.folder);

/** npm names its Node packages by platform; the layout inside is the same on Linux and macOS. */
export const nodePackage = `node-${process.platform}-${process.arch}`;

export const nodeIn = (install: string): string => path.join(install, 'node', 'node_modules', nodePackage);
export const editorIn = (install: string): string =>
  path.join(install, 'editor', 'node_modules', 'code-server', 'lib', 'vscode');
