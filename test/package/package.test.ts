// Both packages as `npm run package` makes them: what is in them, what is said of it, and that the same comes out again.
import { spawnSync } from 'node:child_process';
import { chmodSync, cpSync, mkdirSync, mkdtempSync, readFileSync, readdirSync, realpathSync, rmSync, statSync, symlinkSync, writeFileSync } from 'node:fs';
import { homedir, tmpdir } from 'node:os';
import path from 'node:path';
import { Ajv } from 'ajv';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { run } from '../../src/cli/run.js';
import { bundlesOf, TERMINAL } from '../../src/tools/package/bundles.js';
import { pack, type Packed } from '../../src/tools/package/pack.js';
import { entriesOf } from '../../src/tools/package/zip.js';
import { products } from '../../src/tools/products.js';
import { cyclonedx, type Bill } from './cyclonedx.js';
import { filesOf } from './tar.js';

const root = path.resolve(import.meta.dirname, '../..');
const manifest = JSON.parse(readFileSync(path.join(root, 'package.json'), 'utf8')) as {
  readonly version: string;
  readonly engines: { readonly vscode: string; readonly node: string };
  readonly devDependencies: Readonly<Record<string, string>>;
};
const temp = realpathSync(mkdtempSync(path.join(tmpdir(), 'steelyard-package-')));
afterAll(() => rmSync(temp, { recursive: true }));

/** The sources once more, elsewhere, as a checkout with other rights would lay them out. */
function elsewhere(): string {
  const copy = path.join(temp, 'another place');
  mkdirSync(copy);
  for (const name of ['src', 'schemas', 'samples', 'tsconfig.json', 'package.json', 'package-lock.json', 'README.md', 'CHANGELOG.md', 'LICENSE']) cpSync(path.join(root, name), path.join(copy, name), { recursive: true });
  for (const name of ['README.md', 'LICENSE', 'schemas/manual.md']) chmodSync(path.join(copy, name), 0o664);
  symlinkSync(path.join(root, 'node_modules'), path.join(copy, 'node_modules'));
  return copy;
}

let packed: Packed;
let vsix: ReadonlyMap<string, string>;
let tarball: ReadonlyMap<string, string>;
beforeAll(async () => {
  packed = await pack(root, path.join(temp, 'one'));
  vsix = new Map(entriesOf(packed.vsix).map(({ name, text }) => [name, text()]));
  tarball = filesOf(packed.tarball);
}, 300_000);

test('two builds give the same bytes, wherever and by whomever', async () => {
  const again = await pack(elsewhere(), path.join(temp, 'two'));
  for (const one of ['vsix', 'tarball', 'bill'] as const) expect(readFileSync(again[one]).equals(readFileSync(packed[one])), one).toBe(true);
}, 300_000);

describe('contents', () => {
  test('of the extension', () => {
    expect([...vsix.keys()].sort()).toEqual([
      '[Content_Types].xml', 'extension.vsixmanifest',
      'extension/LICENSE.txt', 'extension/THIRD-PARTY-NOTICES.txt', 'extension/bom.cdx.json', 'extension/changelog.md',
      'extension/dist/extension.js', 'extension/dist/page.css', 'extension/dist/page.js', 'extension/dist/web/extension.js',
      'extension/package.json', 'extension/readme.md', 'extension/samples/walkthrough.md',
      'extension/schemas/language-configuration.json', 'extension/schemas/manual.md', 'extension/schemas/steelyard.tmLanguage.json',
    ]);
    expect(statSync(packed.vsix).size).toBeLessThanOrEqual(400 * 1024);
  });

  test('of the terminal tool', () => {
    const schemas = Object.keys(products()).filter((file) => file.endsWith('.schema.json'));
    expect(schemas.length).toBeGreaterThan(5);
    expect([...tarball.keys()].sort()).toEqual(['CHANGELOG.md', 'LICENSE', 'README.md', 'THIRD-PARTY-NOTICES.txt', 'bom.cdx.json', 'dist/cli.js', 'package.json', 'schemas/manual.md', 'schemas/steelyard.ebnf', ...schemas].sort().map((file) => `package/${file}`));
  });

  test('the manifest of the extension names nothing that is not there, and nothing for builders', () => {
    const text = vsix.get('extension/package.json') as string;
    const paths = [...text.matchAll(/"(\.\/[^"]+|samples\/[^"]+)"/g)].map(([, file]) => path.posix.join('extension', file as string));
    expect(paths.length).toBeGreaterThan(4);
    for (const file of paths) expect(vsix.has(file), file).toBe(true);
    const keys = Object.keys(JSON.parse(text) as object);
    expect(keys.filter((key) => ['scripts', 'devDependencies', 'dependencies', 'bin', 'private'].includes(key))).toEqual([]);
  });

  test('the terminal tool needs no other package', () => {
    expect(JSON.parse(tarball.get('package/package.json') as string)).toEqual(expect.objectContaining({ name: 'steelyard', bin: { steelyard: 'dist/cli.js' }, engines: { node: '>=20' } }));
    expect(tarball.get('package/package.json')).not.toContain('ependencies');
  });

  test('no place on the builder’s disk is told', () => {
    for (const [name, text] of [...vsix, ...tarball]) for (const place of [root, temp, path.join(homedir(), ''), 'node_modules/']) expect(text.includes(place) && !isOurWord(name, place), `${place} in ${name}`).toBe(false);
  });
});

/** `/root` as a home folder, and a folder that the README tells builders of, are words as well. */
const isOurWord = (name: string, place: string): boolean => place === '/root' || (place === 'node_modules/' && /readme|changelog|manual/i.test(name));

const validBill = new Ajv({ allErrors: true, strict: false }).compile(cyclonedx);

