// `npm test`: every check of the project, one after the other, with a table of times and one line of counts at the
// end. It stops at nothing: a person wants to see all that is wrong.
import { spawnSync } from 'node:child_process';
import { mkdirSync, readFileSync, rmSync } from 'node:fs';

interface Count {
  readonly passed: number;
  readonly failed: number;
  readonly skipped: number;
}

interface Step {
  readonly title: string;
  readonly command: readonly string[];
  /** How many checks ran, and how many failed. One and its exit code where a step counts nothing itself. */
  readonly count?: (output: string) => Count | undefined;
}

const UNIT_REPORT = 'dist/unit-tests.json';
const tool = (file: string, ...args: string[]) => ['node', 'src/tools/run.mjs', file, ...args];

const steps: readonly Step[] = [
  { title: 'Types', command: ['npx', 'tsc', '-p', '.'] },
  { title: 'Types of the page', command: ['npx', 'tsc', '-p', 'src/page'] },
  { title: 'Lint', command: ['npx', 'eslint', '.', '--max-warnings', '0'] },
  { title: 'Generated files are fresh', command: tool('src/tools/emit.ts', '--check') },
  { title: 'Build', command: tool('src/tools/build.ts', '--production') },
  { title: 'Unit tests', command: ['npx', 'vitest', 'run', '--reporter=default', '--reporter=json', `--outputFile=${UNIT_REPORT}`], count: countUnit },
  { title: 'Tests in the real editor', command: tool('test/editor/run.ts'), count: countPlain },
];

mkdirSync('dist', { recursive: true });
rmSync(UNIT_REPORT, { force: true });
let passed = 0;
let failed = 0;
let skipped = 0;
const rows: string[] = [];
for (const { title, command, count } of steps) {
  console.log(`\n── ${title}`);
  const started = Date.now();
  const [program = '', ...args] = command;
  const run = spawnSync(program, args, { stdio: ['ignore', 'pipe', 'inherit'], encoding: 'utf8', maxBuffer: 64 * 1024 * 1024 });
  process.stdout.write(run.stdout);
  const ok = run.status === 0;
  const counted = count?.(run.stdout) ?? { passed: ok ? 1 : 0, failed: ok ? 0 : 1, skipped: 0 };
  passed += counted.passed;
  skipped += counted.skipped;
  failed += ok ? counted.failed : Math.max(1, counted.failed);
  rows.push(`${ok ? 'ok    ' : 'FAILED'}  ${`${((Date.now() - started) / 1000).toFixed(1)} s`.padStart(8)}  ${title}`);
}
console.log(`\n${rows.join('\n')}\n\n${passed} passed, ${failed} failed${skipped === 0 ? '' : `, ${skipped} skipped`}`);
process.exitCode = failed === 0 ? 0 : 1;

function countUnit(): Count | undefined {
  try {
    const report = JSON.parse(readFileSync(UNIT_REPORT, 'utf8')) as { numPassedTests: number; numFailedTests: number; numPendingTests: number };
    return { passed: report.numPassedTests, failed: report.numFailedTests, skipped: report.numPendingTests };
  } catch {
    return undefined;
  }
}

function countPlain(output: string): Count | undefined {
  const found = [...output.matchAll(/^(\d+) passed, (\d+) failed$/gm)].pop();
  return found === undefined ? undefined : { passed: Number(found[1]), failed: Number(found[2]), skipped: 0 };
}
