// `node src/tools/run.mjs test/editor/host/serve.ts [--port P] [--vsix FILE]`: the real editor with this repository's
// extension, or a packaged one, and the samples, for people with a browser and without an editor of their own. The
// samples are a copy: nothing that is tried there changes the repository.
import { existsSync, readFileSync } from 'node:fs';
import { cp } from 'node:fs/promises';
import path from 'node:path';
import { parseArgs } from 'node:util';
import { install } from './ensure-host.js';
import { startHost } from './host.js';
import { repository } from './paths.js';
import { tempFolder } from './temp.js';

interface Choices {
  readonly port: number;
  /** Packaged extension to try instead of this repository's build. */
  readonly vsix: string | undefined;
}

function readChoices(): Choices {
  const { values } = parseArgs({ options: { port: { type: 'string' }, vsix: { type: 'string' } } });
  const port = Number(values.port ?? '0');
  if (!Number.isInteger(port) || port < 0 || port > 65_535)
    throw new Error(`--port ${String(values.port)} is not a port number.`);
  if (values.vsix !== undefined && !existsSync(values.vsix)) throw new Error(`--vsix ${values.vsix} does not exist.`);
  return { port, vsix: values.vsix };
}

function requireBuild(): void {
  const manifest = JSON.parse(readFileSync(path.join(repository, 'package.json'), 'utf8')) as { main?: string };
  const main = manifest.main ?? 'dist/extension.js';
  if (!existsSync(path.join(repository, main)))
    throw new Error(`${main} is missing: build the extension first ("npm run build").`);
}

async function serve(): Promise<void> {
  const { port, vsix } = readChoices();
  if (vsix === undefined) requireBuild();
  await install({ browser: false });
  const workspace = path.join(tempFolder('try').dir, 'samples');
  await cp(path.join(repository, 'samples'), workspace, { recursive: true });
  // With a secret in its address: a server without one would obey any page that the same browser visits.
  const extension = vsix === undefined ? { extensionDir: repository } : { vsix, automation: false };
  const host = await startHost({ workspace, ...extension, port, secret: true });
  console.log(`Open this address in a browser on this machine:\n\n  ${host.url()}\n`);
  console.log(`The samples are a copy in ${workspace}.`);
  console.log('Ctrl+C stops the editor and removes the copy.');
}

try {
  await serve();
} catch (error) {
  console.error(error instanceof Error ? error.message : error);
  process.exitCode = 1;
}
