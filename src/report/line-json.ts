import type { Line } from '../weigh/index.js';
import type { JsonWriter } from './json-writer.js';
import type { WeighReport } from './weigh-schema.js';

type JsonLine = WeighReport['options'][number]['lines'][number];

/** One line of an option or a stage as plain data; `id` is its name for --explain. */
export function lineJson(one: Line, id: string, { points, at }: JsonWriter): JsonLine {
  return {
    id,
    kind: one.kind,
    share: one.share,
    title: one.title,
    ...(one.name === undefined ? {} : { name: one.name }),
    amount: points(one.amount),
    ...(one.hours === undefined ? {} : { hours: points(one.hours) }),
    ...(one.quantity === undefined ? {} : { quantity: points(one.quantity) }),
    ...(one.condition === undefined ? {} : { condition: one.condition }),
    with: [...one.with],
    ...at(one.at),
  };
}
