// Writes every file that is generated from the vocabulary: `node src/tools/run.mjs src/tools/emit.ts`.
// With `--check` it writes nothing, names each stale file and exits with 1.
import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { products } from './products.js';

const root = repositoryRoot(import.meta.dirname);
const checkOnly = process.argv.includes('--check');
let stale = 0;

for (const [file, content] of Object.entries(products())) {
  const target = path.join(root, file);
  if (existsSync(target) && readFileSync(target, 'utf8') === content) continue;
  stale++;
  if (checkOnly) {
    console.error(`stale: ${file}`);
  } else {
    mkdirSync(path.dirname(target), { recursive: true });
    writeFileSync(target, content);
    console.log(`wrote ${file}`);
  }
}

if (checkOnly && stale > 0) {
  console.error('Run: node src/tools/run.mjs src/tools/emit.ts');
  process.exitCode = 1;
}

/** The tool runs from a bundle elsewhere in the tree, so the root is found by its package file. */
function repositoryRoot(from: string): string {
  for (let at = from; ; at = path.dirname(at)) {
    if (existsSync(path.join(at, 'package.json'))) return at;
    if (at === path.dirname(at)) throw new Error('no package.json above the tool');
  }
}
