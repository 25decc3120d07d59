import fc from 'fast-check';
import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { expect, test } from 'vitest';
import { parse } from '../../../src/language/index.js';
import { createLanguageService } from '../../../src/service/index.js';
import { readBlock } from '../../../src/vocabulary/index.js';
import { uriOf } from '../../support/fixture.js';
import { anyText } from '../../language/noise.js';
import { accepted, cursorIn, ListingHost } from './cursor.js';

const folder = path.resolve(import.meta.dirname, '../../../samples');
const samples = Object.fromEntries(readdirSync(folder).filter((name) => name.endsWith('.yard')).map((name) => [name, readFileSync(path.join(folder, name), 'utf8')]));

/** Places where a word of a line begins or ends, and the ends of lines. */
function boundaries(text: string): number[] {
  return [...text.matchAll(/\b|$/gm)].map(({ index }) => index);
}

/** Messages of the block that an offset lies in; an edit may have cut it in two. */
function shapeProblems(text: string, from: number, to: number): string[] {
  const tree = parse('', text);
  return tree.blocks.flatMap((block, i) => {
    const start = tree.starts[i] as number;
    return start <= to && start + block.text.length >= from ? readBlock(block).problems.map(({ code, at }) => `${code}: ${block.text.slice(at.start, at.end)}`) : [];
  });
}

test('every offer at every boundary of the samples, once accepted, leaves lines that parse', () => {
  const host = new ListingHost(Object.keys(samples).map(uriOf));
  for (const [name, text] of Object.entries(samples)) host.set(name, text);
  const service = createLanguageService(host);
  const wrong: string[] = [];
  let tried = 0;
  for (const [name, text] of Object.entries(samples)) {
    for (const offset of boundaries(text)) {
      let names = 0;
      for (const offer of service.completions(uriOf(name), offset)) {
        // All names of a list make the same line; a few stand for them.
        if (offer.kind === 'name' && ++names > 3) continue;
        tried++;
        const { start, end } = offer.edit.range;
        expect(start <= offset && offset <= end && end <= text.length, `${name} ${offset} ${offer.label}`).toBe(true);
        const problems = shapeProblems(accepted(text, offer), start, start + offer.edit.text.length);
        if (problems.length > 0) wrong.push(`${name}: ${text.slice(text.lastIndexOf('\n', offset - 1) + 1, offset)}|${offer.label}: ${problems.join('; ')}`);
      }
    }
  }
  expect(wrong).toEqual([]);
  expect(tried).toBeGreaterThan(3000);
});

test('line noise gets offers or none, but no exception, and no offer twice', () => {
  fc.assert(fc.property(anyText, fc.double({ min: 0, max: 1, noNaN: true }), (text, share) => {
    const at = Math.floor(share * text.length);
    const { offers, service } = cursorIn(`${text.slice(0, at).replaceAll('$0', '')}$0${text.slice(at).replaceAll('$0', '')}`);
    expect(new Set(offers.map(({ label }) => label)).size).toBe(offers.length);
    service.pastedRows(uriOf('estimate.yard'), at, text);
    service.hover(uriOf('estimate.yard'), at);
  }), { numRuns: 120 });
});
