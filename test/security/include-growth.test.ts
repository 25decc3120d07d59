import { describe, expect, test } from 'vitest';
import { fileLimits } from '../../src/estimate/index.js';
import { serviceOver, uriOf } from '../support/fixture.js';

// Files that use each other more and more are what an archive that unpacks without end is to an unpacker.

/** Wall time of the machine is not ours alone; a run that grows with a power of two would take hours. */
const LONG = 5_000;

function openedWithin(files: Readonly<Record<string, string>>) {
  const { host, service } = serviceOver(files);
  const started = performance.now();
  const codes = [...service.allDiagnostics(uriOf('f0.yard')).values()].flat().map(({ code }) => code);
  const uses = service.uses(uriOf('f0.yard'));
  service.weighing(uriOf('f0.yard'));
  return { codes, uses, reads: new Set(host.reads).size, time: performance.now() - started };
}
const used = (...names: readonly number[]) => names.map((i) => `use "f${i}.yard"\n`).join('');

describe('files that use files', () => {
  test('each layer uses both of the next: two to the power of the layers ways, each file read once', () => {
    const layers = Object.fromEntries(Array.from({ length: 40 }, (_, layer) => [0, 1].map((side) => [layer === 0 && side === 0 ? 'f0.yard' : `f${layer * 2 + side}.yard`, `steelyard 1\n${used(layer * 2 + 2, layer * 2 + 3)}`] as const)).flat());
    const { codes, uses, reads, time } = openedWithin(layers);
    expect(codes).toContain('use-too-many');
    expect(uses.length).toBeLessThanOrEqual(fileLimits.files);
    expect(reads).toBeLessThanOrEqual(fileLimits.files + 1);
    expect(time).toBeLessThan(LONG);
  });

  test('every file uses every other, many times over', () => {
    const count = 60;
    const all = used(...Array.from({ length: count }, (_, i) => i)).repeat(5);
    const { codes, uses, reads, time } = openedWithin(Object.fromEntries(Array.from({ length: count }, (_, i) => [`f${i}.yard`, `steelyard 1\n${all}`])));
    expect(new Set(codes)).toEqual(new Set(['use-circular', 'use-too-many']));
    expect(uses.length).toBeLessThanOrEqual(fileLimits.files);
    expect(reads).toBeLessThanOrEqual(fileLimits.files + 1);
    expect(time).toBeLessThan(LONG);
  });

  test('one file uses tens of thousands, and spellings of one file are one', () => {
    const wide = openedWithin({ 'f0.yard': `steelyard 1\n${used(...Array.from({ length: 20_000 }, (_, i) => i + 1))}`, ...Object.fromEntries(Array.from({ length: 100 }, (_, i) => [`f${i + 1}.yard`, 'steelyard 1\n'])) });
    expect(wide.codes).toContain('use-too-many');
    expect(wide.reads).toBeLessThanOrEqual(fileLimits.files + 1);
    expect(wide.time).toBeLessThan(LONG);
    const spelled = openedWithin({ 'f0.yard': `steelyard 1\n${Array.from({ length: 300 }, (_, i) => `use "${'./'.repeat(i)}f1.yard"\n`).join('')}`, 'f1.yard': 'steelyard 1\n' });
    expect(spelled.codes).toEqual([]);
    expect(spelled.uses).toEqual([uriOf('f1.yard')]);
  });

  test('a chain without end, and a file that uses itself, end', () => {
    const chain = openedWithin(Object.fromEntries(Array.from({ length: 5_000 }, (_, i) => [`f${i}.yard`, `steelyard 1\n${used(i + 1)}`])));
    expect(chain.codes).toEqual(['use-too-many']);
    expect(chain.uses.length).toBeLessThanOrEqual(fileLimits.depth);
    expect(openedWithin({ 'f0.yard': `steelyard 1\n${used(0)}` }).codes).toEqual(['use-circular']);
  });
});
