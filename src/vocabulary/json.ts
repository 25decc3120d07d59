import type { Field } from './kind.js';
import type { Record } from './record.js';

/** A record as data, in the form of its kind's zod record. Broken parts are simply absent. */
export function recordJson(record: Record): { readonly [key: string]: unknown } {
  const out: { [key: string]: unknown } = { kind: record.kind.word };
  if (record.name !== undefined) out['name'] = record.name.name;
  if (record.title !== undefined) out['title'] = record.title.text;
  for (const [key, value] of Object.entries(record.values)) {
    const field = record.kind.fields[key] as Field;
    out[key] = field.value.toJson(value);
  }
  for (const child of record.children) {
    const list = (out[child.kind.word] ??= []) as unknown[];
    list.push(recordJson(child));
  }
  return out;
}
