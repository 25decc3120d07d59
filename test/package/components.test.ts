import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import type { Metafile } from 'esbuild';
import { afterEach, describe, expect, test } from 'vitest';
import { packagesIn } from '../../src/tools/package/bundles.js';
import { componentsAt } from '../../src/tools/package/components.js';

describe('packages of other people in a bundle', () => {
  const from = (inputs: Readonly<Record<string, number>>): readonly string[] =>
    packagesIn({ inputs: {}, outputs: { 'x.js': { inputs: Object.fromEntries(Object.entries(inputs).map(([file, bytesInOutput]) => [file, { bytesInOutput }])), bytes: 1, imports: [], exports: [] } } } satisfies Metafile);

  test.each<[string, Readonly<Record<string, number>>, readonly string[]]>([
    ['our own files are none', { 'src/a.ts': 5, 'package.json': 3 }, []],
    ['each once, in order', { 'node_modules/b/lib/x.js': 1, 'node_modules/b/lib/y.js': 1, 'node_modules/a/index.js': 1 }, ['node_modules/a', 'node_modules/b']],
    ['one of which nothing is left is none', { 'node_modules/a/index.js': 0 }, []],
    ['one below a scope', { 'node_modules/@some/one/index.js': 1 }, ['node_modules/@some/one']],
    ['one below another', { 'node_modules/a/node_modules/@some/one/x.js': 1 }, ['node_modules/a/node_modules/@some/one']],
    ['where packages are linked from elsewhere', { '../../there/node_modules/a/x.js': 1 }, ['node_modules/a']],
  ])('%s', (_, inputs, wanted) => {
    expect(from(inputs)).toEqual(wanted);
  });
});

describe('a package that is bundled', () => {
  const root = mkdtempSync(path.join(tmpdir(), 'steelyard-components-'));
  afterEach(() => rmSync(root, { recursive: true, force: true }));
  // The hash of nothing, in both writings: FIPS 180-4 and W3C Subresource Integrity; computed with the openssl tool.
  const nothing = { integrity: 'sha512-z4PhNX7vuL3xVChQ1m2AB9Yg5AULVxXcg/SpIdNs6c5H0NE8XYXysP+DGNKHfuwvY7kxvUdBeoGlODJ6+SfaPg==', hex: 'cf83e1357eefb8bdf1542850d66d8007d620e4050b5715dc83f4a921d36ce9ce47d0d13c5d85f2b0ff8318d2877eec2f63b931bd47417a81a538327af927da3e' };

  interface Laid {
    readonly licence?: unknown;
    readonly locked?: string;
    readonly integrity?: string;
    readonly texts?: readonly string[];
    readonly folders?: readonly string[];
  }

  function lay({ licence = 'MIT', locked = '1.2.3', integrity = nothing.integrity, texts = ['LICENSE'], folders = ['node_modules/a'] }: Laid = {}) {
    const packages = Object.fromEntries(folders.map((folder) => [folder, { version: locked, integrity, license: licence, dependencies: { z: '1', b: '1' } }]));
    for (const folder of folders) {
      mkdirSync(path.join(root, folder), { recursive: true });
      writeFileSync(path.join(root, folder, 'package.json'), JSON.stringify({ name: 'a', version: '1.2.3', license: licence }));
      for (const file of texts) writeFileSync(path.join(root, folder, file), `Text of ${file}\r\n`);
    }
    writeFileSync(path.join(root, 'package-lock.json'), JSON.stringify({ packages }));
    return componentsAt(root, folders);
  }

  test('is told with its licence, its texts, the hash of its archive and what it needs', () => {
    expect(lay({ texts: ['License.txt', 'thirdpartynotices.txt', 'readme.md'] })).toEqual([{ name: 'a', version: '1.2.3', licence: 'MIT', sha512: nothing.hex, needs: ['b', 'z'], texts: ['Text of License.txt', 'Text of thirdpartynotices.txt'] }]);
  });

  test.each<[string, Laid, RegExp]>([
    ['a licence that asks for more', { licence: 'GPL-3.0-only' }, /a has the licence "GPL-3.0-only". May it be passed on/],
    ['a licence that leaves a choice', { licence: '(MIT OR GPL-3.0-only)' }, /May it be passed on/],
    ['no licence', { licence: null }, /has the licence null/],
    ['a licence in the old writing', { licence: { type: 'MIT' } }, /has the licence {"type":"MIT"}/],
    ['no licence text', { texts: ['readme.md', 'notice.txt'] }, /no licence text/],
    ['another version than the locked one', { locked: '1.2.4' }, /is 1.2.3, but package-lock.json has 1.2.4: run "npm ci"/],
    ['an archive that is pinned weakly', { integrity: 'sha1-2jmj7l5rSw0yVb/vlWAYkK/YBwk=' }, /doesn't pin the archive of a/],
    ['two versions', { folders: ['node_modules/a', 'node_modules/b/node_modules/a'] }, /a is bundled in two versions/],
  ])('stops the packing with %s', (_, laid, says) => {
    expect(() => lay(laid)).toThrow(says);
  });

  test('stops the packing where the lock file does not know it', () => {
    lay();
    expect(() => componentsAt(root, ['node_modules/other'])).toThrow(/package-lock.json doesn't have it/);
  });
});
