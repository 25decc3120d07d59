import type { Rule } from '../../language/index.js';
import { clip, Decimal } from '../../vocabulary/index.js';
import { found, wholeCheck } from './check.js';
import { example } from './example.js';

/** The part of the cheapest option's range that may overlap the next one's before the lead says little. */
const MOST_OVERLAP = 0.5;

const rangesOverlap: Rule<{ readonly cheapest: string; readonly next: string; readonly percent: string }> = {
  code: 'ranges-overlap', family: 'money', severity: 'advice', title: 'A lead within the uncertainty',
  message: ({ cheapest, next, percent }) => ({
    what: `The range of ${clip(cheapest)}, the cheapest, lies for ${percent} % within that of ${clip(next)}.`,
    why: 'Which of the two comes out cheaper is not settled by these figures.',
    instead: 'Look further before deciding: another reading or a part’s firm price narrows the range. Or decide by days and warranty.',
  }),
  example: example({ one: '  labour "Front seal" 2 / 4 / 8 h\n    because seen\n', other: 'option two "Mend it otherwise"\n  warranty 12 mo\n  labour "Rear seal" 3 / 5 / 9 h\n    because seen\n' }).replace('option one "Mend it"', '«option one "Mend it"»'),
};

export const overlapCheck = wholeCheck(rangesOverlap, function* find({ comparison: { ranking, options } }) {
  const [first, second] = ranking;
  if (first === undefined || second === undefined || options.some(({ complete }) => !complete)) return;
  const width = first.inAll.high.minus(first.inAll.low);
  const shared = Decimal.min(first.inAll.high, second.inAll.high).minus(Decimal.max(first.inAll.low, second.inAll.low));
  if (width.lte(0) || !shared.gt(width.times(MOST_OVERLAP))) return;
  yield found(rangesOverlap, first.option.at, { cheapest: first.option.name, next: second.option.name, percent: shared.div(width).times(100).toFixed(0) }, { at: second.option.at, says: 'The next one' });
});
