import { version } from '../../package.json';
import { plain } from '../report/index.js';
import { codeOf } from './read-whole.js';
import { run, type ExitCode } from './run.js';
import { readStandardInput } from './standard-input.js';
import { mayStyle, columnsFor } from './terminal.js';
import { isFile, writeToEnd } from './write-out.js';
import { whyUnwritten } from './write-whole.js';

/** The number of standard output (POSIX). */
const STDOUT = 1;
const args = process.argv.slice(2);

process.stdout.on('error', (error: NodeJS.ErrnoException) => {
  // Whoever reads may have read enough, as in `steelyard weigh FILE | head`: that is no fault.
  if (error.code === 'EPIPE') process.exit();
  stopUnwritten(error);
});
// Where nobody hears complaints, there is nobody to complain to; the exit code still says it.
process.stderr.on('error', () => undefined);

/** What editors say when they start a language server. */
const TO_SERVER = /^(?:--stdio|--clientProcessId(?:=\d+)?|\d+)$/;

// The language server is loaded only when asked for: it lives on, and the commands need none of it.
if (args[0] === 'lsp' && args.slice(1).every((one) => TO_SERVER.test(one))) void import('./lsp/server.js').then(({ serve }) => serve(process.stdin, process.stdout, version));
else process.exitCode = started();

function out(text: string): void {
  if (!isFile(STDOUT)) return void process.stdout.write(text);
  try {
    writeToEnd(STDOUT, text);
  } catch (error) {
    stopUnwritten(error);
  }
}

function stopUnwritten(error: unknown): never {
  process.stderr.write(`What was asked for could not be written to the end: ${whyUnwritten(error)}\n`);
  process.exit(2);
}

function started(): ExitCode {
  const width = columnsFor(process.env, process.stdout.isTTY, process.stdout.columns);
  try {
    return run(args, version, {
      out,
      err: (text) => void process.stderr.write(text),
      cwd: process.cwd(),
      stdin: readStandardInput,
      styled: mayStyle(process.env, process.stdout.isTTY),
      ...(width === undefined ? {} : { width }),
      ...(process.stderr.isTTY ? { progress: (text: string) => void process.stderr.write(`\r\u001b[K${text}`) } : {}),
    });
  } catch (error) {
    process.stderr.write(`${whyStopped(error)}\n`);
    return 2;
  }
}

function whyStopped(error: unknown): string {
  if (codeOf(error) === 'ENOENT' && error instanceof Error && error.message.includes('uv_cwd')) return 'The folder that you are in is not there any more. Go to another one and try again.';
  const where = error instanceof Error ? (error.stack ?? error.message).split('\n').slice(0, 4).map((line) => plain(line)).join('\n') : plain(String(error));
  return `Steelyard itself failed, and not by what you wrote. Please report it, with this:\n${where}`;
}
