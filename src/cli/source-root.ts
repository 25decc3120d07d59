import path from 'node:path';
import type { SarifFile } from '../report/sarif/index.js';
import { repositoryOf, type Files } from './files.js';

/** How the log for build servers names files: from the top of the repository that the tool runs in, or else from where it runs. */
export function sarifFilesBelow(cwd: string, files: Files): (uri: string) => SarifFile {
  const root = repositoryOf(cwd) ?? cwd;
  return (uri) => {
    if (files.nameOf(uri) === STDIN_NAME) return { identity: uri, path: path.basename(uri), from: 'standard-input' };
    const below = path.relative(root, uri);
    if (below === '' || below.split(path.sep)[0] === '..' || path.isAbsolute(below)) return { identity: uri, path: path.basename(uri), from: 'outside' };
    return { identity: uri, path: below.split(path.sep).join('/'), from: 'source-root' };
  };
}

const STDIN_NAME = 'standard input';

/** The same for files of a revision, whose addresses are their paths from the top. */
export function sarifFileInRepository(uri: string): SarifFile {
  return { identity: uri, path: uri.replace(/^\/+/, ''), from: 'source-root' };
}
