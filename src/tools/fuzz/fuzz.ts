// Puts very many inputs through the whole product and tells what does not hold:
// `node src/tools/run.mjs src/tools/fuzz/fuzz.ts --inputs 1000000 --seed 1`. Input N of a seed is always the same;
// `--from N --inputs 1` runs it alone, with every pass where `--every` is there. `--minutes M` ends the run earlier.
// Prints what went through what, the slowest input, and each way of failing with a small input that fails so.
import { parseArgs } from 'node:util';
import { EVERY, type Shares } from './passes.js';
import { runInputs } from './run-inputs.js';
import { startsBelow } from './texts.js';

/** In a long run the dear passes see fewer inputs. */
const LONG: Shares = { edit: 20, features: 10, reports: 6, changes: 2, trials: 3, decision: 1 };

const { values } = parseArgs({ options: { inputs: { type: 'string', default: '10000' }, seed: { type: 'string', default: '1' }, from: { type: 'string', default: '0' }, minutes: { type: 'string' }, every: { type: 'boolean', default: false } } });
const whole = (name: string, text: string): number => {
  if (!/^\d{1,9}$/.test(text)) {
    console.error(`--${name} needs a whole number.`);
    process.exit(2);
  }
  return Number(text);
};
const seed = whole('seed', values.seed);
const from = whole('from', values.from);
const inputs = whole('inputs', values.inputs);
const until = values.minutes === undefined ? Infinity : performance.now() + 60_000 * whole('minutes', values.minutes);
const starts = startsBelow('.');
const started = performance.now();
let told = started;
const ran = runInputs({
  seed, from, to: from + inputs, starts, shares: values.every ? EVERY : LONG, slowest: 10_000, patience: 5_000,
  found: ({ what, number, input, error }) => {
    console.log(`\n── ${what}\n   input ${number}\n${error.split('\n').slice(0, 12).join('\n')}`);
    for (const [name, text] of input.files) console.log(`   ${name}: ${JSON.stringify(text)}`);
    console.log(`   before: ${JSON.stringify(input.before)}`);
  },
  progress: (done, failures) => {
    if (performance.now() - told < 10_000) return;
    told = performance.now();
    console.error(`${done} inputs, ${(done / ((told - started) / 1000)).toFixed(0)} a second, ${failures} ways of failing`);
  },
  stop: () => performance.now() > until,
});
const seconds = (performance.now() - started) / 1000;
for (const { what, times } of ran.failures) console.log(`${times} times: ${what}`);
console.log(`\n${ran.inputs} inputs of seed ${seed} from ${from}, ${(ran.characters / 1e6).toFixed(1)} million characters, ${seconds.toFixed(0)} s, ${(ran.inputs / seconds).toFixed(0)} a second`);
console.log(`through ${Object.entries(ran.passes).map(([pass, count]) => `${pass} ${count}`).join(', ')}`);
console.log(`slowest: input ${ran.slowest.number}, ${ran.slowest.ms.toFixed(0)} ms by the clock; ${ran.failures.length} ways of failing`);
process.exitCode = ran.failures.length === 0 ? 0 : 1;
