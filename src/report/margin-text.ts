import type { Decision, MarginOf } from '../weigh/index.js';
import type { Decimal } from '../vocabulary/index.js';
import { moneyText } from './numbers.js';
import type { Row } from './table.js';

const SORTS: Readonly<Record<MarginOf['sort'], string>> = { labour: 'On labour', parts: 'On parts', outside: 'On outside work' };

/**
 * What stays with the shop, option by option; no rows where nobody wrote down what anything costs. Never for a page
 * that a customer sees.
 */
export function marginRows({ options, comparison: { money } }: Decision): Row[] {
  const known = options.some(({ margin }) => margin.by.some(({ sold }) => sold.from.length > 0));
  if (!known) return [];
  const row = (label: string, cell: (one: Decision['options'][number]) => string): Row => ({ cells: [label, ...options.map(cell)] });
  const amount = (value: Decimal | undefined) => (value === undefined ? '' : moneyText(value, money));
  const sorts = (Object.keys(SORTS) as MarginOf['sort'][]).filter((sort) => options.some(({ margin }) => margin.by.some((of) => of.sort === sort && of.sold.from.length > 0)));
  // By the hour or the day nothing can be told where some hours cost the shop nobody knows what.
  const by = (label: string, pick: (one: Decision['options'][number]['margin']) => Decimal | undefined) => (options.some(({ margin }) => pick(margin) !== undefined) ? [row(label, ({ margin }) => amount(pick(margin)))] : []);
  const unknown = options.some(({ margin }) => margin.by.some((of) => of.unknown.length > 0));
  return [
    row('', ({ weighed }) => weighed.option.name),
    ...sorts.map((sort) => row(SORTS[sort], ({ margin }) => amount(margin.by.find((of) => of.sort === sort)?.margin.likely))),
    'rule',
    row('Margin', ({ margin }) => amount(margin.margin.likely)),
    ...by('  for each hour of work', ({ perHour }) => perHour),
    ...by('  for each day in the bay', ({ perBayDay }) => perBayDay),
    ...(unknown ? [row('Lines whose cost is not written', ({ margin }) => String(margin.by.reduce((count, of) => count + of.unknown.length, 0)))] : []),
  ];
}
