import type { NamedKind } from '../../estimate/index.js';
import type { Statement, Tree } from '../../language/index.js';
import { fileKinds, kinds, type Kind } from '../../vocabulary/index.js';
import { kindAbove } from '../at.js';
import type { Weighing } from '../types.js';
import { valueStop } from './defaults.js';
import { leadOf, stepOf, type Here } from './here.js';
import { firstName } from './names.js';
import type { Offer } from './offer.js';
import { exampleSnippet, headSnippet, type Standing } from './record-snippet.js';
import { fieldOfKey, leadAt, walkHead } from './walk.js';

/** Kinds of which the resolver reads one only; a test holds this list against it. */
export const ONCE: readonly Kind[] = [kinds.format, kinds.shop, kinds.estimate, kinds.vehicle, kinds.core];

/** What may start a line here: facts of the line above that are still open, and kinds that may stand below it. */
export function lineStarts(here: Here, weighing: Weighing): Offer[] {
  const parent = kindAbove(here.above);
  if (here.above.length > 0 && parent === undefined) return [];
  const standing = standingAt(here, weighing);
  return [...(parent === undefined ? [] : factOffers(here, parent, weighing)), ...kindOffers(here, parent, standing, weighing)];
}

function factOffers(here: Here, parent: Kind, weighing: Weighing): Offer[] {
  const above = here.above[here.above.length - 1] as Statement;
  const said = saidOf(above, parent, here.statement);
  return [...parent.leads].flatMap(([lead, key]): Offer[] => {
    const field = fieldOfKey(parent, key);
    if (said.has(key) && !field.many) return [];
    const name = firstName(field.value, { kind: parent, name: above.tokens[1]?.text }, weighing);
    return [{ label: lead, kind: 'fact', detail: field.value.label, says: field.says, texts: withoutValueFirst(here, lead, `${lead} ${valueStop(field.value, 1, name)}`) }];
  });
}

/** Where the line goes on behind the word, the word alone may do: what follows becomes its value. */
function withoutValueFirst(here: Here, word: string, whole: string): readonly string[] {
  return here.behind.length > 0 ? [word] : [whole];
}

function kindOffers(here: Here, parent: Kind | undefined, standing: Standing, weighing: Weighing): Offer[] {
  const allowed = parent === undefined ? fileKinds : parent.children;
  return allowed.filter((kind) => !ONCE.includes(kind) || mayStandOnce(kind, here, weighing)).flatMap((kind): Offer[] => {
    const head: Offer = { label: kind.word, kind: 'kind', detail: kind.title === 'required' ? kind.titleSays : undefined, says: kind.says, texts: withoutValueFirst(here, kind.word, headSnippet(kind, standing)) };
    const whole = exampleSnippet(kind, standing);
    if (here.behind.length > 0 || whole === head.texts[0]) return [head];
    return [head, { label: `${kind.word} …`, kind: 'snippet', detail: 'with what belongs to it', says: kind.says, texts: [whole] }];
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
    lead, step: stepOf(lead), named: here.above.length === 0,
    names: (list, most) => list.flatMap((kind) => firstOf(scope.namesOf(kind as NamedKind).keys(), most)).slice(0, most),
    isTaken: (kind, name) => scope.find(kind as NamedKind, name) !== undefined,
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
