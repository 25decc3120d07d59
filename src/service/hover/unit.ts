import type { Token } from '../../language/index.js';
import { units, type Dimension, type Field, type Kind } from '../../vocabulary/index.js';
import { kindAbove, kindOf, type At } from '../at.js';
import { fieldBefore, type Meaning } from './meaning.js';

/** What a unit behind a figure means in its slot: `d` counts working days in one and calendar days in another. */
export function unitAt(at: At): Meaning | undefined {
  const { statement, token } = at;
  if (statement === undefined || token === undefined) return undefined;
  const i = statement.tokens.findIndex(({ start }) => start === token.start);
  if (statement.tokens[i - 1]?.kind !== 'number') return undefined;
  const unit = token.kind === 'word' ? units.find(({ word }) => word === token.text) : undefined;
  const says = unit?.says ?? (token.text === '%' ? 'per cent' : undefined);
  const of = kindOf(statement, at.above) ?? kindAbove(at.above);
  if (says === undefined || of === undefined) return undefined;
  const field = slotOf(of, statement.tokens, i, unit?.dimension ?? 'percent');
  // That a figure is a percentage was just said.
  const here = field === undefined ? [] : [`Here: ${field.says}${token.text === '%' && field.value.measures?.length === 1 && field.value.row !== true ? '' : ` ${field.value.says}`}`];
  return { from: token, to: token, paragraphs: [`${token.text}: ${says}.`, ...here] };
}

function slotOf(of: Kind, tokens: readonly Token[], i: number, dimension: Dimension): Field | undefined {
  const takes = (field: Field | undefined) => field?.value.measures?.includes(dimension) === true;
  const led = fieldBefore(of, tokens, i);
  if (takes(led)) return led;
  const { count, figures } = of.bares;
  const keys = tokens[i + 1]?.text === 'at' && count !== undefined ? [count] : figures;
  return keys.map((key) => of.fields[key] as Field).find(takes);
}
