import { parse, type Span } from '../language/index.js';
import { allKinds, readBlock, type Field, type Kind, type Record } from '../vocabulary/index.js';
import { code, oneOf } from './markdown.js';
import { exampleAt, placesOf } from './places.js';
import { formOf } from './value-form.js';

/** How one thing that a kind says is written, as the manual's tables show it. */
export function written(kind: Kind, key: string): string {
  const field = kind.fields[key] as Field;
  const form = formOf(field.value);
  if (field.lead === undefined && form.choices.length > 0) return oneOf(form.choices.map(code));
  const named = form.refersTo[0];
  const usual = named === undefined ? (field.value.examples[0] ?? '') : nameOfExample(named);
  const parts = [field.lead, writtenInExample(kind, key) ?? usual, field.counts ? 'at' : undefined];
  return code(parts.filter((part) => part !== undefined).join(' '));
}

/** The name that the example of a kind gives itself. */
export function nameOfExample(kindWord: string): string {
  const example = allKinds.find((kind) => kind.word === kindWord)?.example ?? '';
  return /^\S+ ([A-Za-z][A-Za-z0-9-]*)/.exec(example)?.[1] ?? 'short-name';
}

/** The value as the kind's own example has it: a table and the example below it should not differ for no reason. */
function writtenInExample(kind: Kind, key: string): string | undefined {
  const place = placesOf(kind)[0] ?? [];
  const blocks = parse('example.yard', exampleAt(kind, place)).blocks;
  const records = blocks.flatMap((block) => readBlock(block).records).flatMap(withChildren);
  const value = records.filter((record) => record.kind === kind).at(-1)?.values[key] as Placed | readonly Placed[] | undefined;
  if (value === undefined) return undefined;
  const places = (Array.isArray(value) ? (value as readonly Placed[]) : [value as Placed]).map(({ at }) => at);
  const [first] = places;
  const last = places[places.length - 1];
  return first === undefined || last === undefined ? undefined : first.block.text.slice(first.start, last.end);
}

interface Placed {
  readonly at: Span;
}

function withChildren(record: Record): readonly Record[] {
  return [record, ...record.children.flatMap(withChildren)];
}
