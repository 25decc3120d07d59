import { describe, expect, test } from 'vitest';
import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { fromTemplate, withDefaults } from '../../../src/service/complete/snippet.js';
import { createLanguageService } from '../../../src/service/index.js';
import { uriOf } from '../../support/fixture.js';
import { ListingHost } from './cursor.js';

const folder = path.resolve(import.meta.dirname, '../../../samples');
const shop = readFileSync(path.join(folder, 'shop.yard'), 'utf8');

function started(name: string, files: Readonly<Record<string, string>>, unread: readonly string[] = []) {
  const host = new ListingHost([...Object.keys(files), ...unread].map(uriOf));
  for (const [file, text] of Object.entries(files)) host.set(file, text);
  for (const file of unread) host.setUnread(file);
  const service = createLanguageService(host);
  const snippet = service.starter(uriOf(name), '2026-11-24');
  const text = withDefaults(snippet);
  host.set(name, text);
  const { comparison } = service.weighing(uriOf(name));
  return { snippet, text, options: comparison.options, ranking: comparison.ranking, said: [...service.allDiagnostics(uriOf(name)).values()].flat().map(({ code, severity }) => `${severity} ${code}`) };
}

describe('a new estimate', () => {
  test('without a shop file brings a shop, checks without a word and weighs', () => {
    const { text, said, options, ranking } = started('new.yard', {});
    expect(text).toMatch(/^steelyard 1\n\nshop "/);
    expect(said).toEqual([]);
    expect(options.map(({ option }) => option.name)).toEqual(['rebuild', 'used', 'sell']);
    expect(ranking).toHaveLength(3);
    expect(options.slice(0, 2).every(({ totals }) => totals.total.likely.gt(100))).toBe(true);
  });

  test.each([
    ['new.yard', 'shop.yard', 'use "shop.yard"'], ['jobs/new.yard', 'shop.yard', 'use "../shop.yard"'], ['new.yard', 'shared/bay.yard', 'use "shared/bay.yard"'],
  ])('%s uses %s', (name, file, line) => {
    const { text, said, ranking } = started(name, { [file]: shop, 'other.yard': 'steelyard 1\nnote "No shop here"\n' });
    expect(text.split('\n')[1]).toBe(line);
    expect(text).not.toContain('shop "');
    expect(said).toEqual([]);
    expect(ranking).toHaveLength(3);
  });

  test('takes no name that the shop file has', () => {
    const { text, said, ranking } = started('new.yard', { 'shop.yard': `${shop}\nlabour swap "Swap" 1 h\nsublet head-set "Set" 3.00\n` });
    expect(text).toContain('labour swap-2 "');
    expect(text).toContain('do        accept, swap-2');
    expect(text).toContain('part head-set-2 "');
    expect(said).toEqual([]);
    expect(ranking).toHaveLength(3);
  });

  test('knows a shop file that is not read yet by its name', () => {
    expect(started('new.yard', {}, ['shop-north.yard', 'parts.yard']).text).toContain('use "shop-north.yard"');
    expect(started('new.yard', {}, ['parts.yard']).text).toContain('shop "');
  });

  test('stands beside the samples', () => {
    const samples = Object.fromEntries(readdirSync(folder).filter((name) => name.endsWith('.yard')).map((name) => [name, readFileSync(path.join(folder, name), 'utf8')]));
    expect(started('new.yard', samples).said).toEqual([]);
  });
});

describe('snippets', () => {
  test('a name is one tab stop wherever it stands, a figure one of its own', () => {
    expect(fromTemplate('{{a}} [[1]] {{a}} [[1]] {{b}}')).toBe('${1:a} ${2:1} ${1:a} ${3:1} ${4:b}');
  });

  test('escapes what a snippet would read as its own', () => {
    expect(withDefaults(fromTemplate('$5 and } and \\ [[$6}]]'))).toBe('$5 and } and \\ $6}');
  });
});
