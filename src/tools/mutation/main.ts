// `npm run mutation`: changes the sources in many small ways, one at a time, and tells which changes no test notices.
// `npm run mutation -- src/weigh/schedule --near` is for one folder or file, with the tests that are named like it: some
// six mutants a second. `--again` then tries what survived once more, with all tests; `--resume` goes on with a run that was
// cut off; `--budget 8000` gives each mutant so many milliseconds of tests, as they took when measured; `--every 5` tries a
// sample, each fifth mutant, and its score is that of the sample. The changes are made by Stryker's instrumenter;
// the tests are run in this repository's own way, since its usual runner takes longer for each change than they do.
import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { parseArgs } from 'node:util';
import { instrument, type Mutant } from './instrument.js';
import { grouped } from './grouped.js';
import { killersOf, type Killers } from './killers.js';
import type { Passed } from './messages.js';
import { ROOMS, sourcesOf, testsThatMayKill } from './rooms.js';
import { scoreOf, type Outcome } from './score.js';
import { work } from './worker.js';
import { Worker } from './workers.js';

const { values, positionals } = parseArgs({
  allowPositionals: true,
  options: { worker: { type: 'boolean', default: false }, workers: { type: 'string', default: '2' }, budget: { type: 'string', default: '5000' }, near: { type: 'boolean', default: false }, again: { type: 'boolean', default: false }, resume: { type: 'boolean', default: false }, every: { type: 'string', default: '1' } },
});
const root = path.resolve('.');
const folder = path.join(root, 'dist', 'mutation');
const outcomesFile = path.join(folder, 'outcomes.json');
const instrumentedFolder = path.join(folder, 'sources');

if (values.worker) work(root, instrumentedFolder);
else await main();

async function main(): Promise<void> {
  const files = sourcesOf(ROOMS);
  const meant = new Set(positionals.length > 0 ? sourcesOf(positionals) : files);
  rmSync(instrumentedFolder, { recursive: true, force: true });
  mkdirSync(instrumentedFolder, { recursive: true });
  const mutants: Mutant[] = [];
  for (const file of files) {
    const made = await instrument(root, file);
    if (meant.has(file)) mutants.push(...made.mutants);
    writeFileSync(path.join(instrumentedFolder, `${file.replaceAll('/', '-')}.json`), JSON.stringify(made));
  }
  console.log(`${mutants.length} mutants in ${meant.size} files`);
  const workers = Array.from({ length: Number(values.workers) }, () => new Worker(process.argv[1] as string, ['--worker']));
  try {
    const passed = await measured(workers, files.join());
    for (const one of passed) for (const failing of one.failing) console.log(`fails without a mutant, and is left out: ${one.file}: ${failing}`);
    const killers = killersOf(passed, Number(values.budget), values.near ? 'near' : 'all');
    const known = outcomesBefore();
    const others = known.filter(({ mutant }) => !meant.has(mutant.file) && files.includes(mutant.file));
    const isDone = ({ end }: Outcome) => values.resume || (values.again && (end === 'killed' || end === 'too long'));
    const chosen = mutants.filter((_, i) => i % Number(values.every) === 0);
    const chosenIds = new Set(chosen.map((mutant) => keyOfMutant({ mutant })));
    const done = known.filter((one) => chosenIds.has(keyOfMutant(one)) && isDone(one));
    const doneIds = new Set(done.map(keyOfMutant));
    const open = chosen.filter((mutant) => !doneIds.has(keyOfMutant({ mutant })));
    const found = await tried(workers, open, killers, (sofar) => {
      // A run that is cut off leaves what was known of those that it didn't come to.
      const anew = new Set([...done, ...sofar].map(keyOfMutant));
      const left = known.filter((one) => meant.has(one.mutant.file) && !anew.has(keyOfMutant(one)));
      writeFileSync(outcomesFile, JSON.stringify([...others, ...done, ...left, ...sofar]));
    });
    const outcomes = [...done, ...found];
    console.log(scoreOf(outcomes));
  } finally {
    for (const worker of workers) worker.stop();
  }
}

