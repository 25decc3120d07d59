import type { Kind } from './kind.js';
import { topics, type Topic, type TopicEntry } from './topics.js';

interface Phrase {
  readonly topic: Topic;
  readonly words: readonly (readonly string[])[];
  /** Its place in the table. */
  readonly place: number;
}

/** The phrases of a kind by their first word: most words of a title start none. */
type Phrases = ReadonlyMap<string, readonly Phrase[]>;

const GAP = '…';

function wordsOf(text: string): string[] {
  const words: string[] = [];
  for (const word of text.toLowerCase().match(/[a-z0-9]+|[,:;()/]/g) ?? []) if (!FILLERS.has(word)) words.push(singular(word));
  return words;
}

/** Words that stand between others and mean nothing here. */
const FILLERS = new Set(['the', 'a', 'an', 'its', 'of']);

function singular(word: string): string {
  return word.length > 3 && word.endsWith('s') && !word.endsWith('ss') ? word.slice(0, -1) : word;
}

function phrasesFor(pick: (entry: TopicEntry) => readonly string[]): ReadonlyMap<string, Phrases> {
  const byKind = new Map<string, Map<string, Phrase[]>>();
  let place = 0;
  for (const [topic, entry] of Object.entries(topics) as [Topic, TopicEntry][]) {
    for (const phrase of pick(entry)) {
      const words = phrase.split(GAP).map(wordsOf);
      const one: Phrase = { topic, words, place: place++ };
      const [first = ''] = words[0] ?? [];
      for (const kind of entry.on) {
        const phrases = byKind.get(kind) ?? new Map<string, Phrase[]>();
        byKind.set(kind, phrases);
        const list = phrases.get(first);
        if (list === undefined) phrases.set(first, [one]);
        else list.push(one);
      }
    }
  }
  return byKind;
}

const known = phrasesFor((entry) => entry.known);
const against = phrasesFor((entry) => entry.not ?? []);
const NO_TOPICS: readonly Topic[] = [];

/** What a line of this kind is taken for by its title and its name. Deterministic: the same words, the same topics. */
export function recognized(kind: Kind['word'], title: string, name: string | undefined): readonly Topic[] {
  const written = [wordsOf(title), ...(name === undefined ? [] : [wordsOf(name)])];
  const phrases = phrasesIn(written, known.get(kind));
  if (phrases.length === 0) return NO_TOPICS;
  const found = new Set(phrases.sort((a, b) => a.place - b.place).map(({ topic }) => topic));
  for (const { topic } of phrasesIn(written, against.get(kind))) found.delete(topic);
  return [...found];
}

function phrasesIn(written: readonly (readonly string[])[], phrases: Phrases | undefined): Phrase[] {
  const found: Phrase[] = [];
  if (phrases === undefined) return found;
  for (const line of written) for (const word of line) for (const phrase of phrases.get(word) ?? []) if (holds(line, phrase.words)) found.push(phrase);
  return found;
}

/** Whether runs of words stand in a line, one behind the other. */
function holds(line: readonly string[], runs: readonly (readonly string[])[]): boolean {
  let from = 0;
  for (const run of runs) {
    const at = indexOfRun(line, run, from);
    if (at < 0) return false;
    from = at + run.length;
  }
  return true;
}

function indexOfRun(line: readonly string[], run: readonly string[], from: number): number {
  for (let at = from; at + run.length <= line.length; at++) if (run.every((word, i) => line[at + i] === word)) return at;
  return -1;
}
