import { kinds, readBlock, type Record } from '../../vocabulary/index.js';
import type { FeatureContext } from '../context.js';
import type { WorkspaceSymbol } from '../feature-types.js';
import { symbolKind } from './symbols.js';

/** Lines at the left edge of some files whose name or title has all words of a query; all of them for an empty one. */
export function workspaceSymbolsIn(context: FeatureContext, query: string, uris: readonly string[]): readonly WorkspaceSymbol[] {
  const words = query.toLowerCase().split(/\s+/).filter((word) => word !== '');
  return uris.flatMap((uri) => (context.tree(uri)?.blocks ?? []).flatMap((block) => readBlock(block).records.flatMap((record): WorkspaceSymbol[] => {
    const name = shownName(record);
    const lower = name.toLowerCase();
    if (name === '' || record.kind.word === kinds.use.word || !words.every((word) => lower.includes(word))) return [];
    const place = context.place(record.name?.at ?? record.title?.at ?? record.at);
    return place === undefined ? [] : [{ name, kind: symbolKind(record), place }];
  })));
}

/** Both name and title, since an editor sifts by what it shows: `pump, Coolant pump: replace`. */
function shownName({ name, title }: Record): string {
  return [name?.name, title?.text].filter((part) => part !== undefined && part !== '').join(', ');
}
