import { createLanguageService } from '../../service/index.js';
import { check } from '../check.js';
import type { Terminal } from '../terminal.js';
import { entriesOf, repositoryAt, topOf, type Repository } from './repository.js';
import { askGit, readGit } from './run-git.js';
import { filesIn, inIndex } from './snapshot.js';

/** Checks the estimates of the next commit as they are staged, whatever the work tree has by now. True where nothing stops it. */
export function checkStaged(version: string, terminal: Terminal): boolean {
  const index = inIndex(repositoryAt(topOf(repositoryAt(terminal.cwd))));
  // A link has no lines of its own, and what it leads to is checked when that is staged.
  const names = stagedNames(index.repository).filter((name) => name.endsWith('.yard') && index.entry(name)?.mode.startsWith('100') === true);
  if (names.length === 0) return true;
  const files = filesIn(index);
  const service = createLanguageService(files.host);
  const found = names.flatMap((name) => [...service.allDiagnostics(files.open(name)).values()].flat());
  if (!found.some(({ severity }) => severity !== 'advice')) return true;
  check(names, { as: 'text', output: undefined, version }, service, files, terminal);
  if (!found.some(({ severity }) => severity === 'error')) return true;
  terminal.err('The commit was stopped: these are errors in what is staged. Mend them and stage the files again with git add. To commit all the same: git commit --no-verify\n');
  return false;
}

/** Paths from the top of what differs from the last commit; all there is before the first. */
function stagedNames({ folder }: Repository): string[] {
  const first = askGit(['rev-parse', '--verify', '--quiet', 'HEAD'], folder).code !== 0;
  return entriesOf(readGit(first ? ['ls-files', '-z'] : ['diff-index', '--cached', '--name-only', '--no-relative', '--diff-filter=ACMRT', '-z', 'HEAD', '--'], folder));
}
