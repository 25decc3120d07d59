import type { NamedKind } from '../../estimate/index.js';
import type { Statement, Tree } from '../../language/index.js';
import { fileKinds, kinds, type Kind } from '../../vocabulary/index.js';
import { kindAbove } from '../at.js';
import type { Weighing } from '../types.js';
import { calledIn, closingLines } from './closing.js';
import { leadOf, stepOf, type Here } from './here.js';
import { ledOffer, nothingYet } from './led.js';
import type { Offer } from './offer.js';
import { inOrder } from './order.js';
import { exampleSnippet, headSnippet, slotThatWaits, type Standing } from './record-snippet.js';
import { fieldOfKey, leadAt, walkHead } from './walk.js';

/** Kinds of which the resolver reads one only; a test holds this list against it. */
export const ONCE: readonly Kind[] = [kinds.format, kinds.shop, kinds.estimate, kinds.vehicle, kinds.core];

/** What may start a line here: facts of the line above that are still open, and kinds that may stand below it. */
export function lineStarts(here: Here, weighing: Weighing): Offer[] {
  const parent = kindAbove(here.above);
  if (here.above.length > 0 && parent === undefined) return [];
  const standing = standingAt(here, weighing);
  const kinds = kindOffers(here, parent, standing, weighing);
  return parent === undefined ? kinds : inOrder(parent, [...factOffers(here, parent, weighing), ...kinds]);
}

function factOffers(here: Here, parent: Kind, weighing: Weighing): Offer[] {
  const above = here.above[here.above.length - 1] as Statement;
  const said = saidOf(above, parent, here.statement);
  const own = { kind: parent, name: above.tokens[1]?.text };
  return [...parent.leads].flatMap((lead): Offer[] => (said.has(lead[1]) && !fieldOfKey(parent, lead[1]).many ? [] : [ledOffer(here, parent, lead, own, weighing)]));
}

/** Where the line goes on behind the word, the word alone may do: what follows becomes its value. */
function withoutValueFirst(here: Here, word: string, whole: string): readonly string[] {
  return here.behind.length > 0 ? [word] : [whole];
}

function kindOffers(here: Here, parent: Kind | undefined, standing: Standing, weighing: Weighing): Offer[] {
  const allowed = parent === undefined ? fileKinds : parent.children;
  return allowed.filter((kind) => !ONCE.includes(kind) || mayStandOnce(kind, here, weighing)).flatMap((kind): Offer[] => {
    const waiting = slotThatWaits(kind, standing);
    const waits = waiting !== undefined;
    const detail = waits ? nothingYet(waiting) : kind.title === 'required' ? kind.titleSays : undefined;
    const head: Offer = { label: kind.word, kind: 'kind', detail, says: kind.says, texts: withoutValueFirst(here, kind.word, headSnippet(kind, standing)), waits };
    const whole = exampleSnippet(kind, standing);
    if (here.behind.length > 0 || whole === head.texts[0]) return [head];
    return [head, { label: `${kind.word} …`, kind: 'snippet', detail: waits ? detail : 'with what belongs to it', says: kind.says, texts: [whole], waits }];
  });
}

function mayStandOnce(kind: Kind, here: Here, { resolved }: Weighing): boolean {
  const above = here.above[here.above.length - 1];
  if (above !== undefined) return !above.children.some((one) => one !== here.statement && one.tokens[0]?.text === kind.word);
  if (kind === kinds.format) return isFirst(here.tree, here);
  return !resolved.records.some((record) => record.kind === kind && record.statement !== here.statement);
}

function isFirst({ blocks }: Tree, here: Here): boolean {
  for (const block of blocks) {
    const first = block.statements[0];
    if (block === here.block) return first === undefined || first === here.statement || (first.tokens[0]?.start ?? 0) > here.word.start;
    if (first !== undefined) return false;
  }
  return true;
}

/** Facts that a line says, on its head and below it, but for one line. */
export function saidOf(above: Statement, kind: Kind, except: Statement | undefined): ReadonlySet<string> {
  const said = new Set(walkHead(kind, above.tokens).said);
  for (const child of above.children) {
    const key = child === except || kind.childByWord.has(child.tokens[0]?.text ?? '') ? undefined : leadAt(kind, child.tokens, 0)?.key;
    if (key !== undefined) said.add(key);
  }
  return said;
}

function standingAt(here: Here, weighing: Weighing): Standing {
  const lead = leadOf(here);
  const { scope } = weighing.resolved;
  return {
    lead, step: stepOf(lead), named: here.above.length === 0, today: here.today,
    names: (list, most) => list.flatMap((kind) => firstOf(scope.namesOf(kind as NamedKind).keys(), most)).slice(0, most),
    isTaken: (kind, name) => scope.find(kind as NamedKind, name) !== undefined,
    closing: (kind) => closingLines(kind, here.above[here.above.length - 1], here.statement, weighing).map(calledIn)[0],
  };
}

function firstOf<T>(items: Iterable<T>, most: number): T[] {
  const found: T[] = [];
  for (const item of items) {
    if (found.length === most) break;
    found.push(item);
  }
  return found;
}
