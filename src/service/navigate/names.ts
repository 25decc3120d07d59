import type { Block, Tree } from '../../language/index.js';
import type { NamedKind, Scope } from '../../estimate/index.js';
import { readBlock, type Record } from '../../vocabulary/index.js';
import { blockAt, mentionsIn, type Mention } from '../at.js';
import type { Weighing } from '../types.js';

/** The names of an estimate, its shared files among it. */
export interface Names {
  readonly scope: Scope;
  /** Blocks of all its files that say something. */
  readonly blocks: ReadonlySet<Block>;
}

const byBlock = new WeakMap<Block, readonly Mention[]>();

/** The names on the lines of a block, in their order. Kept by the block's identity. */
export function mentionsOf(block: Block): readonly Mention[] {
  let found = byBlock.get(block);
  if (found === undefined) {
    found = [...mentionsIn(readBlock(block).records)].sort((a, b) => a.at.start - b.at.start);
    byBlock.set(block, found);
  }
  return found;
}

const byWeighing = new WeakMap<Weighing, Names>();

export function namesIn(weighing: Weighing): Names {
  let found = byWeighing.get(weighing);
  if (found === undefined) {
    const { records, scope } = weighing.resolved;
    found = { scope, blocks: new Set(records.map((record) => record.block)) };
    byWeighing.set(weighing, found);
  }
  return found;
}

/** Every place in an estimate where a name stands. Looked through anew each time: that is quicker than an index that every keystroke would make stale. */
export function* mentionsOfName({ blocks }: Names, name: string): Generator<Mention> {
  for (const block of blocks) {
    if (!block.text.includes(name)) continue;
    for (const mention of mentionsOf(block)) if (mention.name === name) yield mention;
  }
}

/** Lines of a kind that give a name; those inside an option too, which no other line can name. */
export function giversOf(names: Names, kind: string, name: string): Record[] {
  return [...mentionsOfName(names, name)].filter((one) => one.gives && one.record.kind.word === kind).map((one) => one.record);
}

/** Where an estimate uses the name of a line and means that line. */
export function usesOf(names: Names, target: Record): Mention[] {
  return target.name === undefined ? [] : [...mentionsOfName(names, target.name.name)].filter((one) => !one.gives && meantBy(one, names.scope) === target);
}

const usedByWeighing = new WeakMap<Weighing, ReadonlySet<Record>>();

/** Every line that some other line names. */
export function usedRecords(weighing: Weighing): ReadonlySet<Record> {
  let found = usedByWeighing.get(weighing);
  if (found === undefined) {
    const { scope, blocks } = namesIn(weighing);
    const used = new Set<Record>();
    for (const block of blocks) {
      for (const mention of mentionsOf(block)) {
        const target = mention.gives ? undefined : meantBy(mention, scope);
        if (target !== undefined) used.add(target);
      }
    }
    found = used;
    usedByWeighing.set(weighing, found);
  }
  return found;
}

/** The line that a name means: its own where it is given, and else the first of the kinds that has it. */
export function meantBy(mention: Mention, scope: Scope): Record | undefined {
  if (mention.gives) return mention.record;
  if (mention.builtIn) return undefined;
  for (const kind of mention.kinds) {
    const found = scope.find(kind as NamedKind, mention.name);
    if (found !== undefined) return found;
  }
  return undefined;
}

/** The name under the cursor. */
export function mentionAt(tree: Tree, offset: number): Mention | undefined {
  const found = blockAt(tree, offset);
  if (found === undefined) return undefined;
  const local = offset - found.start;
  return mentionsOf(found.block).find(({ at }) => at.start <= local && local <= at.end);
}
