import type { Block, Statement } from '../../language/index.js';
import { referencesOf, type NamedKind } from '../../estimate/index.js';
import { allKinds, clip, readBlock, type Record } from '../../vocabulary/index.js';
import type { Mention } from '../at.js';
import { giversOf, meantBy, mentionsOf, mentionsOfName, usesOf, type Names } from './names.js';

const article = (kind: string) => (/^[aeiou]/.test(kind) ? `an ${kind}` : `a ${kind}`);
const fileName = (uri: string) => uri.slice(uri.lastIndexOf('/') + 1);

/** Why a line can't take a name in an estimate: a name must keep one meaning wherever it stands. */
export function clashIn(index: Names, target: Record, name: string): string | undefined {
  const kind = target.kind.word;
  const [taken] = giversOf(index, kind, name);
  if (taken !== undefined) return `There is already ${article(kind)} line called ${clip(name)} in ${fileName(taken.block.uri)}.`;
  if (isBuiltInFor(kind, name)) return `${name} is a fixed word of estimates and can't be a name of ${article(kind)} line.`;

  // Names of other kinds are their own, but for a slot that takes either kind.
  for (const use of usesOf(index, target)) {
    const other = use.kinds.find((one) => one !== kind && index.scope.find(one as NamedKind, name) !== undefined);
    if (other !== undefined) return ambiguous(use, name, other);
  }
  for (const use of mentionsOfName(index, name)) {
    if (use.gives || use.builtIn || !use.kinds.includes(kind)) continue;
    const meant = meantBy(use, index.scope);
    if (meant !== undefined) return ambiguous(use, name, meant.kind.word);
    return `A line in ${fileName(use.at.block.uri)} names ${clip(name)}, which nothing has; it would come to mean this line.`;
  }
  return undefined;
}

function ambiguous(use: Mention, name: string, other: string): string {
  return `There is ${article(other)} line called ${clip(name)}, and a line in ${fileName(use.at.block.uri)} that takes either could then mean both.`;
}

/** Whether a slot for names of this kind understands the word by itself. */
function isBuiltInFor(kind: string, name: string): boolean {
  return allKinds.some((one) => referencesOf(one).some(({ refersTo, builtIn }) => refersTo.includes(kind) && Object.hasOwn(builtIn, name)));
}

/** Why a name can't be changed everywhere: a line that can't be read holds the same word, and may mean it. */
export function unreadableIn(index: Names, name: string): string | undefined {
  for (const block of index.blocks) {
    if (!block.text.includes(name) || readBlock(block).problems.length === 0) continue;
    const statement = brokenWith(block, name);
    if (statement !== undefined) return `A line in ${fileName(block.uri)} can't be read and has the word ${clip(name)}; mend it first.`;
  }
  return undefined;
}

function brokenWith(block: Block, name: string): Statement | undefined {
  const { problems, unread } = readBlock(block);
  const known = new Set(mentionsOf(block).map(({ at }) => at.start));
  const has = ({ tokens }: Statement) => tokens.some((token) => token.kind === 'word' && token.text === name && !known.has(token.start));
  const isBroken = ({ tokens }: Statement) => problems.some(({ at }) => at.start <= (tokens[tokens.length - 1]?.end ?? 0) && at.end >= (tokens[0]?.start ?? 0));
  const find = (list: readonly Statement[], lost: boolean): Statement | undefined => {
    for (const statement of list) {
      const gone = lost || unread.includes(statement);
      if ((gone || isBroken(statement)) && has(statement)) return statement;
      const below = find(statement.children, gone);
      if (below !== undefined) return below;
    }
    return undefined;
  };
  return find(block.statements, false);
}
