import { closingJson, closingText, jsonText, plain } from '../report/index.js';
import type { LanguageService } from '../service/index.js';
import { closingOf } from '../weigh/index.js';
import { InputError, type Files } from './files.js';
import { placesOf } from './positions.js';
import { emphasisOf, type Terminal } from './terminal.js';
import { sayWhatIsWrong } from './quote-wrong.js';

/** `steelyard closing`: what a job that is over really took, beside its estimate. True where every line could be read. */
export function closingFile(name: string, json: boolean, service: LanguageService, files: Files, terminal: Terminal): boolean {
  const uri = files.open(name);
  const { comparison } = service.weighing(uri);
  const closing = closingOf(comparison);
  if (closing === undefined) {
    const { closed, options } = comparison.estimate;
    const example = options.find((option) => option.written)?.name ?? 'used';
    throw new InputError(closed === undefined
      ? `${plain(name)} is not closed yet. When the job is over, add a line such as: closed for ${example} on 2026-12-09`
      : `${plain(name)} is closed without an option that is in it, so there is no estimate to hold it against. Name the one that was done: closed for ${example}`);
  }
  terminal.out(json ? jsonText(closingJson(closing, comparison, placesOf(service, files))) : closingText(closing, comparison, emphasisOf(terminal)));
  return sayWhatIsWrong(name, uri, service, files, terminal);
}
