import type { Rule } from '../language/index.js';
import { clip } from '../vocabulary/index.js';

const shop = 'steelyard 1\nshop "S"\n  rate bench 100.00\n';
const job = `${shop}option repair "Repair the head"\n  labour "Rear head" 8 h\n`;

export const agreedUnclear: Rule<{ readonly kind: 'quoted' | 'authorised' | 'started'; readonly lacks: 'amount' | 'for' | 'on' }> = {
  code: 'agreed-unclear', family: 'shape', severity: 'error', title: 'An authorisation or the like that lacks something',
  message: ({ kind, lacks }) => ({
    what: lacks === 'amount' ? 'This line does not say how much.' : lacks === 'for' ? 'This line does not say for which option, and there are several.' : 'This line does not say on which day.',
    why: kind === 'started' ? 'Since when the job is in work can’t be told without it.' : kind === 'quoted' ? 'What the customer was given can’t be told later without it.' : 'What the customer agreed to can’t be held against today’s total without it.',
    instead: `Write it as in: ${kind === 'started' ? 'started on 2026-11-30' : `${kind} 940.00 for repair on 2026-11-25`}`,
  }),
  example: `${job}«authorised 800.00 for repair»\n`,
};

export const oneFigure: Rule<{ readonly likely: string }> = {
  code: 'one-figure', family: 'shape', severity: 'warning', title: 'Three figures where one was agreed',
  message: ({ likely }) => ({ what: 'What was agreed is one figure: the middle one is used.', why: 'Whether more must be asked for can’t hang on a range.', instead: `Write ${likely}.` }),
  fix: ({ likely }, at) => ({ title: `Write ${likely}`, at, text: likely }),
  example: `${job}authorised «700 / 800.00 / 900» for repair on 2026-11-25\n`,
};

export const authorisedSameDay: Rule<{ readonly name: string; readonly on: string }> = {
  code: 'authorised-same-day', family: 'names', severity: 'warning', title: 'Two authorisations on one day',
  message: ({ name, on }) => ({ what: `${clip(name)} is authorised twice on ${clip(on)}.`, why: 'Each authorisation stands for the whole amount, and the day does not say which came last; the lower line is used.', instead: 'Keep the one that holds; if the customer agreed to more later that day, write the new whole amount on one line.' }),
  example: `${job}authorised 800.00 for repair on 2026-11-25\n«authorised 850.00 for repair on 2026-11-25»\n`,
};

export const dayBeforeWritten: Rule<{ readonly kind: 'quoted' | 'authorised' | 'started'; readonly on: string; readonly written: string }> = {
  code: 'day-before-written', family: 'shape', severity: 'warning', title: 'A day before the estimate was written',
  message: ({ kind, on, written }) => ({
    what: `This says ${clip(on)}, and the estimate was written on ${clip(written)}.`,
    why: kind === 'started' ? 'The days that the job takes are counted from it.' : 'Nobody can have read or agreed to what was not written yet.',
    instead: 'Correct one of the two dates.',
  }),
  example: `${shop}estimate "Van"\n  written 2026-11-24\noption repair "Repair the head"\n  worth 900.00\nauthorised 800.00 for repair on «2025-11-25»\n`,
};

export const dayFarOff: Rule<{ readonly kind: 'quoted' | 'authorised' | 'started'; readonly on: string; readonly written: string }> = {
  code: 'day-far-off', family: 'shape', severity: 'warning', title: 'A day more than a year after the estimate was written',
  message: ({ kind, on, written }) => ({
    what: `This says ${clip(on)}, more than a year after the estimate was written on ${clip(written)}.`,
    why: kind === 'started' ? 'Until that day no work counts as begun.' : `Until that day nothing counts as ${kind}, and by then prices are others.`,
    instead: 'Look at the year again, or at the day behind written.',
  }),
  example: `${shop}estimate "Van"\n  written 2026-11-24\noption repair "Repair the head"\n  worth 900.00\nauthorised 800.00 for repair on «2062-11-25»\n`,
};

export const overrunUnclear: Rule<{ readonly is: 'empty' | 'both' | 'fixed with limits' | 'backwards' | 'over hundred' }> = {
  code: 'overrun-unclear', family: 'money', severity: 'warning', title: 'A room for overruns that can’t be worked out',
  message: ({ is }) => ({
    what: {
      empty: 'This line does not say how much.',
      both: 'This line gives a percentage and an amount, and not which of them holds.',
      'fixed with limits': 'A fixed amount takes neither at least nor at most.',
      backwards: 'The least is more than the most.',
      'over hundred': 'An overrun of more than 100 % is more than the job itself.',
    }[is],
    why: 'Until it can be read there is no room: whatever is above what was authorised must be asked.',
    instead: 'Write it as in: overrun 10% at least 10.00 at most 50.00, where the percentage holds between the two; or overrun 50.00.',
  }),
  example: 'steelyard 1\nshop "S"\n  rate bench 100.00\n  «overrun at most 50.00»\n',
};
