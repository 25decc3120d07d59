import type { ValueType } from '../../vocabulary/index.js';
import { stop } from './snippet.js';

/** A value to type over, as a tab stop that leaves the unit standing. `name` is a name that the slot may take, `written` a value to take before the type's own example. */
export function valueStop(value: ValueType<unknown>, number: number, name: string | undefined, written?: string): string {
  if (value.refersTo !== undefined) return stop(number, name ?? value.examples[0] ?? 'name');
  const example = written ?? (value.words === undefined ? (value.examples[0] ?? '') : (Object.keys(value.words)[0] ?? ''));
  const text = /^"(.*)"$/.exec(example);
  if (text !== null) return `"${stop(number, text[1] ?? '')}"`;
  const figure = value.measures === undefined ? null : /^([\d. /]*\d)(\D*)$/.exec(example);
  return figure === null ? stop(number, example) : `${stop(number, figure[1] ?? '')}${figure[2] ?? ''}`;
}
