import type { Rule, Span } from '../language/index.js';

const write = (at: Span, text: string) => ({ title: `Write ${text}`, at, text });
const inPart = (line: string) => `steelyard 1\npart pump "Coolant pump" ${line}\n`;
const lost = 'The figure is left out of the totals until it can be read without doubt.';

export const thousandsComma: Rule<{ readonly plain: string; readonly decimals?: string }> = {
  code: 'thousands-comma', family: 'shape', severity: 'error', title: 'A comma inside a number',
  message: ({ plain, decimals }) => ({
    what: 'There is a comma inside this number.',
    why: `A comma could mean thousands or decimals, and the two differ by a factor of a thousand. ${lost}`,
    instead: decimals === undefined ? `Write ${plain}: no thousands sign, and a point before the cents.` : `Write ${plain} where thousands are meant, ${decimals} where decimals are.`,
  }),
  fix: ({ plain }, at) => write(at, plain),
  example: inPart('«1,250.00» new'),
};

/** What to write where a price is to be lower. */
export const DISCOUNT = 'For a discount write the lower price itself, such as 114.00 in place of 120.00 less 5 %.';

export const negativeFigure: Rule<{ readonly positive: string; readonly measures?: string | undefined }> = {
  code: 'negative-figure', family: 'shape', severity: 'error', title: 'A negative figure',
  message: ({ positive, measures }) => measures === undefined
    ? { what: 'A figure in an estimate is never negative.', why: 'Whether it is owed or given back follows from the line it stands on, so a minus sign would turn a charge into a credit.', instead: `Write ${positive}. A discount is the lower price itself; money that comes back stands behind core, keeps or harvest.` }
    : { what: 'A figure in an estimate is never negative.', why: `A minus sign would take away what the line adds. ${lost}`, instead: measures === '%' ? `Write ${positive}%, or leave it out. ${DISCOUNT}` : `Write ${positive} ${measures}, or leave it out.` },
  // Without its minus a share that is taken off would be added.
  fix: ({ positive, measures }, at) => (measures === '%' ? undefined : write(at, positive)),
  example: inPart('«-64.30» new'),
};

export const currencySign: Rule<{ readonly plain: string }> = {
  code: 'currency-sign', family: 'shape', severity: 'error', title: 'A currency sign at a number',
  message: ({ plain }) => ({ what: 'There is a currency sign at this number.', why: `Several currencies share a sign; the shop file names the one in use. ${lost}`, instead: `Write ${plain}, or ${plain} with the currency's three letters after it.` }),
  fix: ({ plain }, at) => write(at, plain),
  example: inPart('«$64.30» new'),
};

export const currencyWord: Rule<{ readonly written: string; readonly proper: string }> = {
  code: 'currency-word', family: 'shape', severity: 'error', title: 'A currency in another form',
  message: ({ written, proper }) => ({ what: `“${clip(written)}” is not how an amount with its currency is written.`, why: `A currency is three capital letters behind its figure. ${lost}`, instead: `Write ${proper}, or the figure alone: the shop file names the currency.` }),
  fix: ({ proper }, at) => write(at, proper),
  example: 'steelyard 1\nshop "Corner Bay Garage"\n  currency USD\npart pump "Coolant pump" «64.30 usd» new\n',
};

export const gluedUnit: Rule<{ readonly apart: string }> = {
  code: 'glued-unit', family: 'shape', severity: 'error', title: 'A unit without a space before it',
  message: ({ apart }) => ({ what: 'The unit stands right behind the number.', why: `A space keeps numbers and words apart, so that 11h is never taken for a name. ${lost}`, instead: `Write ${apart}.` }),
  fix: ({ apart }, at) => write(at, apart),
  example: 'steelyard 1\nlabour swap "Swap the engine" «11h»\n',
};

