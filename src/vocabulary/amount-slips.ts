import type { Token } from '../language/index.js';
import type { Cursor } from './cursor.js';
import { decimalOf } from './decimal.js';
import { isYears, type Dimension, type Unit } from './units.js';
import * as rules from './value-rules.js';

/** Reports `4 - 6` and `4 to 6` behind the first figure; false where no second one comes so. `to` leads to an amount of its own behind a percentage. */
export function reportTwo(cursor: Cursor, first: Token, measures: readonly Dimension[]): boolean {
  const [between, second] = [cursor.peek(), cursor.peek(1)];
  if (second?.kind !== 'number' || (between?.text !== '-' && (between?.text !== 'to' || measures.includes('percent')))) return false;
  cursor.report(rules.twoFigures, cursor.span(first, second), { low: first.text, high: second.text });
  return true;
}

/** Reports figures that are followed by years, where time by the calendar is wanted; false where they are not. */
export function reportYears(cursor: Cursor, first: Token, last: Token, measures: readonly Dimension[]): boolean {
  const word = cursor.peek();
  if (word?.kind !== 'word' || !measures.includes('wait') || !isYears(word.text)) return false;
  const months = cursor.block.text.slice(first.start, last.end).replace(/\d+(?:\.\d+)?/g, (years) => decimalOf(years).times(12).toFixed());
  cursor.report(rules.wrongUnit, cursor.span(first, word), { written: word.text, accepts: '', meant: `${months} mo` });
  return true;
}

/** Reports what goes on behind a whole amount: `4 h / 5 h / 7 h` and `5 h 30 min`; false where nothing does. */
export function reportMore(cursor: Cursor, first: Token, unit: Unit | undefined): boolean {
  const next = cursor.peek();
  if (next?.kind === 'number' && unit?.word === 'h') {
    const minutes = cursor.peek(1);
    if (minutes?.text !== 'min') return false;
    const all = decimalOf(first.text).times(60).plus(decimalOf(next.text));
    const inHours = all.div(60);
    cursor.report(rules.timeInTwo, cursor.span(first, minutes), { plain: inHours.decimalPlaces() <= 2 ? `${inHours.toFixed()} h` : `${all.toFixed()} min` });
    return true;
  }
  return next?.text === '/' && next.kind === 'mark' && reportRepeated(cursor, first);
}

/** Each figure of a range with its unit. */
function reportRepeated(cursor: Cursor, first: Token): boolean {
  const unit = cursor.peek(-1) as Token;
  const figures = [first];
  let last = unit;
  let ahead = 0;
  while (cursor.peek(ahead)?.text === '/' && cursor.peek(ahead + 1)?.kind === 'number') {
    last = cursor.peek(ahead + 1) as Token;
    figures.push(last);
    ahead += 2;
    if (cursor.peek(ahead)?.text !== unit.text) continue;
    last = cursor.peek(ahead++) as Token;
  }
  if (figures.length === 2) cursor.report(rules.twoFigures, cursor.span(first, last), { low: first.text, high: figures[1]?.text ?? '' });
  else if (figures.length === 3) cursor.report(rules.unitRepeated, cursor.span(first, last), { plain: `${figures.map(({ text }) => text).join(' / ')}${unit.text === '%' ? '' : ' '}${unit.text}` });
  return figures.length === 2 || figures.length === 3;
}
