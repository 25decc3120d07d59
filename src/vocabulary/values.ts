import type { Token } from '../language/index.js';
import type { Decimal } from './decimal.js';
import { amountOf } from './amounts.js';
import { looksNumeric, readNumber } from './numbers.js';
import type { Cursor } from './cursor.js';
import { badName } from './read-rules.js';
import { begun, closest } from './spelling.js';
import { unitMeantBy, unitOf, unitsOf, type Dimension, type Unit } from './units.js';
import * as rules from './value-rules.js';
import type { Choice, DateValue, Name, Readings, Text, ValueType } from './value.js';

export const money = amountOf({ label: 'an amount of money', says: 'Money in the shop’s currency, one figure or low / likely / high.', examples: ['64.30', '1450 / 1650 / 2400'], measures: ['money'] });
export const hours = amountOf({ label: 'hours of work', says: 'Working time in h or min, one figure or low / likely / high.', examples: ['4.5 h', '4.5 / 5.5 / 8 h'], measures: ['time'] });
export const workingWait = amountOf({ label: 'a wait', says: 'A wait of the shop: d counts working days; wk and mo run by the calendar, and part of a month is that part of its days.', examples: ['3 d', '2 / 3 / 8 d'], measures: ['wait'] });
export const calendarWait = amountOf({ label: 'a time by the calendar', says: 'Time by the calendar: d is a calendar day, wk seven of them, mo a calendar month; part of one is that part of its days.', examples: ['30 d', '12 mo'], measures: ['wait'] });
export const percent = amountOf({ label: 'a percentage', says: 'A percentage.', examples: ['8.25%'], measures: ['percent'] });
export const count = amountOf({ label: 'a plain number', says: 'A plain number without a unit.', examples: ['2'], measures: ['plain'] });
export const quantity = amountOf({ label: 'a quantity', says: 'How many or how much: a plain number, or one with a unit of volume, mass, length or days.', examples: ['12', '11 L'], measures: ['plain', 'volume', 'mass', 'length', 'wait'] });
export const distance = amountOf({ label: 'a distance', says: 'A distance in mi or km.', examples: ['131400 mi'], measures: ['distance'] });

/** A title or other text in quotes, with an example of what stands there. */
export function textSuchAs(example: string): ValueType<Text> {
  return {
    label: 'a text in quotes', says: 'Any text in double quotes.', examples: [`"${example}"`],
    schema: (z) => z.string(),
    starts: (token) => token.kind === 'text',
    read(cursor) {
      const token = cursor.peek();
      if (token?.kind !== 'text') return cursor.report(rules.expected, cursor.hereSpan(), { wanted: 'a text in quotes', example: `"${example}"`, found: token?.text });
      cursor.take();
      return { text: token.text, at: cursor.span(token) };
    },
    toJson: (value) => value.text,
  };
}

/** A text in quotes, or a single word where one is enough. */
export function wordsSuchAs(...examples: readonly [string, ...string[]]): ValueType<Text> {
  return {
    ...textSuchAs(''),
    label: 'a word or a text in quotes', says: 'One word, or any text in double quotes.', examples,
    read(cursor) {
      const token = cursor.peek();
      if (token?.kind !== 'text' && token?.kind !== 'word' && token?.kind !== 'mixed') return cursor.report(rules.expected, cursor.hereSpan(), { wanted: 'a word or a text in quotes', example: examples[0], found: token?.text });
      cursor.take();
      return { text: token.text, at: cursor.span(token) };
    },
  };
}

/** One word of a closed list. */
export function choice<W extends string>(label: string, meanings: Readonly<Record<W, string>>, told: { readonly why?: string; readonly also?: string } = {}): ValueType<Choice<W>> {
  const list = Object.keys(meanings) as W[];
  return {
    label, says: `One of: ${list.join(', ')}.`, examples: [list[0] as string],
    schema: (z) => z.enum(list),
    words: meanings,
    starts: (token) => token.kind === 'word' && Object.hasOwn(meanings, token.text),
    read(cursor) {
      const token = cursor.peek();
      if (token?.kind === 'word' && Object.hasOwn(meanings, token.text)) {
        cursor.take();
        return { word: token.text as W, at: cursor.span(token) };
      }
      if (token !== undefined && cursor.isSpoiled(token)) return undefined;
      if (token === undefined) return cursor.report(rules.expected, cursor.hereSpan(), { wanted: label, example: list.join(', '), found: undefined });
      return cursor.report(rules.notAChoice, cursor.span(token), { written: token.text, choices: told.also === undefined ? list : [...list, told.also], meant: closest(token.text, list) ?? begun(token.text, list), why: told.why });
    },
    toJson: (value) => value.word,
  };
}

