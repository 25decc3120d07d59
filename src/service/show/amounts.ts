import type { Statement } from '../../language/index.js';
import type { Decimal } from '../../vocabulary/index.js';
import type { Figure, Line, Money } from '../../weigh/index.js';
import { explainShort, figureText, moneyText } from '../../report/index.js';
import type { Weighing } from '../types.js';
import { madeLines, type MadeLine } from './made-lines.js';

/** Lines of options that a line of text makes and that have a price. Core charges are said at their own line. */
function pricedLines(statement: Statement, weighing: Weighing): readonly MadeLine[] {
  return (madeLines(weighing).get(statement) ?? []).filter(({ line }) => line.kind !== 'core' && !hasNoPrice(line.amount));
}

/**
 * What a line of text comes to, or from the least to the most where options pay differently for it because of their
 * ways in. Undefined where no option uses the line, or where it has no price.
 */
export function amountOf(statement: Statement, weighing: Weighing): string | undefined {
  const { money } = weighing.comparison;
  const [first, ...rest] = sumsByOption(pricedLines(statement, weighing));
  if (first === undefined) return undefined;
  let [least, most] = [first, first];
  for (const one of rest) {
    if (one.sum.lt(least.sum)) least = one;
    if (one.sum.gt(most.sum)) most = one;
  }
  return least.sum.eq(most.sum) ? likelyText(least, money) : `${likelyText(least, money)} to ${likelyText(most, money)}`;
}

/** The same option by option, with how it is worked out: `792.00 = 6.0 h × 132.00 in lifted`. */
export function amountInWords(statement: Statement, weighing: Weighing): string {
  const { money } = weighing.comparison;
  const options = new Map<string, string[]>();
  for (const { option, made } of sumsByOption(pricedLines(statement, weighing))) {
    const says = made.map(({ line }) => workedText(line, money)).join(' and ');
    const alike = options.get(says);
    if (alike === undefined) options.set(says, [option]);
    else alike.push(option);
  }
  return [...options].map(([says, names]) => `${says} in ${names.join(', ')}`).join('; ');
}

interface OptionSum {
  readonly option: string;
  readonly sum: Decimal;
  readonly made: readonly MadeLine[];
}

function sumsByOption(made: readonly MadeLine[]): OptionSum[] {
  const sums: { option: string; sum: Decimal; made: MadeLine[] }[] = [];
  // Lines come option by option.
  for (const one of made) {
    const last = sums[sums.length - 1];
    const { likely } = one.line.amount;
    if (last?.made[0]?.weighed === one.weighed) {
      last.sum = last.sum.plus(likely);
      last.made.push(one);
    } else sums.push({ option: one.weighed.option.name, sum: likely, made: [one] });
  }
  return sums;
}

function likelyText({ sum, made }: OptionSum, money: Money): string {
  const [only, ...more] = made;
  return only === undefined || more.length > 0 ? moneyText(sum, money) : lineText(only.line, money);
}

const texts = new WeakMap<Line, string>();
const workings = new WeakMap<Line, string>();

/** The likely amount of a line. Kept: lines outlive most keystrokes, and writing out a Decimal is not free. */
export function lineText(line: Line, money: Money): string {
  let found = texts.get(line);
  if (found === undefined) texts.set(line, (found = moneyText(line.amount.likely, money)));
  return found;
}

function workedText(line: Line, money: Money): string {
  let found = workings.get(line);
  if (found === undefined) workings.set(line, (found = `${figureText(line.amount, money)}${explainShort(line.amount, money)}`));
  return found;
}

/** Nothing was worked out: the price is missing, or the customer brings the part. */
function hasNoPrice({ step, likely }: Figure): boolean {
  return step.kind === 'found' && likely.isZero();
}

/** The amount repeats the one figure that stands on the line. */
export function isAsWritten(statement: Statement, weighing: Weighing): boolean {
  return (madeLines(weighing).get(statement) ?? []).every(({ line: { amount, hours } }) => hours === undefined && amount.step.kind === 'product' && amount.from.length === 1 && amount.from[0]?.step.kind === 'given');
}
