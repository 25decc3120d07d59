import { latest } from '../estimate/index.js';
import { closingJson, closingText, jsonText, plain } from '../report/index.js';
import type { LanguageService } from '../service/index.js';
import { closingOf, type Comparison } from '../weigh/index.js';
import { InputError, type Files } from './files.js';
import { placesOf } from './positions.js';
import { emphasisOf, type Terminal } from './terminal.js';
import { sayWhatIsWrong } from './quote-wrong.js';
import { todayOf } from './today.js';

/** `steelyard closing`: what a job that is over really took, beside its estimate. True where every line could be read. */
export function closingFile(name: string, json: boolean, service: LanguageService, files: Files, terminal: Terminal): boolean {
  const uri = files.open(name);
  const { comparison } = service.weighing(uri);
  const closing = closingOf(comparison);
  if (closing === undefined) {
    // It may say so on a line that can’t be read.
    sayWhatIsWrong(name, uri, service, files, terminal);
    throw new InputError(whyNone(plain(name), comparison, todayOf(terminal)));
  }
  terminal.out(json ? jsonText(closingJson(closing, comparison, placesOf(service, files))) : closingText(closing, comparison, emphasisOf(terminal)));
  return sayWhatIsWrong(name, uri, service, files, terminal);
}

/** Why there is nothing to hold an estimate against, with a line that can be written as it stands. */
function whyNone(name: string, { estimate: { options, authorised, closed }, ranking }: Comparison, today: string): string {
  const written = options.filter((option) => option.written);
  const isWritten = (agreed: string | undefined) => written.some((option) => option.name === agreed);
  const agreed = latest(authorised.filter((one) => isWritten(one.for)))?.for;
  const done = written.find((option) => option.name === agreed) ?? ranking.find(({ option }) => option.written)?.option ?? written[0];
  if (done === undefined) return `${name} has no option, so there is no job that could be held against its estimate.`;
  const line = `closed for ${done.name} on ${closed?.on ?? today}`;
  return closed === undefined
    ? `${name} is not closed yet. When the job is over, add a line such as: ${line}`
    : `${name} is closed without an option that is in it, so there is no estimate to hold it against. Name the one that was done: ${line}`;
}
