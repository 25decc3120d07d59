import { createLanguageService, resolveWithin } from '../../src/service/index.js';
import { quoteOf, type PictureFiles, type Quote } from '../../src/report/quote/index.js';
import type { Decision } from '../../src/weigh/index.js';

export function decisionOf(text: string): Decision {
  const uri = '/w/one.yard';
  return createLanguageService({ read: (file) => (file === uri ? { text } : 'missing'), resolvePath: (from, to) => resolveWithin('/w', from, to) }).decision(uri);
}

export function quotes(decision: Decision, files: PictureFiles = new Map()): readonly Quote[] {
  return decision.comparison.options.filter(({ complete }) => complete).map(({ option }) => {
    const made = quoteOf(decision, option.name, files);
    if (made.kind !== 'quote') throw new Error(made.kind);
    return made.quote;
  });
}

export function quoteOfText(text: string, option?: string, files: PictureFiles = new Map()): Quote {
  const decision = decisionOf(text);
  const made = quoteOf(decision, option ?? decision.comparison.ranking[0]?.option.name, files);
  if (made.kind !== 'quote') throw new Error(made.kind);
  return made.quote;
}
