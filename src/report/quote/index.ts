/** The written quote: one model, and three forms of it. Pure; whoever calls reads the pictures and writes the file. */
export { quoteOf, type NoQuote, type Quoted } from './quote.js';
export { LARGEST_PICTURE, MOST_PICTURES, picturesWanted, type PictureFile, type PictureFiles } from './pictures.js';
export { sheetOf } from './quote-sheet.js';
export { quoteForm, quoteForms, type QuoteForm } from './forms.js';
export type { Quote, QuotePicture } from './types.js';
