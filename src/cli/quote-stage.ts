import { closest } from '../vocabulary/index.js';
import { plain } from '../report/index.js';
import { sheetForm, stageQuoteOf, stageSheetOf } from '../report/quote/index.js';
import type { LanguageService } from '../service/index.js';
import { formFor, send } from './export-to.js';
import { InputError, type Files } from './files.js';
import { absentPictures, ENDS, pictureFiles, type QuoteOptions } from './quote.js';
import { sayIncomplete, sayWhatIsWrong } from './quote-wrong.js';
import type { Terminal } from './terminal.js';

/** `steelyard quote --stage`: what a customer is given before a stage is done. True where nothing is missing in it. */
export function quoteStageFile(name: string, stage: string, { as, output }: Pick<QuoteOptions, 'as' | 'output'>, service: LanguageService, files: Files, terminal: Terminal): boolean {
  const form = formFor(as, output, ENDS) ?? 'text';
  const uri = files.open(name);
  const { comparison } = service.weighing(uri);
  const made = stageQuoteOf(comparison, stage, pictureFiles(comparison));
  switch (made.kind) {
    case 'no-stage': {
      const names = comparison.stages.map((one) => one.stage.name);
      const meant = closest(stage, names);
      throw new InputError(`There is no stage ${plain(stage)}.${meant === undefined ? '' : ` Did you mean ${meant}?`} ${names.length === 0 ? 'The estimate has none.' : `The stages: ${names.join(', ')}.`}`);
    }
    case 'incomplete':
      return sayIncomplete('No quote was made', made.title, name, uri, service, files, terminal);
    case 'quote': {
      send(sheetForm(stageSheetOf(made.quote), form), output, terminal);
      const absent = absentPictures(made.quote, terminal);
      return sayWhatIsWrong(name, uri, service, files, terminal) && absent;
    }
  }
}
