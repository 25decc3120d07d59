import type { Token } from '../language/index.js';
import { reportMore, reportTwo, reportYears } from './amount-slips.js';
import { reportCurrency } from './currency-word.js';
import type { Cursor } from './cursor.js';
import { decimalOf, hundred, type Decimal } from './decimal.js';
import { isSign, looksNumeric, readNumber } from './numbers.js';
import { bothReadings } from './thousands.js';
import { unitMeantBy, unitOf, unitsOf, type Dimension, type Unit } from './units.js';
import * as rules from './value-rules.js';
import type { Amount, ValueType } from './value.js';
import type { Zod, ZodType } from './zod.js';

/** A figure as data: its three points (equal where one was written) and its unit. */
export interface AmountData {
  readonly low: string;
  readonly likely: string;
  readonly high: string;
  readonly unit?: string;
}

let schema: ZodType<AmountData> | undefined;

/** The form of a figure as data: one schema for all slots, so that what is made of it can give it a name. */
export function amountSchema(z: Zod): ZodType<AmountData> {
  return (schema ??= makeSchema(z));
}

function makeSchema(z: Zod): ZodType<AmountData> {
  const decimalText = z.string().regex(/^\d+(\.\d+)?$/).describe('Decimal digits, exactly as they are worth; never a binary float.');
  return z.strictObject({ low: decimalText, likely: decimalText, high: decimalText, unit: z.string().exactOptional() })
    .describe('A figure: low, likely and high, which are equal where one number was written.');
}

interface AmountOptions {
  readonly label: string;
  readonly says: string;
  readonly examples: readonly string[];
  readonly measures: readonly Dimension[];
}

/** A slot for a figure that measures one of the given dimensions. */
export function amountOf(options: AmountOptions): ValueType<Amount> {
  return {
    ...options,
    schema: amountSchema,
    starts: looksNumeric,
    read(cursor) {
      const amount = readAmount(cursor, options);
      return amount === undefined ? undefined : fits(cursor, amount, options);
    },
    toJson: (amount) => amountJson(amount),
  };
}

function amountJson(amount: Amount): AmountData {
  const unit = amount.percent ? '%' : (amount.unit?.word ?? amount.currency);
  const points = { low: amount.low.toFixed(), likely: amount.likely.toFixed(), high: amount.high.toFixed() };
  return unit === undefined ? points : { ...points, unit };
}

/** Reads `N` or `N / N / N` and what follows of `%`, a unit or a currency. Whether it fits is another question. */
export function readAmount(cursor: Cursor, wanted: Pick<AmountOptions, 'label' | 'examples'> & { readonly measures?: readonly Dimension[] }): Amount | undefined {
  const first = cursor.peek();
  if (first === undefined || !looksNumeric(first)) {
    if (first !== undefined && (cursor.isSpoiled(first) || reportCurrency(cursor))) return undefined;
    return cursor.report(rules.expected, cursor.hereSpan(), { wanted: wanted.label, example: wanted.examples[0] ?? '', found: first?.text });
  }
  cursor.take();
  const second = cursor.peek();
  if (isSign(first) && second?.kind === 'number') return cursor.report(rules.currencySign, cursor.span(first, second), { plain: second.text });
  const low = readNumber(cursor, first);
  if (low === undefined) return undefined;
  let likely = low;
  let high = low;
  let last: Token = first;
  if (cursor.takeIf('/')) {
    const rest = readRest(cursor, first, low, wanted);
    if (rest === undefined) return undefined;
    ({ likely, high, last } = rest);
  } else if (reportTwo(cursor, first, wanted.measures ?? [])) return undefined;
  let unit: Unit | undefined;
  let percent = false;
  let currency: string | undefined;
  const next = cursor.peek();
  if (next !== undefined && isSign(next)) return cursor.report(rules.currencySign, cursor.span(first, next), { plain: cursor.block.text.slice(first.start, last.end) });
  if (next?.kind === 'mark' && next.text === '%') {
    percent = true;
    last = next;
    cursor.take();
  } else if (next?.kind === 'word') {
    unit = unitOf(next.text);
    if (unit === undefined && unitMeantBy(next.text) !== undefined) {
      return cursor.report(rules.wrongUnit, cursor.span(next), { written: next.text, accepts: '', meant: unitMeantBy(next.text)?.word });
    }
    if (unit === undefined && reportYears(cursor, first, last, wanted.measures ?? [])) return undefined;
    if (unit === undefined && /^[A-Z]{3}$/.test(next.text)) currency = next.text;
    if (unit !== undefined || currency !== undefined) {
      last = next;
      cursor.take();
    }
  }
  if (last !== first && reportMore(cursor, first, unit)) return undefined;
  return { low, likely, high, unit, percent, currency, at: cursor.span(first, last) };
}

