import { plain } from '../../report/index.js';
import { resolveWithin } from '../../service/index.js';
import { InputError, type ManyFiles } from '../files.js';
import { textOf } from '../text-of.js';
import { entriesOf, fromFolder, treeIdOf, type Repository } from './repository.js';
import { askGit, readGit } from './run-git.js';

/** The files of a repository as they stand in one place of it: in a revision, or in the index. */
interface Snapshot {
  /** What a file is called in messages: `HEAD~1:jobs/a.yard`, or the path alone in the index. */
  readonly nameOf: (path: string) => string;
  readonly entry: (path: string) => Entry | undefined;
  readonly repository: Repository;
}

interface Entry {
  /** As git writes it: 100644 and 100755 are files, 120000 is a link. */
  readonly mode: string;
  readonly id: string;
}

/** A link leads to a link no oftener than this. */
const MOST_LINKS = 8;

/** The files as a revision has them. Throws InputError where there is no such revision. */
export function inRevision(repository: Repository, revision: string): Snapshot {
  const tree = treeIdOf(repository, revision);
  return {
    repository,
    nameOf: (path) => `${revision}:${path}`,
    entry: (path) => entryIn(entriesOf(readGit(['ls-tree', '-z', '--full-tree', tree, '--', path], repository.folder)), (head) => head.split(' ')[2]),
  };
}

/** The files as they would be committed now. */
export function inIndex(repository: Repository): Snapshot {
  return {
    repository,
    nameOf: (path) => path,
    entry: (path) => entryIn(entriesOf(readGit(['ls-files', '-z', '--stage', '--full-name', '--', fromFolder(repository, path)], repository.folder)), (head) => head.split(' ')[1]),
  };
}

/** The file's own line of a listing; a folder has many, or one that is no file, and a file in conflict has several. */
function entryIn(lines: readonly string[], idIn: (head: string) => string | undefined): Entry | undefined {
  const [line, ...others] = lines;
  if (line === undefined || others.length > 0) return undefined;
  const head = line.slice(0, line.indexOf('\t'));
  const id = idIn(head);
  const mode = head.slice(0, 6);
  return id === undefined || !/^1[02]0/.test(mode) ? undefined : { mode, id };
}

/** The files of a snapshot as the commands take them. Links inside it are followed, those that lead out are missing. */
export function filesIn(snapshot: Snapshot): ManyFiles {
  const texts = new Map<string, { readonly text: string } | 'missing'>();
  const read = (uri: string): { readonly text: string } | 'missing' => {
    let found = texts.get(uri);
    if (found === undefined) {
      found = contentsOf(snapshot, uri, 0);
      texts.set(uri, found);
    }
    return found;
  };
  return {
    host: { read, resolvePath: (from, written) => resolveWithin('', from, written) },
    open: (path) => {
      const uri = `/${path}`;
      if (read(uri) === 'missing') throw new InputError(`There is no file ${plain(snapshot.nameOf(path))}.`);
      return uri;
    },
    nameOf: (uri) => snapshot.nameOf(uri.slice(1)),
    forget: (uri) => void texts.delete(uri),
  };
}

function contentsOf(snapshot: Snapshot, uri: string, links: number): { readonly text: string } | 'missing' {
  const entry = snapshot.entry(uri.slice(1));
  if (entry === undefined) return 'missing';
  const name = plain(snapshot.nameOf(uri.slice(1)));
  const { code, out } = askGit(['cat-file', 'blob', entry.id], snapshot.repository.folder);
  if (code !== 0) throw new InputError(`git has no contents for ${name} here: this clone left them out, or the repository is damaged.`);
  const text = textOf(out);
  if (text.kind !== 'text') throw new InputError(`${name} ${text.why}`);
  if (entry.mode !== '120000') return text;
  const target = links < MOST_LINKS ? resolveWithin('', uri, text.text) : undefined;
  return target === undefined ? 'missing' : contentsOf(snapshot, target, links + 1);
}
