import { moneyRules } from '../../estimate/index.js';
import { bothReadings, valueRules } from '../../vocabulary/index.js';
import type { FeatureContext } from '../context.js';
import type { Action } from '../feature-types.js';
import type { Diagnostic } from '../types.js';

/** A figure that can be read in two ways is written in either: nobody but the writer knows which one was meant. */
export function eitherReading({ code, uri, range }: Diagnostic, context: FeatureContext): readonly Action[] {
  const written = context.tree(uri)?.text.slice(range.start, range.end);
  if (written === undefined) return [];
  const isComma = code === valueRules.thousandsComma.code && /^[1-9]\d{0,2},\d{3}$/.test(written);
  if (!isComma && code !== moneyRules.thousandsPoint.code) return [];
  const { thousands, decimals } = bothReadings(isComma ? written.replace(',', '.') : written);
  const action = (title: string, text: string): Action => ({ title, kind: 'fix', code, edits: new Map([[uri, [{ range, text }]]]), creates: undefined });
  // With a comma, thousands are what its message offers already.
  return [...(isComma ? [] : [action(`Write ${thousands}: thousands`, thousands)]), action(`Write ${decimals}: decimals`, decimals)];
}
