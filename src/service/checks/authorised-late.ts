import { isFarAfter, lastDay, type Authorised } from '../../estimate/index.js';
import type { Rule } from '../../language/index.js';
import { clip, is, kinds } from '../../vocabulary/index.js';
import { found, wholeCheck } from './check.js';
import { example } from './example.js';

const authorisedLate: Rule<{ readonly on: string; readonly until: string; readonly from: string; readonly quoted: boolean; readonly name: string }> = {
  code: 'authorised-late', family: 'job', severity: 'warning', title: 'Authorised after the prices had run out',
  message: ({ on, until, from, quoted, name }) => ({
    what: `This was authorised on ${clip(on)}; the prices ${quoted ? 'quoted' : 'written'} on ${clip(from)} held until ${clip(until)}.`,
    why: 'By then parts and work may cost something else than what was agreed to.',
    instead: `Correct the day; or, where the prices were given anew, write when: quoted 940.00 for ${clip(name)} on ${clip(on)}`,
  }),
  example: example({ header: '  written 2026-11-02\n  start 2026-11-30\n  valid 28 d\n', one: '  labour "Front seal" 2 h\n    because seen\n', other: 'option stop "Stop"\nauthorised 200.00 for one on «2026-12-25»\n' }),
};

/** The first word of the customer accepts an offer; those after it raise what was agreed while the work goes on. */
export const lateCheck = wholeCheck(authorisedLate, function* find({ header: { written, valid }, estimate: { authorised, quoted } }) {
  if (valid === undefined || valid.likely.lt(1)) return;
  const firsts = new Map<string, Authorised>();
  for (const one of authorised) if (one.for !== undefined && one.on !== undefined && one.on < (firsts.get(one.for)?.on ?? '9')) firsts.set(one.for, one);
  for (const [name, { on, record }] of firsts) {
    if (on === undefined || !is(record, kinds.authorised)) continue;
    const given = quoted.flatMap((one) => (one.on !== undefined && one.on <= on && (one.for === undefined || one.for === name) ? [one.on] : [])).sort().at(-1);
    const from = given ?? written;
    // A slip of the year has its own message.
    if (from === undefined || from > on || (written !== undefined && isFarAfter(on, written))) continue;
    const until = lastDay(from, valid);
    if (until < on) yield found(authorisedLate, record.values.on?.at ?? record.at, { on, until, from, quoted: given !== undefined, name });
  }
});
