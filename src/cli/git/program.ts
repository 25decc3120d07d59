import { realpathSync } from 'node:fs';

/** How git's shell calls something that this program does; where the program is gone by then, another thing instead. */
interface ShellCall {
  /** True in the shell where the program is still there. */
  readonly there: string;
  readonly call: string;
}

/** Git runs what it is told in a shell of its own, on Windows too, where it wants slashes. */
export function callOf(...args: readonly string[]): ShellCall {
  const script = quoted(realpathSync(process.argv[1] ?? ''));
  return { there: `test -f ${script}`, call: [quoted(process.execPath), script, ...args].join(' ') };
}

function quoted(word: string): string {
  const slashed = process.platform === 'win32' ? word.replaceAll('\\', '/') : word;
  return `'${slashed.replaceAll("'", String.raw`'\''`)}'`;
}
