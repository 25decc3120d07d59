import { spawnSync } from 'node:child_process';
import { chmodSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { build } from 'esbuild';
import { afterAll, beforeAll } from 'vitest';

const root = path.resolve(import.meta.dirname, '../..');

export interface Ran {
  readonly code: number | null;
  readonly out: string;
  readonly err: string;
}

export interface RunOptions {
  readonly cwd?: string;
  readonly stdin?: Uint8Array | string;
  readonly env?: NodeJS.ProcessEnv;
  /** As someone who may read only what all may. Whoever runs the tests may be allowed to read everything. */
  readonly asNobody?: boolean;
}

/** Nobody, by his number on most systems. */
const NOBODY = 65_534;

export interface Tool {
  /** A folder that is there for the tests of one file, and that all may read. */
  readonly folder: () => string;
  readonly run: (args: readonly string[], options?: RunOptions) => Ran;
  /** A line for the shell, in which `$TOOL` runs the tool. */
  readonly shell: (line: string, options?: RunOptions) => Ran;
}

/** The terminal tool as a process of its own, built once for a file of tests. */
export function builtTool(): Tool {
  const folder = mkdtempSync(path.join(tmpdir(), 'steelyard-faults-'));
  const program = path.join(folder, 'program', 'cli.cjs');
  beforeAll(async () => {
    chmodSync(folder, 0o755);
    await build({ entryPoints: [path.join(root, 'src/cli/main.ts')], outfile: program, bundle: true, platform: 'node', format: 'cjs', target: 'node20', logLevel: 'silent' });
  }, 60_000);
  afterAll(() => rmSync(folder, { recursive: true, force: true }));
  const ran = (command: string, args: readonly string[], { cwd = folder, stdin = '', env = {}, asNobody = false }: RunOptions): Ran => {
    const other = asNobody && process.getuid?.() === 0 ? { uid: NOBODY, gid: NOBODY } : {};
    const { status, stdout, stderr } = spawnSync(command, args, { cwd, input: stdin, env: { ...process.env, ...env }, encoding: 'utf8', ...other });
    return { code: status, out: stdout, err: stderr };
  };
  return {
    folder: () => folder,
    run: (args, options = {}) => ran(process.execPath, [program, ...args], options),
    shell: (line, options = {}) => ran('sh', ['-c', line], { ...options, env: { ...options.env, TOOL: `${process.execPath} ${program}` } }),
  };
}
