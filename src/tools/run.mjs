// Runs a TypeScript tool: `node src/tools/run.mjs FILE.ts [ARG…]`. Node 20 does not read TypeScript, and one
// esbuild call is cheaper to own than a second loader.
import { build } from 'esbuild';
import { mkdirSync } from 'node:fs';
import path from 'node:path';
import { pathToFileURL } from 'node:url';

const [file, ...rest] = process.argv.slice(2);
if (file === undefined) {
  console.error('usage: node src/tools/run.mjs FILE.ts [ARG…]');
  process.exit(2);
}
const root = path.resolve(import.meta.dirname, '../..');
const out = path.join(root, 'dist', 'tools', path.relative(root, path.resolve(file)).replace(/[\\/]/g, '-').replace(/\.ts$/, '.mjs'));
mkdirSync(path.dirname(out), { recursive: true });
await build({ entryPoints: [file], outfile: out, bundle: true, platform: 'node', format: 'esm', target: 'node20', packages: 'external', sourcemap: 'inline', logLevel: 'warning' });
process.argv = [process.argv[0], out, ...rest];
await import(pathToFileURL(out).href);