/** Several of something, with commas between them. */
export function listOf<T>(item: ValueType<T>): ValueType<readonly T[]> {
  return {
    label: `${item.label}, or several with commas`, says: `${item.says} Several are written with commas.`, examples: item.examples,
    schema: (z) => z.array(item.schema(z)),
    starts: item.starts,
    item: item as ValueType<unknown>,
    ...(item.words === undefined ? {} : { words: item.words }),
    ...(item.refersTo === undefined ? {} : { refersTo: item.refersTo }),
    ...(item.builtIn === undefined ? {} : { builtIn: item.builtIn }),
    read(cursor) {
      const first = item.read(cursor);
      if (first === undefined) return undefined;
      const items = [first];
      while (cursor.takeIf(',')) {
        const value = item.read(cursor);
        if (value === undefined) return undefined;
        items.push(value);
      }
      return items;
    },
    toJson: (values) => values.map((value) => item.toJson(value)),
  };
}

/** Names such as lines of a kind have. */
const exampleNames: Readonly<Record<string, string>> = {
  finding: 'low-four', labour: 'pump', access: 'engine-out', part: 'head-bolts', sublet: 'head-work', fee: 'tow-in', tool: 'cam-lock', option: 'rebuild', rate: 'mechanical', chance: 'cracked',
};

/** The name of a record of one of these kinds. */
export function nameOf(refersTo: readonly string[], builtIn: Readonly<Record<string, string>> = {}): ValueType<Name> {
  const label = `the name of ${refersTo.map((kind) => (/^[aeiou]/.test(kind) ? `an ${kind}` : `a ${kind}`)).join(' or ')} line`;
  return {
    label, says: `Names ${refersTo.join(' or ')} lines of this estimate or of a file it uses.`, examples: [exampleNames[refersTo[0] ?? ''] ?? 'pump'],
    schema: (z) => z.string(),
    refersTo,
    builtIn,
    starts: (token) => token.kind === 'word',
    read(cursor) {
      const token = cursor.peek();
      if (token?.kind !== 'word') {
        if (token !== undefined && cursor.isSpoiled(token)) return undefined;
        return cursor.report(rules.expected, cursor.hereSpan(), { wanted: label, example: `${exampleNames[refersTo[0] ?? ''] ?? 'pump'}${token?.kind === 'text' ? ', the short name before a title' : ''}`, found: token?.text });
      }
      const second = cursor.peek(1);
      const both = second?.kind === 'word' ? `${token.text}-${second.text}` : '';
      if (second !== undefined && Object.hasOwn(builtIn, both)) return cursor.report(badName, cursor.span(token, second), { written: `${token.text} ${second.text}`, plain: both });
      cursor.take();
      return { name: token.text, at: cursor.span(token) };
    },
    toJson: (value) => value.name,
  };
}

export const names = (...refersTo: readonly string[]) => listOf(nameOf(refersTo));

function dateType(label: string, pattern: RegExp, example: string): ValueType<DateValue> {
  return {
    label, says: `${label}, written ${example}.`, examples: [example],
    schema: (z) => z.string().regex(pattern),
    starts: (token) => token.kind === 'date',
    read(cursor) {
      const token = cursor.peek();
      if (token === undefined || token.kind === 'text' || token.kind === 'word' || token.kind === 'mark') {
        return cursor.report(rules.expected, cursor.hereSpan(), { wanted: label, example, found: token?.text });
      }
      cursor.take();
      let last = token;
      while (cursor.takeIf('/')) last = cursor.take() ?? last; // 30/11/2026 is one mistake
      if (last !== token || !pattern.test(token.text) || !isDate(token.text)) {
        const written = cursor.block.text.slice(token.start, last.end);
        return cursor.report(rules.noSuchDate, cursor.span(token, last), { written, month: pattern.test('2012-11') ? monthMeantBy(written) : undefined });
      }
      return { iso: token.text, at: cursor.span(token) };
    },
    toJson: (value) => value.iso,
  };
}

/** The month that 3/2014 or 03.2014 stands for; an example where nobody can tell. */
function monthMeantBy(written: string): string {
  const [, month, year] = /^(0?[1-9]|1[0-2])[/.](\d{4})$/.exec(written) ?? [];
  return month === undefined || year === undefined ? '2012-11' : `${year}-${month.padStart(2, '0')}`;
}

export const date: ValueType<DateValue> = { ...dateType('a date', /^\d{4}-\d\d-\d\d$/, '2026-11-30'), day: true };
export const monthOrDate = dateType('a month or a date', /^\d{4}-\d\d(-\d\d)?$/, '2012-11');

/** Whether a YYYY-MM or YYYY-MM-DD exists in the (proleptic Gregorian) calendar. */
export function isDate(iso: string): boolean {
  const [year, month, day] = iso.split('-').map(Number) as [number, number, number?];
  if (year < 1800 || month < 1 || month > 12) return false;
  return day === undefined || (day >= 1 && day <= new Date(Date.UTC(year, month, 0)).getUTCDate());
}

