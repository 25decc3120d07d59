import type { Token } from '../../language/index.js';
import { aboutText, certaintyWords, coveredSentence, flipSentence, inspectionSentence, moneyText, stageSentence } from '../../report/index.js';
import { is, kinds, type Decimal, type Record } from '../../vocabulary/index.js';
import { decide, type Comparison, type Decided, type Decision } from '../../weigh/index.js';
import { statementOf, type At } from '../at.js';
import { chanceAdds } from './chance-adds.js';

/**
 * What a decision says of the place under the pointer: how far a figure is from changing the choice, what a chance
 * adds, whether to look first, whether somebody else pays, how sure an option is. The decision is worked out once for
 * each text, and only where it has something to say.
 */
export function decidedAt(at: At, record: Record | undefined, comparison: Comparison): string[] {
  if (comparison.options.length === 0 || isLarge(comparison)) return [];
  return [
    ...(at.token !== undefined && isFigure(at.token) ? flipsAt(at, at.token, decide(comparison)) : []),
    ...(record === undefined ? [] : saysOf(record, comparison)),
    ...(comparison.options.some(({ option }) => statementOf(option) === at.statement) ? optionSays(at, decide(comparison)) : []),
  ];
}

/** With more lines a decision takes longer than anybody holds a pointer still; the panel has it a moment later. */
const MOST_LINES = 2_000;

function isLarge({ options }: Comparison): boolean {
  return options.reduce((count, { totals }) => count + totals.lines.length, 0) > MOST_LINES;
}

function isFigure({ kind, text }: Token): boolean {
  return kind === 'number' || text === '/' || text === '%';
}

/** The nearest value on either side at which another option becomes the cheapest. */
function flipsAt({ block }: At, { start, end }: Token, { flips, comparison }: Decision): string[] {
  return flips.filter(({ at }) => at.block === block && at.start <= start && end <= at.end).map((flip) => flipSentence(flip, comparison.money));
}

function saysOf(record: Record, comparison: Comparison): string[] {
  if (is(record, kinds.chance)) return chanceAdds(record, comparison);
  if (is(record, kinds.inspect)) return decide(comparison).inspections.filter(({ inspection }) => inspection.record === record).map((one) => inspectionSentence(one, comparison));
  if (is(record, kinds.stage)) return comparison.stages.filter(({ stage, complete }) => complete && stage.record === record).map((one) => stageSentence(one, comparison.money));
  if (is(record, kinds.coverage)) return decide(comparison).coverages.filter(({ coverage }) => coverage.record === record).map(coveredSentence);
  return [];
}

function optionSays({ statement }: At, { options, cases, comparison }: Decision): string[] {
  const decided = options.find(({ weighed }) => statementOf(weighed.option) === statement);
  return decided === undefined ? [] : [readySays(decided), sureSays(decided, cases, comparison), monthlySays(decided, comparison)].filter((says) => says !== '');
}

function readySays({ risk, weighed: { ready } }: Decided): string {
  if (ready.tasks.length === 0) return '';
  const when = `Ready ${ready.date === undefined ? '' : `on ${ready.date}, `}in ${ready.days.likely.toFixed()} working day${ready.days.likely.eq(1) ? '' : 's'}`;
  if (risk === undefined || risk.days.p10 === risk.days.p90) return `${when}.`;
  const { p10, p50, p90 } = risk.ready ?? risk.days;
  return `${when}; in 10, 50 and 90 % of cases ${risk.ready === undefined ? 'in' : 'by'} ${p10}, ${p50} and ${p90}.`;
}

function sureSays(decided: Decided, cases: number | undefined, { money }: Comparison): string {
  const { risk } = decided;
  if (risk === undefined) return '';
  const { p10, p50, p90 } = risk.inAll;
  const spread = p10 === p90 ? [] : [`up to ${aboutText(p10, money)} in 10 %, ${aboutText(p50, money)} in 50 % and ${aboutText(p90, money)} in 90 % of cases`];
  const says = [...spread, ...[certaintyWords(decided, cases)].filter((often) => often !== undefined)];
  return says.length === 0 ? '' : `Not quoted, cost in all: ${says.join('; ')}.`;
}

function monthlySays({ monthly }: Decided, { money }: Comparison): string {
  return monthly === undefined ? '' : `Cost per month: ${moneyText(monthly.perMonth.likely, money)} over ${monthsText(monthly.months.toDecimalPlaces(1))}.`;
}

function monthsText(months: Decimal): string {
  return `${months.toFixed()} month${months.eq(1) ? '' : 's'}`;
}
