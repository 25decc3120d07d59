// `node src/tools/run.mjs src/tools/measure-package.ts`: the size and the files of dist/steelyard.vsix, and how long
// the packed extension takes to load and start in plain Node, with an editor that only pretends. Fails where a limit is
// passed or a file is packed that users don't need.
import { existsSync, readFileSync, statSync } from 'node:fs';
import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { inflateRawSync } from 'node:zlib';
import { spawnSync } from 'node:child_process';

const VSIX = 'dist/steelyard.vsix';
const LARGEST_KIB = 400;
const SLOWEST_MS = 50;
const RUNS = 12;
const needless = /(^|\/)(src|test|node_modules)\/|\.map$|\.ts$/;

interface Entry {
  readonly name: string;
  readonly packed: number;
  readonly size: number;
  readonly text: () => string;
}

/** The directory at the end of a zip file. A vsix has no parts that need more than this. */
function entriesOf(file: string): Entry[] {
  const zip = readFileSync(file);
  const end = zip.lastIndexOf(Buffer.from('PK\x05\x06', 'latin1'));
  const entries: Entry[] = [];
  for (let i = 0, at = zip.readUInt32LE(end + 16); i < zip.readUInt16LE(end + 10); i++) {
    const [packed, size, nameLength] = [zip.readUInt32LE(at + 20), zip.readUInt32LE(at + 24), zip.readUInt16LE(at + 28)];
    const [method, local] = [zip.readUInt16LE(at + 10), zip.readUInt32LE(at + 42)];
    const name = zip.toString('utf8', at + 46, at + 46 + nameLength);
    const text = (): string => {
      const start = local + 30 + zip.readUInt16LE(local + 26) + zip.readUInt16LE(local + 28);
      const data = zip.subarray(start, start + packed);
      return (method === 0 ? data : inflateRawSync(data)).toString('utf8');
    };
    entries.push({ name, packed, size, text });
    at += 46 + nameLength + zip.readUInt16LE(at + 30) + zip.readUInt16LE(at + 32);
  }
  return entries;
}

/** Anything may be asked of it, called and made; registering costs the real editor more, but that is not ours. */
const pretending = `
const any = () => {
  const target = function () {};
  return new Proxy(target, {
    get: (_, key) => key === Symbol.iterator ? [][Symbol.iterator].bind([]) : key === Symbol.toPrimitive || key === 'toString' ? () => '' : key === 'then' ? undefined : key === 'length' ? 0 : key === 'forEach' || key === 'map' || key === 'find' ? () => [] : key === 'prototype' ? target.prototype : any(),
    set: () => true,
    apply: () => any(),
    construct: () => any(),
  });
};
// Behind an object of its own: a bundle copies the names that a module has, and asks what stands behind it for others.
module.exports = Object.create(any());
`;

const timing = `
const Module = require('node:module');
const load = Module._load;
const stub = require(process.argv[2]);
Module._load = (name, ...rest) => (name === 'vscode' ? stub : load(name, ...rest));
const started = performance.now();
const extension = require(process.argv[3]);
const loaded = performance.now();
extension.activate({ subscriptions: [], extensionUri: stub.Uri });
console.log(JSON.stringify([loaded - started, performance.now() - loaded]));
process.exit(0);
`;

async function startTimes(script: string): Promise<{ readonly load: number; readonly activate: number }> {
  const dir = await mkdtemp(path.join(tmpdir(), 'steelyard-measure-'));
  try {
    const at = (name: string): string => path.join(dir, name);
    await Promise.all([writeFile(at('vscode.cjs'), pretending), writeFile(at('time.cjs'), timing), writeFile(at('extension.cjs'), script)]);
    const runs = Array.from({ length: RUNS }, () => {
      const { status, stdout, stderr } = spawnSync(process.execPath, [at('time.cjs'), at('vscode.cjs'), at('extension.cjs')], { encoding: 'utf8' });
      if (status !== 0) throw new Error(`The packed extension does not start: ${/^\w*Error: .*/m.exec(stderr)?.[0] ?? stderr.slice(-600)}`);
      return JSON.parse(stdout) as [number, number];
    });
    // The quickest: the first reads from a cold disk, and others share the machine.
    const [load, activate] = runs.sort((a, b) => a[0] + a[1] - (b[0] + b[1]))[0] as [number, number];
    return { load, activate };
  } finally {
    await rm(dir, { recursive: true, force: true });
  }
}

if (!existsSync(VSIX)) throw new Error(`${VSIX} is missing: run "npm run package" first.`);
const entries = entriesOf(VSIX);
for (const { name, packed, size } of entries) console.log(`${(packed / 1024).toFixed(1).padStart(8)} KiB of ${(size / 1024).toFixed(1).padStart(7)}  ${name}`);
const total = statSync(VSIX).size / 1024;
console.log(`${total.toFixed(1).padStart(8)} KiB in all (at most ${LARGEST_KIB})`);
const stray = entries.filter(({ name }) => needless.test(name)).map(({ name }) => name);
if (stray.length > 0) console.log(`packed without need: ${stray.join(', ')}`);

// The desktop's own bundle only loads this one.
const script = entries.find(({ name }) => name === 'extension/dist/web/extension.js')?.text();
if (script === undefined) throw new Error('The package has no dist/web/extension.js.');
const { load, activate } = await startTimes(script);
console.log(`start in plain Node ${process.version} with a pretended editor, the quickest of ${RUNS} runs: ${load.toFixed(1)} ms to load, ${activate.toFixed(1)} ms to activate (at most ${SLOWEST_MS} together)`);
process.exitCode = total > LARGEST_KIB || stray.length > 0 || load + activate > SLOWEST_MS ? 1 : 0;
