import type { Change, Changes, FactMove, Follow, Said, Turn, Turned } from '../../weigh/changes/index.js';
import { hoursText } from '../numbers.js';

const KINDS: Readonly<{ [kind: string]: string }> = {
  labour: 'work', access: 'way in', part: 'part', sublet: 'outside work', fee: 'fee', tool: 'tool', rate: 'rate', markup: 'markup', tax: 'tax', 'core-tax': 'tax on core charges',
};

const BRINGS: Readonly<{ [lead: string]: readonly [string, string] }> = {
  do: ['now also does', 'no longer does'], fit: ['now also fits', 'no longer fits'], send: ['now also sends out', 'no longer sends out'], charge: ['now also charges', 'no longer charges'],
  uses: ['now also uses', 'no longer uses'], needs: ['now also needs', 'no longer needs'], opens: ['now also opens', 'no longer opens'],
};

/** What changed, in one line: what it is, and from what to what. */
export function changeWords(change: Change): string {
  const { sort, before, after, link, facts } = change;
  const said = (after ?? before) as Said;
  if (link !== undefined) {
    const [now, no] = BRINGS[link.lead] ?? [`now also has under ${link.lead}`, `no longer has under ${link.lead}`];
    return `${link.by.title} ${sort === 'went' ? no : now}: ${said.title}`;
  }
  switch (sort) {
    case 'came': return `New ${kindWords(said)}: ${called(said)}${withUnder(said)}`;
    case 'went': return `${capital(kindWords(said))} gone: ${called(said)}${withUnder(said)}`;
    case 'moved': return isUntitled(said) && before !== undefined ? `${headOf(said)}: ${bare(before)} → ${bare(said)}` : `${headOf(before ?? said)} – ${[...facts.map(factWords), ...nameWords(change)].join('; ')}`;
    case 'renamed': return `${headOf(before ?? said)} – ${nameWords(change).join('; ')}`;
    case 'elsewhere': return `${headOf(before ?? said)} – ${[`from ${placeOf(before)} to ${placeOf(after)}`, ...facts.map(factWords), ...nameWords(change)].join('; ')}`;
  }
}

/** A line without name and title is known by its own words, the first of which is its kind. */
function isUntitled({ kind, name, title }: Said): boolean {
  return name === undefined && title.startsWith(`${kind} `);
}

function bare({ kind, title }: Said): string {
  return title.slice(kind.length + 1);
}

function called(said: Said): string {
  return isUntitled(said) ? bare(said) : said.title;
}

function kindWords({ kind }: Said): string {
  return KINDS[kind] ?? kind.replace('-', ' ');
}

function withUnder({ under }: Said): string {
  return under === undefined ? '' : ` (${under})`;
}

function headOf(said: Said): string {
  if (isUntitled(said)) return capital(kindWords(said));
  return said.kind === 'rate' || said.kind === 'tax' || said.kind === 'option' ? `${capital(said.kind)} ${said.title}` : said.title;
}

function capital(text: string): string {
  return `${text.slice(0, 1).toUpperCase()}${text.slice(1)}`;
}

function placeOf(said: Said | undefined): string {
  return said?.under ?? 'the left edge';
}

function factWords({ fact, before, after }: FactMove): string {
  const label = fact === 'price' || fact === 'value' || fact === 'percent' ? '' : `${fact} `;
  if (before === undefined) return after === fact ? `now ${fact}` : `now ${fact} ${after ?? ''}`;
  if (after === undefined) return before === fact ? `no longer ${fact}` : `no longer ${fact} ${before}`;
  return `${label}${before} → ${after}`;
}

function nameWords({ before, after }: Change): string[] {
  if (before === undefined || after === undefined) return [];
  const title = before.title === after.title || isUntitled(before) ? [] : [`now called ${after.title}`];
  return before.name === after.name || before.name === undefined || after.name === undefined ? title : [...title, `its name ${before.name} is now ${after.name}`];
}

/** What follows, in one line. */
export function followWords({ sort, title, of }: Follow, changes: Changes): string {
  if (of === undefined) return sort === 'fee' ? `${title}, a percentage` : title;
  const name = nameOf(of.option, changes);
  return of.before === of.after ? `${title} of ${name}` : `${title} of ${name}: now ${of.after} instead of ${of.before}`;
}

/** What a change does to the day and the choice; empty where it does nothing. */
export function turnWords(change: Change, changes: Changes): string {
  const [alone, last] = [saidTurn(change.alone, changes), saidTurn(change.last, changes)];
  if (alone === last) return alone ?? 'what it does by itself to the day and the choice can’t be told';
  if ((alone ?? '') === '' && (last ?? '') === '') return '';
  const say = (words: string | undefined) => (words === undefined ? 'can’t be told' : words === '' ? 'turns nothing' : words);
  return `alone: ${say(alone)}; on top of the others: ${say(last)}`;
}

/** Empty where it turns nothing; undefined where that can't be told. */
function saidTurn(turned: Turned, changes: Changes): string | undefined {
  if (turned === 'none' || turned === 'beyond') return '';
  if (turned === 'unknown') return undefined;
  return [...dayWords(turned, changes), ...pickWords(turned, changes)].join('; ');
}

function dayWords({ options }: Turn, changes: Changes): string[] {
  const byWords = new Map<string, string[]>();
  options.forEach((one, i) => {
    const days = one === undefined ? undefined : one.days.after.minus(one.days.before);
    if (days === undefined || days.isZero()) return;
    const words = laterWords(days.toNumber());
    byWords.set(words, [...(byWords.get(words) ?? []), nameOf(i, changes)]);
  });
  return [...byWords].map(([words, names]) => `${names.join(', ')} ready ${words}`);
}

/** `a working day later`. */
export function laterWords(days: number): string {
  const many = Math.abs(days) === 1 ? 'a working day' : `${Math.abs(days)} working days`;
  return `${many} ${days > 0 ? 'later' : 'sooner'}`;
}

function pickWords({ pick: { before, after } }: Turn, changes: Changes): string[] {
  if (before === after || after === undefined) return [];
  return [`makes ${nameOf(after, changes)} the cheapest${before === undefined ? '' : ` in place of ${nameOf(before, changes)}`}`];
}

/** The name of an option, in the new version where it is there; of one that is gone it says so where another one has its name now. */
export function nameOf(index: number, { options }: Changes): string {
  const option = options[index];
  if (option?.after !== undefined) return option.after.name;
  const name = option?.before?.name ?? '';
  return options.some(({ after }) => after?.name === name) ? `${name}, gone` : name;
}

/** Hours of both versions, once where they are the same. */
export function hoursMove(before: Parameters<typeof hoursText>[0] | undefined, after: Parameters<typeof hoursText>[0] | undefined): string {
  return move(before === undefined ? undefined : hoursText(before), after === undefined ? undefined : hoursText(after));
}

export function move(before: string | undefined, after: string | undefined): string {
  if (before === undefined || after === undefined || before === after) return after ?? before ?? '';
  return `${before} → ${after}`;
}
