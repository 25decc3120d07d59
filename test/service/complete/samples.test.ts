import fc from 'fast-check';
import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { expect, test } from 'vitest';
import { parse, reparse, type Tree } from '../../../src/language/index.js';
import { createLanguageService } from '../../../src/service/index.js';
import { readBlock } from '../../../src/vocabulary/index.js';
import { uriOf } from '../../support/fixture.js';
import { anyText } from '../../language/noise.js';
import { accepted, cursorIn, ListingHost, TODAY } from './cursor.js';

const folder = path.resolve(import.meta.dirname, '../../../samples');
const samples = Object.fromEntries(readdirSync(folder).filter((name) => name.endsWith('.yard')).map((name) => [name, readFileSync(path.join(folder, name), 'utf8')]));

/** Places where a word of a line begins or ends, on lines of which no like one was seen: titles and figures apart. */
function boundaries(text: string, seen: Set<string>): number[] {
  const places: number[] = [];
  let start = 0;
  let above = '';
  for (const line of text.split('\n')) {
    if (/^\S/.test(line)) above = line.split(' ', 1)[0] as string;
    const like = `${above}: ${line.replace(/"[^"]*"/g, '""').replace(/\d+/g, '0').replace(/#.*/, '#')}`;
    if (!seen.has(like)) for (const { index } of line.matchAll(/\b|$/g)) places.push(start + index);
    seen.add(like);
    start += line.length + 1;
  }
  return places;
}

/** Messages of the blocks that an edit makes anew. */
function shapeProblems(before: Tree, text: string): string[] {
  const old = new Set(before.blocks);
  return reparse(before, text).blocks.filter((block) => !old.has(block)).flatMap((block) => readBlock(block).problems.map(({ code, at }) => `${code}: ${block.text.slice(at.start, at.end)}`));
}

test('every offer at the word boundaries of the samples, once accepted, leaves lines that parse', () => {
  const host = new ListingHost(Object.keys(samples).map(uriOf));
  for (const [name, text] of Object.entries(samples)) host.set(name, text);
  const service = createLanguageService(host);
  const wrong: string[] = [];
  const seen = new Set<string>();
  let tried = 0;
  for (const [name, text] of Object.entries(samples)) {
    const tree = parse(name, text);
    for (const offset of boundaries(text, seen)) {
      let names = 0;
      for (const offer of service.completions(uriOf(name), offset, TODAY)) {
        // All names of a list make the same line; a few stand for them.
        if (offer.kind === 'name' && ++names > 2) continue;
        tried++;
        const { start, end } = offer.edit.range;
        expect(start <= offset && offset <= end && end <= text.length, `${name} ${offset} ${offer.label}`).toBe(true);
        const problems = shapeProblems(tree, accepted(text, offer));
        if (problems.length > 0) wrong.push(`${name}: ${text.slice(text.lastIndexOf('\n', offset - 1) + 1, offset)}|${offer.label}: ${problems.join('; ')}`);
      }
    }
  }
  expect(wrong).toEqual([]);
  expect(tried).toBeGreaterThan(2000);
}, 20_000);

test('line noise gets offers or none, but no exception, and no offer twice', () => {
  fc.assert(fc.property(anyText, fc.double({ min: 0, max: 1, noNaN: true }), (text, share) => {
    const at = Math.floor(share * text.length);
    const { offers, service } = cursorIn(`${text.slice(0, at).replaceAll('$0', '')}$0${text.slice(at).replaceAll('$0', '')}`);
    expect(new Set(offers.map(({ label }) => label)).size).toBe(offers.length);
    service.pastedRows(uriOf('estimate.yard'), at, text);
    service.hover(uriOf('estimate.yard'), at);
  }), { numRuns: 80 });
});
