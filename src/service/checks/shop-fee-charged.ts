import type { Rule } from '../../language/index.js';
import type { Source } from '../../estimate/index.js';
import { clip, type Name } from '../../vocabulary/index.js';
import { chancesOf } from '../../weigh/index.js';
import { found, optionCheck, type Found } from './check.js';
import { example } from './example.js';
import { withoutName } from './lines.js';

const shopFeeCharged: Rule<{ readonly name: string; readonly again: boolean }> = {
  code: 'shop-fee-charged', family: 'money', severity: 'advice', title: 'A fee of the shop named behind charge',
  message: ({ name, again }) => ({
    what: `${clip(name)} is a fee of the shop, which is charged wherever work is done.`,
    why: again ? 'It counts what turns up here as well; named here, it is charged once more.' : 'Named here it has no effect: it is charged once all the same.',
    instead: again ? 'Remove it behind charge. If it is charged twice, write the second one as a fee line below the chance.' : 'Remove it behind charge. If only some options are to pay it, move its line from below shop to the left edge.',
  }),
  fix: ({ name }, at) => ({ title: `Remove ${name} behind charge`, ...withoutName(at) }),
  example: example({ shop: '  fee supplies "Shop supplies" 5% of labour\n', one: '  labour "Front seal" 2 h\n    because seen\n  charge «supplies»\n' }),
};

/** An option without work pays a fee of the shop only where it names it. */
export const shopFeeCheck = optionCheck(shopFeeCharged, function* find({ option, weighed }, { estimate, comparison: { money } }) {
  const { fees } = estimate.shop;
  if (fees.length === 0) return;
  const works = weighed.totals.lines.some(({ kind }) => kind === 'labour');
  const named = function* (source: Source, again: boolean): Iterable<Found> {
    for (const { name, at } of (source.record.values['charge'] as readonly Name[] | undefined) ?? []) {
      if (fees.some((fee) => fee.name === name)) yield found(shopFeeCharged, at, { name, again });
    }
  };
  if (works) yield* named(option, false);
  if (option.chances.length === 0 && estimate.chances.size === 0) return;
  for (const { chance, when } of chancesOf(weighed, estimate, money).counted) {
    if (when === 'open' ? works || chance.labour.length > 0 : chance.labour.length > 0) yield* named(chance, when === 'open');
  }
});
