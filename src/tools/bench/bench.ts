// `npm run bench`: time of parse + check + totals for a 10,000-line estimate, whole and after one keystroke, beside a
// general JSON and a general YAML language service on the same records in the same run; which rooms that time is spent
// in, and how it grows with the file; then all that an estimate of usual size is decided by, and a workspace of many
// files. Prints; asserts nothing.
import { readFileSync } from 'node:fs';
import { cpus } from 'node:os';
import { recordJson } from '../../vocabulary/index.js';
import { Editing } from './editing.js';
import { at, inMs, measure, row, type Measured } from './measure.js';
import { measureDecision } from './measure-decision.js';
import { measureGrowth } from './measure-growth.js';
import { measureManyFiles } from './measure-many-files.js';
import { measureRooms } from './measure-rooms.js';
import { jsonService, yamlService } from './peers.js';

const LINES = 10_000;
const ROUNDS = 40;
const editing = new Editing(LINES);
const { text } = editing;

const results: Measured[] = [
  await measure('whole file: parse, check, totals', ROUNDS, (round) => editing.whole(round)),
  await measure('one keystroke in a figure', ROUNDS * 4, (round) => editing.keystroke(round)),
];
const records = editing.weighing().resolved.records.map(recordJson);
const schema = JSON.parse(readFileSync('schemas/estimate.schema.json', 'utf8')) as object;
for (const peer of [jsonService(records, schema), yamlService(records)]) {
  results.push(await measure(`${peer.label}, ${peer.lines.toLocaleString('en')} lines`, Math.min(ROUNDS, 12), peer.validate));
}

console.log(`${text.split('\n').length.toLocaleString('en')} lines, ${(text.length / 1024).toFixed(0)} KB; Node ${process.version}; ${cpus()[0]?.model ?? 'unknown processor'}, ${cpus().length} cores\n`);
console.log(row('', 'median', 'fastest', '95 %', 'processor'));
for (const { label, ms, processor } of results) console.log(row(label, inMs(at(0.5, ms)), inMs(at(0, ms)), inMs(at(0.95, ms)), inMs(at(0.5, processor))));
for (const line of measureRooms(LINES, ROUNDS)) console.log(line);
for (const line of await measureGrowth()) console.log(line);
for (const line of await measureDecision()) console.log(line);
for (const line of measureManyFiles()) console.log(line);
