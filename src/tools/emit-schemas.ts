import * as z from 'zod';
import { amountSchema } from '../vocabulary/amounts.js';
import { checkReport, closingReport, historyReport, listReport, weighReport } from '../report/index.js';
import { changesReport } from '../report/changes/index.js';
import { allKinds, fileKinds } from '../vocabulary/index.js';

export const schemaId = 'urn:steelyard:estimate:1';

/** One file as data: its lines from the left edge, in order. */
export const fileRecord = z.array(z.union(fileKinds.map((kind) => kind.record(z))));

/** The JSON Schema of one file, from the zod records. */
export function emitSchemas(): Record<string, string> {
  const { $defs, items } = z.toJSONSchema(fileRecord, { target: 'draft-2020-12', metadata: namedRecords() as typeof z.globalRegistry });
  const schema = {
    $schema: 'https://json-schema.org/draft/2020-12/schema',
    $id: schemaId,
    title: 'Steelyard estimate file',
    description: 'One .yard file as data: its lines from the left edge, in the order of the file. Lines that stand below a line are grouped by their first word.',
    type: 'array',
    // Every record carries its first word as `kind`, so exactly one alternative can fit.
    items: { oneOf: (items as { readonly anyOf: readonly unknown[] }).anyOf },
    $defs: sorted($defs as Record<string, unknown>),
  };
  return {
    'schemas/estimate.schema.json': `${JSON.stringify(schema, null, 2)}\n`,
    'schemas/weigh.schema.json': reportSchema('weigh', weighReport()),
    'schemas/check.schema.json': reportSchema('check', checkReport()),
    'schemas/changes.schema.json': reportSchema('changes', changesReport()),
    'schemas/list.schema.json': reportSchema('list', listReport()),
    'schemas/closing.schema.json': reportSchema('closing', closingReport()),
    'schemas/records.schema.json': `${JSON.stringify(recordsSchema, null, 2)}\n`,
    'schemas/history.schema.json': reportSchema('history', historyReport()),
  };
}

/** What `steelyard records` prints: an estimate and what it uses. What a file holds is described once, in the schema of a file. */
const recordsSchema = {
  $schema: 'https://json-schema.org/draft/2020-12/schema',
  $id: 'urn:steelyard:records:1',
  title: 'steelyard records',
  description: 'The lines of an estimate and of its shared files. Beside this schema goes estimate.schema.json, which it refers to by its identifier.',
  type: 'array',
  items: {
    type: 'object',
    properties: {
      file: { type: 'string', description: 'The name of the file, from where the tool was run.' },
      records: { $ref: schemaId },
    },
    required: ['file', 'records'],
    additionalProperties: false,
  },
};

/** The JSON Schema of what a command prints with --json. */
function reportSchema(command: string, report: z.ZodType): string {
  const { $schema, ...rest } = z.toJSONSchema(report, { target: 'draft-2020-12' });
  return `${JSON.stringify({ $schema, $id: `urn:steelyard:${command}:1`, title: `steelyard ${command} --json`, ...rest }, null, 2)}\n`;
}

/** The shared descriptions, plus a name for each record, without writing names into zod's global registry. */
function namedRecords(): { get(schema: z.ZodType): Record<string, unknown> | undefined } {
  const ids = new Map<z.ZodType, string>([[amountSchema(z), 'figure'], ...allKinds.map((kind) => [kind.record(z), kind.word] as const)]);
  return {
    get(schema) {
      const id = ids.get(schema);
      const known = z.globalRegistry.get(schema);
      return id === undefined ? known : { ...known, id };
    },
  };
}

/** Definitions in the order of the vocabulary, each without the name that put it there. */
function sorted(defs: Record<string, unknown>): Record<string, unknown> {
  const order = ['figure', ...allKinds.map((kind) => kind.word)];
  return Object.fromEntries(order.map((name) => {
    const definition = { ...(defs[name] as { id?: string }) };
    delete definition.id;
    return [name, definition];
  }));
}