describe.each([
  ['extension', (): ReadonlyMap<string, string> => vsix, 'extension/', ['decimal.js']],
  ['terminal tool', (): ReadonlyMap<string, string> => tarball, 'package/', ['decimal.js', 'vscode-jsonrpc', 'vscode-languageserver', 'vscode-languageserver-protocol', 'vscode-languageserver-textdocument', 'vscode-languageserver-types']],
])('what the %s is made of', (_, files, prefix, names) => {
  const bill = (): Bill => JSON.parse(files().get(`${prefix}bom.cdx.json`) as string) as Bill;

  test('is told in CycloneDX 1.6', () => {
    expect(validBill(bill()), JSON.stringify(validBill.errors)).toBe(true);
  });

  test('is these packages, in the versions that are installed, with their licences', () => {
    expect(bill().components.map(({ name }) => name)).toEqual(names);
    for (const { name, version, licenses } of bill().components) {
      const own = installed(name, version);
      expect({ version, licence: licenses[0]?.license.id }).toEqual({ version: own.version, licence: own.license });
    }
  });

  test('refers to nothing that is not in it, and everything in it is reached', () => {
    const { metadata, components, dependencies } = bill();
    const refs = [metadata.component['bom-ref'], ...components.map((one) => one['bom-ref'])];
    expect(dependencies.map(({ ref }) => ref)).toEqual(refs);
    const reached = new Set([refs[0]]);
    for (const ref of reached) for (const next of dependencies.find((one) => one.ref === ref)?.dependsOn ?? []) reached.add(next);
    expect([...reached].sort()).toEqual([...refs].sort());
  });

  test('has its licences passed on word for word', () => {
    const notices = files().get(`${prefix}THIRD-PARTY-NOTICES.txt`) as string;
    for (const { name, version } of bill().components) {
      expect(notices).toContain(`${name} ${version} (MIT)`);
      const { dir } = installed(name, version);
      const licence = readdirSync(dir).find((file) => /^licen[cs]e/i.test(file)) as string;
      expect(notices).toContain(readFileSync(path.join(dir, licence), 'utf8').replaceAll('\r\n', '\n').trim());
    }
  });
});

test('the bill beside the tarball is the one inside', () => {
  expect(readFileSync(packed.bill, 'utf8')).toBe(tarball.get('package/bom.cdx.json'));
});

describe('the terminal tool, installed from its tarball without a network', () => {
  const steelyard = (...args: readonly string[]) => spawnSync(path.join(temp, 'shop', 'node_modules', '.bin', 'steelyard'), args, { cwd: root, encoding: 'utf8', env: { ...process.env, NO_COLOR: '1' } });
  beforeAll(() => {
    mkdirSync(path.join(temp, 'shop'));
    writeFileSync(path.join(temp, 'shop', 'package.json'), '{ "private": true }');
    const { status, stderr } = spawnSync('npm', ['install', '--offline', '--ignore-scripts', '--no-audit', '--no-fund', packed.tarball], { cwd: path.join(temp, 'shop'), encoding: 'utf8' });
    expect(stderr).toBe('');
    expect(status).toBe(0);
  }, 120_000);

  test('weighs a sample as the sources do', () => {
    let wanted = '';
    run(['weigh', 'samples/pilgrim-v6.yard'], '', { cwd: root, styled: false, stdin: () => '', out: (text) => void (wanted += text), err: () => undefined });
    expect(wanted).toContain('Fit a used engine');
    expect(steelyard('weigh', 'samples/pilgrim-v6.yard')).toMatchObject({ status: 0, stderr: '', stdout: wanted });
  }, 60_000);

  test('prints what its own schema describes', () => {
    const valid = new Ajv2020({ strict: false }).compile(JSON.parse(readFileSync(path.join(temp, 'shop/node_modules/steelyard/schemas/weigh.schema.json'), 'utf8')) as object);
    expect(valid(JSON.parse(steelyard('weigh', 'samples/tarn-inline.yard', '--json').stdout)), JSON.stringify(valid.errors)).toBe(true);
  }, 60_000);

  test('is of the version that the manifest has, and says what is wrong with a command', () => {
    expect(steelyard('--version').stdout).toBe(`${manifest.version}\n`);
    expect(steelyard('weigh')).toMatchObject({ status: 2, stdout: '' });
  }, 60_000);
});

describe('what the manifest promises', () => {
  test('the editor’s interface is used as it was in the oldest version that is promised', () => {
    expect(manifest.engines.vscode).toBe(`^${manifest.devDependencies['@types/vscode'] ?? ''}`);
  });

  test('the terminal tool is bundled for the oldest Node that is promised', () => {
    const oldest = /^>=(\d+)$/.exec(manifest.engines.node)?.[1] ?? '';
    expect(bundlesOf(root, temp).find(({ outfile }) => outfile.endsWith(TERMINAL))?.target).toBe(`node${oldest}`);
    expect(manifest.devDependencies['@types/node']).toMatch(new RegExp(`^${oldest}\\.`));
  });
});

/** A package's own manifest, in whichever folder this version of it is. */
function installed(name: string, version: string): { readonly dir: string; readonly version: string; readonly license: string } {
  const dirs = [path.join(root, 'node_modules', name), path.join(root, 'node_modules/vscode-languageserver-protocol/node_modules', name)];
  for (const dir of dirs) {
    try {
      const manifest = JSON.parse(readFileSync(path.join(dir, 'package.json'), 'utf8')) as { readonly version: string; readonly license: string };
      if (manifest.version === version) return { ...manifest, dir };
    } catch {
      // not in this one
    }
  }
  throw new Error(`${name} ${version} is not installed`);
}
