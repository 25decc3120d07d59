import { readFileSync } from 'node:fs';
import path from 'node:path';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { kinds, recordJson } from '../../src/vocabulary/index.js';
import { randomEstimate } from '../support/random-estimate.js';
import { PATIENT, runs } from '../support/random-runs.js';
import { randomStaged } from '../support/random-stage.js';
import { readSample, readSound, sampleFiles } from '../weigh/weighed.js';
import { KINDS } from './kinds.js';
import { readFiles, readText } from './reader.js';

const samples = path.resolve(import.meta.dirname, '../../samples');

describe('the second reader reads what the product reads', () => {
  it('knows every kind of line, with every slot that the vocabulary has', () => {
    // Only the keys are held here: how they are written is held by reading, below.
    const keys = ({ slots }: (typeof KINDS)[string]) => [
      ...Object.values(slots.led).map(({ key }) => key), ...(slots.counted === undefined ? [] : [slots.counted]), ...Object.values(slots.figures), ...slots.words.map(({ key }) => key),
    ].sort();
    expect(Object.fromEntries(Object.entries(KINDS).map(([word, kind]) => [word, keys(kind)]).sort()))
      .toEqual(Object.fromEntries(Object.values(kinds).map((kind) => [kind.word, Object.keys(kind.fields).sort()] as const).sort()));
  });

  it.each(sampleFiles)('sample %s, with the files it uses', (file) => {
    expect(readFiles(file, (name) => readFileSync(path.join(samples, name), 'utf8'))).toEqual(readSample(file).resolved.records.map(recordJson));
  });

  it.each([['random estimates', randomEstimate, 150], ['estimates with stages', randomStaged, 50]] as const)('%s', PATIENT, (_, arbitrary, count) => {
    fc.assert(fc.property(arbitrary, (text) => {
      expect(readText(text)).toEqual(readSound(text).resolved.records.map(recordJson));
    }), runs(18_104, count));
  });
});
