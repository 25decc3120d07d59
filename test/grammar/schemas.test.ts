import { Ajv2020 } from 'ajv/dist/2020.js';
import { describe, expect, test } from 'vitest';
import { parse } from '../../src/language/index.js';
import { emitSchemas, fileRecord, schemaId } from '../../src/tools/emit-schemas.js';
import { exampleAt, placesOf } from '../../src/tools/places.js';
import { allKinds, readBlock, recordJson } from '../../src/vocabulary/index.js';
import { samples } from './samples.js';

const schema = JSON.parse(emitSchemas()['schemas/estimate.schema.json'] as string) as { $id: string; $defs: Record<string, object> };
const ajv = new Ajv2020({ strict: true, allErrors: true });
const validate = ajv.compile(schema);

function dataOf(text: string): unknown[] {
  return parse('x.yard', text).blocks.flatMap((block) => readBlock(block).records).map(recordJson);
}

function expectBoth(data: unknown, fits: boolean): void {
  const ok = validate(data);
  expect(ok, JSON.stringify(validate.errors)).toBe(fits);
  expect(fileRecord.safeParse(data).success).toBe(fits);
}

describe('estimate.schema.json', () => {
  test.each(samples)('the lines of $file fit', ({ text }) => {
    const data = dataOf(text);
    expect(data.length).toBeGreaterThan(5);
    expectBoth(data, true);
  });

  test('every example fits, wherever it stands', () => {
    for (const kind of allKinds) for (const place of placesOf(kind)) expectBoth(dataOf(exampleAt(kind, place)), true);
  });

  test('what is not an estimate does not fit', () => {
    expectBoth({}, false);
    expectBoth([{ kind: 'engine' }], false);
    expectBoth([{ kind: 'part', title: 'Pump', price: 64.3 }], false);
    expectBoth([{ kind: 'part', title: 'Pump', price: { low: '1', likely: '-1', high: '1' } }], false);
    expectBoth([{ kind: 'part', title: 'Pump', colour: 'red' }], false);
    expectBoth([{ kind: 'part' }], false);
    expectBoth([{ kind: 'takes' }], false);
  });

  test('the identifier names no host, and every kind has its definition', () => {
    expect(schema.$id).toBe(schemaId);
    expect(schemaId).toMatch(/^urn:/);
    expect(Object.keys(schema.$defs).sort()).toEqual(['figure', ...allKinds.map((kind) => kind.word)].sort());
  });
});
