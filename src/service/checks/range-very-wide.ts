import type { Rule } from '../../language/index.js';
import type { Estimate } from '../../estimate/index.js';
import type { Amount } from '../../vocabulary/index.js';
import { found, wholeCheck } from './check.js';
import { example } from './example.js';

/** From low to high a figure may grow so many times before it says nothing, or a decimal point has slipped. */
const TIMES = 10;

export const rangeVeryWide: Rule<{ readonly low: string; readonly high: string }> = {
  code: 'range-very-wide', family: 'money', severity: 'advice', title: 'A range that says nothing',
  message: ({ low, high }) => ({
    what: `This figure may be ${low}, and it may be ${high}.`,
    why: `A range of ${TIMES} times or more is usually a decimal point that slipped; if it is meant, nothing can be decided by it.`,
    instead: 'Correct it, or look further until it is narrower.',
  }),
  example: example({ one: '  labour "Front seal" «2.5 / 3 / 40 h»\n    because seen\n' }),
};

export const rangeCheck = wholeCheck(rangeVeryWide, function* find({ estimate, isOwn }) {
  for (const line of ranged(estimate)) {
    if (!isOwn(line)) continue;
    for (const amount of line.amounts) if (isWide(amount)) yield found(rangeVeryWide, amount.at, { low: amount.low.toFixed(), high: amount.high.toFixed() });
  }
});

/** One figure stands for all three where no range was written, which is nearly everywhere. */
function isWide({ low, high }: Amount): boolean {
  return low !== high && !low.isZero() && high.gte(low.times(TIMES));
}

function* ranged({ access, labour, parts, sublets, options }: Estimate) {
  for (const { record, remove, refit } of access) yield { record, amounts: present(remove, refit) };
  const seen = new Set<object>();
  for (const job of [...labour, ...options.flatMap((option) => option.labour)]) {
    if (seen.has(job)) continue;
    seen.add(job);
    yield { record: job.record, amounts: job.modes.map((mode) => mode.hours) };
  }
  for (const goods of [...parts, ...sublets, ...options.flatMap((option) => [...option.parts, ...option.sublets])]) {
    if (seen.has(goods)) continue;
    seen.add(goods);
    if (goods.price !== undefined || goods.cost !== undefined) yield { record: goods.record, amounts: present(goods.price, goods.cost) };
  }
}

function present(...amounts: readonly (Amount | undefined)[]): Amount[] {
  return amounts.filter((amount) => amount !== undefined);
}
