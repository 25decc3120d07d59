import path from 'node:path';
import { mkdtempSync, mkdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { afterAll, describe, expect, test } from 'vitest';
import { breaches } from '../../src/tools/walls.js';

test('the walls of the house stand', () => {
  expect(breaches(path.resolve(import.meta.dirname, '../..'))).toEqual([]);
});

describe('a broken wall is seen', () => {
  const root = mkdtempSync(path.join(tmpdir(), 'walls-'));
  afterAll(() => rmSync(root, { recursive: true }));
  const cases: readonly [string, string, string][] = [
    ['language/a.ts', "import '../weigh/b.js';", 'language stands left of weigh'],
    ['weigh/a.ts', "import * as vscode from 'vscode';", 'only the editor room'],
    ['service/a.ts', "import { readFileSync } from 'node:fs';", 'no Node'],
    ['estimate/a.ts', "import type { B } from './a.js';", 'circle'],
    ['page/a.ts', "import '../report/index.js';", 'message file alone'],
    ['report/a.ts', "import { b } from '../weigh/b.js';", 'weigh is entered by its index'],
    ['service/checks/a.ts', "import { b } from '../../report/page/b.js';", 'report is entered by its index'],
    ['cellar/a.ts', "import '../report/index.js';", 'no room'],
  ];
  test.each(cases)('%s with %s', (file, text, says) => {
    const full = path.join(root, 'src', file);
    mkdirSync(path.dirname(full), { recursive: true });
    writeFileSync(full, text);
    expect(breaches(root).map((one) => one.says).join('\n')).toContain(says);
    rmSync(full);
  });
  test('and one that stands is let be: folders have doors, the page has its message file, tools have all keys', () => {
    const sound: readonly [string, string][] = [
      ['report/b.ts', "import { c } from '../weigh/changes/index.js';"],
      ['editor/b.ts', "import type { C } from '../page/messages.js';\nimport * as vscode from 'vscode';"],
      ['tools/b.ts', "import { c } from '../weigh/c.js';\nimport { d } from '../cli/d.js';"],
    ];
    for (const [file, text] of sound) {
      mkdirSync(path.join(root, 'src', path.dirname(file)), { recursive: true });
      writeFileSync(path.join(root, 'src', file), text);
    }
    expect(breaches(root)).toEqual([]);
  });
});
