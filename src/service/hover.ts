import type { Tree } from '../language/index.js';
import { readBlock } from '../vocabulary/index.js';
import { locate, rangeAt, type At } from './at.js';
import { amountsOf } from './hover/amounts.js';
import { authorisedSays } from './hover/authorised.js';
import { decidedAt } from './hover/decided.js';
import { fromBook } from './hover/from-book.js';
import { meaningAt, type Meaning } from './hover/meaning.js';
import { nameAt, sayRecord } from './hover/name.js';
import { plannedAt } from './hover/planned.js';
import { recordIn } from './hover/record-in.js';
import { threePointsAt } from './hover/three-points.js';
import { unitAt } from './hover/unit.js';
import type { Hover, Weighing } from './types.js';

/**
 * What there is to say about the place under the pointer: first what the line comes to, what hangs on it and when it is
 * planned, then what the word, the figure or the name itself is. Looks at one block and at what is kept for the text.
 */
export function hoverAt(tree: Tree, offset: number, weighing: Weighing): Hover | undefined {
  const at = locate(tree, offset);
  const first = at?.statement?.tokens[0];
  const last = at?.statement?.tokens[at.statement.tokens.length - 1];
  if (at?.statement === undefined || first === undefined || last === undefined) return undefined;
  if (offset < at.start + first.start || offset > at.start + last.end) return undefined;
  const word = wordAt(at, weighing);
  const { records } = readBlock(at.block);
  const record = recordIn(at.statement, records);
  const parent = at.above[at.above.length - 1];
  const above = parent === undefined ? undefined : recordIn(parent, records);
  const { comparison, book } = weighing;
  const paragraphs = [...amountsOf(at, comparison), ...(record === undefined ? [] : authorisedSays(record, comparison)), ...decidedAt(at, record, comparison), ...fromBook(record, above, book), ...plannedAt(at.statement, record, comparison), ...(word?.paragraphs ?? (record === undefined ? [] : sayRecord(record, weighing)))];
  if (paragraphs.length === 0) return undefined;
  return { range: rangeAt(at.start, { start: (word?.from ?? first).start, end: (word?.to ?? last).end }), paragraphs };
}

function wordAt(at: At, weighing: Weighing): Meaning | undefined {
  // A name may be spelled like a fact; where a name can stand it is one.
  return nameAt(at, weighing) ?? unitAt(at) ?? threePointsAt(at) ?? meaningAt(at);
}
