// `node src/tools/run.mjs test/quote/write-samples.ts`: writes samples/quotes anew.
import { mkdirSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { sampleQuotes, samplesFolder } from './samples.js';

const folder = path.join(samplesFolder, 'quotes');
const made = sampleQuotes();
mkdirSync(folder, { recursive: true });
for (const file of readdirSync(folder)) if (!made.has(file)) rmSync(path.join(folder, file));
for (const [file, text] of made) writeFileSync(path.join(folder, file), text);
console.log([...made.keys()].join('\n'));
