// The bundles of the product: what is bundled from where, and what of it came from other people's packages.
import path from 'node:path';
import type { BuildOptions, Metafile, Plugin } from 'esbuild';

/** The terminal tool's bundle, below the folder that is built into. */
export const TERMINAL = 'cli.js';

const common: BuildOptions = { bundle: true, minify: true, legalComments: 'none', target: 'es2022', logLevel: 'warning', metafile: true };

/** One bundle holds all that hosts share; the desktop's holds only what is its own, and loads the other. */
const besideTheWeb: Plugin = { name: 'beside-the-web', setup: (building) => building.onResolve({ filter: /^\.\/web\.js$/ }, () => ({ path: './web/extension.js', external: true })) };

const bundles: readonly BuildOptions[] = [
  { ...common, entryPoints: ['src/editor/extension.ts'], outfile: 'extension.js', platform: 'node', format: 'cjs', external: ['vscode'], plugins: [besideTheWeb] },
  { ...common, entryPoints: ['src/editor/web.ts'], outfile: 'web/extension.js', platform: 'browser', format: 'cjs', external: ['vscode'] },
  { ...common, entryPoints: ['src/page/page.ts'], outfile: 'page.js', platform: 'browser', format: 'iife' },
  { ...common, entryPoints: ['src/page/page.css'], outfile: 'page.css' },
  { ...common, entryPoints: ['src/cli/main.ts'], outfile: TERMINAL, platform: 'node', format: 'cjs', target: 'node20', banner: { js: '#!/usr/bin/env node' } },
];

/** How the repository at `root` is bundled into `dist`. */
export function bundlesOf(root: string, dist: string): readonly (BuildOptions & { readonly outfile: string })[] {
  return bundles.map((options) => ({ ...options, absWorkingDir: root, outfile: path.join(dist, options.outfile as string) }));
}

/** Folders of packages in `node_modules` that put at least a byte into a bundle, in order. */
export function packagesIn({ outputs }: Metafile): readonly string[] {
  const found = Object.values(outputs).flatMap(({ inputs }) => Object.entries(inputs).flatMap(([file, { bytesInOutput }]) => {
    const folder = /(?:^|\/)(node_modules\/(?:.+\/node_modules\/)?(?:@[^/]+\/)?[^/@]+)\//.exec(file)?.[1];
    return folder === undefined || bytesInOutput === 0 ? [] : [folder];
  }));
  return [...new Set(found)].sort();
}
