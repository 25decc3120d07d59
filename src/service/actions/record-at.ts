import type { Record } from '../../vocabulary/index.js';
import type { FeatureContext } from '../context.js';
import type { Diagnostic } from '../types.js';

/** The innermost line that a problem stands on or below. */
export function recordAt({ uri, range }: Pick<Diagnostic, 'uri' | 'range'>, { weighing, place }: FeatureContext): Record | undefined {
  let found: Record | undefined;
  const visit = (record: Record): void => {
    const at = place(record.at);
    if (at?.uri !== uri || at.range.start > range.start) return;
    found = record;
    record.children.forEach(visit);
  };
  for (const record of weighing(uri).resolved.records) if (record.block.uri === uri) visit(record);
  return found;
}
