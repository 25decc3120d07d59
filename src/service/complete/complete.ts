import type { Tree } from '../../language/index.js';
import { kindAbove, kindOf, rangeAt } from '../at.js';
import type { Completion } from '../feature-types.js';
import type { ServiceHost, Weighing } from '../types.js';
import { closingTitles } from './closing.js';
import { hereAt, type Asked, type Here } from './here.js';
import { inLine } from './in-line.js';
import { lineStarts } from './line-start.js';
import type { Offer } from './offer.js';
import { usePaths } from './paths.js';
import { withDefaults } from './snippet.js';
import { trialAt, type Trial } from './trial.js';

/**
 * What could stand at the cursor. Not narrowed down by the letters already typed: editors do that, each in its own
 * way. Text is literal, with the indentation it needs: an editor must not indent it once more.
 */
export function completionsAt(tree: Tree, asked: Asked, weighing: Weighing, host: ServiceHost): readonly Completion[] {
  const inQuotes = usePaths(tree, asked.offset, host, weighing.resolved.uses) ?? closingTitles(tree, asked.offset, weighing);
  if (inQuotes !== undefined) return inQuotes;
  const here = hereAt(tree, asked);
  if (here === undefined) return [];
  const all = offersAt(here, weighing);
  const offers = here.onDate ? all.filter(({ kind }) => kind === 'day') : all;
  const tried = trialAt(here);
  let namesFit: boolean | undefined;
  const seen = new Set<string>();
  return offers.flatMap((offer, order): Completion[] => {
    if (seen.has(offer.label)) return [];
    // All names read alike, so one is tried for all: there may be a thousand.
    const text = offer.kind === 'name' ? ((namesFit ??= fitting(offer, tried) !== undefined) ? offer.texts[0] : undefined) : fitting(offer, tried);
    if (text === undefined) return [];
    seen.add(offer.label);
    const snippet = offer.kind !== 'name' && /\$\{\d/.test(text);
    return [{
      label: offer.label, kind: offer.kind, detail: offer.detail, says: offer.says, snippet, order,
      edit: { range: rangeAt(here.start, offer.word ?? here.word), text: offer.kind === 'name' ? text : lineEnds(tree, snippet ? text : withDefaults(text)) },
    }];
  });
}

function offersAt(here: Here, weighing: Weighing): readonly Offer[] {
  if (here.before.length === 0) return wordPairs(here, lineStarts(here, weighing));
  const pairs = secondWords(here, weighing);
  return pairs.length > 0 ? pairs : inLine(here, weighing);
}

function fitting({ texts, word }: Offer, tried: Trial): string | undefined {
  return texts.find((text) => tried(withDefaults(text), word));
}

/** Under the first word of two, as in `back in 4 d`, both are replaced. */
function wordPairs(here: Here, offers: readonly Offer[]): Offer[] {
  const parent = kindAbove(here.above);
  const [first, second] = here.statement?.tokens ?? [];
  const isPair = first !== undefined && second !== undefined && here.word.end > here.word.start && parent?.leads.has(`${first.text} ${second.text}`) === true;
  return isPair ? offers.map((offer) => ({ ...offer, word: { start: here.word.start, end: second.end } })) : [...offers];
}

/** Behind the first word of two, both are replaced. */
function secondWords(here: Here, weighing: Weighing): Offer[] {
  const first = here.before[here.before.length - 1];
  if (first?.kind !== 'word') return [];
  const isStart = here.before.length === 1;
  const kind = isStart ? kindAbove(here.above) : kindOf(here.statement as NonNullable<Here['statement']>, here.above);
  if (kind?.firstOfTwo.has(first.text) !== true) return [];
  const word = { start: first.start, end: here.word.end };
  const earlier: Here = { ...here, word, before: here.before.slice(0, -1) };
  const offers = isStart ? lineStarts(earlier, weighing) : inLine(earlier, weighing);
  return offers.filter(({ label }) => label.startsWith(`${first.text} `)).map((offer) => ({ ...offer, word }));
}

function lineEnds({ text }: Tree, written: string): string {
  return text.includes('\r\n') ? written.replace(/\n/g, '\r\n') : written;
}
