import * as z from 'zod';
import { digits, place } from '../schema-values.js';

const at = () => place().optional().describe('Where it is written in that version.');

/**
 * The schema of what `steelyard changes --json` prints; the one in schemas/ is emitted from this. Built when it is asked
 * for: an editor never does.
 */
export function changesReport() {
  const said = (which: string) => z.strictObject({
    kind: z.string().describe('First word of the line, such as labour or part.'),
    name: z.string().nullable(),
    title: z.string(),
    under: z.string().nullable().describe('Title of the line that it stands below.'),
    at: at(),
  }).nullable().describe(`The line as the ${which} version has it; null where it has none.`);

  const effect = (says: string) => z.array(z.strictObject({
    option: z.string().describe('The name of the option: the new one, where it has two.'),
    total: digits().describe('In its total.'),
    inAll: digits().describe('In its cost in all, by which options are compared.'),
  })).describe(says);

  const turn = (says: string) => z.strictObject({
    told: z.enum(['yes', 'none', 'unknown', 'beyond']).describe('none: nothing that is weighed rests on it. unknown: the text with only this change, or without it, can’t be weighed. beyond: more changes than are tried one by one.'),
    options: z.array(z.strictObject({
      option: z.string(),
      daysBefore: digits(), daysAfter: digits(),
      readyBefore: z.string().nullable(), readyAfter: z.string().nullable(),
      inAllBefore: digits(), inAllAfter: digits(),
    })).describe('Options that both texts have: working days until it is ready, the day (YYYY-MM-DD, null without a day to start from), and the cost in all.'),
    pickBefore: z.string().nullable(),
    pickAfter: z.string().nullable(),
  }).describe(says);

  const change = z.strictObject({
    sort: z.enum(['came', 'went', 'moved', 'renamed', 'elsewhere']).describe('elsewhere: it stands below another line, with what else it says now.'),
    sentence: z.string(),
    before: said('old'),
    after: said('new'),
    link: z.strictObject({ word: z.string(), by: z.string().describe('The title of the line that brings it in.') }).nullable().describe('Set where the line itself is the same and another brings it in, or does no more.'),
    facts: z.array(z.strictObject({ fact: z.string(), before: z.string().nullable(), after: z.string().nullable() })).describe('What it says, as written; null where that version doesn’t say it.'),
    effects: effect('Exact, for every option that it moves.'),
    alone: turn('The old version against the old version with only this change.'),
    last: turn('The new version without this change against the new version: what it adds on top of all the others.'),
  });

  const state = z.strictObject({
    title: z.string(), total: digits(), inAll: digits(), hours: digits(), days: digits(),
    ready: z.string().nullable(), ways: z.array(z.string()).describe('Names of the ways in; empty means in the car.'), complete: z.boolean(),
    ruledOut: z.array(z.string()).describe('Titles of the findings that speak against it; with any it is no choice.'), at: at(),
  }).nullable();

  const side = z.strictObject({
    name: z.string(),
    title: z.string().nullable(),
    trouble: z.enum(['missing', 'unreadable', 'no-option']).nullable().describe('What stops it from being weighed.'),
    pick: z.strictObject({ option: z.string(), inAll: digits(), less: digits().nullable().describe('Less than the next.'), next: z.string().nullable() }).nullable(),
  });

  return z.strictObject({
    steelyard: z.literal(1),
    report: z.literal('changes'),
    before: side,
    after: side,
    currency: z.strictObject({ code: z.string().nullable(), digits: z.int() }),
    comparable: z.boolean().describe('False where the two versions count in different money; then there are no effects.'),
    options: z.array(z.strictObject({ name: z.string().describe('The new one, where it has two; with “, gone” behind it where another option has the name of one that is gone.'), before: state, after: state })),
    changes: z.array(change).describe('Largest effect first.'),
    follows: z.array(z.strictObject({
      sort: z.enum(['ways', 'rate', 'fee', 'tax', 'refund', 'tax-back', 'worth', 'rounding', 'other']),
      sentence: z.string(),
      effects: effect('Exact, for every option that it moves.'),
    })).describe('What follows from the changes without being a line of its own. With the effects of the changes it adds up to the new less the old figure of every option.'),
    sentences: z.array(z.string()).describe('What must be known first, the choice, and the days.'),
  }).describe('What changed between two versions of an estimate.');
}

export type ChangesReport = z.infer<ReturnType<typeof changesReport>>;
