// `node src/tools/run.mjs test/browser/write-pictures.ts FOLDER [SAMPLE]`: the quote and the exported comparison of a
// sample as they print on A4: PDF, and each page as PNG where `pdftoppm` (poppler-utils) is installed.
import { spawnSync } from 'node:child_process';
import { mkdirSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { chromium } from 'playwright-core';
import { comparisonHtml } from '../../src/report/export/index.js';
import { quoteForm } from '../../src/report/quote/index.js';
import { requireChromium } from '../editor/host/chromium.js';
import { decisionOfSample, quoteOfSample } from '../quote/samples.js';

const [folder = '.', sample = 'pilgrim-v6'] = process.argv.slice(2);
mkdirSync(folder, { recursive: true });
const browser = await chromium.launch({ executablePath: requireChromium(), args: ['--no-sandbox'] });
for (const [name, markup] of [['quote', quoteForm(quoteOfSample(sample), 'html')], ['comparison', comparisonHtml(decisionOfSample(sample))]] as const) {
  const page = await browser.newPage();
  await page.setContent(markup);
  const file = path.join(folder, `${name}-a4.pdf`);
  writeFileSync(file, await page.pdf({ format: 'A4' }));
  console.log(file);
  const drawn = spawnSync('pdftoppm', ['-png', '-r', '110', file, file.replace(/\.pdf$/, '')], { stdio: 'inherit' });
  if (drawn.error !== undefined) console.log('No PNG: install poppler-utils.');
}
await browser.close();
