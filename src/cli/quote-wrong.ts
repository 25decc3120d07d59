import { plain, spokenAgainst } from '../report/index.js';
import type { Unchosen } from '../report/quote/index.js';
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
  terminal.err(`${what}: ${plain(title)} rests on a line that can’t be read or priced: lines would be missing, or days be wrong.\n`);
  sayWhatIsWrong(name, uri, service, files, terminal);
  return false;
}

/** Says why no option was taken where none was named, and how to get a quote all the same. */
export function sayUnchosen(unchosen: Exclude<Unchosen, { readonly kind: 'no-option' }>, name: string, uri: string, service: LanguageService, files: Files, terminal: Terminal): void {
  terminal.err(`No quote was made: ${whyUnchosen(unchosen, service, files)}\n`);
  if (unchosen.kind !== 'ruled-out') sayWhatIsWrong(name, uri, service, files, terminal);
}

function whyUnchosen(unchosen: Exclude<Unchosen, { readonly kind: 'no-option' }>, service: LanguageService, files: Files): string {
  switch (unchosen.kind) {
    case 'incomplete': {
      const titles = unchosen.options.map(({ title, name }) => plain(title === '' ? name : title));
      const rests = titles.length === 1 ? 'rests on a line' : 'rest on lines';
      return `${titles.join(', ')} ${rests} that can’t be read or priced, so which option costs least can’t be told. Mend it first, or name the option to quote with --option.`;
    }
    case 'unread': {
      const place = placesOf(service, files)(unchosen.first.at);
      const where = place === undefined ? 'a line' : `line ${place.line} of ${plain(place.file)}`;
      return `${where} can’t be read. It may be an option, or speak against one, so which option costs least can’t be told. Mend it first, or name the option to quote with --option.`;
    }
    case 'ruled-out':
      return `something was found that speaks against every option: ${unchosen.options.map((one) => plain(spokenAgainst(one))).join('; ')}. To quote one all the same, name it with --option.`;
  }
}