export const gluedComma: Rule<{ readonly apart: string }> = {
  code: 'glued-comma', family: 'shape', severity: 'error', title: 'A comma without a space behind it',
  message: ({ apart }) => ({ what: 'There is no space behind the comma.', why: 'Between digits a comma without a space could be part of a number.', instead: `Write ${apart}.` }),
  fix: ({ apart }, at) => write(at, apart),
  example: 'steelyard 1\nfinding codes "Codes read"\n  code «0301,0420»\n',
};

export const notANumber: Rule<{ readonly written: string; readonly plain: string | undefined }> = {
  code: 'not-a-number', family: 'shape', severity: 'error', title: 'Not a plain number',
  message: ({ written, plain }) => ({ what: `“${clip(written)}” is not a plain number.`, why: lost, instead: plain === undefined ? 'Write digits, and a point before the decimals: 64.30.' : `Write ${plain}.` }),
  fix: ({ plain }, at) => (plain === undefined ? undefined : write(at, plain)),
  example: inPart('«.50» new'),
};

export const numberTooLong: Rule<{ readonly written: string }> = {
  code: 'number-too-long', family: 'shape', severity: 'error', title: 'A number with too many digits',
  message: () => ({ what: 'This number has more digits than an estimate can need (12 before the point, 6 after).', why: 'It is almost certainly a slip, and it would swamp every total.', instead: 'Write the figure that was meant.' }),
  example: inPart('«12345678901234567890» new'),
};

export const twoFigures: Rule<{ readonly low: string; readonly high: string }> = {
  code: 'two-figures', family: 'shape', severity: 'error', title: 'Two figures where one or three belong',
  message: ({ low, high }) => ({ what: 'There are two figures here.', why: 'The quote uses the likely figure, and with two there is none.', instead: `Write low / likely / high, such as ${low} / LIKELY / ${high}, or just the likely one.` }),
  example: 'steelyard 1\nlabour swap "Swap the engine" «4.5 / 8» h\n',
};

export const figuresOutOfOrder: Rule<{ readonly sorted: string }> = {
  code: 'figures-out-of-order', family: 'shape', severity: 'error', title: 'Three figures out of order',
  message: ({ sorted }) => ({ what: 'The three figures do not rise.', why: 'They are read as low / likely / high, and the likely one is quoted.', instead: `Write ${sorted} if that is what was meant.` }),
  fix: ({ sorted }, at) => write(at, sorted),
  example: 'steelyard 1\nlabour swap "Swap the engine" «7.5 / 6.5 / 11» h\n',
};

export const unitMissing: Rule<{ readonly accepts: string; readonly example: string; readonly meant?: string | undefined }> = {
  code: 'unit-missing', family: 'shape', severity: 'error', title: 'A figure without its unit',
  message: ({ accepts, example, meant }) => ({ what: 'This figure has no unit.', why: `Without one, hours, days and money can't be told apart. ${lost}`, instead: meant === undefined ? `Write ${accepts} after it, such as ${example}.` : `Write ${accepts} after it: ${meant}.` }),
  example: 'steelyard 1\nlabour swap "Swap the engine"\n  takes «4.5»\n',
};

export const unitRepeated: Rule<{ readonly plain: string }> = {
  code: 'unit-repeated', family: 'shape', severity: 'error', title: 'A unit behind each of three figures',
  message: ({ plain }) => ({ what: 'The unit stands behind more than one of these figures.', why: `Three figures are one amount, with one unit. ${lost}`, instead: `Write ${plain}.` }),
  fix: ({ plain }, at) => write(at, plain),
  example: 'steelyard 1\nlabour swap "Swap the engine" «4 h / 5 h / 7 h»\n',
};

export const timeInTwo: Rule<{ readonly plain: string }> = {
  code: 'time-in-two', family: 'shape', severity: 'error', title: 'Hours and minutes side by side',
  message: ({ plain }) => ({ what: 'This time is written in two figures.', why: `One amount is one figure with its unit. ${lost}`, instead: `Write ${plain}.` }),
  fix: ({ plain }, at) => write(at, plain),
  example: 'steelyard 1\nlabour swap "Swap the engine" «5 h 30 min»\n',
};

