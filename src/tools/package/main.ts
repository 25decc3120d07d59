// `npm run package [-- --out FOLDER]`: builds and packs the extension and the terminal tool, into dist/ by default.
import { statSync } from 'node:fs';
import path from 'node:path';
import { parseArgs } from 'node:util';
import { pack } from './pack.js';

const { values } = parseArgs({ options: { out: { type: 'string', default: 'dist' } } });
const { vsix, tarball, bill } = await pack(process.cwd(), path.resolve(values.out));
for (const file of [vsix, tarball, bill]) {
  console.log(`${path.relative(process.cwd(), file).padEnd(32)} ${(statSync(file).size / 1024).toFixed(1).padStart(7)} KiB`);
}
