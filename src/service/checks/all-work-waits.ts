import { Places, type Rule, type Span } from '../../language/index.js';
import type { Part, Sublet } from '../../estimate/index.js';
import { clip, type Name } from '../../vocabulary/index.js';
import { found, optionCheck } from './check.js';
import { example } from './example.js';

const allWorkWaits: Rule<{ readonly title: string; readonly option: string; readonly name: string | undefined; readonly away: boolean }> = {
  code: 'all-work-waits', family: 'job', severity: 'advice', title: 'A part or outside work that holds up all further work',
  message: ({ title, option, name, away }) => ({
    what: `No work of option ${clip(option)} uses “${clip(title)}”, so all further work waits until it is ${away ? 'back' : 'there'}.`,
    why: 'Nothing says which work needs it, and what could be done meanwhile is planned too late.',
    instead: name === undefined ? 'Write it at the left edge with a name, and name that behind uses of the work that fits it.' : `Name it behind uses of the work that fits it: uses ${clip(name)}`,
  }),
  example: example({ lines: 'part pump "Injection pump, set anew" 300.00 new arrives 6 d\nlabour seal "Front seal" 2 h\n  because seen\nlabour filter "Fuel filter" 1 h\n', one: '  do seal, filter\n  fit «pump»\n' }),
};

/** Told where the option says it: the same line may be used by the work of another option. */
export const waitsCheck = optionCheck(allWorkWaits, function* find({ option, weighed }) {
  const { record: { values, block }, name: ofOption } = option;
  const named = [values['fit'], values['send']].flatMap((names) => (names as readonly Name[] | undefined) ?? []);
  const names = new Map(named.map(({ name, at }) => [name, at]));
  const said = (thing: Part | Sublet) => (thing.name !== undefined ? names.get(thing.name) : thing.record.block === block ? thing.at : undefined);
  const parts = names.size > 0 ? option.parts : unnamed.itemsIn(option.parts, option.record);
  // The plan is asked only where the option itself says something that is waited for.
  const tell = (thing: Part | Sublet, wait: Span, away: boolean) => {
    const at = said(thing);
    if (at === undefined || !weighed.ready.holdsAll(wait)) return [];
    const { title, name } = thing;
    return [found(allWorkWaits, at, { title, option: ofOption, name, away }, name === undefined ? undefined : { at: thing.at, says: 'Its line' })];
  };
  for (const part of parts) if (part.arrives !== undefined) yield* tell(part, part.arrives.at, false);
  for (const sublet of option.sublets) if (sublet.backIn !== undefined || sublet.after.length > 0) yield* tell(sublet, sublet.backIn?.at ?? sublet.at, true);
});

const unnamed = new Places<Part>(({ name }) => name === undefined);