function readRest(cursor: Cursor, first: Token, low: Decimal, wanted: Pick<AmountOptions, 'label' | 'examples'>) {
  const second = cursor.peek();
  if (second === undefined || !looksNumeric(second)) {
    return cursor.report(rules.expected, cursor.hereSpan(), { wanted: 'the next of three figures', example: wanted.examples[1] ?? '4.5 / 5.5 / 8 h', found: second?.text });
  }
  cursor.take();
  const likely = readNumber(cursor, second);
  if (likely === undefined) return undefined;
  if (!cursor.takeIf('/')) return cursor.report(rules.twoFigures, cursor.span(first, second), { low: first.text, high: second.text });
  const third = cursor.peek();
  if (third === undefined || !looksNumeric(third)) {
    return cursor.report(rules.expected, cursor.hereSpan(), { wanted: 'the last of three figures', example: wanted.examples[1] ?? '4.5 / 5.5 / 8 h', found: third?.text });
  }
  cursor.take();
  const high = readNumber(cursor, third);
  if (high === undefined) return undefined;
  const fourth = cursor.peek();
  if (fourth?.kind === 'mark' && fourth.text === '/') return cursor.report(rules.expected, cursor.span(fourth), { wanted: 'the unit, or what comes after the third figure,', example: wanted.examples[1] ?? '4.5 / 5.5 / 8 h', found: fourth.text });
  if (low.gt(likely) || likely.gt(high)) {
    const sorted = risen([first, second, third].map(({ text }) => text));
    return cursor.report(rules.figuresOutOfOrder, cursor.span(first, third), { sorted });
  }
  return { likely, high, last: third };
}

/** Three figures in rising order: with the points of thousands taken out, where they rise then as they stand. */
function risen(written: readonly string[]): string {
  const asThousands = written.map((one) => bothReadings(one).thousands);
  const rises = asThousands.every((one, i) => i === 0 || decimalOf(asThousands[i - 1] as string).lte(decimalOf(one)));
  return (rises ? asThousands : [...written].sort((a, b) => decimalOf(a).comparedTo(decimalOf(b)))).join(' / ');
}

export function dimensionOf(amount: Amount): Dimension {
  if (amount.percent) return 'percent';
  if (amount.currency !== undefined) return 'money';
  return amount.unit?.dimension ?? 'plain';
}

/** Whether the slot takes such a figure: a bare number fits money and plain counts alike. */
export function accepts(measures: readonly Dimension[], dimension: Dimension): boolean {
  return measures.includes(dimension) || (dimension === 'plain' && measures.includes('money'));
}

export function fits(cursor: Cursor, amount: Amount, options: AmountOptions): Amount | undefined {
  const dimension = dimensionOf(amount);
  if (accepts(options.measures, dimension)) return amount;
  const named = unitsNamed(options.measures);
  if (dimension === 'plain') return cursor.report(rules.unitMissing, amount.at, { accepts: named, example: options.examples[0] ?? '', meant: percentMeant(amount, options.measures) });
  const unitEnd = { ...amount.at, start: amount.at.end - (amount.percent ? 1 : (amount.unit?.word ?? amount.currency ?? '').length) };
  return cursor.report(rules.wrongUnit, unitEnd, { written: amount.percent ? '%' : (amount.unit?.word ?? amount.currency ?? ''), accepts: named, meant: undefined });
}

/** A percentage without its sign; a share of one is as likely meant as what it says. */
function percentMeant({ low, likely, high }: Amount, measures: readonly Dimension[]): string | undefined {
  if (measures.length !== 1 || measures[0] !== 'percent' || !low.eq(high)) return undefined;
  const asWritten = `${likely.toFixed()}%`;
  return likely.gt(0) && likely.lt(1) ? `${likely.times(hundred).toFixed()}% where that is meant, or else ${asWritten}` : asWritten;
}

function unitsNamed(measures: readonly Dimension[]): string {
  const words = measures.flatMap((dimension) => {
    if (dimension === 'percent') return ['%'];
    if (dimension === 'money') return ['no unit (it is money)'];
    return unitsOf(dimension).map((unit) => unit.word);
  });
  return words.length > 1 ? `${words.slice(0, -1).join(', ')} or ${words[words.length - 1] ?? ''}` : (words[0] ?? 'no unit');
}
