import { readFileSync } from 'node:fs';
import { version } from '../../package.json';
import { run } from './run.js';
import { mayStyle } from './terminal.js';

process.exitCode = run(process.argv.slice(2), version, {
  out: (text) => void process.stdout.write(text),
  err: (text) => void process.stderr.write(text),
  cwd: process.cwd(),
  stdin: () => readFileSync(0, 'utf8'),
  styled: mayStyle(process.env, process.stdout.isTTY),
});
