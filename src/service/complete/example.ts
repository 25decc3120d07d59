import { parse, type Span } from '../../language/index.js';
import { allKinds, fileKinds, readBlock, type Kind, type Record } from '../../vocabulary/index.js';

const examples = new Map<Kind, Record | undefined>();

/** The example of a kind, read. Kinds that stand only below others are read below a line of one of those. */
export function exampleOf(kind: Kind): Record | undefined {
  if (!examples.has(kind)) examples.set(kind, readExample(kind));
  return examples.get(kind);
}

/** What the example of a kind says in one of its slots, as it is written there; the first of several. */
export function exampleText(kind: Kind, key: string): string | undefined {
  const example = exampleOf(kind);
  const written = [example?.values[key]].flat()[0] as { readonly at: Span } | undefined;
  return written === undefined ? undefined : example?.block.text.slice(written.at.start, written.at.end);
}

function readExample(kind: Kind): Record | undefined {
  const chain = chainAbove(kind);
  const head = chain.map((one, depth) => `${'  '.repeat(depth)}${one.example.split('\n')[0] ?? ''}\n`).join('');
  let record = readBlock(blockOf(head + kind.example.replace(/^/gm, '  '.repeat(chain.length)))).records[0];
  for (let depth = 0; depth < chain.length; depth++) record = record?.children[0];
  return record?.kind === kind ? record : undefined;
}

/** Kinds that a kind stands below, the outermost first; none for one that may stand at the left edge. */
function chainAbove(kind: Kind): readonly Kind[] {
  if (fileKinds.includes(kind)) return [];
  const parent = allKinds.find((one) => one.children.includes(kind));
  return parent === undefined ? [] : [...chainAbove(parent), parent];
}

function blockOf(text: string) {
  return parse('', text).blocks[0] as NonNullable<ReturnType<typeof parse>['blocks'][number]>;
}
