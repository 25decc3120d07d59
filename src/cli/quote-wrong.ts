import { plain } from '../report/index.js';
import type { LanguageService } from '../service/index.js';
import type { Files } from './files.js';
import { placesOf } from './positions.js';
import type { Terminal } from './terminal.js';

/** Says that lines of an estimate can't be read or priced, which is the first, and the command that shows all, where there is one. True where there are none. */
export function sayWhatIsWrong(name: string, uri: string, service: LanguageService, files: Files, terminal: Terminal, seeAll = `steelyard check ${name}`): boolean {
  const errors = service.weighing(uri).problems.filter((one) => one.severity === 'error');
  const [first] = errors;
  if (first === undefined) return true;
  const place = placesOf(service, files)(first.at);
  const where = place === undefined ? '' : ` The first: ${plain(place.file)}:${place.line}: ${plain(first.message.what)}`;
  terminal.err(`${errors.length === 1 ? 'One line' : `${errors.length} lines`} could not be read or priced.${where}${seeAll === '' ? '' : ` See all with: ${seeAll}`}\n`);
  return false;
}

/** Says why a quote or a supplement was not made: a line that it rests on is missing. `what`: “No quote was made”. */
export function sayIncomplete(what: string, title: string, name: string, uri: string, service: LanguageService, files: Files, terminal: Terminal): false {
  terminal.err(`${what}: ${plain(title)} rests on a line that can’t be read or priced, and lines would be missing.\n`);
  sayWhatIsWrong(name, uri, service, files, terminal);
  return false;
}
