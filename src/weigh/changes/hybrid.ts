import type { Block, Statement, Token, Tree } from '../../language/index.js';
import type { Record } from '../../vocabulary/index.js';
import type { Draft } from './drafts.js';
import type { Matched } from './match.js';
import { isLink, nameOf, referencesIn, topOf, withAllBelow, type Reference, type Thing, type Things } from './things.js';

/** A version as text: the one that a change is applied to. */
export interface Base {
  readonly side: 'before' | 'after';
  readonly things: Things;
  readonly uri: string;
  readonly treeOf: (uri: string) => Tree | undefined;
}

/** What is done to the lines of the base. */
interface Plan {
  /** Things of the base that go. */
  readonly gone: ReadonlySet<Thing>;
  /** A thing of the base whose own words are those of the other version. */
  readonly reworded: ReadonlyMap<Thing, Thing>;
  /** A thing of the other version that comes in, below a thing of the base or at the left edge. */
  readonly comes: { readonly thing: Thing; readonly below: Thing | undefined } | undefined;
  /** Names that a thing of the base brings in besides its own, and those that it does no more. */
  readonly links: { readonly of: Thing; readonly lead: string; readonly name: string; readonly add: boolean }[];
}

/**
 * The texts of one version with one change between the versions made in it, the other way round where the base is the
 * new version. Only the lines that the change touches are written anew. Names are those of the base; a list leaves out
 * what isn't there. Undefined where the lines can't be written so: a time or a pin that needs a way in that isn't there,
 * or lines that couldn't be read.
 */
export function textsWithChange(draft: Draft, base: Base, other: Things, matched: Matched): ReadonlyMap<string, string> | undefined {
  const plan = planOf(draft, base, other, matched);
  if (plan === undefined) return undefined;
  const touched = touchedBy(plan, base);
  const writer = new Writer(plan, base, other, matched);
  const byBlock = new Map<Block, string>();
  for (const thing of touched) {
    const { block } = thing.record;
    if (block.problems.some(({ severity }) => severity === 'error') || withAllBelow(thing).some(({ said }) => said.some((record) => record.broken))) return undefined;
    const text = plan.gone.has(thing) ? '' : writer.write(thing, 0, 'base');
    if (text === undefined) return undefined;
    byBlock.set(block, text);
  }
  let added = '';
  if (plan.comes !== undefined && plan.comes.below === undefined) {
    const text = writer.write(plan.comes.thing, 0, 'other');
    if (text === undefined) return undefined;
    added = text;
  }
  const files = new Set([...[...byBlock.keys()].map(({ uri }) => uri), ...(added === '' ? [] : [base.uri])]);
  const texts = new Map<string, string>();
  for (const uri of files) {
    const tree = base.treeOf(uri);
    if (tree === undefined) return undefined;
    const text = tree.blocks.map((block) => byBlock.get(block) ?? block.text).join('');
    texts.set(uri, uri === base.uri && added !== '' ? `${text}${text.endsWith('\n') ? '' : '\n'}${added}` : text);
  }
  return texts;
}

function planOf(draft: Draft, base: Base, other: Things, matched: Matched): Plan | undefined {
  const own = draft[base.side];
  const theirs = draft[base.side === 'before' ? 'after' : 'before'];
  if (draft.link !== undefined) {
    const of = draft.link[base.side];
    const name = own === undefined ? undefined : nameOf(own);
    if (of === undefined || name === undefined) return undefined;
    return { gone: new Set(), reworded: new Map(), comes: undefined, links: [{ of, lead: draft.link.lead, name, add: draft.sort === (base.side === 'before' ? 'came' : 'went') }] };
  }
  if (own !== undefined && theirs !== undefined && draft.sort !== 'elsewhere') return { gone: new Set(), reworded: new Map([[own, theirs]]), comes: undefined, links: [] };
  const below = theirs?.owner === undefined ? undefined : matched.pairOf(theirs.owner)?.[base.side];
  if (theirs?.owner !== undefined && below === undefined) return undefined;
  return {
    gone: new Set(own === undefined ? [] : [own]),
    reworded: new Map(),
    comes: theirs === undefined ? undefined : { thing: theirs, below },
    links: theirs === undefined ? [] : linksTo(theirs, base, other, matched),
  };
}

/** What brings a thing in that the base doesn't have comes with it. */
function linksTo(thing: Thing, { side }: Base, other: Things, matched: Matched): Plan['links'] {
  const name = nameOf(thing);
  if (name === undefined) return [];
  return other.top.flatMap(withAllBelow).flatMap((from) => {
    const of = matched.pairOf(from)?.[side];
    if (of === undefined) return [];
    return from.said.flatMap(referencesIn).filter(({ field, refersTo, name: one }) => isLink(field) && other.named(refersTo, one.name) === thing).map(({ field }) => ({ of, lead: field.lead as string, name, add: true }));
  });
}

/** The lines at the left edge of the base that have to be written anew. */
function touchedBy({ gone, reworded, comes, links }: Plan, { things }: Base): ReadonlySet<Thing> {
  const touched = new Set<Thing>([...gone, ...reworded.keys(), ...links.map(({ of }) => of), ...(comes?.below === undefined ? [] : [comes.below])].map(topOf));
  const lost = new Set([...gone].flatMap(withAllBelow));
  if (lost.size === 0) return touched;
  for (const thing of things.top.flatMap(withAllBelow)) {
    if (thing.said.flatMap(referencesIn).some(({ refersTo, name }) => lost.has(things.named(refersTo, name.name) as Thing))) touched.add(topOf(thing));
  }
  return touched;
}

