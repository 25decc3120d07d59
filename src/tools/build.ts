// `node src/tools/run.mjs src/tools/build.ts [--production] [--watch]`: bundles the extension for each host, the page
// with its style, and the terminal tool into dist/.
import { existsSync } from 'node:fs';
import { chmod, stat } from 'node:fs/promises';
import path from 'node:path';
import { build, context, type BuildOptions, type Plugin } from 'esbuild';

const production = process.argv.includes('--production');
const common: BuildOptions = { bundle: true, minify: true, sourcemap: !production, legalComments: 'none', target: 'es2022', logLevel: 'warning' };
const TERMINAL = 'dist/cli.js';

/** One bundle holds all that hosts share; the desktop's holds only what is its own, and loads the other. */
const besideTheWeb: Plugin = { name: 'beside-the-web', setup: ({ onResolve }) => onResolve({ filter: /^\.\/web\.js$/ }, () => ({ path: './web/extension.js', external: true })) };

const bundles: readonly BuildOptions[] = [
  { ...common, entryPoints: ['src/editor/extension.ts'], outfile: 'dist/extension.js', platform: 'node', format: 'cjs', external: ['vscode'], plugins: [besideTheWeb] },
  { ...common, entryPoints: ['src/editor/web.ts'], outfile: 'dist/web/extension.js', platform: 'browser', format: 'cjs', external: ['vscode'] },
  { ...common, entryPoints: ['src/page/page.ts'], outfile: 'dist/page.js', platform: 'browser', format: 'iife' },
  { ...common, entryPoints: ['src/page/page.css'], outfile: 'dist/page.css' },
  { ...common, entryPoints: ['src/cli/main.ts'], outfile: TERMINAL, platform: 'node', format: 'cjs', target: 'node20', banner: { js: '#!/usr/bin/env node' } },
];

if (process.argv.includes('--watch')) {
  for (const options of bundles) await (await context({ ...options, logLevel: 'info' })).watch();
} else {
  await Promise.all(bundles.map((options) => build(options)));
  if (existsSync(TERMINAL)) await chmod(TERMINAL, 0o755);
  for (const { outfile = '' } of bundles) console.log(`${path.normalize(outfile).padEnd(24)} ${((await stat(outfile)).size / 1024).toFixed(1)} KB`);
}
