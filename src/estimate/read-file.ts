import { changedSince, limits, Places, type Block, type Tree } from '../language/index.js';
import { is, kinds, readBlock, type ReadBlock, type Record } from '../vocabulary/index.js';

/** What one file says, block by block. */
export interface FileRead {
  readonly records: readonly Record[];
  /** The blocks of which there is something to tell, or in which something could not be made out. */
  readonly telling: readonly ReadBlock[];
  /** The first block that was not read, where there are too many problems to go on. */
  readonly unread: Block | undefined;
}

interface Before {
  readonly blocks: readonly Block[];
  readonly records: readonly Record[];
  /** How many records stand before those of each block. */
  readonly starts: readonly number[];
}

/** Kept by the first block of a file: a keystroke changes one block, and the others say what they said. */
const before = new WeakMap<Block, Before>();

const telling = new Places<Block>((block) => tells(readBlock(block)));
const heading = new Places<Record>((record) => is(record, kinds.format) || is(record, kinds.use));

function tells({ problems, unread, records }: ReadBlock): boolean {
  return problems.length > 0 || unread.length > 0 || records.some(({ kind, name }) => kind.name !== 'none' && name === undefined);
}

/** Reads the blocks of a file. */
export function readFile(tree: Tree): FileRead {
  const [first] = tree.blocks;
  const last = first === undefined ? undefined : before.get(first);
  const records = last === undefined ? undefined : replacedIn(last, tree.blocks);
  if (first === undefined || last === undefined || records === undefined) return readAnew(tree);
  const told = telling.itemsIn(tree.blocks, first).map((block) => readBlock(block));
  if (told.reduce((sum, { problems }) => sum + problems.length, 0) > limits.problems) return readAnew(tree);
  before.set(first, { ...last, blocks: tree.blocks, records });
  return { records, telling: told, unread: undefined };
}

function readAnew({ blocks }: Tree): FileRead {
  const records: Record[] = [];
  const starts: number[] = [];
  const told: ReadBlock[] = [];
  let problems = 0;
  for (const block of blocks) {
    if (problems > limits.problems) return { records, telling: told, unread: block };
    const read = readBlock(block);
    problems += read.problems.length;
    starts.push(records.length);
    for (const record of read.records) records.push(record);
    if (tells(read)) told.push(read);
  }
  if (blocks[0] !== undefined) before.set(blocks[0], { blocks, records, starts });
  return { records, telling: told, unread: undefined };
}

/** The records where a few blocks changed, and each says as many as before; undefined where that is not so. */
function replacedIn({ blocks: old, records, starts }: Before, blocks: readonly Block[]): readonly Record[] | undefined {
  const changed = changedSince(old, blocks);
  if (changed === undefined || changed.some((i) => readBlock(old[i] as Block).records.length !== readBlock(blocks[i] as Block).records.length)) return undefined;
  const replaced = [...records];
  for (const i of changed) readBlock(blocks[i] as Block).records.forEach((record, k) => (replaced[(starts[i] as number) + k] = record));
  return replaced;
}

/** The lines that say the form of a file and the files it uses. */
export function headingIn(records: readonly Record[]): readonly Record[] {
  return heading.itemsIn(records, records[0]);
}
