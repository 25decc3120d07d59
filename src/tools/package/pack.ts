import { spawnSync } from 'node:child_process';
import { copyFileSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { build, type Metafile } from 'esbuild';
import { billOf, type Product } from './bill.js';
import { bundlesOf, packagesIn } from './bundles.js';
import { componentsAt } from './components.js';
import { EXTENSION, TERMINAL_TOOL, type Contents } from './contents.js';
import { extensionManifest, terminalManifest } from './manifests.js';
import { noticesOf } from './notices.js';
import { stage } from './stage.js';

/** Files that were made, as absolute paths. */
export interface Packed {
  readonly vsix: string;
  readonly tarball: string;
  /** The bill of materials beside the tarball; the same is inside. */
  readonly bill: string;
}

/** 1 January 1980, the earliest time that a zip file can hold: whenever it is packed, the same bytes come out. */
const TIME = '315532800';

/**
 * Bundles the repository at `root` and packs the extension and the terminal tool into `out`. The same sources give the
 * same bytes, wherever they are and whoever packs them, as long as Node and the packages are the same. Needs no network.
 */
export async function pack(root: string, out: string): Promise<Packed> {
  const work = mkdtempSync(path.join(tmpdir(), 'steelyard-pack-'));
  try {
    const at = (name: string): string => path.join(work, name);
    const bundles = await Promise.all(bundlesOf(root, at('built')).map(async (options) => ({ outfile: path.relative(at('built'), options.outfile), ...(await build(options)) })));
    const manifest = JSON.parse(readFileSync(path.join(root, 'package.json'), 'utf8')) as Product & Readonly<Record<string, unknown>>;
    const lay = (contents: Contents, own: Readonly<Record<string, unknown>>, file: string, dir: string): void => {
      const folders = contents.bundles.flatMap((name) => packagesIn(bundles.find(({ outfile }) => outfile === name)?.metafile as Metafile));
      const components = componentsAt(root, [...new Set(folders)]);
      stage(contents, { repository: root, built: at('built') }, {
        manifest: `${JSON.stringify(own, undefined, 2)}\n`,
        notices: noticesOf(file, components),
        bill: billOf(manifest, file, components),
      }, dir);
    };
    mkdirSync(out, { recursive: true });

    const vsix = path.join(out, 'steelyard.vsix');
    const extension = at('extension');
    lay(EXTENSION, extensionManifest(manifest), path.basename(vsix), extension);
    // Every file that is laid out goes in: its own rules of what to leave out would leave out some.
    writeFileSync(path.join(extension, '.vscodeignore'), `.vscodeignore\n`);
    run('node', [path.join(root, 'node_modules/@vscode/vsce/vsce'), 'package', '--no-dependencies', '--allow-missing-repository', '--no-rewrite-relative-links', '--out', vsix], extension);

    const tarball = path.join(out, `${manifest.name}-${manifest.version}.tgz`);
    const terminal = at('terminal');
    lay(TERMINAL_TOOL, terminalManifest(manifest), path.basename(tarball), terminal);
    run('npm', ['pack', '--offline', '--ignore-scripts', '--pack-destination', out], terminal);

    const bill = tarball.replace(/\.tgz$/, '.cdx.json');
    copyFileSync(path.join(terminal, 'bom.cdx.json'), bill);
    return { vsix, tarball, bill };
  } finally {
    rmSync(work, { recursive: true, force: true });
  }
}

function run(command: string, args: readonly string[], cwd: string): void {
  // Times in a zip file are local, and its entries are sorted by the rules of a language.
  const env = { ...process.env, SOURCE_DATE_EPOCH: TIME, TZ: 'UTC', LC_ALL: 'C' };
  const { status, stdout, stderr, error } = spawnSync(command, args, { cwd, env, encoding: 'utf8' });
  if (status !== 0) throw new Error(`${command} ${args[0] ?? ''} failed: ${error?.message ?? `${stdout}${stderr}`}`);
}
