// Child processes that are always waited for, and always ended together with what they started.
import { spawn, type ChildProcess } from 'node:child_process';
import { once } from 'node:events';
import { readdirSync, readFileSync } from 'node:fs';
import { setTimeout as delay } from 'node:timers/promises';
import { onProcessEnd } from './cleanup.js';

/** Runs a command to its end. Its output is shown only when it fails: progress belongs to the caller. */
export async function run(
  command: string,
  args: readonly string[],
  options: { cwd?: string; env?: NodeJS.ProcessEnv } = {},
): Promise<void> {
  const child = spawn(command, args, { ...options, detached: true, stdio: ['ignore', 'pipe', 'pipe'] });
  const forget = onProcessEnd(() => signalGroup(child, 'SIGTERM'));
  const output = collectOutput(child);
  const [code, signal] = (await once(child, 'close').finally(forget)) as [number | null, NodeJS.Signals | null];
  if (code !== 0) {
    throw new Error(`${command} ${args.join(' ')} failed (${signal ?? `code ${String(code)}`})\n${output()}`);
  }
}

/** Keeps the tail of what a process prints, so that a failure can be explained without holding a long run's log. */
export function collectOutput(child: ChildProcess): () => string {
  const limit = 20_000;
  let text = '';
  const add = (chunk: Buffer): void => {
    text = (text + chunk.toString('utf8')).slice(-limit);
  };
  child.stdout?.on('data', add);
  child.stderr?.on('data', add);
  return () => text;
}

/** Signal 0 asks whether a process (or, negative, a group) exists; "not permitted" also means that it does. */
export function isAlive(pid: number): boolean {
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    return error instanceof Error && 'code' in error && error.code === 'EPERM';
  }
}

/** Signals a whole group; that it has already ended is the wished result, not an error. */
export function signalGroup(child: ChildProcess, signal: NodeJS.Signals): void {
  if (child.pid !== undefined && isAlive(-child.pid)) process.kill(-child.pid, signal);
}

/** The processes of a group, by what the system tells of all (Linux, proc(5)). */
export function inGroup(child: ChildProcess): readonly number[] {
  return readdirSync('/proc').filter((name) => /^\d+$/.test(name)).map(Number).filter((pid) => groupOf(pid) === child.pid);
}

function groupOf(pid: number): number | undefined {
  // The fifth field; the second is a name in brackets, which may hold anything.
  const fields = read(`/proc/${pid}/stat`).replace(/^.*\) /s, '').split(' ');
  return fields[2] === undefined ? undefined : Number(fields[2]);
}

/** The command line of a process, with spaces between its words; empty once it has ended. */
export function commandOf(pid: number): string {
  return read(`/proc/${pid}/cmdline`).replaceAll('\0', ' ');
}

function read(file: string): string {
  try {
    return readFileSync(file, 'utf8');
  } catch {
    return '';
  }
}

/** Ends a process started with `detached: true` and everything in its group: politely, then by force. */
export async function endGroup(child: ChildProcess): Promise<void> {
  signalGroup(child, 'SIGTERM');
  for (let waited = 0; waited < 3000 && child.exitCode === null && child.signalCode === null; waited += 50)
    await delay(50);
  // Also when the leader went politely: what it started may have stayed.
  signalGroup(child, 'SIGKILL');
}
