import { closest } from '../vocabulary/index.js';
import { plain } from '../report/index.js';
import { LARGEST_PICTURE, picturesWanted, quoteForm, quoteOf, type PictureFile, type Quote, type QuoteForm } from '../report/quote/index.js';
import type { LanguageService } from '../service/index.js';
import type { Comparison, Decision } from '../weigh/index.js';
import { formFor, send } from './export-to.js';
import { InputError, type Files } from './files.js';
import { sayIncomplete, sayWhatIsWrong } from './quote-wrong.js';
import { readWhole } from './read-whole.js';
import type { Terminal } from './terminal.js';

export interface QuoteOptions {
  readonly option: string | undefined;
  readonly as: string | undefined;
  readonly output: string | undefined;
}

/** How files of each form end. */
export const ENDS: Readonly<Record<QuoteForm, readonly string[]>> = { html: ['html', 'htm'], text: ['txt'], markdown: ['md'] };

/** `steelyard quote`: what a customer is given. True where nothing is missing in it; a quote with lines missing is not made at all. */
export function quoteFile(name: string, { option, as, output }: QuoteOptions, service: LanguageService, files: Files, terminal: Terminal): boolean {
  const form = formFor(as, output, ENDS) ?? 'text';
  const uri = files.open(name);
  const decision = service.decision(uri);
  const made = quoteOf(decision, option, pictureFiles(decision.comparison));
  switch (made.kind) {
    case 'no-option':
      throw new InputError(noOption(made.name, decision));
    case 'incomplete':
      return sayIncomplete('No quote was made', made.title, name, uri, service, files, terminal);
    case 'quote': {
      send(quoteForm(made.quote, form), output, terminal);
      const absent = absentPictures(made.quote, terminal);
      return sayWhatIsWrong(name, uri, service, files, terminal) && absent;
    }
  }
}

export function noOption(name: string | undefined, { comparison: { options, ranking } }: Decision): string {
  const names = options.map(({ option }) => option.name);
  if (name === undefined) return options.length === 0 ? 'There is no option to quote.' : 'No option is whole yet, so there is none to quote by itself: name one with --option to see what is missing.';
  const meant = closest(name, names);
  return `There is no option ${plain(name)}.${meant === undefined ? '' : ` Did you mean ${meant}?`} The options: ${names.join(', ')}${ranking.length === 0 ? ', none of them whole' : ''}.`;
}

/** The pictures of the findings. Their paths were resolved inside the workspace, links followed; larger files are not read. */
export function pictureFiles({ estimate }: Pick<Comparison, 'estimate'>): ReadonlyMap<string, PictureFile> {
  return new Map(picturesWanted(estimate.findings).map((uri): [string, PictureFile] => {
    const found = readWhole(uri, LARGEST_PICTURE);
    return [uri, found.kind === 'read' ? found : { kind: found.kind === 'too-large' ? 'too-large' : 'missing' }];
  }));
}

/** Says which pictures are not in it. True where all are. */
export function absentPictures({ findings }: Pick<Quote, 'findings'>, terminal: Terminal): boolean {
  const absent = findings.flatMap(({ pictures }) => pictures.filter(({ kind }) => kind === 'absent'));
  if (absent.length > 0) terminal.err(`Not in it, and said so in its place: ${absent.map(({ name }) => plain(name)).join(', ')}.\n`);
  return absent.length === 0;
}
