import { nameRules, referencesOf } from '../../estimate/index.js';
import type { Name, Record } from '../../vocabulary/index.js';
import type { FeatureContext } from '../context.js';
import type { Action } from '../feature-types.js';
import type { Diagnostic } from '../types.js';
import { actionOf, lineBehind } from './edits.js';

/** What a new line of a kind says, so that what is still open has its own message. */
const REST: Readonly<{ [kind: string]: string }> = { part: 'new' };
/** Kinds that have a line at the left edge to be named by. */
const KINDS = new Set(['access', 'labour', 'part', 'sublet', 'fee', 'tool', 'finding']);

/** For a name that nothing has: the line that would have it, with the name in its place and the title to be filled in. */
export function addNamed({ code, uri, range }: Diagnostic, context: FeatureContext): readonly (Action | undefined)[] {
  if (code !== nameRules.unknownName.code) return [];
  const { records } = context.weighing(uri).resolved;
  for (const record of records) {
    if (record.block.uri !== uri) continue;
    const found = mentionAt(record, uri, range.start, context);
    const kind = found?.kinds.find((one) => KINDS.has(one));
    if (found === undefined || kind === undefined) continue;
    const own = records.filter((one) => one.block.uri === uri && one.kind.word === kind && one.block.statements.length === 1);
    const title = found.name.charAt(0).toUpperCase() + found.name.slice(1).replace(/-/g, ' ');
    return [actionOf(`Add a ${kind} line ${found.name}, to be filled in`, code, [lineBehind(own[own.length - 1] ?? record, kind, found.name, title, REST[kind] ?? '')], context)];
  }
  return [];
}

/** The name that stands at an offset, with the kinds it may be of. */
function mentionAt(record: Record, uri: string, offset: number, context: FeatureContext): { readonly name: string; readonly kinds: readonly string[] } | undefined {
  for (const { key, refersTo } of referencesOf(record.kind)) {
    for (const one of [record.values[key] ?? []].flat() as Name[]) {
      const place = context.place(one.at);
      if (place?.uri === uri && place.range.start === offset) return { name: one.name, kinds: refersTo };
    }
  }
  for (const child of record.children) {
    const found = mentionAt(child, uri, offset, context);
    if (found !== undefined) return found;
  }
  return undefined;
}
