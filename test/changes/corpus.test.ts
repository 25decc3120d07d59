import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { expect, test } from 'vitest';
import { Decimal } from '../../src/vocabulary/index.js';
import { changesHtml, changesText } from '../../src/report/changes/index.js';
import { readFixture } from '../support/fixture.js';
import { changed } from './both.js';

const corpus = path.join(import.meta.dirname, '../corpus');

/** Every text of the corpus in a row, wrong ones too, each as the next version of the one before. */
const texts = ['ok', 'err'].flatMap((folder) => readdirSync(path.join(corpus, folder)).filter((file) => /\.yard(?:\.txt)?$/.test(file)).map((file) => [`${folder}/${file}`, readFileSync(path.join(corpus, folder, file), 'utf8')] as const));

test('lines that can’t be read stop nothing, and effects add up all the same', { timeout: 120_000 }, () => {
  expect(texts.length).toBeGreaterThan(50);
  texts.forEach(([name, text], i) => {
    const [, before = ''] = texts[i - 1] ?? [];
    const files = (fixture: string) => Object.fromEntries(readFixture(fixture).files.map((file) => [file.name, file.text]));
    if (Object.keys(files(before)).length === 0 || Object.keys(files(text)).length === 0) return;
    const found = changed(files(before), files(text));
    expect(changesText(found)).not.toBe('');
    expect(changesHtml(found)).toContain('</html>');
    if (!found.comparable) return;
    found.options.forEach((pair, at) => {
      const sum = [...found.changes, ...found.follows].reduce((all, { effects }) => all.plus(effects[at]?.total ?? 0), new Decimal(0));
      expect(sum.toFixed(), `${name} ${at}`).toBe((pair.after?.total ?? new Decimal(0)).minus(pair.before?.total ?? 0).toFixed());
    });
  });
});
