import type { Rule } from '../../language/index.js';
import { clip, Decimal, hundred, type Readings } from '../../vocabulary/index.js';
import { found, optionCheck } from './check.js';
import { example } from './example.js';
import { lineFor } from './lacking.js';

/** Advisory, the maker's figure governs: a spread of 25 psi (TM 5-3895-359-14&P), and the lowest at least 75 % of the best. */
const MOST_SPREAD_PSI = 25;
const LEAST_SHARE = 75;
/** NIST SP 811: psi in a kilopascal. */
const PSI: Readonly<{ [unit: string]: number }> = { psi: 1, kPa: 1 / 6.894757293168, bar: 100 / 6.894757293168 };

/** Common practice: uneven compression on the undamaged bank widens the risk of reusing that engine. */
const reusedBankUneven: Rule<{ readonly option: string; readonly low: string; readonly high: string; readonly unit: string }> = {
  code: 'reused-bank-uneven', family: 'job', severity: 'advice', title: 'Uneven compression in an engine that is kept',
  message: ({ option, low, high, unit }) => ({
    what: `Beside what is mended, readings lie between ${low} and ${high} ${unit}, and option ${clip(option)} keeps this engine.`,
    why: `A public workshop manual allows a spread of ${MOST_SPREAD_PSI} psi (TM 5-3895-359-14&P); an uneven engine may not last as long as the repair.`,
    instead: 'Read it again warm, add a leakage test, or say so to the customer beside this option.',
  }),
  example: example({
    lines: 'finding uneven "Cylinder 3 a little low"\n  compression «180 178 150 176 psi»\nlabour head "Head: take off and refit" 8 h\n  because uneven, seen\n  uses set, bench\npart set "Head set" 90.00 new counts as head-gasket, head-bolts, engine-oil, oil-filter\nsublet bench "Machine shop" 150.00 counts as flatness-check, crack-check\n',
    one: '  do head\n',
  }),
};

export const reusedBankCheck = optionCheck(reusedBankUneven, function* find(one, { estimate }) {
  if (one.swaps || lineFor('head-off')(one) === undefined) return;
  for (const { compression } of estimate.findings) {
    const spread = compression === undefined ? undefined : spreadOf(compression);
    if (compression === undefined || spread === undefined) continue;
    yield found(reusedBankUneven, compression.at, { option: one.option.name, ...spread });
  }
});

/** Lowest and highest of the readings that are not themselves the damage, where they lie too far apart. */
function spreadOf({ values, unit }: Readings): { readonly low: string; readonly high: string; readonly unit: string } | undefined {
  const factor = PSI[unit?.word ?? ''];
  if (factor === undefined || values.length < 3) return undefined;
  const high = Decimal.max(...values);
  const good = values.filter((value) => value.times(hundred).gte(high.times(LEAST_SHARE)));
  const low = Decimal.min(...good);
  return high.minus(low).times(factor).gt(MOST_SPREAD_PSI) ? { low: low.toFixed(), high: high.toFixed(), unit: unit?.word ?? '' } : undefined;
}