export const readingsDivided: Rule<{ readonly plain: string }> = {
  code: 'readings-divided', family: 'shape', severity: 'error', title: 'Readings with commas between them',
  message: ({ plain }) => ({ what: 'There are commas between these readings.', why: `A comma could be part of a number, so readings have spaces between them. ${lost}`, instead: `Write ${plain}` }),
  fix: ({ plain }, at) => write(at, plain),
  example: 'steelyard 1\nfinding low "Cylinder 4 low"\n  leakage «8, 9, 7, 82» %\n',
};

export const wrongUnit: Rule<{ readonly written: string; readonly accepts: string; readonly meant: string | undefined }> = {
  code: 'wrong-unit', family: 'shape', severity: 'error', title: 'A unit that does not belong here',
  message: ({ written, accepts, meant }) => ({ what: `“${clip(written)}” is not a unit that fits here.`, why: lost, instead: `Write ${meant ?? accepts}.` }),
  fix: ({ meant }, at) => (meant === undefined ? undefined : write(at, meant)),
  example: 'steelyard 1\nlabour swap "Swap the engine" 4.5 «hrs»\n',
};

export const notWhole: Rule<{ readonly wanted: string; readonly least: number; readonly most: number; readonly example: string }> = {
  code: 'not-whole', family: 'shape', severity: 'error', title: 'A figure that can’t be counted so',
  message: ({ wanted, least, most, example }) => ({ what: `Here stands ${wanted}: one whole number from ${least} to ${most}.`, why: 'What is worked out with this figure would mean nothing.', instead: `Write it as in: ${example}` }),
  example: 'steelyard 1\nestimate "Van"\n  technicians «0»\n',
};

export const noSuchDate: Rule<{ readonly written: string; readonly month?: string | undefined }> = {
  code: 'no-such-date', family: 'shape', severity: 'error', title: 'A date that does not exist',
  message: ({ written, month }) => ({ what: /^\d{4}-\d\d-\d\d$/.test(written) ? `There is no ${clip(written)} in the calendar.` : `“${clip(written)}” is not a date in the form that is read here.`, why: 'Days and months stand in another order from place to place; deadlines and the ready date are counted from it.', instead: month === undefined ? 'Write year-month-day, such as 2026-11-30.' : `Write year-month, or year-month-day where the day is known: ${month}` }),
  example: 'steelyard 1\nestimate "Van"\n  start «2026-02-30»\n',
};

export const expected: Rule<{ readonly wanted: string; readonly example: string; readonly found: string | undefined }> = {
  code: 'something-missing', family: 'shape', severity: 'error', title: 'Something is missing',
  message: ({ wanted, example, found }) => ({ what: found === undefined ? `Missing here: ${wanted}.` : `“${clip(found)}” stands where ${wanted} should stand.`, why: 'The line is not complete without it.', instead: `Write it as in: ${example}` }),
  example: 'steelyard 1\npart pump "Coolant pump" 64.30 new «arrives»\n',
};

export const notAChoice: Rule<{ readonly written: string; readonly choices: readonly string[]; readonly meant: string | undefined; readonly why?: string | undefined }> = {
  code: 'not-a-choice', family: 'shape', severity: 'error', title: 'A word that is not one of the choices',
  message: ({ written, choices, meant, why }) => ({ what: `“${clip(written)}” is not one of the words that can stand here.`, why: why ?? 'What the line says hangs on this word, so none is guessed.', instead: meant === undefined ? `Write one of: ${choices.join(', ')}.` : `Did you mean ${meant}? The choices are ${choices.join(', ')}.` }),
  fix: ({ meant }, at) => (meant === undefined ? undefined : write(at, meant)),
  example: 'steelyard 1\nfinding pan "Looked in the pan"\n  debris «magnetc»\n',
};

/** Long runs are cut in messages, and quotes and line ends in them can't break the sentence. */
export function clip(written: string): string {
  const flat = written.replace(/\s+/g, ' ');
  return flat.length > 40 ? `${flat.slice(0, 40)}…` : flat;
}
