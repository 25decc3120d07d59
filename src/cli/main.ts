import { readFileSync } from 'node:fs';
import { version } from '../../package.json';
import { run } from './run.js';
import { mayStyle } from './terminal.js';

const args = process.argv.slice(2);

// Whoever reads may have read enough, as in `steelyard weigh FILE | head`: that is no fault.
process.stdout.on('error', (error: NodeJS.ErrnoException) => {
  if (error.code !== 'EPIPE') throw error;
  process.exit();
});

// The language server is loaded only when asked for: it lives on, and the commands need none of it.
if (args[0] === 'lsp') void import('./lsp/server.js').then(({ serve }) => serve(process.stdin, process.stdout, version));
else process.exitCode = run(args, version, {
  out: (text) => void process.stdout.write(text),
  err: (text) => void process.stderr.write(text),
  cwd: process.cwd(),
  stdin: () => readFileSync(0, 'utf8'),
  styled: mayStyle(process.env, process.stdout.isTTY),
  ...(process.stderr.isTTY ? { progress: (text: string) => void process.stderr.write(`\r\u001b[K${text}`) } : {}),
});
