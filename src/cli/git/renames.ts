import { entriesOf, fromFolder, type Repository } from './repository.js';
import { askGit } from './run-git.js';

/**
 * What a file of the index was called in a revision, where it was renamed since; undefined where git sees no rename.
 * First the two ends are compared; a file that was renamed and much edited is followed from commit to commit.
 */
export function nameThen(repository: Repository, revision: string, path: string): string | undefined {
  const { folder } = repository;
  const between = renamesIn(askGit(['diff-index', '--cached', '--find-renames', '--diff-filter=R', '--name-status', '--no-relative', '-z', '--end-of-options', revision, '--'], folder).out);
  const direct = between.find(({ to }) => to === path);
  if (direct !== undefined) return direct.from;
  const steps = renamesIn(askGit(['log', '--follow', '--find-renames', '--diff-filter=R', '--name-status', '--format=', '--no-ext-diff', '--no-relative', '-z', '--end-of-options', `${revision}..HEAD`, '--', fromFolder(repository, path)], folder).out);
  return steps.reduce<string | undefined>((name, { from, to }) => ((name ?? path) === to ? from : name), undefined);
}

/** The entries of a listing with NULs: what happened, the old name, the new name. */
function renamesIn(out: Buffer): { readonly from: string; readonly to: string }[] {
  const entries = entriesOf(out).map((entry) => entry.replace(/^\n/, ''));
  const found: { from: string; to: string }[] = [];
  for (let i = 0; i + 2 < entries.length; i += 3) found.push({ from: entries[i + 1] as string, to: entries[i + 2] as string });
  return found;
}
