import type { Range, Statement, Tree } from '../../language/index.js';
import { authorisedSentence, roomShort } from '../../report/index.js';
import { kinds } from '../../vocabulary/index.js';
import { authorisedIn } from '../../weigh/index.js';
import type { InlayHint } from '../feature-types.js';
import type { Weighing } from '../types.js';
import { amountInWords, amountOf, isAsWritten } from './amounts.js';

/** Lines that have an amount of their own, and the facts of a way in that have one. */
const SHOWN = new Set(['labour', 'part', 'sublet', 'fee']);
const SHOWN_BELOW_ACCESS = new Set(['remove', 'refit']);

/**
 * What lines come to, at their ends. Kept few: nothing for a line that no option uses, and nothing where the amount
 * stands on the line already.
 */
export function inlayHintsIn(tree: Tree, range: Range, weighing: Weighing): readonly InlayHint[] {
  const hints: InlayHint[] = [];
  if (weighing.comparison.options.length === 0) return hints;
  tree.blocks.forEach((block, i) => {
    const start = tree.starts[i] as number;
    if (start > range.end || start + block.text.length < range.start) return;
    const visit = (statement: Statement, above: string): void => {
      const word = statement.tokens[0]?.text ?? '';
      if (SHOWN.has(word) || (above === 'access' && SHOWN_BELOW_ACCESS.has(word))) {
        const offset = start + lineEnd(statement);
        const amount = offset < range.start || offset > range.end || isAsWritten(statement, weighing) ? undefined : amountOf(statement, weighing);
        if (amount !== undefined) hints.push({ offset, label: amount, says: amountInWords(statement, weighing) });
      }
      if (word === kinds.authorised.word && above === '') hints.push(...authorisedHint(statement, start + lineEnd(statement), range, weighing));
      for (const child of statement.children) visit(child, word);
    };
    for (const statement of block.statements) visit(statement, '');
  });
  return hints;
}

/** How much of the room is used, behind the authorisation that holds. */
function authorisedHint(statement: Statement, offset: number, range: Range, { comparison }: Weighing): InlayHint[] {
  if (offset < range.start || offset > range.end) return [];
  const one = authorisedIn(comparison).find(({ authorised }) => authorised.record.statement === statement);
  return one === undefined ? [] : [{ offset, label: roomShort(one, comparison.money), says: authorisedSentence(one, comparison.money) }];
}

function lineEnd({ tokens, comment }: Statement): number {
  return comment?.end ?? tokens[tokens.length - 1]?.end ?? 0;
}
