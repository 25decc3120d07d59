// `node src/tools/run.mjs src/tools/build.ts [--production] [--watch]`: bundles the extension for each host, the page
// with its style, and the terminal tool into dist/.
import { existsSync } from 'node:fs';
import { chmod, stat } from 'node:fs/promises';
import path from 'node:path';
import { build, context } from 'esbuild';
import { bundlesOf, TERMINAL } from './package/bundles.js';

const sourcemap = !process.argv.includes('--production');
const bundles = bundlesOf(process.cwd(), 'dist').map((options) => ({ ...options, sourcemap }));

if (process.argv.includes('--watch')) {
  for (const options of bundles) await (await context({ ...options, logLevel: 'info' })).watch();
} else {
  await Promise.all(bundles.map((options) => build(options)));
  const terminal = path.join('dist', TERMINAL);
  if (existsSync(terminal)) await chmod(terminal, 0o755);
  for (const { outfile } of bundles) console.log(`${outfile.padEnd(24)} ${((await stat(outfile)).size / 1024).toFixed(1)} KB`);
}
