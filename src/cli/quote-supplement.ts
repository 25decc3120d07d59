import { existsSync } from 'node:fs';
import path from 'node:path';
import { plain } from '../report/index.js';
import { sheetForm, supplementOf, supplementSheetOf } from '../report/quote/index.js';
import type { LanguageService } from '../service/index.js';
import type { VersionRead } from '../weigh/changes/index.js';
import { formFor, send } from './export-to.js';
import { InputError, type Files } from './files.js';
import { sideNamed, sideSince } from './git/sides.js';
import { ENDS, noOption, type QuoteOptions } from './quote.js';
import { sayIncomplete, sayWhatIsWrong } from './quote-wrong.js';
import type { Terminal } from './terminal.js';

/**
 * `steelyard quote FILE --supplement`: what a customer is asked for when a job comes to more than was authorised. `since`
 * is the version that was authorised: a file, `REV:path`, or a revision that has this file. True where nothing is wrong.
 */
export function quoteSupplementFile(name: string, { option, as, output, since }: QuoteOptions & { readonly since: string | undefined }, service: LanguageService, files: Files, terminal: Terminal): boolean {
  const form = formFor(as, output, ENDS) ?? 'text';
  const uri = files.open(name);
  const decision = service.decision(uri);
  const made = supplementOf(decision, option, since === undefined ? undefined : { before: versionOf(name, since, terminal), records: service.weighing(uri).resolved.records });
  switch (made.kind) {
    case 'no-option':
      throw new InputError(noOption(made.name, decision));
    case 'not-authorised':
      throw new InputError(`Nothing is authorised${made.name === undefined ? '' : ` for ${plain(made.name)}`}, so there is nothing to add to. For the whole of it: steelyard quote ${plain(name)}${made.name === undefined ? '' : ` --option ${plain(made.name)}`}`);
    case 'incomplete':
      return sayIncomplete('No supplement was made', made.title, name, uri, service, files, terminal);
    case 'supplement': {
      send(sheetForm(supplementSheetOf(made.supplement), form), output, terminal);
      const { news } = made.supplement;
      if (news.kind === 'unlisted') terminal.err(news.why === 'no-version' ? 'What is new is not listed. Name the version that was authorised to list it: --since OLD.yard, or --since REV:path from the repository.\n' : 'What is new is not listed, and it says why in its place.\n');
      return sayWhatIsWrong(name, uri, service, files, terminal) && (news.kind === 'listed' || news.why === 'no-version');
    }
  }
}

function versionOf(name: string, since: string, terminal: Terminal): VersionRead {
  const isNamed = since.includes(':') || existsSync(path.resolve(terminal.cwd, since));
  const { side: { service, uri } } = isNamed ? sideNamed(since, terminal) : sideSince(name, since, terminal);
  const { resolved: { records }, comparison } = service.weighing(uri);
  return { records, comparison };
}
