import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, test } from 'vitest';
import { parse } from '../../../src/language/index.js';
import { topicsOf } from '../../../src/estimate/index.js';
import { readBlock, recognized, topics, type Record, type Topic } from '../../../src/vocabulary/index.js';

const samples = path.join(import.meta.dirname, '../../../samples');

/** Every line of the samples that counts as something, by title. */
function countedIn(file: string): { readonly [title: string]: readonly Topic[] } {
  const found: { [title: string]: readonly Topic[] } = {};
  const visit = (record: Record) => {
    if ('countsAs' in record.kind.fields && topicsOf({ record }).size > 0) found[`${record.kind.word} ${record.title?.text ?? ''}`] = [...topicsOf({ record })];
    record.children.forEach(visit);
  };
  for (const block of parse(file, readFileSync(path.join(samples, file), 'utf8')).blocks) readBlock(block).records.forEach(visit);
  return found;
}

describe('recognition by title and name', () => {
  test('of every line of the samples', () => {
    const all = Object.assign({}, ...readdirSync(samples).filter((file) => file.endsWith('.yard')).map(countedIn)) as ReturnType<typeof countedIn>;
    expect(all).toEqual({
      'access Engine alone lifted out, gearbox stays': ['engine-out'],
      'access Engine and gearbox lowered on the subframe': ['engine-out', 'subframe-lowered'],
      'access Engine lifted out upwards, gearbox stays': ['engine-out'],
      'access Engine lifted out, the front being off': ['engine-out'],
      'labour Cylinder head: take off, clean faces, refit': ['head-off'],
      'labour Cylinder head: take off, look at faces and bores': ['head-off', 'flatness-check'],
      'labour Engine swap: dress, change over mounts and harness': ['engine-swap'],
      'labour Belt tensioner and idler: replace': ['tensioner'],
      'labour Both heads: take off, clean faces, refit': ['head-off'],
      'labour Coolant pump: replace': ['coolant-pump'],
      'labour Head: take off, clean faces, refit, set timing': ['head-off'],
      'labour Rear head: take off, clean faces, refit': ['head-off'],
      'labour Swap engine: dress and change over': ['engine-swap'],
      'labour Swap engine: dress, change over ancillaries and loom': ['engine-swap'],
      'labour Swap engine: dress, change over mounts and harness': ['engine-swap'],
      'labour Timing belt, idlers and pump: replace': ['timing-belt', 'tensioner', 'coolant-pump'],
      'labour Timing chain, guides and tensioner: replace': ['timing-chain', 'tensioner'],
      'labour Used engine: compression and borescope before fitting': ['acceptance-check'],
      'part Belt tensioner and idler': ['tensioner'],
      'part Chain, guides and tensioner': ['tensioner'],
      'part Coolant pump with seal': ['coolant-pump'],
      'part Coolant pump': ['coolant-pump'],
      'part Coolant, ready mixed': ['coolant'],
      'part Drive belt': ['wear-parts'],
      'part Engine oil': ['engine-oil'],
      'part Exchange engine, rebuilt': ['exchange-engine'],
      'part Gaskets and seals for the swap': ['wear-parts'],
      'part Head bolts, tightened to yield': ['head-bolts'],
      'part Head gasket set': ['head-gasket'],
      'part Head gasket set, both heads': ['head-gasket'],
      'part Head gasket set, rear bank': ['head-gasket', 'stem-seals'],
      'part Oil filter': ['oil-filter'],
      'part Rear crankshaft seal': ['wear-parts'],
      'part Seals and wear parts for the stand': ['wear-parts'],
      'part Spark plugs': ['wear-parts'],
      'part Thermostat, housing and hoses': ['wear-parts'],
      'part Timing belt, idlers, pump': ['timing-belt', 'tensioner', 'coolant-pump'],
      'part Used engine, 105 000 mi': ['used-engine'],
      'part Used engine, 70 000 mi': ['used-engine'],
      'part Used engine, 92 000 mi': ['used-engine'],
      'part Used engine, 74 000 mi': ['used-engine'],
      'sublet Head: pressure test, skim the face': ['flatness-check', 'crack-check'],
      'sublet Head: check for cracks and flatness, reface, pressure test': ['flatness-check', 'crack-check'],
      'sublet Heads: check for cracks and flatness, reface': ['flatness-check', 'crack-check'],
      'sublet Plane the face, pressure test': ['flatness-check', 'crack-check'],
      'sublet Refrigerant: recover and refill': ['refrigerant'],
      'sublet Valves, guides, seats, faces, pressure test': ['flatness-check', 'crack-check', 'valves', 'valve-guides', 'valve-seats'],
      'sublet Wheel alignment': ['wheel-alignment'],
    });
  });

  test.each([
    ['part', 'Engine mounts', undefined], ['part', 'Used engine mounts', undefined], ['part', 'Coolant hose', undefined], ['part', 'Oil filter housing', undefined],
    ['part', 'Head light', undefined], ['part', 'Valve cover gasket', undefined], ['part', 'Exhaust gaskets and nuts', undefined], ['labour', 'Engine cover: fit', undefined],
    ['labour', 'Fit engine mounts', undefined], ['labour', 'Head unit: take off', undefined], ['access', 'Engine raised off its mounts', 'engine-lifted'], ['labour', 'Overhaul the brakes', undefined],
    ['labour', 'Wheel bearing: check', undefined], ['sublet', 'Cooling system: pressure test', undefined], ['fee', 'Oil and coolant disposal', 'disposal'], ['labour', 'Head: clean faces only', undefined],
  ])('not of a %s “%s”', (kind, title, name) => {
    expect(recognized(kind, title, name)).toEqual([]);
  });

  test.each([
    ['labour', 'HEADS: TAKE OFF', undefined, 'head-off'], ['labour', 'Remove and refit the rear head', undefined, 'head-off'], ['labour', 'Dress and swap the engine', undefined, 'engine-swap'],
    ['access', 'Down and away', 'engine-out', 'engine-out'], ['part', 'Valve stem seals', undefined, 'stem-seals'], ['part', 'Ten-piece set', 'head-gasket-set', 'head-gasket'],
    ['labour', 'Main bearings: look at two', undefined, 'bearings-check'], ['sublet', 'Recut the valve seats', undefined, 'valve-seats'],
  ])('of a %s “%s”', (kind, title, name, topic) => {
    expect(recognized(kind, title, name)).toContain(topic);
  });

  test('every topic is known by something, on a kind of line that may have it', () => {
    for (const [topic, { on, known }] of Object.entries(topics)) {
      expect(known.length, topic).toBeGreaterThan(0);
      expect(on.length, topic).toBeGreaterThan(0);
    }
  });
});