function keyOfMutant({ mutant: { file, id } }: Pick<Outcome, 'mutant'>): string {
  return `${file}#${id}`;
}

/** How mutants ended in the last run. */
function outcomesBefore(): readonly Outcome[] {
  return existsSync(outcomesFile) ? (JSON.parse(readFileSync(outcomesFile, 'utf8')) as readonly Outcome[]) : [];
}

/** Each worker takes the next question as soon as it has answered one. */
async function share<T>(workers: readonly Worker[], all: readonly T[], ask: (worker: Worker, one: T) => Promise<void>): Promise<void> {
  let next = 0;
  await Promise.all(workers.map(async (worker) => {
    for (let one = all[next++]; one !== undefined; one = all[next++]) await ask(worker, one);
  }));
}

function hashOf(text: string): string {
  return createHash('sha256').update(text).digest('hex');
}

/** The text of all TypeScript files of a folder that are meant, as one. */
function filesBelow(place: string, wanted: (file: string) => boolean): string {
  return readdirSync(place, { recursive: true, encoding: 'utf8' }).filter((file) => file.endsWith('.ts') && wanted(file)).sort().map((file) => readFileSync(path.join(place, file), 'utf8')).join('\0');
}

/** What each test file passes. Kept from run to run, for as long as neither the sources nor the test change. */
async function measured(workers: readonly Worker[], mutantsKey: string): Promise<readonly Passed[]> {
  const found: Passed[] = [];
  const started = performance.now();
  const kept = path.join(folder, 'passed');
  mkdirSync(kept, { recursive: true });
  const shared = hashOf(mutantsKey + filesBelow('src', (file) => !file.startsWith('tools')) + filesBelow('test', (file) => !file.endsWith('.test.ts')));
  await share(workers, testsThatMayKill(), async (worker, file) => {
    const note = path.join(kept, `${file.replaceAll('/', '-')}.json`);
    const key = hashOf(shared + readFileSync(file, 'utf8'));
    if (existsSync(note)) {
      const before = JSON.parse(readFileSync(note, 'utf8')) as { key: string; passed: Passed };
      if (before.key === key) return void found.push(before.passed);
    }
    const answer = await worker.ask({ ask: 'measure', file }, 600_000);
    if (answer?.say !== 'measured') return void console.log(`can't be run here, and is left out: ${file}`);
    found.push(answer.passed);
    if (answer.passed.tests.length > 0) writeFileSync(note, JSON.stringify({ key, passed: answer.passed }));
  });
  for (const worker of workers) worker.stop();
  console.log(`${found.reduce((sum, one) => sum + one.tests.length, 0)} tests measured in ${((performance.now() - started) / 1000).toFixed(0)} s`);
  return found;
}

async function tried(workers: readonly Worker[], mutants: readonly Mutant[], killers: Killers, keep: (sofar: readonly Outcome[]) => void): Promise<readonly Outcome[]> {
  const found: Outcome[] = [];
  const byFile = [...grouped(mutants, ({ file }) => file).values()];
  const started = performance.now();
  let told = started;
  await share(workers, byFile, async (worker, those) => {
    const kills = new Map<string, number>();
    for (const mutant of those) {
      const tests = killers.of(mutant, kills);
      if (tests.length === 0) {
        found.push({ mutant, end: 'unreached' });
        continue;
      }
      const at = performance.now();
      const answer = await worker.ask({ ask: 'try', mutant, tests });
      const end = answer?.say === 'tried' ? answer : { end: 'too long' as const };
      found.push({ mutant, ms: Math.round(performance.now() - at), tests: tests.length, ...end });
      if (end.end === 'killed' && end.by !== undefined) kills.set(end.by, (kills.get(end.by) ?? 0) + 1);
      if (performance.now() - told > 20_000) {
        told = performance.now();
        keep(found);
        console.error(`${found.length} of ${mutants.length} after ${((told - started) / 1000).toFixed(0)} s; ${found.filter((one) => one.end === 'survived').length} survive`);
      }
    }
  });
  keep(found);
  return found;
}