/** Writes things as lines. What can't be said without a name that isn't there makes the whole undefined. */
class Writer {
  private readonly lost: ReadonlySet<Thing>;
  private readonly coming: ReadonlySet<Thing>;

  constructor(
    private readonly plan: Plan,
    private readonly base: Base,
    private readonly other: Things,
    private readonly matched: Matched,
  ) {
    this.lost = new Set([...plan.gone].flatMap(withAllBelow));
    this.coming = new Set(plan.comes === undefined ? [] : withAllBelow(plan.comes.thing));
  }

  write(thing: Thing, depth: number, from: 'base' | 'other'): string | undefined {
    const words = from === 'base' ? (this.plan.reworded.get(thing) ?? thing) : thing;
    const lines = this.ownLines(words, words === thing ? from : 'other', nameOf(thing));
    if (lines === undefined) return undefined;
    const below: string[] = this.linkLines(thing, from).map((line) => `${' '.repeat(depth + 2)}${line}\n`);
    const children: { readonly thing: Thing; readonly from: 'base' | 'other' }[] = thing.children.filter((child) => !this.plan.gone.has(child)).map((child) => ({ thing: child, from }));
    const { comes } = this.plan;
    if (comes?.below === thing) children.push({ thing: comes.thing, from: 'other' });
    for (const child of children) {
      const text = this.write(child.thing, depth + 2, child.from);
      if (text === undefined) return undefined;
      below.push(text);
    }
    return `${lines.map((line) => `${' '.repeat(depth)}${line}\n`).join('')}${below.join('')}`;
  }

  /** The head and what else the thing says, without what it brings in. */
  private ownLines(thing: Thing, from: 'base' | 'other', name: string | undefined): string[] | undefined {
    const references = new Map(thing.said.flatMap(referencesIn).map((one) => [one.name.at.start, one]));
    const things = new Set(thing.children.map(({ record }) => record.statement));
    const lines: string[] = [];
    const visit = (statement: Statement, indent: number): boolean => {
      const text = this.lineOf(statement, references, from, statement === thing.record.statement ? { record: thing.record, name } : undefined);
      if (text === undefined) return false;
      if (text === '') return true;
      lines.push(`${' '.repeat(indent)}${text}`);
      return statement.children.every((child) => things.has(child) || visit(child, indent + 2));
    };
    return visit(thing.record.statement, 0) ? lines : undefined;
  }

  /** A line with names as the base has them; empty where nothing of it is left. */
  private lineOf({ tokens, block }: Statement, references: ReadonlyMap<number, Reference>, from: 'base' | 'other', head: { readonly record: Record; readonly name: string | undefined } | undefined): string | undefined {
    const out: (string | undefined)[] = tokens.map((token) => block.text.slice(token.start, token.end));
    if (head?.record.name !== undefined) out[tokens.findIndex(({ start }) => start === head.record.name?.at.start)] = head.name;
    for (let i = 0; i < tokens.length; i++) {
      const reference = references.get((tokens[i] as Token).start);
      if (reference === undefined) continue;
      const name = isLink(reference.field) ? undefined : this.nameFor(reference, from);
      if (name === undefined && !reference.field.many) return undefined;
      out[i] = name;
      if (name === undefined) dropComma(out, tokens, i);
    }
    dropLeads(out, tokens, references);
    return out.filter((one) => one !== undefined).join(' ');
  }

  private linkLines(thing: Thing, from: 'base' | 'other'): string[] {
    const own = thing.said.flatMap(referencesIn).filter(({ field }) => isLink(field)).flatMap((reference) => {
      const name = this.nameFor(reference, from);
      return name === undefined ? [] : [`${reference.field.lead as string} ${name}`];
    });
    const mine = from === 'base' ? this.plan.links.filter(({ of }) => of === thing) : [];
    const line = ({ lead, name }: Plan['links'][number]) => `${lead} ${name}`;
    const dropped = new Set(mine.filter(({ add }) => !add).map(line));
    return [...new Set([...own, ...mine.map(line)])].filter((one) => !dropped.has(one));
  }

  /** The name that the base has for what is meant; undefined where it has no such thing. */
  private nameFor({ refersTo, name }: Reference, from: 'base' | 'other'): string | undefined {
    const thing = (from === 'base' ? this.base.things : this.other).named(refersTo, name.name);
    if (thing === undefined) return name.name; // wrong before, and wrong after
    if (from === 'other' && this.coming.has(thing)) return name.name;
    const there = from === 'base' ? thing : this.matched.pairOf(thing)?.[this.base.side];
    return there === undefined || this.lost.has(there) ? undefined : nameOf(there);
  }
}

/** A name goes with the comma before it, or behind it where it was the first. */
function dropComma(out: (string | undefined)[], tokens: readonly Token[], at: number): void {
  const isComma = (i: number) => tokens[i]?.text === ',';
  let before = at - 1;
  while (before >= 0 && out[before] === undefined) before--;
  if (isComma(before)) out[before] = undefined;
  else if (isComma(at + 1)) out[at + 1] = undefined;
}

/** A word that leads to names goes where none of them is left. */
function dropLeads(out: (string | undefined)[], tokens: readonly Token[], references: ReadonlyMap<number, Reference>): void {
  for (let i = 0; i < tokens.length; i++) {
    const lead = references.get((tokens[i] as Token).start)?.field.lead;
    if (lead === undefined || tokens[i - 1]?.text === ',') continue;
    let last = i;
    while (tokens[last + 1]?.text === ',' && references.has(tokens[last + 2]?.start ?? -1)) last += 2;
    if (out.slice(i, last + 1).some((one) => one !== undefined)) continue;
    for (let back = lead.split(' ').length; back > 0; back--) out[i - back] = undefined;
  }
}
