// Puts very many inputs through the whole product and tells what does not hold:
// `node src/tools/run.mjs src/tools/fuzz/fuzz.ts --inputs 1000000 --seed 1 --workers 2`. Input N of a seed is always the
// same, however many threads there are; `--from N --inputs 1` runs it alone, with every pass where `--every` is there.
// `--minutes M` ends the run earlier. Prints each way of failing with a small input that fails so, and at the end what
// went through what, and the slowest input.
import { isMainThread } from 'node:worker_threads';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import { EVERY, type Shares } from './passes.js';
import type { Failure, Ran } from './run-inputs.js';
import { startsBelow } from './texts.js';
import { runInThreads, serveInputs } from './threads.js';

/** In a long run the dear passes see fewer inputs: of a million each still sees ten thousand and more. */
const LONG: Shares = { format: 40, edit: 10, features: 3, reports: 4, changes: 1, trials: 2, decision: 1 };

if (isMainThread) await main();
else serveInputs();

async function main(): Promise<void> {
  const { values } = parseArgs({ options: { inputs: { type: 'string', default: '10000' }, seed: { type: 'string', default: '1' }, from: { type: 'string', default: '0' }, workers: { type: 'string', default: '1' }, minutes: { type: 'string' }, every: { type: 'boolean', default: false } } });
  const from = whole('from', values.from);
  const seed = whole('seed', values.seed);
  const until = values.minutes === undefined ? Infinity : performance.now() + 60_000 * whole('minutes', values.minutes);
  const started = performance.now();
  let told = started;
  const ran = await runInThreads({
    plan: { seed, starts: startsBelow('.'), shares: values.every ? EVERY : LONG, slowest: 10_000, patience: 5_000 },
    from, to: from + whole('inputs', values.inputs), workers: Math.max(1, whole('workers', values.workers)), script: fileURLToPath(import.meta.url), hangs: 60_000,
    progress: (all, lot) => {
      for (const failure of lot.failures) if (all.failures.includes(failure)) tell(failure);
      if (performance.now() - told < 10_000) return;
      told = performance.now();
      console.error(`${all.inputs} inputs, ${(all.inputs / ((told - started) / 1000)).toFixed(0)} a second, ${all.failed.size} ways of failing`);
    },
    stop: () => performance.now() > until,
  });
  summary(ran, `of seed ${seed} from ${from}`, (performance.now() - started) / 1000);
  process.exitCode = ran.failed.size === 0 ? 0 : 1;
}

function whole(name: string, text: string): number {
  if (!/^\d{1,9}$/.test(text)) {
    console.error(`--${name} needs a whole number.`);
    process.exit(2);
  }
  return Number(text);
}

function tell({ what, number, input, error }: Failure): void {
  console.log(`\n── ${what}\n   input ${number}\n${error.split('\n').slice(0, 12).join('\n')}`);
  for (const [name, text] of input.files) console.log(`   ${name}: ${JSON.stringify(text)}`);
  console.log(`   before: ${JSON.stringify(input.before)}`);
}

function summary({ inputs, characters, passes, slowest, failed }: Ran, which: string, seconds: number): void {
  for (const [what, numbers] of failed) console.log(`${numbers.length} times: ${what} (inputs ${numbers.slice(0, 20).join(', ')}${numbers.length > 20 ? ', …' : ''})`);
  console.log(`\n${inputs} inputs ${which}, ${(characters / 1e6).toFixed(1)} million characters, ${seconds.toFixed(0)} s, ${(inputs / seconds).toFixed(0)} a second`);
  console.log(`through ${Object.entries(passes).map(([pass, count]) => `${pass} ${count}`).join(', ')}`);
  console.log(`slowest: input ${slowest.number}, ${slowest.ms.toFixed(0)} ms by the clock; ${failed.size} ways of failing`);
}
