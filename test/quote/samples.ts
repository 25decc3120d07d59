import { existsSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { createLanguageService, resolveWithin } from '../../src/service/index.js';
import { picturesWanted, quoteForm, quoteForms, quoteOf, type PictureFile, type Quote, type QuoteForm } from '../../src/report/quote/index.js';
import type { Decision } from '../../src/weigh/index.js';

const root = path.resolve(import.meta.dirname.replace(/[/\\]dist[/\\].*$/, '/test/quote'), '../..');
export const samplesFolder = path.join(root, 'samples');
const SAMPLES = ['pilgrim-v6', 'tarn-inline', 'kestrel-flat', 'heron-pump'] as const;

export function decisionOfSample(name: string): Decision {
  const service = createLanguageService({
    read: (uri) => (existsSync(uri) ? { text: readFileSync(uri, 'utf8') } : 'missing'),
    resolvePath: (from, to) => resolveWithin(samplesFolder, from, to),
  });
  return service.decision(path.join(samplesFolder, `${name}.yard`));
}

export function quoteOfSample(name: string, option?: string): Quote {
  const decision = decisionOfSample(name);
  const files = new Map(picturesWanted(decision.comparison.estimate.findings).map((uri): [string, PictureFile] => [uri, existsSync(uri) ? { kind: 'read', bytes: readFileSync(uri) } : { kind: 'missing' }]));
  const made = quoteOf(decision, option, files);
  if (made.kind !== 'quote') throw new Error(`${name}: ${made.kind}`);
  return made.quote;
}

/** The quotes that stand in samples/quotes: of each sample the option that costs least, in every form. */
export function sampleQuotes(): ReadonlyMap<string, string> {
  return new Map(SAMPLES.flatMap((name) => {
    const quote = quoteOfSample(name);
    return (Object.keys(quoteForms) as QuoteForm[]).map((form): [string, string] => [`${name}-${quote.option.name}.${quoteForms[form]}`, quoteForm(quote, form)]);
  }));
}
