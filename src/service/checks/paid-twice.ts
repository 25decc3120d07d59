import { changedSince, Slot, type Rule } from '../../language/index.js';
import { clip, heldByRecords, type Record } from '../../vocabulary/index.js';
import type { Line } from '../../weigh/index.js';
import { found, optionCheck } from './check.js';
import { example } from './example.js';

const paidTwice: Rule<{ readonly title: string; readonly option: string; readonly access: string | undefined }> = {
  code: 'paid-twice', family: 'money', severity: 'warning', title: 'One title charged twice in an option',
  message: ({ title, option, access }) => ({
    what: `“${clip(title)}” is charged twice in option ${clip(option)}${access === undefined ? '' : ', once with the way in'}.`,
    why: 'The customer sees the same words twice; one of them is probably paid already.',
    instead: 'Remove one, let both name one line behind uses, or give them titles that tell them apart.',
  }),
  example: example({ lines: 'access raised "Engine raised"\n  remove 1 h\n  part "Mount bolts" 12.00 new\nlabour seal "Front seal" 2 h with raised\n  because seen\n', one: '  do seal\n  «part "Mount bolts" 12.00 new»\n' }),
};

/** Where quotes go wrong: what getting in takes is charged again with the work. */
export const twiceCheck = optionCheck(paidTwice, function* find({ weighed, option, placeOf }) {
  const { lines } = weighed.totals;
  for (const { first, again } of twins(option.record, lines)) {
    const [before, line] = [lines[first] as Line, lines[again] as Line];
    if (before.record === line.record) continue;
    const crosses = before.share !== line.share;
    const [at, other] = crosses && line.share === 'access' ? [before, line] : [line, before];
    yield found(paidTwice, placeOf({ record: at.record, at: at.at, broken: false }), { title: at.title, option: option.name, access: crosses ? [line, before].find(({ share }) => share === 'access')?.name : undefined }, { at: other.at, says: 'The other one' });
  }
});

/** The places of two lines with the same words. */
interface Twins {
  readonly first: number;
  readonly again: number;
}

interface LastTime {
  readonly lines: readonly Line[];
  readonly keys: readonly string[];
  readonly twins: readonly Twins[];
}

const lastTimes = new Slot<LastTime>(heldByRecords);

/** Lines with the words of an earlier one, each with the first of them; looked for anew where a word of any line has changed. */
function twins(option: Record, lines: readonly Line[]): readonly Twins[] {
  const before = lastTimes.get(option);
  const changed = before === undefined ? undefined : changedSince(before.lines, lines);
  const now = before !== undefined && changed?.every((i) => keyOf(lines[i] as Line) === before.keys[i]) === true ? { ...before, lines } : twinsAnew(lines);
  lastTimes.set(option, now);
  return now.twins;
}

function twinsAnew(lines: readonly Line[]): LastTime {
  const keys = lines.map(keyOf);
  const firsts = new Map<string, number>();
  const found: Twins[] = [];
  keys.forEach((key, again) => {
    const first = key === FREE ? again : (firsts.get(key) ?? again);
    if (first !== again) found.push({ first, again });
    else if (key !== FREE) firsts.set(key, again);
  });
  return { lines, keys, twins: found };
}

/** What costs nothing is charged not even once. */
const FREE = '';

function keyOf({ kind, title, amount }: Line): string {
  return amount.likely.isZero() ? FREE : `${kind} ${title.trim().toLowerCase()}`;
}
