import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { randomEstimate } from '../support/random-estimate.js';
import { PATIENT, runs } from '../support/random-runs.js';
import { randomStaged } from '../support/random-stage.js';
import { expectSame } from './compared.js';
import { texts } from './told.js';

const samples = path.resolve(import.meta.dirname, '../../samples');
const sampleFiles = readdirSync(samples).filter((file) => file.endsWith('.yard')).sort();

/** The files that work things out; the others compare. */
const ORACLE = ['after.ts', 'day-walk.ts', 'earliest.ts', 'kinds.ts', 'pieces.ts', 'prices.ts', 'printer.ts', 'rational.ts', 'reader.ts', 'records.ts', 'totals.ts'];

describe('quoted figures equal an independent recomputation', () => {
  it('that shares no code with the product', () => {
    for (const file of ORACLE) {
      const text = readFileSync(path.join(import.meta.dirname, file), 'utf8');
      const imports = [...text.matchAll(/^(?:import|export|\}).*?\bfrom\s+['"]([^'"]+)['"]|\b(?:import|require)\s*\(?\s*['"]([^'"]+)['"]/gm)].map((found) => found[1] ?? found[2] ?? '');
      expect(imports.filter((one) => !ORACLE.includes(one.replace(/^\.\/(.+)\.js$/, '$1.ts'))), file).toEqual([]);
    }
  });

  it.each(sampleFiles)('sample %s', (file) => {
    const all = [file, ...sampleFiles.filter((one) => one !== file)];
    expectSame(new Map(all.map((name) => [name, readFileSync(path.join(samples, name), 'utf8')])));
  });

  it.each([['random estimates', randomEstimate, 150], ['estimates with stages', randomStaged, 50]] as const)('%s: every figure of every option, low, likely and high', PATIENT, (_, arbitrary, count) => {
    fc.assert(fc.property(arbitrary, (text) => void expectSame(texts(text))), runs(20_140_115, count));
  });
});
