// Recognition of titles against the plain reading of the table: words as texts, phrases as patterns.
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { recognized, topics, type Topic } from '../../src/vocabulary/index.js';

const FILLERS = /^(the|an?|its|of)$/;

/** The words of a text, without fillers and without the s of a plural, each between blanks. */
function plain(text: string): string {
  const words = (text.toLowerCase().match(/[a-z0-9]+|[,:;()/]/g) ?? []).filter((word) => !FILLERS.test(word));
  return ` ${words.map((word) => (word.length > 3 && /[^s]s$/.test(word) ? word.slice(0, -1) : word)).join(' ')} `;
}

function says(text: string, phrase: string): boolean {
  const runs = phrase.split('…').map((run) => plain(run).trim().replace(/[()/]/g, '\\$&'));
  return new RegExp(` ${runs.join(' (?:.* )?')} `).test(plain(text));
}

function plainly(kind: string, title: string, name: string | undefined): readonly Topic[] {
  const said = (phrases: readonly string[] = []) => phrases.some((phrase) => says(title, phrase) || (name !== undefined && says(name, phrase)));
  return (Object.keys(topics) as Topic[]).filter((topic) => (topics[topic].on as readonly string[]).includes(kind) && said(topics[topic].known) && !said(topics[topic].not));
}

const phrases = Object.values(topics).flatMap(({ known, not = [] }) => [...known, ...not]);
const words = [...new Set(phrases.flatMap((phrase) => phrase.split(/[ …]+/)))];
const piece = fc.oneof(fc.constantFrom(...phrases.map((phrase) => phrase.replace('…', 'and'))), fc.constantFrom(...words), fc.constantFrom('the', 'a', 'of', ',', ':', '(', '/', '-', 'Ölwanne', 'K', 'İ', '7', 'bolts', 'glass', 'gas', '', '“', '🔧'), fc.string({ maxLength: 6 }));
const dressed = fc.tuple(piece, fc.constantFrom('', 's', 'ss', 'S'), fc.boolean()).map(([word, end, loud]) => (loud ? word.toUpperCase() : word) + end);
const title = fc.array(dressed, { maxLength: 8 }).chain((all) => fc.constantFrom(' ', '  ', '-', ', ').map((between) => all.join(between)));

test('says of any title and name what the plain reading says', () => {
  fc.assert(fc.property(fc.constantFrom('labour', 'part', 'sublet', 'fee', 'access', 'tool'), title, fc.option(title, { nil: undefined }), (kind, text, name) => {
    expect(recognized(kind, text, name)).toEqual(plainly(kind, text, name));
  }), { numRuns: 3000 });
});

test('every phrase of the table is recognized on the lines it is for, where nothing speaks against it', () => {
  for (const [topic, { known, not, on }] of Object.entries(topics)) {
    for (const phrase of known) {
      const text = phrase.replace('…', 'something');
      if ((not)?.some((one) => says(text, one)) === true) continue;
      for (const kind of on) expect(recognized(kind, text, undefined), `${kind} “${text}”`).toContain(topic);
    }
  }
});
