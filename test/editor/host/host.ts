// One running editor host: a server with fresh folders of its own, and the addresses that open a workspace in it.
import { randomBytes } from 'node:crypto';
import { mkdir } from 'node:fs/promises';
import path from 'node:path';
import { onProcessEnd } from './cleanup.js';
import { commandOf, endGroup, inGroup, signalGroup } from './process.js';
import { installInto, startServer } from './server.js';
import { writeSettings, type Settings } from './settings.js';
import { tempFolder } from './temp.js';

export type ExtensionKind = 'node' | 'web';
export type PayloadEntry = readonly [name: string, value: string];

export interface HostOptions {
  /** Folder that the editor opens. */
  readonly workspace: string;
  /** Extension to load from its sources, as "run extension" would. */
  readonly extensionDir?: string;
  /** Extension host for it; `web` needs a `browser` entry in its package.json. */
  readonly extensionKind?: ExtensionKind;
  /** Packaged extension to install before the start. */
  readonly vsix?: string;
  /** Kept after the stop; without it a fresh one is made and removed. */
  readonly userDataDir?: string;
  readonly settings?: Settings;
  /** A free one when absent. */
  readonly port?: number;
  /** Lets only those in who know the address, for a host that people use while browsing other sites. */
  readonly secret?: boolean;
  /**
   * Absent: true. Automation is what makes `extensionDir` and payloads work, and it keeps messages from popping up;
   * without it, and with a `vsix`, the editor is what a user gets.
   */
  readonly automation?: boolean;
  /** Absent: every workspace is trusted without a question. `asked`: none is before its user says so. */
  readonly trust?: 'asked';
}

export interface Host {
  readonly workspace: string;
  readonly userDataDir: string;
  /** Address that opens the workspace. Entries of the payload are options of the workbench. */
  url(payload?: readonly PayloadEntry[]): string;
  /** An absolute path as the workbench of this host names it, for payload entries. */
  remote(absolutePath: string): string;
  /** Tail of what the server printed, to explain a failure. */
  output(): string;
  /** The processes that extensions run in. */
  extensionHosts(): readonly number[];
  stop(): Promise<void>;
}

export async function startHost(options: HostOptions): Promise<Host> {
  if (options.automation === false && options.extensionDir !== undefined) {
    throw new Error('An extension is loaded from its sources only with automation; install a vsix instead.');
  }
  const temp = tempFolder('host');
  const folders = {
    userDataDir: options.userDataDir ?? path.join(temp.dir, 'user'),
    extensionsDir: path.join(temp.dir, 'extensions'),
    serverDataDir: path.join(temp.dir, 'server'),
  };
  try {
    await Promise.all(Object.values(folders).map((dir) => mkdir(dir, { recursive: true })));
    await writeSettings(folders.userDataDir, options.settings ?? {});
    if (options.vsix !== undefined) await installInto(folders, path.resolve(options.vsix));

    const token = options.secret === true ? randomBytes(16).toString('hex') : undefined;
    const mode = [token === undefined ? '--without-connection-token' : `--connection-token=${token}`];
    if (options.automation !== false) mode.push('--enable-smoke-test-driver');
    if (options.trust !== 'asked') mode.push('--disable-workspace-trust');
    const server = await startServer(folders, options.port ?? 0, mode);
    const forget = onProcessEnd(() => signalGroup(server.process, 'SIGKILL'));

    const authority = `127.0.0.1:${server.port}`;
    const remote = (file: string): string => `vscode-remote://${authority}${encodeURI(file)}`;
    const own: PayloadEntry[] = [['skipWelcome', 'true']];
    if (options.extensionDir !== undefined)
      own.push(['extensionDevelopmentPath', remote(path.resolve(options.extensionDir))]);
    if (options.extensionKind === 'web') own.push(['extensionDevelopmentKind', 'web']);

    return {
      workspace: options.workspace,
      userDataDir: folders.userDataDir,
      remote,
      url(payload = []) {
        if (options.automation === false && payload.length > 0)
          throw new Error('Payload entries need a host with automation.');
        const query = new URLSearchParams({
          folder: path.resolve(options.workspace),
          payload: JSON.stringify([...own, ...payload]),
        });
        if (token !== undefined) query.set('tkn', token);
        return `http://${authority}/?${query.toString()}`;
      },
      output: () => server.output(),
      extensionHosts: () => inGroup(server.process).filter((pid) => commandOf(pid).includes('--type=extensionHost')),
      async stop() {
        await endGroup(server.process);
        forget();
        await temp.remove();
      },
    };
  } catch (error) {
    await temp.remove();
    throw error;
  }
}
