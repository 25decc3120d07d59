import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, test } from 'vitest';
import * as z from 'zod';
import { parse } from '../../src/language/index.js';
import { allKinds, readBlock, recordJson, type Record } from '../../src/vocabulary/index.js';
import { check, serviceOver, uriOf } from '../support/fixture.js';

const folder = (name: string) => path.join(import.meta.dirname, name);
const wrong = readdirSync(folder('err')).filter((file) => file.endsWith('.yard.txt'));
const good = readdirSync(folder('ok')).filter((file) => file.endsWith('.yard'));
const goodTexts = Object.fromEntries(good.map((file) => [file, readFileSync(path.join(folder('ok'), file), 'utf8')]));

describe('wrong files: one message for each fault, at its exact place, and the rest still stands', () => {
  test.each(wrong)('%s', (file) => {
    const { wanted, found } = check(readFileSync(path.join(folder('err'), file), 'utf8'));
    expect(found).toBe(wanted);
  });
});

describe('good files: no message, and their records as written down', () => {
  test.each(good)('%s', (file) => {
    const { service } = serviceOver(goodTexts);
    const said = [...service.allDiagnostics(uriOf(file))].flatMap(([uri, list]) => list.map((one) => `${uri}: ${one.code}: ${one.text}`));
    expect(said).toEqual([]);

    const golden = path.join(folder('ok'), file.replace(/\.yard$/, '.json'));
    const dump = `${JSON.stringify(recordsOf(file).map(recordJson), undefined, 2)}\n`;
    if (process.env['UPDATE_GOLDEN'] === '1') writeFileSync(golden, dump);
    expect(existsSync(golden) ? readFileSync(golden, 'utf8') : `run once with UPDATE_GOLDEN=1 to make ${golden}`).toBe(dump);
  });

  test('records have the form of their kind', () => {
    const misfits = good.flatMap((file) => recordsOf(file).flatMap((record) => record.kind.record(z).safeParse(recordJson(record)).error?.message ?? []));
    expect(misfits).toEqual([]);
  });

  test('every kind and every slot is in one of them', () => {
    const seen = new Set<string>();
    const see = (record: Record) => {
      seen.add(record.kind.word);
      for (const key of Object.keys(record.values)) seen.add(`${record.kind.word}.${key}`);
      record.children.forEach(see);
    };
    good.forEach((file) => recordsOf(file).forEach(see));
    const all = allKinds.flatMap((kind) => [kind.word, ...Object.keys(kind.fields).map((key) => `${kind.word}.${key}`)]);
    expect(all.filter((one) => !seen.has(one))).toEqual([]);
  });

  test('every slot with a lead word stands on a head line in one, and below it in another', () => {
    const onHead = new Set<string>();
    const below = new Set<string>();
    const visit = ({ kind, statement, children }: Record) => {
      const leadsIn = (tokens: typeof statement.tokens) => [...kind.leads].filter(([lead]) => tokens.some(({ kind: token, text }, i) => token === 'word' && (text === lead || `${text} ${tokens[i + 1]?.text ?? ''}` === lead))).map(([, key]) => `${kind.word}.${key}`);
      leadsIn(statement.tokens.slice(1)).forEach((key) => onHead.add(key));
      statement.children.flatMap((child) => leadsIn(child.tokens.slice(0, 2))).forEach((key) => below.add(key));
      children.forEach(visit);
    };
    good.forEach((file) => recordsOf(file).forEach(visit));
    const led = allKinds.flatMap((kind) => [...kind.leads.values()].map((key) => `${kind.word}.${key}`));
    expect({ neverOnHead: led.filter((key) => !onHead.has(key)), neverBelow: led.filter((key) => !below.has(key)) }).toEqual({ neverOnHead: [], neverBelow: [] });
  });
});

function recordsOf(file: string): readonly Record[] {
  return parse(file, goodTexts[file] as string).blocks.flatMap((block) => readBlock(block).records);
}
