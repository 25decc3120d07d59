import { existsSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { createLanguageService, resolveWithin } from '../../src/service/index.js';
import { picturesWanted, quoteForm, quoteForms, quoteOf, sheetForm, stageQuoteOf, stageSheetOf, type StageQuote, type PictureFile, type Quote, type QuoteForm } from '../../src/report/quote/index.js';
import type { Decision } from '../../src/weigh/index.js';

const root = path.resolve(import.meta.dirname.replace(/[/\\]dist[/\\].*$/, '/test/quote'), '../..');
export const samplesFolder = path.join(root, 'samples');
export const SAMPLES = ['pilgrim-v6', 'tarn-inline', 'kestrel-flat', 'heron-pump', 'osprey-tear-down', 'dunlin-closed'] as const;

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
  const made = quoteOf(decision, option ?? decision.comparison.ranking[0]?.option.name, files);
  if (made.kind !== 'quote') throw new Error(`${name}: ${made.kind}`);
  return made.quote;
}

/** The quote of a stage in a sample that has no pictures. */
function stageQuoteOfSample(name: string, stage: string): StageQuote {
  const made = stageQuoteOf(decisionOfSample(name).comparison, stage, new Map());
  if (made.kind !== 'quote') throw new Error(`${name}: ${made.kind}`);
  return made.quote;
}

/** The quotes that stand in samples/quotes: of each sample the option that costs least, in every form; of the tear-down the stage too. */
export function sampleQuotes(): ReadonlyMap<string, string> {
  const forms = Object.keys(quoteForms) as QuoteForm[];
  const stage = stageSheetOf(stageQuoteOfSample('osprey-tear-down', 'tear-down'));
  return new Map([
    ...SAMPLES.flatMap((name) => {
      const quote = quoteOfSample(name);
      return forms.map((form): [string, string] => [`${name}-${quote.option.name}.${quoteForms[form]}`, quoteForm(quote, form)]);
    }),
    ...forms.map((form): [string, string] => [`osprey-tear-down-first.${quoteForms[form]}`, sheetForm(stage, form)]),
  ]);
}
