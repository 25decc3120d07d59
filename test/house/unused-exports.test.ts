import path from 'node:path';
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { afterAll, describe, expect, test } from 'vitest';
import { unusedExports } from '../../src/tools/unused-exports.js';

test('every export of the house is needed by somebody', () => {
  const found = unusedExports(path.resolve(import.meta.dirname, '../..')).map(({ file, name, says }) => `${file} ${name} ${says}`);
  expect(found).toEqual([]);
});

describe('an export that nobody needs is seen', () => {
  const root = mkdtempSync(path.join(tmpdir(), 'exports-'));
  afterAll(() => rmSync(root, { recursive: true }));
  const found = (files: Readonly<Record<string, string>>) => {
    for (const folder of ['src', 'test']) {
      rmSync(path.join(root, folder), { recursive: true, force: true });
      mkdirSync(path.join(root, folder));
    }
    for (const [file, text] of Object.entries(files)) {
      mkdirSync(path.join(root, path.dirname(file)), { recursive: true });
      writeFileSync(path.join(root, file), text);
    }
    return unusedExports(root).map(({ file, name, says }) => `${file} ${name} ${says}`);
  };

  test('values and types, whatever their form', () => {
    const text = 'export const a = 1, { b, c: [d] } = x;\nexport function f() {}\nexport class C {}\nexport interface I {}\nexport type T = string;\nexport enum E {}\nexport default 1;\n';
    expect(found({ 'src/a.ts': text })).toEqual(['a', 'b', 'd', 'f', 'C', 'I', 'T', 'E', 'default'].map((name) => `src/a.ts ${name} is imported by nobody`));
  });

  test('what an index passes on to nobody, also under another name', () => {
    expect(found({
      'src/a.ts': 'export const a = 1;\nexport const b = 2;\n',
      'src/index.ts': "export { a, b as other } from './a.js';\n",
      'src/use.ts': "import { a } from './index.js';\nimport { b } from './a.js';\n",
    })).toEqual(['src/index.ts other is passed on to nobody']);
  });

  test('what only tests use of the product, unless its own file uses it; tools are for tests too', () => {
    expect(found({
      'src/weigh/a.ts': 'export const alone = 1;\nexport const most = 2;\nconst used = most;\n',
      'src/tools/b.ts': 'export const walls = 1;\n',
      'test/a.test.ts': "import { alone, most } from '../src/weigh/a.js';\nimport { walls } from '../src/tools/b.js';\n",
    })).toEqual(['src/weigh/a.ts alone is used by tests alone']);
  });

  test('and what somebody needs is let be: by any road, or in a signature', () => {
    expect(found({
      'src/a.ts': 'export interface Shape { readonly a: 1 }\nexport const shape: Shape = { a: 1 };\nexport const late = 1;\nexport const whole = 2;\nexport type Far = 1;\n',
      'src/index.ts': "export * from './a.js';\n",
      'src/all.ts': "export * as all from './index.js';\n",
      'src/use.ts': "import { all } from './all.js';\nconst later = import('./a.js');\ntype F = import('./a.js').Far;\n",
      'src/editor/extension.ts': 'export function activate() {}\n',
    })).toEqual([]);
  });
});
