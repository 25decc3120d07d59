import { hoursText, moneyText, plain, RULED_OUT, valueText } from '../../report/index.js';
import type { Comparison, Weighed } from '../../weigh/index.js';

/** How the head of the totals starts; git heads hunks by it. */
export const TOTALS_HEAD = '# Totals';

/**
 * The totals of each option as comment lines, so that a text diff shows what a change did. Options stand as the file
 * has them, and columns have a width of their own: a line differs only where its own option does.
 */
export function totalsLines(comparison: Comparison, pricedBy: string): string[] {
  const { options, money, ranking } = comparison;
  if (options.length === 0) return [];
  const code = money.currency.code === '' ? '' : ` in ${money.currency.code}`;
  return [`${TOTALS_HEAD}${code}${pricedBy}; worked out by Steelyard, no part of the file:`, ...options.map(line)];

  function line(weighed: Weighed): string {
    const { option, totals, inAll, ready, complete } = weighed;
    const amounts = `${moneyText(totals.total.likely, money).padStart(WIDTHS.money)}  in all ${moneyText(inAll.likely, money).padStart(WIDTHS.money)}`;
    const time = `${hoursText(totals.hours.likely).padStart(WIDTHS.hours)} h  ${valueText(ready.days.likely, 'days', money).padStart(WIDTHS.days)}${ready.date === undefined ? '' : `  ready ${ready.date}`}`;
    const place = complete ? (ranking[0] === weighed && ranking.length > 1 ? '  cheapest in all' : option.ruledOutBy.length > 0 ? `  ${RULED_OUT}` : '') : '  incomplete: a line of it can’t be read';
    return `#   ${plain(option.name).padEnd(WIDTHS.name)}  ${amounts}  ${time}${place}`;
  }
}

/** Fixed, so that one longer figure does not move the lines around it. */
const WIDTHS = { name: 14, money: 11, hours: 6, days: 5 } as const;
