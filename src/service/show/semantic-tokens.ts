import type { Tree } from '../../language/index.js';
import type { Scope } from '../../estimate/index.js';
import type { Record } from '../../vocabulary/index.js';
import type { Mention } from '../at.js';
import type { SemanticToken } from '../feature-types.js';
import { meantBy, mentionsOf, usedRecords } from '../navigate/names.js';
import type { Weighing } from '../types.js';

const TYPES: ReadonlySet<string> = new Set(['access', 'labour', 'part', 'sublet', 'fee', 'tool', 'finding', 'option', 'rate'] satisfies SemanticToken['type'][]);

/** Every name of a file by the kind of line that it means, in the order of the text. */
export function semanticTokensOf(tree: Tree, weighing: Weighing): readonly SemanticToken[] {
  const { scope } = weighing.resolved;
  const used = usedRecords(weighing);
  // A shared file looked at by itself has no options: that nothing in it uses a name says nothing.
  const whole = weighing.comparison.options.length > 0;
  const tokens: SemanticToken[] = [];
  tree.blocks.forEach((block, i) => {
    const start = tree.starts[i] as number;
    for (const mention of mentionsOf(block)) {
      const type = typeOf(mention, scope);
      if (type === undefined) continue;
      const range = { start: start + mention.at.start, end: start + mention.at.end };
      tokens.push({ range, type, gives: mention.gives, unused: whole && mention.gives && isUnused(mention.record, used) });
    }
  });
  return tokens;
}

/** Undefined for words that need no colour of their own: built-in names, and names that no line can use. */
function typeOf(mention: Mention, scope: Scope): SemanticToken['type'] | undefined {
  if (mention.builtIn) return undefined;
  const target = meantBy(mention, scope);
  if (target === undefined) return 'unknown';
  const kind = target.kind.word;
  return TYPES.has(kind) ? (kind as SemanticToken['type']) : undefined;
}

/** Options need no one to name them; the shop's rates, tools and fees stand for every estimate; a line inside an option is used by it. */
function isUnused(record: Record, used: ReadonlySet<Record>): boolean {
  const isTop = record.block.statements.includes(record.statement);
  return isTop && record.kind.word !== 'option' && !used.has(record);
}
