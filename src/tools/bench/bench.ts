// `npm run bench`: time of parse + check + totals for a 10,000-line estimate, whole and after one keystroke, beside a
// general JSON and a general YAML language service on the same records in the same run; then all that an estimate of
// usual size is decided by, and a workspace of many files. Prints; asserts nothing.
import { readFileSync } from 'node:fs';
import { cpus } from 'node:os';
import { recordJson } from '../../vocabulary/index.js';
import { createLanguageService } from '../../service/index.js';
import { parse } from '../../language/index.js';
import { readBlock } from '../../vocabulary/index.js';
import { resolve } from '../../estimate/index.js';
import { weigh } from '../../weigh/index.js';
import { largeEstimate } from './large-estimate.js';
import { measure, row, type Measured } from './measure.js';
import { measureDecision } from './measure-decision.js';
import { measureManyFiles } from './measure-many-files.js';
import { jsonService, yamlService } from './peers.js';

const LINES = 10_000;
const ROUNDS = 40;
const text = largeEstimate(LINES);
const uri = '/bench/large.yard';

/** A service over one text that the benchmark changes. */
function over(first: string) {
  let current = first;
  const service = createLanguageService({ read: () => ({ text: current }), resolvePath: () => undefined });
  return { service, set: (next: string) => void (current = next) };
}

const results: Measured[] = [];
const fresh = (round: number) => `${text}# ${round}\n`;

results.push(await measure('whole file: parse, check, totals', ROUNDS, (round) => {
  const { service } = over(fresh(round));
  service.allDiagnostics(uri);
  return service.weighing(uri).comparison.options.length;
}));

const typing = over(text);
typing.service.allDiagnostics(uri);
const middle = text.indexOf('labour job-500 ');
const figure = text.indexOf(' h', text.indexOf('takes', middle));
results.push(await measure('one keystroke in a figure', ROUNDS, (round) => {
  typing.set(`${text.slice(0, figure - 1)}${round % 10}${text.slice(figure)}`);
  typing.service.allDiagnostics(uri);
  return typing.service.weighing(uri).comparison.options.length;
}));

const rooms: [string, (round: number) => unknown][] = [];
let tree = parse(uri, text);
rooms.push(['  of the whole: language', (round) => (tree = parse(uri, fresh(round)))]);
rooms.push(['  vocabulary', () => tree.blocks.map(readBlock)]);
let resolved = resolve(uri, { treeOf: () => tree, resolvePath: () => undefined });
rooms.push(['  estimate', () => (resolved = resolve(uri, { treeOf: () => tree, resolvePath: () => undefined }))]);
rooms.push(['  weigh', () => weigh(resolved.estimate, new Set())]);
const times = rooms.map(([label]) => ({ label, ms: [] as number[] }));
for (let round = 0; round < ROUNDS; round++) {
  rooms.forEach(([, work], i) => {
    const started = performance.now();
    work(round);
    times[i]?.ms.push(performance.now() - started);
  });
}
for (const { label, ms } of times) results.push({ label, ms: ms.slice(ROUNDS / 4) });

const records = over(text).service.weighing(uri).resolved.records.map(recordJson);
const schema = JSON.parse(readFileSync('schemas/estimate.schema.json', 'utf8')) as object;
for (const peer of [jsonService(records, schema), yamlService(records)]) {
  results.push(await measure(`${peer.label}, ${peer.lines.toLocaleString('en')} lines`, Math.min(ROUNDS, 12), peer.validate));
}

console.log(`${text.split('\n').length.toLocaleString('en')} lines, ${(text.length / 1024).toFixed(0)} KB; Node ${process.version}; ${cpus()[0]?.model ?? 'unknown processor'}, ${cpus().length} cores\n`);
console.log(row('', 'median', 'fastest', '95 %'));
for (const one of results) console.log(one.label === '' ? '' : row(one.label, ...summary(one)));
for (const line of await measureDecision()) console.log(line);
for (const line of measureManyFiles()) console.log(line);

function summary({ ms }: Measured): [string, string, string] {
  const sorted = [...ms].sort((a, b) => a - b);
  const at = (share: number) => `${(sorted[Math.min(sorted.length - 1, Math.floor(sorted.length * share))] ?? NaN).toFixed(2)} ms`;
  return [at(0.5), at(0), at(0.95)];
}
