import { topicsOf, type Access, type CautionTopic, type Option, type Source } from '../estimate/index.js';
import type { Topic } from '../vocabulary/index.js';

/** Work and goods whose cautions nobody needs to write. Common practice of engine repair; no source. */
const follow: { readonly [topic in Topic]?: readonly CautionTopic[] } = {
  'engine-out': ['lifting', 'fuel', 'battery'],
  'engine-swap': ['lifting', 'fuel', 'battery'],
  'subframe-lowered': ['lifting'],
  'head-off': ['coolant'],
  coolant: ['coolant'],
  'coolant-pump': ['coolant'],
  'engine-oil': ['oil'],
  'oil-filter': ['oil'],
  'oil-pan': ['oil'],
  'oil-pickup': ['oil'],
  'oil-cooler': ['oil'],
  refrigerant: ['refrigerant'],
};

/** The cautions that go with some work and the ways in that it pays: those that are written, and those that follow from what a line stands for. */
export function cautionsOf({ cautions, labour, parts, sublets, fees }: Pick<Option, 'cautions' | 'labour' | 'parts' | 'sublets' | 'fees'>, paid: readonly Access[]): readonly CautionTopic[] {
  const all = new Set(cautions);
  const followed = (lines: Iterable<Source>) => {
    for (const line of lines) for (const topic of topicsOf(line)) for (const caution of follow[topic] ?? []) all.add(caution);
  };
  for (const one of [...paid, ...labour]) for (const caution of one.cautions) all.add(caution);
  for (const lines of [labour, parts, sublets, fees, paid]) followed(lines);
  for (const way of paid) for (const goods of [way.parts, way.sublets]) followed(goods);
  return [...all];
}
