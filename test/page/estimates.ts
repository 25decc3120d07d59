import { readFileSync } from 'node:fs';
import path from 'node:path';
import { createLanguageService, resolveWithin, type LanguageService } from '../../src/service/index.js';

const samples = path.resolve(import.meta.dirname, '../../samples');

const sample = (name: string): string => readFileSync(path.join(samples, name), 'utf8');

/** A service over texts that a test may change. */
export function serviceOver(texts: Map<string, string>): LanguageService {
  return createLanguageService({
    read: (uri) => {
      const text = texts.get(uri);
      return text === undefined ? 'missing' : { text };
    },
    resolvePath: (from, written) => resolveWithin('/', from, written),
  });
}

export function sampleTexts(name: string): Map<string, string> {
  return new Map([[`/${name}`, sample(name)], ['/shop.yard', sample('shop.yard')]]);
}

/** The text of each figure of a page, by its name. */
export function figuresIn(markup: string): Map<string, string> {
  const found = new Map<string, string>();
  for (const [, id = '', text = ''] of markup.matchAll(/data-figure="([^"]+)">([^<]*)</g)) if (!found.has(id)) found.set(id, text);
  return found;
}

/** Tags that are opened and closed in order; a text that became markup would spoil it. */
export function isWellFormed(markup: string): boolean {
  const open: string[] = [];
  for (const [whole, close, tag = ''] of markup.matchAll(/<(\/?)([a-z][a-z0-9]*)\b[^<>]*>/g)) {
    if (whole.endsWith('/>')) continue; // as drawings have them
    if (tag === 'input') continue;
    if (close === '') open.push(tag);
    else if (open.pop() !== tag) return false;
  }
  return open.length === 0;
}

/** The verdict of a page as one text. */
export function verdictIn(markup: string): string {
  const [, inside = ''] = /<div data-key="verdict" data-later>(.*?)<\/div>/.exec(markup) ?? [];
  return inside.replace(/<\/p><p[^>]*>/g, ' ').replace(/<[^>]*>/g, '');
}
