import type { Rule } from '../../language/index.js';
import { clip } from '../../vocabulary/index.js';
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
  const first = new Map<string, Line>();
  for (const line of weighed.totals.lines) {
    if (line.amount.likely.isZero()) continue;
    const key = keyOf(line);
    const before = first.get(key);
    if (before === undefined) first.set(key, line);
    else if (before.record !== line.record) {
      const crosses = before.share !== line.share;
      const [at, other] = crosses && line.share === 'access' ? [before, line] : [line, before];
      yield found(paidTwice, placeOf({ record: at.record, at: at.at, broken: false }), { title: at.title, option: option.name, access: crosses ? [line, before].find(({ share }) => share === 'access')?.name : undefined }, { at: other.at, says: 'The other one' });
    }
  }
});

/** Kept by the lines, which stay the same while others are typed in. */
const keys = new WeakMap<Line, string>();

function keyOf(line: Line): string {
  let key = keys.get(line);
  if (key === undefined) keys.set(line, (key = `${line.kind} ${line.title.trim().toLowerCase()}`));
  return key;
}
