import { closest } from '../vocabulary/index.js';
import { plain, spokenAgainst } from '../report/index.js';
import { chosenIn, LARGEST_PICTURE, picturesWanted, quoteForm, quoteOf, type PictureFile, type Quote, type QuoteForm } from '../report/quote/index.js';
import type { LanguageService } from '../service/index.js';
import type { Comparison, Decision } from '../weigh/index.js';
import { formFor, send } from './export-to.js';
import { InputError, type Files } from './files.js';
import { sayIncomplete, sayUnchosen, sayWhatIsWrong } from './quote-wrong.js';
import { readWhole } from './read-whole.js';
import type { Terminal } from './terminal.js';

export interface QuoteOptions {
  readonly option: string | undefined;
  readonly as: string | undefined;
  readonly output: string | undefined;
}

/** How files of each form end. */
export const ENDS: Readonly<Record<QuoteForm, readonly string[]>> = { html: ['html', 'htm'], text: ['txt'], markdown: ['md'] };

/**
 * `steelyard quote`: what a customer is given, where no option is named that of the cheapest. True where nothing is missing
 * in it and nothing speaks against it; a quote with lines missing, or of an option that may not be the cheapest, is not made at all.
 */
export function quoteFile(name: string, { option, as, output }: QuoteOptions, service: LanguageService, files: Files, terminal: Terminal): boolean {
  const form = formFor(as, output, ENDS) ?? 'text';
  const uri = files.open(name);
  const decision = service.decision(uri);
  const wanted = option ?? optionChosen(name, uri, service, files, terminal);
  if (wanted === undefined) return false;
  const made = quoteOf(decision, wanted, pictureFiles(decision.comparison));
  switch (made.kind) {
    case 'no-option':
      throw new InputError(noOption(wanted, decision));
    case 'incomplete':
      return sayIncomplete('No quote was made', made.title, name, uri, service, files, terminal);
    case 'quote': {
      send(quoteForm(made.quote, form), output, terminal);
      const absent = absentPictures(made.quote, terminal);
      const isChoice = sayRuledOut(wanted, decision, terminal);
      return sayWhatIsWrong(name, uri, service, files, terminal) && absent && isChoice;
    }
  }
}

/** The name of the cheapest option; undefined where none is taken, which is said. */
function optionChosen(name: string, uri: string, service: LanguageService, files: Files, terminal: Terminal): string | undefined {
  const { comparison, problems } = service.weighing(uri);
  const chosen = chosenIn(comparison, problems);
  if (chosen.kind === 'chosen') return chosen.option.name;
  if (chosen.kind === 'no-option') {
    // There may be some that can’t be read.
    sayWhatIsWrong(name, uri, service, files, terminal);
    throw new InputError(NO_OPTION);
  }
  sayUnchosen(chosen, name, uri, service, files, terminal);
  return undefined;
}

/** Says what speaks against the option that is quoted. True where nothing does. */
function sayRuledOut(name: string, { comparison: { options } }: Decision, terminal: Terminal): boolean {
  const ruledOut = options.find(({ option }) => option.name === name)?.option;
  if (ruledOut === undefined || ruledOut.ruledOutBy.length === 0) return true;
  terminal.err(`The option that was quoted is ruled out: ${plain(spokenAgainst(ruledOut))}.\n`);
  return false;
}

const NO_OPTION = 'There is no option to quote.';

export function noOption(name: string | undefined, { comparison: { options } }: Decision): string {
  const names = options.map(({ option }) => option.name);
  if (name === undefined || names.length === 0) return NO_OPTION;
  const meant = closest(name, names);
  return `There is no option ${plain(name)}.${meant === undefined ? '' : ` Did you mean ${meant}?`} The options: ${names.join(', ')}${options.some(({ complete }) => complete) ? '' : ', none of them whole'}.`;
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
