import { moneyText, verdict } from '../../report/index.js';
import type { Weighing } from '../types.js';

const MINUS = '\u2212';

/** The cheapest option and how much less it costs than the next: `used −317.00`. */
export function statusOf({ comparison }: Weighing): { readonly short: string; readonly full: string } | undefined {
  const { options, ranking, money } = comparison;
  if (options.length === 0) return undefined;
  const full = verdict(comparison);
  const [first, second] = ranking;
  if (first === undefined) return { short: 'not weighed yet', full };
  if (second === undefined) return { short: `${first.option.name} ${moneyText(first.inAll.likely, money)}`, full };
  const margin = second.inAll.likely.minus(first.inAll.likely);
  return { short: margin.isZero() ? `${first.option.name} = ${second.option.name}` : `${first.option.name} ${MINUS}${moneyText(margin, money)}`, full };
}
