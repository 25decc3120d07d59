import fc from 'fast-check';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { readFileSync } from 'node:fs';
import path from 'node:path';
import { expect, test } from 'vitest';
import { dayOf, isoOf } from '../../src/estimate/index.js';
import { listJson, listText, rowOf } from '../../src/report/index.js';
import { serviceOver, uriOf } from '../support/fixture.js';
import { randomEstimate } from '../support/random-estimate.js';
import { PATIENT, runs } from '../support/random-runs.js';

const valid = new Ajv2020({ strict: false }).compile(JSON.parse(readFileSync(path.resolve(import.meta.dirname, '../../schemas/list.schema.json'), 'utf8')) as object);

const FIRST = dayOf('2026-11-01');
const day = fc.integer({ min: 0, max: 90 }).map((count) => isoOf(FIRST + count));
const dated = fc.option(day, { nil: undefined });
const records = fc.record({ quoted: dated, authorised: dated, started: dated, closed: dated, amount: fc.integer({ min: 1, max: 20_000 }) });

test('any estimate with any records has one row on any day: its pick is one of its options, and comes to what is weighed', () => {
  fc.assert(fc.property(randomEstimate, records, day, (text, { quoted, authorised, started, closed, amount }, today) => {
    const [option] = serviceOver({ 'a.yard': text }).service.weighing(uriOf('a.yard')).comparison.options;
    const name = option?.option.name ?? 'none';
    const lines = [
      ...(quoted === undefined ? [] : [`quoted ${amount}.00 for ${name} on ${quoted}`]),
      ...(authorised === undefined ? [] : [`authorised ${amount}.00 for ${name} on ${authorised}`]),
      ...(started === undefined ? [] : [`started on ${started}`]),
      ...(closed === undefined ? [] : [`closed for ${name} on ${closed}`]),
    ];
    const { service } = serviceOver({ 'a.yard': `${text}${lines.join('\n')}\n` });
    const weighing = service.weighing(uriOf('a.yard'));
    const row = rowOf(weighing, today);
    expect(row).toBeDefined();
    if (row === undefined) return;
    const picked = weighing.comparison.options.find((one) => one.option.name === row.pick?.name);
    expect(picked?.totals.total.likely.toFixed()).toBe(row.pick?.amount.toFixed());
    if (row.pick?.by === 'cheapest') expect(picked).toBe(weighing.comparison.ranking[0]);
    expect(row.age ?? 0).toBeGreaterThanOrEqual(0);
    expect(row.waits === undefined).toBe(row.state.state === 'closed');
    if (row.waits?.for === 'parts') expect(row.waits.until > today).toBe(true);
    if (row.waits?.for === 'closing') expect(row.waits.planned < today).toBe(true);
    const report = listJson([{ file: 'a.yard', row }], [], today);
    expect(valid(report), JSON.stringify(valid.errors)).toBe(true);
    expect(listText([{ file: 'a.yard', row }], []).split('\n')).toHaveLength(5);
  }), runs(2611, 60));
}, PATIENT.timeout);
