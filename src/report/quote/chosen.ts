import type { Option } from '../../estimate/index.js';
import type { Problem } from '../../language/index.js';
import { allKinds, kinds } from '../../vocabulary/index.js';
import type { Comparison } from '../../weigh/index.js';

/**
 * Why no option is taken where the user names none. `incomplete`: one of these might be the cheapest. `unread`: a line
 * that may be an option, or may speak against one, can't be read. `ruled-out`: findings speak against all there are.
 */
export type Unchosen =
  | { readonly kind: 'no-option' }
  | { readonly kind: 'incomplete'; readonly options: readonly Option[] }
  | { readonly kind: 'unread'; readonly first: Problem }
  | { readonly kind: 'ruled-out'; readonly options: readonly Option[] };

/**
 * The option that costs least in all, to be quoted where the user names none. A slip in one line must never put another
 * option before a customer, so none is taken while something may hide a cheaper one.
 */
export function chosenIn({ options, ranking }: Comparison, problems: readonly Problem[]): { readonly kind: 'chosen'; readonly option: Option } | Unchosen {
  const incomplete = options.filter(({ complete, option }) => !complete && option.written && option.ruledOutBy.length === 0).map(({ option }) => option);
  if (incomplete.length > 0) return { kind: 'incomplete', options: incomplete };
  const unread = problems.find(mayHideChoice);
  if (unread !== undefined) return { kind: 'unread', first: unread };
  const [first] = ranking;
  if (first !== undefined) return { kind: 'chosen', option: first.option };
  return options.length === 0 ? { kind: 'no-option' } : { kind: 'ruled-out', options: options.map(({ option }) => option) };
}

const OTHERS: ReadonlySet<string> = new Set(allKinds.map(({ word }) => word).filter((word) => word !== kinds.option.word && word !== kinds.finding.word));

/** Errors on options, findings, and lines at the left edge of which nobody knows what they are. */
function mayHideChoice({ severity, at }: Problem): boolean {
  return severity === 'error' && !OTHERS.has(at.block.statements[0]?.tokens[0]?.text ?? '');
}
