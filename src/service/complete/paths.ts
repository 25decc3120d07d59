import type { Tree } from '../../language/index.js';
import { kinds } from '../../vocabulary/index.js';
import { locate } from '../at.js';
import type { Completion } from '../feature-types.js';
import type { ServiceHost } from '../types.js';
import { insideOf } from './inside.js';

/** Paths for the text of a `use` line, whether it is closed or not, or not even begun. Undefined on any other line. */
export function usePaths(tree: Tree, offset: number, host: ServiceHost, uses: readonly string[]): Completion[] | undefined {
  const at = locate(tree, offset);
  const [head, text] = at?.statement?.tokens ?? [];
  if (at === undefined || head?.text !== kinds.use.word || head.kind !== 'word' || at.above.length > 0) return undefined;
  const local = offset - at.start;
  if (local <= head.end) return undefined;
  const range = text === undefined ? { start: local, end: local } : insideOf(text, local);
  if (range === undefined) return [];
  const own = text === undefined ? undefined : host.resolvePath(tree.uri, text.text);
  const found = nearbyFiles(tree.uri, host).filter(({ uri }) => uri === own || !uses.includes(uri));
  return found.map(({ path }, order) => ({
    label: path, kind: 'file', detail: undefined, says: 'Shared file of this workspace.', snippet: false, order,
    edit: { range: { start: at.start + range.start, end: at.start + range.end }, text: text === undefined ? `"${path}"` : text.open === true ? `${path}"` : path },
  }));
}

/** Estimate files of the workspace by their paths from a file, the nearest first. Only paths that a `use` line may have. */
export function nearbyFiles(fromUri: string, host: ServiceHost): { readonly path: string; readonly uri: string }[] {
  const files = (host.files?.() ?? []).filter((uri) => uri !== fromUri && uri.endsWith('.yard'));
  return files.map((uri) => ({ uri, path: pathFrom(fromUri, uri) }))
    .filter(({ uri, path }) => !/["\\]/.test(path) && host.resolvePath(fromUri, path) === uri)
    .sort((a, b) => steps(a.path) - steps(b.path) || (a.path < b.path ? -1 : 1));
}

function pathFrom(fromUri: string, uri: string): string {
  const from = fromUri.split('/').slice(0, -1);
  const to = uri.split('/');
  let shared = 0;
  while (shared < from.length && shared < to.length - 1 && from[shared] === to[shared]) shared++;
  return [...from.slice(shared).map(() => '..'), ...to.slice(shared)].join('/');
}

function steps(path: string): number {
  return path.split('/').length;
}
