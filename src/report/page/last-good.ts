import type { Problem } from '../../language/index.js';
import { restsOn, type Comparison, type Money, type Weighed } from '../../weigh/index.js';

/**
 * An option as the page shows it. `weighed`: as the text stands. `last-good`: a line it rests on is broken, and the
 * figures are those from before. `not-weighed`: broken, and there is nothing from before.
 */
export interface Column {
  /** Tells the columns apart, also where two options were given one name. */
  readonly key: string;
  readonly weighed: Weighed;
  /** The money of its figures: the shop's line may be the broken one. */
  readonly money: Money;
  readonly state: 'weighed' | 'last-good' | 'not-weighed';
  /** The errors that keep it from being weighed. */
  readonly causes: readonly Problem[];
}

export interface Now {
  readonly comparison: Comparison;
  readonly problems: readonly Problem[];
}

/**
 * The columns of a comparison. An option that can't be weighed keeps its last good figures from the columns shown
 * before; one whose own line is broken, so that the comparison has lost it, keeps its place too.
 */
export function keepLastGood(before: readonly Column[], { comparison, problems }: Now): Column[] {
  const errors = problems.filter((one) => one.severity === 'error');
  const good = new Map(before.filter((column) => column.state !== 'not-weighed').map((column) => [column.key, column]));
  const columns = comparison.options.map((weighed, i): Column => {
    const key = keyOf(comparison, i);
    const fresh: Column = { key, weighed, money: comparison.money, state: 'weighed', causes: [] };
    if (weighed.complete) return fresh;
    const causes = causesOf(weighed, comparison, errors);
    const last = good.get(key);
    return last === undefined ? { ...fresh, state: 'not-weighed', causes } : { ...last, state: 'last-good', causes };
  });
  before.forEach((column, at) => {
    if (columns.some((one) => one.key === column.key)) return;
    const causes = errors.filter((error) => isLineOf(error, column.weighed.option));
    if (causes.length > 0) columns.splice(at, 0, { ...column, state: column.state === 'not-weighed' ? 'not-weighed' : 'last-good', causes });
  });
  return columns;
}

function keyOf({ options }: Comparison, index: number): string {
  const { name } = (options[index] as Weighed).option;
  const sameBefore = options.slice(0, index).filter((one) => one.option.name === name).length;
  return sameBefore === 0 ? name : `${name}~${sameBefore + 1}`;
}

/** The errors on lines that an option rests on; where it rests on a line so broken that it was lost, any of them. */
function causesOf({ option }: Weighed, comparison: Comparison, errors: readonly Problem[]): readonly Problem[] {
  const blocks = restsOn(option, comparison.estimate);
  const own = errors.filter((error) => blocks.has(error.at.block));
  return own.length > 0 ? own : errors;
}

/**
 * Whether an error stands on the line of an option, or below it, whose name can still be read. Selling the vehicle as
 * it stands is written below the vehicle.
 */
function isLineOf({ at }: Problem, { name, written }: Weighed['option']): boolean {
  return at.block.statements.some(({ tokens: [kind, second] }) => (written ? kind?.text === 'option' && second?.text === name : kind?.text === 'vehicle'));
}
