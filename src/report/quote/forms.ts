import { quoteHtml } from './html-form.js';
import { quoteMarkdown } from './markdown-form.js';
import { sheetOf } from './quote-sheet.js';
import type { Sheet } from './sheet.js';
import { quoteText } from './text-form.js';
import type { Quote } from './types.js';

/** The forms in which a quote is written, and how its file is called. */
export const quoteForms = { html: 'html', text: 'txt', markdown: 'md' } as const;

export type QuoteForm = keyof typeof quoteForms;

export function quoteForm(quote: Quote, form: QuoteForm): string {
  return sheetForm(sheetOf(quote), form);
}

export function sheetForm(sheet: Sheet, form: QuoteForm): string {
  switch (form) {
    case 'html': return quoteHtml(sheet);
    case 'text': return quoteText(sheet);
    case 'markdown': return quoteMarkdown(sheet);
  }
}
