// `npm run demo`: weighs a sample with the terminal tool as built, and says how to go on.
import { spawnSync } from 'node:child_process';
import path from 'node:path';
import { build, type BuildOptions } from 'esbuild';
import { bundlesOf, TERMINAL } from './package/bundles.js';

await build(bundlesOf(process.cwd(), 'dist').find(({ outfile }) => path.basename(outfile) === TERMINAL) as BuildOptions);
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
