import type { Rule } from '../../language/index.js';
import type { Option } from '../../estimate/index.js';
import { clip, is, kinds } from '../../vocabulary/index.js';
import { found, wholeCheck } from './check.js';
import { example } from './example.js';

const optionTitleTwice: Rule<{ readonly title: string; readonly option: string; readonly other: string }> = {
  code: 'option-title-twice', family: 'names', severity: 'advice', title: 'Two options with one title',
  message: ({ title, option, other }) => ({
    what: `Options ${clip(other)} and ${clip(option)} are both called “${clip(title)}”.`,
    why: 'Quote and comparison tell them apart by their titles, so nobody knows which is the cheaper one.',
    instead: 'Say in the title what sets it apart, such as the way in or the kind of part.',
  }),
  example: example({ lines: 'labour seal "Front seal" 2 h\n  because seen\n', one: '  do seal\n', other: 'option two «"Mend it"»\n  do seal\n  warranty 3 mo\n' }),
};

export const titleCheck = wholeCheck(optionTitleTwice, function* find({ estimate: { options } }) {
  const firsts = new Map<string, Option>();
  for (const option of options) {
    const title = option.title.trim().toLowerCase();
    const first = firsts.get(title);
    if (first === undefined) firsts.set(title, option);
    else yield found(optionTitleTwice, titleAt(option), { title: option.title, option: option.name, other: first.name }, { at: titleAt(first), says: 'The other one' });
  }
});

/** Selling as it stands is written with the vehicle, and has no title of its own there. */
function titleAt({ record, at }: Option) {
  return is(record, kinds.option) ? (record.title?.at ?? at) : at;
}
