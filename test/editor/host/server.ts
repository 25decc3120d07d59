// The server program of the editor: how it is started, waited for and used as an installer.
import { spawn, type ChildProcess } from 'node:child_process';
import { existsSync } from 'node:fs';
import path from 'node:path';
import { setTimeout as delay } from 'node:timers/promises';
import { editorIn, installDir, nodeIn } from './paths.js';
import { collectOutput, endGroup, run } from './process.js';

export interface Folders {
  readonly userDataDir: string;
  readonly extensionsDir: string;
  readonly serverDataDir: string;
}

export interface Server {
  readonly process: ChildProcess;
  readonly port: number;
  output(): string;
}

const startTimeout = 60_000;

function program(): { node: string; script: string } {
  const node = path.join(nodeIn(installDir), 'bin', 'node');
  const script = path.join(editorIn(installDir), 'out', 'server-main.js');
  if (!existsSync(node) || !existsSync(script)) {
    throw new Error('The editor host is not installed: run "node src/tools/run.mjs test/editor/host/install.ts".');
  }
  return { node, script };
}

const folderArgs = (folders: Folders): string[] => [
  '--accept-server-license-terms',
  `--user-data-dir=${folders.userDataDir}`,
  `--extensions-dir=${folders.extensionsDir}`,
  `--server-data-dir=${folders.serverDataDir}`,
];

/** An editor started from a terminal of another editor must not take over its variables. */
function cleanEnvironment(): NodeJS.ProcessEnv {
  const foreign = /^(VSCODE_|ELECTRON_|NODE_OPTIONS$)/;
  const own = Object.entries(process.env).filter(([name]) => !foreign.test(name));
  // No gallery: a test must not depend on, or wait for, a service on the network.
  return { ...Object.fromEntries(own), EXTENSIONS_GALLERY: '{}' };
}

/** Starts the server on `port` (0: any free one) and waits until it answers. */
export async function startServer(folders: Folders, port: number, mode: readonly string[]): Promise<Server> {
  const { node, script } = program();
  const fixed = ['--host=127.0.0.1', `--port=${port}`, '--telemetry-level=off'];
  const child = spawn(node, [script, ...fixed, ...mode, ...folderArgs(folders)], {
    detached: true, // a group of its own, so that extension hosts end with it
    stdio: ['ignore', 'pipe', 'pipe'],
    env: cleanEnvironment(),
  });
  const output = collectOutput(child);
  try {
    return { process: child, port: await announcedPort(child, output), output };
  } catch (error) {
    await endGroup(child);
    throw error;
  }
}

/** The server itself says which port it listens on; choosing one beforehand could lose it to another process. */
async function announcedPort(child: ChildProcess, output: () => string): Promise<number> {
  for (const deadline = Date.now() + startTimeout; Date.now() < deadline; await delay(50)) {
    const port = /Extension host agent listening on (\d+)/.exec(output())?.[1];
    if (port !== undefined && (await answers(Number(port)))) return Number(port);
    if (child.exitCode !== null || child.signalCode !== null) break;
  }
  throw new Error(`The editor host did not start.\n${output()}`);
}

async function answers(port: number): Promise<boolean> {
  try {
    return (await fetch(`http://127.0.0.1:${port}/version`)).ok;
  } catch {
    return false; // not yet: the caller tries again until its deadline
  }
}

/** Installs a packaged extension the way a user would, without starting the editor. */
export async function installInto(folders: Folders, vsix: string): Promise<void> {
  const { node, script } = program();
  await run(node, [script, ...folderArgs(folders), '--install-extension', vsix, '--force'], {
    env: cleanEnvironment(),
  });
}
