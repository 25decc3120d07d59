// `node --expose-gc src/tools/run.mjs src/tools/bench/history.ts [FILES]`: what `steelyard history` takes for a folder of
// generated closed estimates on the disk, by the clock and on the processors, and how much memory it needs. Prints; asserts nothing.
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { cpus, tmpdir } from 'node:os';
import path from 'node:path';
import { run } from '../../cli/run.js';
import { CLOSED_SHOP, closedEstimate } from './closed-estimates.js';
import { row } from './measure.js';

const FILES = Number(process.argv[2] ?? 10_000);
const folder = mkdtempSync(path.join(tmpdir(), 'steelyard-bench-'));
try {
  mkdirSync(path.join(folder, '.git'));
  writeFileSync(path.join(folder, 'shop.yard'), CLOSED_SHOP);
  let letters = 0;
  let lines = 0;
  for (let i = 0; i < FILES; i++) {
    const text = closedEstimate(i + 1);
    letters += text.length;
    lines += text.split('\n').length - 1;
    writeFileSync(path.join(folder, `job-${i + 1}.yard`), text);
  }
  console.log(`${FILES.toLocaleString('en')} closed estimates on the disk, ${(lines / FILES).toFixed(0)} lines and ${(letters / FILES / 1000).toFixed(1)} KB each; Node ${process.version}; ${cpus()[0]?.model ?? 'unknown processor'}\n`);
  console.log(row('', 'once', 'files/s', 'processor', 'heap after', 'most memory'));
  for (const part of [8, 1]) timed(part === 1 ? 'history, all' : `history, 1 of ${part}`, Math.floor(FILES / part));
} finally {
  rmSync(folder, { recursive: true });
}

function timed(label: string, count: number): void {
  const { gc } = globalThis as { readonly gc?: () => void };
  gc?.();
  const args = count === FILES ? ['history', '.'] : ['history', ...Array.from({ length: count }, (_, i) => `job-${i + 1}.yard`)];
  const started = performance.now();
  const before = process.cpuUsage();
  const code = run([...args, '--json'], '0', { cwd: folder, styled: false, stdin: () => '', out: () => undefined, err: (text) => console.error(text) });
  const ms = performance.now() - started;
  const { user, system } = process.cpuUsage(before);
  gc?.();
  const mb = (bytes: number) => `${(bytes / 1_000_000).toFixed(0)} MB`;
  console.log(row(`${label} (exit ${code})`, `${ms.toFixed(0)} ms`, (count / (ms / 1000)).toFixed(0), `${((user + system) / 1000).toFixed(0)} ms`, mb(process.memoryUsage().heapUsed), mb(process.resourceUsage().maxRSS * 1000)));
}
