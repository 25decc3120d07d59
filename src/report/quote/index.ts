/** The written quote: one model, and three forms of it. Pure; whoever calls reads the pictures and writes the file. */
export { quoteOf } from './quote.js';
export { chosenIn, type Unchosen } from './chosen.js';
export { LARGEST_PICTURE, MOST_PICTURES, picturesWanted, type PictureFile, type PictureFiles } from './pictures.js';
export { quoteForm, quoteForms, sheetForm, type QuoteForm } from './forms.js';
export { stageQuoteOf, type StageQuote } from './stage-quote.js';
export { stageSheetOf } from './stage-sheet.js';
export { supplementOf, type Supplement } from './supplement.js';
export { supplementSheetOf } from './supplement-sheet.js';
export type { Quote } from './types.js';
