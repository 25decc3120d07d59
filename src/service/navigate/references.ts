import type { Block, Span } from '../../language/index.js';
import { is, kinds, readBlock, type Record } from '../../vocabulary/index.js';
import { blockAt, type Mention } from '../at.js';
import type { FeatureContext } from '../context.js';
import type { Highlight, Link } from '../feature-types.js';
import type { Place } from '../types.js';
import { meantBy, mentionAt, mentionsOf, mentionsOfName, namesIn, usesOf, type Names } from './names.js';

/** Where the name under the cursor is given, or the file that a `use` line brings in. */
export function definitionAt(context: FeatureContext, uri: string, offset: number): readonly Place[] {
  const tree = context.tree(uri);
  if (tree === undefined) return [];
  const found = blockAt(tree, offset);
  const link = found === undefined ? undefined : linksOf(context, found.block, found.start).find(({ range }) => range.start <= offset && offset <= range.end);
  if (link !== undefined) return [{ uri: link.uri, range: { start: 0, end: 0 } }];
  const mention = mentionAt(tree, offset);
  const target = mention === undefined ? undefined : meantBy(mention, namesIn(context.weighing(uri)).scope);
  return target?.name === undefined ? [] : placesOf(context, [target.name.at]);
}

/** The line that gives the name under the cursor, then every line that uses it. */
export function referencesAt(context: FeatureContext, uri: string, offset: number, others: readonly string[]): readonly Place[] {
  const tree = context.tree(uri);
  const mention = tree === undefined ? undefined : mentionAt(tree, offset);
  if (mention === undefined) return [];
  const target = targetOf(context, mention, [uri, ...others]);
  if (target?.name === undefined) return placesOf(context, sameUnknown(mention, namesIn(context.weighing(uri))));
  const spans = [target.name.at, ...estimatesWith(context, target, [uri, ...others]).flatMap((index) => usesOf(index, target).map(({ at }) => at))];
  return placesOf(context, spans);
}

/** The same name elsewhere in this file. */
export function highlightsAt(context: FeatureContext, uri: string, offset: number): readonly Highlight[] {
  const tree = context.tree(uri);
  const mention = tree === undefined ? undefined : mentionAt(tree, offset);
  if (tree === undefined || mention === undefined) return [];
  const index = namesIn(context.weighing(uri));
  const target = meantBy(mention, index.scope);
  const here = target === undefined ? sameUnknown(mention, index) : [...(target.name === undefined ? [] : [target.name.at]), ...usesOf(index, target).map(({ at }) => at)];
  const gives = target?.name?.at;
  return here.flatMap((at) => {
    const place = at.block.uri === uri ? context.place(at) : undefined;
    return place === undefined ? [] : [{ range: place.range, gives: at === gives }];
  }).sort((a, b) => a.range.start - b.range.start);
}

/** The paths of `use` lines that lead to a file of the workspace. */
export function linksIn(context: FeatureContext, uri: string): readonly Link[] {
  const tree = context.tree(uri);
  if (tree === undefined) return [];
  return tree.blocks.flatMap((block, i) => linksOf(context, block, tree.starts[i] as number));
}

function linksOf(context: FeatureContext, block: Block, start: number): Link[] {
  return readBlock(block).records.flatMap((record): Link[] => {
    if (!is(record, kinds.use) || record.title === undefined) return [];
    const target = context.host.resolvePath(block.uri, record.title.text);
    if (target === undefined || context.host.read(target) === 'missing') return [];
    // The path alone, without its quotes.
    return [{ range: { start: start + record.title.at.start + 1, end: start + record.title.at.end - 1 }, uri: target }];
  });
}

/**
 * The line that a name means. A shared file may use names that only the estimates which use it give: then the first
 * estimate that gives it decides.
 */
export function targetOf(context: FeatureContext, mention: Mention, uris: readonly string[]): Record | undefined {
  for (const uri of uris) {
    const index = namesIn(context.weighing(uri));
    if (!index.blocks.has(mention.record.block)) continue;
    const target = meantBy(mention, index.scope);
    if (target !== undefined) return target;
  }
  return undefined;
}

/** The names of those estimates that a line is part of. */
export function estimatesWith(context: FeatureContext, target: Record, uris: readonly string[]): Names[] {
  return [...new Set(uris)].map((uri) => namesIn(context.weighing(uri))).filter((index) => index.blocks.has(target.block));
}

/** Uses of a name that nothing has: they all wait for the same line. */
function sameUnknown(mention: Mention, index: Names): Span[] {
  if (mention.builtIn) return builtInUses(mention);
  return [...mentionsOfName(index, mention.name)].filter((one) => !one.gives && one.kinds.some((kind) => mention.kinds.includes(kind)) && meantBy(one, index.scope) === undefined).map(({ at }) => at);
}

/** A built-in name is given nowhere; its uses on the same line of work are all there is to show. */
function builtInUses(mention: Mention): Span[] {
  return mentionsOf(mention.record.block).filter((one) => one.builtIn && one.name === mention.name).map(({ at }) => at);
}

/** The places of spans, each once. */
export function placesOf(context: FeatureContext, spans: readonly Span[]): Place[] {
  const seen = new Set<string>();
  return spans.flatMap((span) => context.place(span) ?? []).filter(({ uri, range }) => {
    const key = `${uri} ${range.start}`;
    if (seen.has(key)) return false;
    seen.add(key);
    return true;
  });
}