const weekdays = { monday: 'Every Monday.', tuesday: 'Every Tuesday.', wednesday: 'Every Wednesday.', thursday: 'Every Thursday.', friday: 'Every Friday.', saturday: 'Every Saturday.', sunday: 'Every Sunday.' };
const weekday = choice('a day of the week', weekdays, { why: 'The ready date skips the days on which nobody works, so none is guessed.', also: 'a date such as 2026-12-25' });

/** A day of the week or a date. */
export const closedDay: ValueType<Choice | DateValue> = {
  label: 'a day of the week or a date', says: 'A day of the week (every week), or one date.', examples: ['saturday', '2026-12-25'],
  schema: (z) => z.union([weekday.schema(z), date.schema(z)]),
  words: weekdays,
  alone: 'Say whole days only, each day and each date by itself, with commas: saturday, 2026-12-24, 2026-12-25',
  starts: (token) => token.kind === 'word' || token.kind === 'date',
  read(cursor) {
    const kind = cursor.peek()?.kind;
    return kind === 'date' || kind === 'number' || kind === 'mixed' ? date.read(cursor) : weekday.read(cursor);
  },
  toJson: (value) => ('iso' in value ? value.iso : value.word),
};

/** Readings with commas between them, up to the unit. */
function reportDivided(cursor: Cursor, first: Token): undefined {
  const figures = [cursor.peek(-1) as Token];
  let ahead = 0;
  for (let next = cursor.peek(ahead + 1); cursor.peek(ahead)?.text === ',' && next?.kind === 'number'; next = cursor.peek(ahead + 1)) {
    figures.push(next);
    ahead += 2;
  }
  const { text } = cursor.block;
  const before = text.slice(first.start, (figures[0] as Token).end);
  return cursor.report(rules.readingsDivided, cursor.span(first, figures.length === 1 ? (cursor.peek() as Token) : figures[figures.length - 1]), { plain: [before, ...figures.slice(1).map((one) => one.text)].join(' ') });
}

/** A row of readings with one unit behind the last. */
export function readings(label: string, measures: readonly Dimension[], example: string): ValueType<Readings> {
  const wants = measures[0] === 'percent' ? '%' : unitsOf(measures[0] as Dimension).map((unit) => unit.word).join(', ');
  return {
    label, says: 'The numbers stand in the order of the cylinders, the unit behind the last.', examples: [example], measures,
    row: true,
    schema: (z) => z.strictObject({ values: z.array(z.string()), unit: z.string() }),
    starts: looksNumeric,
    read(cursor) {
      const first = cursor.peek();
      if (first === undefined || !looksNumeric(first)) return cursor.report(rules.expected, cursor.hereSpan(), { wanted: label, example, found: first?.text });
      const values: Decimal[] = [];
      for (let token = cursor.peek(); token !== undefined && looksNumeric(token); token = cursor.peek()) {
        cursor.take();
        const value = readNumber(cursor, token);
        if (value === undefined) return undefined;
        values.push(value);
      }
      const last = cursor.lastSpan();
      const unitToken = cursor.peek();
      let unit: Unit | undefined;
      if (unitToken === undefined) return cursor.report(rules.unitMissing, { ...last, start: first.start }, { accepts: wants, example });
      if (unitToken.text === ',') return reportDivided(cursor, first);
      const isPercent = unitToken.text === '%' && measures.includes('percent');
      if (!isPercent) {
        unit = unitOf(unitToken.text);
        if (unit === undefined || !measures.includes(unit.dimension)) {
          const meant = unitMeantBy(unitToken.text);
          return cursor.report(rules.wrongUnit, cursor.span(unitToken), { written: unitToken.text, accepts: wants, meant: meant !== undefined && measures.includes(meant.dimension) ? meant.word : undefined });
        }
      }
      cursor.take();
      return { values, unit, at: cursor.span(first, unitToken) };
    },
    toJson: (value) => ({ values: value.values.map((v) => v.toFixed()), unit: value.unit?.word ?? '%' }),
  };
}

/** A vehicle identification number, or another run of letters and digits, with an example. */
export function runSuchAs(example: string): ValueType<Text> {
  return {
    label: 'letters and digits', says: 'Letters and digits without spaces.', examples: [example],
    schema: (z) => z.string(),
    starts: (token) => token.kind === 'word' || token.kind === 'mixed' || token.kind === 'number',
    read(cursor) {
      const token = cursor.peek();
      if (token === undefined || token.kind === 'mark' || token.kind === 'text' || token.kind === 'strange') {
        return cursor.report(rules.expected, cursor.hereSpan(), { wanted: 'letters and digits', example, found: token?.text });
      }
      if (token.text.includes(',')) return cursor.report(rules.gluedComma, cursor.span(token), { apart: token.text.split(',').join(', ') });
      cursor.take();
      return { text: token.text, at: cursor.span(token) };
    },
    toJson: (value) => value.text,
  };
}
