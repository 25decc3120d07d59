import { parse, type Problem, type Token } from '../language/index.js';
import { Cursor } from '../vocabulary/cursor.js';
import { unitsOf, type Dimension, type ValueType } from '../vocabulary/index.js';

/** How a value is written, found out by reading samples with the value's own reader. */
export interface ValueForm {
  readonly shape: 'figure' | 'readings' | 'items';
  readonly measures: readonly Dimension[];
  /** Several with commas are read. */
  readonly list: boolean;
  /** What one item may be; all false where the value is a figure. */
  readonly takes: { readonly text: boolean; readonly word: boolean; readonly run: boolean; readonly day: boolean; readonly month: boolean };
  readonly choices: readonly string[];
  readonly refersTo: readonly string[];
  readonly builtIn: readonly string[];
}

/**
 * Probing keeps the written grammar and the colours true to the reader: a value type that learns to read something
 * new needs no second description here.
 */
export function formOf(value: ValueType<unknown>): ValueForm {
  const choices = Object.keys(value.words ?? {});
  const refersTo = value.refersTo ?? [];
  const builtIn = Object.keys(value.builtIn ?? {});
  const list = value.item !== undefined;
  const measures = (value.item ?? value).measures ?? [];
  const [dimension] = measures;
  if (dimension !== undefined) {
    const row = `1 2 ${dimension === 'percent' ? '%' : (unitsOf(dimension)[0]?.word ?? '')}`;
    const none = { text: false, word: false, run: false, day: false, month: false };
    return { shape: reads(value, row) ? 'readings' : 'figure', measures, list, takes: none, choices, refersTo, builtIn };
  }
  return {
    shape: 'items', measures: [], choices, refersTo, builtIn, list,
    takes: {
      text: reads(value, '"two words"'),
      word: reads(value, 'zqx'),
      run: reads(value, '1Z2'),
      day: reads(value, '2026-11-30'),
      month: reads(value, '2026-11'),
    },
  };
}

/** Whether the whole of `sample` is one value. */
function reads(value: ValueType<unknown>, sample: string): boolean {
  const statement = parse('probe', `x ${sample}\n`).blocks[0]?.statements[0];
  if (statement === undefined) return false;
  const problems: Problem[] = [];
  const tokens: readonly Token[] = statement.tokens;
  const cursor = new Cursor(statement.block, problems);
  cursor.enter({ tokens }, 1);
  return value.read(cursor) !== undefined && cursor.peek() === undefined && problems.length === 0;
}
