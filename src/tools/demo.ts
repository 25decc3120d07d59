// `npm run demo`: weighs a sample with the terminal tool as built, and says how to go on.
import { spawnSync } from 'node:child_process';
import { build } from 'esbuild';

await build({ entryPoints: ['src/cli/main.ts'], outfile: 'dist/cli.js', bundle: true, platform: 'node', format: 'cjs', target: 'node20', banner: { js: '#!/usr/bin/env node' }, logLevel: 'warning' });
const sample = process.argv[2] ?? 'samples/pilgrim-v6.yard';
console.log(`$ steelyard weigh ${sample}\n`);
const run = spawnSync(process.execPath, ['dist/cli.js', 'weigh', sample], { stdio: 'inherit' });
console.log(`
Next
  node dist/cli.js --help                                        what else it can do
  node dist/cli.js weigh ${sample} --explain used.penalty   how a figure was made
  npm run try                                                    the same in the real editor: opens a page to visit
                                                                 in your browser, with the samples and the comparison
`);
process.exitCode = run.status ?? 1;
