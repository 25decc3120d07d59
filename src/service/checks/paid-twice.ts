import { LastTime, type Rule } from '../../language/index.js';
import { clip } from '../../vocabulary/index.js';
import type { Line } from '../../weigh/index.js';
import { found, optionCheck } from './check.js';
import { example } from './example.js';

const paidTwice: Rule<{ readonly title: string; readonly option: string; readonly withWayIn: boolean }> = {
  code: 'paid-twice', family: 'money', severity: 'warning', title: 'One title charged twice in an option',
  message: ({ title, option, withWayIn }) => ({
    what: `“${clip(title)}” is charged twice in option ${clip(option)}${withWayIn ? ', once with the way in' : ''}.`,
    why: 'The customer sees the same words twice; one of them is probably paid already.',
    instead: 'Remove one, let both name one line behind uses, or give them titles that tell them apart.',
  }),
  example: example({ lines: 'access raised "Engine raised"\n  remove 1 h\n  refit 1 h\n  part "Mount bolts" 12.00 new\nlabour seal "Front seal" 2 h with raised\n  because seen\n', one: '  do seal\n  «part "Mount bolts" 12.00 new»\n' }),
};

/** Where quotes go wrong: what getting in takes is charged again with the work. */
export const twiceCheck = optionCheck(paidTwice, function* find({ weighed, option, placeOf }) {
  const { lines } = weighed.totals;
  for (const { first, again } of twins.for(lines, option.record).twins) {
    const [before, line] = [lines[first] as Line, lines[again] as Line];
    if (before.record === line.record) continue;
    const crosses = before.share !== line.share;
    const [at, other] = crosses && line.share === 'access' ? [before, line] : [line, before];
    yield found(paidTwice, placeOf({ record: at.record, at: at.at, broken: false }), { title: at.title, option: option.name, withWayIn: crosses }, { at: other.at, says: 'The other one' });
  }
});

/** The places of two lines with the same words. */
interface Twins {
  readonly first: number;
  readonly again: number;
}

/** Lines with the words of an earlier one, each with the first of them; looked for anew where a word of any line has changed. */
const twins = new LastTime<Line, { readonly keys: readonly string[]; readonly twins: readonly Twins[] }>(
  twinsIn,
  (before, { places, now }) => (places.every((i) => keyOf(now[i] as Line) === before.keys[i]) ? before : undefined),
);

function twinsIn(lines: readonly Line[]): { readonly keys: readonly string[]; readonly twins: readonly Twins[] } {
  const keys = lines.map(keyOf);
  const firsts = new Map<string, number>();
  const found: Twins[] = [];
  keys.forEach((key, again) => {
    const first = firsts.get(key) ?? again;
    if (first !== again) found.push({ first, again });
    else if (key !== FREE) firsts.set(key, again);
  });
  return { keys, twins: found };
}

/** What costs nothing is charged not even once. */
const FREE = '';

function keyOf({ kind, title, amount }: Line): string {
  return amount.likely.isZero() ? FREE : `${kind} ${title.trim().toLowerCase()}`;
}
