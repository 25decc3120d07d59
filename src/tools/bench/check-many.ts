// `node --expose-gc src/tools/run.mjs src/tools/bench/check-many.ts [FILES]`: what `steelyard check` takes for a folder of
// generated estimates on the disk, in each form, and `steelyard list` beside it, and how much memory it needs at most. Prints; asserts nothing.
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { cpus, tmpdir } from 'node:os';
import path from 'node:path';
import { run } from '../../cli/run.js';
import { manyFiles, MANY_ROOT } from './many-files.js';
import { row } from './measure.js';

const FILES = Number(process.argv[2] ?? 1_000);
const folder = mkdtempSync(path.join(tmpdir(), 'steelyard-bench-'));
try {
  const { texts, estimates } = manyFiles(FILES);
  for (const [uri, text] of texts) {
    const file = path.join(folder, uri.slice(MANY_ROOT.length));
    mkdirSync(path.dirname(file), { recursive: true });
    writeFileSync(file, text);
  }
  mkdirSync(path.join(folder, '.git'));
  const names = estimates.map(({ uri }) => uri.slice(MANY_ROOT.length + 1));
  console.log(`${FILES.toLocaleString('en')} estimates on the disk; Node ${process.version}; ${cpus()[0]?.model ?? 'unknown processor'}\n`);
  console.log(row('', 'once', 'files/s', 'heap after', 'most memory'));
  for (const form of ['text', 'json', 'sarif']) timed(`check --as ${form}`, names, ['check', ...names, '--as', form]);
  timed('list', names, ['list', '--today', '2026-12-01']);
  for (const part of [4, 2, 1]) timed(`check, ${part === 1 ? 'all' : `1 of ${part}`} of them`, names.slice(0, names.length / part), ['check', ...names.slice(0, names.length / part)]);
} finally {
  rmSync(folder, { recursive: true });
}

function timed(label: string, names: readonly string[], args: readonly string[]): void {
  const { gc } = globalThis as { readonly gc?: () => void };
  gc?.();
  let letters = 0;
  const started = performance.now();
  const code = run(args, '0', { cwd: folder, styled: false, stdin: () => '', out: (text) => void (letters += text.length), err: (text) => console.error(text) });
  const ms = performance.now() - started;
  gc?.();
  const mb = (bytes: number) => `${(bytes / 1_000_000).toFixed(0)} MB`;
  console.log(row(`${label} (exit ${code}, ${(letters / 1000).toFixed(0)} KB)`, `${ms.toFixed(0)} ms`, (names.length / (ms / 1000)).toFixed(0), mb(process.memoryUsage().heapUsed), mb(process.resourceUsage().maxRSS * 1000)));
}
