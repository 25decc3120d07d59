import type { Token } from '../language/index.js';
import type { Cursor } from './cursor.js';
import { decimalOf, type Decimal } from './decimal.js';
import { bothReadings } from './thousands.js';
import { unitMeantBy, unitOf } from './units.js';
import * as rules from './value-rules.js';

const MAX_WHOLE_DIGITS = 12;
const MAX_DECIMALS = 6;

/** Whether a person meant this token as a number, well written or not. */
export function looksNumeric(token: Token): boolean {
  if (token.kind === 'number') return true;
  return token.kind === 'mixed' && (/^[-+.]?\.?\d/.test(token.text) || isSign(token) || withoutSign(token.text) !== undefined);
}

/** Reads one number, or reports in the trade's words why it can't be one. */
export function readNumber(cursor: Cursor, token: Token): Decimal | undefined {
  const at = cursor.span(token);
  const text = token.text;
  if (token.kind === 'number') {
    const point = text.indexOf('.');
    const whole = point < 0 ? text.length : point;
    if (whole > MAX_WHOLE_DIGITS || (point >= 0 && text.length - point - 1 > MAX_DECIMALS)) {
      return cursor.report(rules.numberTooLong, at, { written: text });
    }
    return decimalOf(text);
  }
  if (/^-\d+(\.\d+)?$/.test(text)) return cursor.report(rules.negativeFigure, at, { positive: text.slice(1), measures: unitBehind(cursor) });
  const range = /^(\d+(?:\.\d+)?)-(\d+(?:\.\d+)?)$/.exec(text);
  if (range !== null) return cursor.report(rules.twoFigures, at, { low: range[1] as string, high: range[2] as string });
  const plain = withoutSign(text);
  if (plain !== undefined) return cursor.report(rules.currencySign, at, { plain });
  const decimals = /^[1-9]\d{0,2},\d{3}$/.test(text) ? bothReadings(text.replace(',', '.')).decimals : undefined;
  if (decimals !== undefined) return cursor.report(rules.thousandsComma, at, { plain: text.replace(',', ''), decimals });
  if (/^[1-9]\d{0,2}(,\d{3})+(\.\d+)?$/.test(text)) return cursor.report(rules.thousandsComma, at, { plain: text.replaceAll(',', '') });
  if (/^\d+,\d+$/.test(text)) return cursor.report(rules.thousandsComma, at, { plain: text.replace(',', '.') });
  const glued = /^(\d+(?:\.\d+)?)([A-Za-z]+)$/.exec(text);
  if (glued !== null) {
    const unit = unitOf(glued[2] as string) ?? unitMeantBy(glued[2] as string);
    if (unit !== undefined) return cursor.report(rules.gluedUnit, at, { apart: `${glued[1]} ${unit.word}` });
  }
  return cursor.report(rules.notANumber, at, { written: text, plain: plainNumber(text) });
}

/** The unit or percent sign that comes next. */
function unitBehind(cursor: Cursor): string | undefined {
  const next = cursor.peek();
  return next !== undefined && (next.text === '%' || (next.kind === 'word' && unitOf(next.text) !== undefined)) ? next.text : undefined;
}

/** A currency sign that stands alone, beside its number. */
export function isSign(token: Token | undefined): boolean {
  return token?.kind === 'mixed' && /^\p{Sc}$/u.test(token.text);
}

/** The number at a currency sign, or undefined where there is none. */
function withoutSign(text: string): string | undefined {
  const found = /^(?:\p{Sc}(\d+(?:\.\d+)?)|(\d+(?:\.\d+)?)\p{Sc})$/u.exec(text);
  return found?.[1] ?? found?.[2];
}

function plainNumber(text: string): string | undefined {
  if (/^\.\d+$/.test(text)) return `0${text}`;
  if (/^\d+\.$/.test(text)) return text.slice(0, -1);
  // In some places a dash stands where there are no cents.
  if (/^\d+\.-+$/.test(text)) return `${text.slice(0, text.indexOf('-'))}00`;
  if (/^\d{1,3}(\.\d{3})+,\d+$/.test(text)) return text.replaceAll('.', '').replace(',', '.');
  if (/^\+\d+(\.\d+)?$/.test(text)) return text.slice(1);
  return undefined;
}
