import { closeSync, existsSync, openSync, readlinkSync, readSync, realpathSync, statSync } from 'node:fs';
import path from 'node:path';
import { repositoryOf } from './files.js';

/** The end of an estimate's name, with what some systems leave away behind it. */
const NAME = /\.yard(?:[. ]*|:.*)$/is;
/** How an estimate starts, behind blank lines and comments; and so far into a file it is looked for, in bytes. */
const START = /^\ufeff?(?:[ \t]*(?:#[^\r\n]*)?[\r\n])*steelyard[ \t]+\d/;
const FIRST_LINES = 4_096;
const MOST_LINKS = 40;

/**
 * Why a file is not written: it is an estimate, or would be one, by whatever name it is reached; or it looks as if it lay
 * in the folder or repository that is worked in, and a link leads out of there. Undefined where nothing speaks against it.
 */
export function whyNotWritten(file: string, cwd: string): string | undefined {
  const target = followed(file);
  if (NAME.test(path.basename(target))) return 'is the name of an estimate';
  if (START.test(startOf(file))) return 'is an estimate, by its first line';
  const root = repositoryOf(cwd) ?? cwd;
  return isBelow(file, root) && !isBelow(realOf(target), realpathSync(root)) ? 'is a link that leads out of this folder' : undefined;
}

/** Where links lead, to a file that isn’t there yet too. */
function followed(file: string): string {
  let at = file;
  for (let links = 0; links < MOST_LINKS && !NAME.test(path.basename(at)); links++) {
    try {
      at = path.resolve(path.dirname(at), readlinkSync(at));
    } catch {
      return at;
    }
  }
  return at;
}

/** As far up as it is there, with the links of its folders followed. */
function realOf(file: string): string {
  if (existsSync(file)) return realpathSync(file);
  const folder = path.dirname(file);
  return folder === file ? file : path.join(realOf(folder), path.basename(file));
}

function isBelow(file: string, folder: string): boolean {
  return file.startsWith(folder.endsWith(path.sep) ? folder : folder + path.sep);
}

/** Nothing where there is no file; a pipe is not waited for. */
function startOf(file: string): string {
  try {
    if (!statSync(file).isFile()) return '';
    const open = openSync(file, 'r');
    try {
      const bytes = Buffer.alloc(FIRST_LINES);
      return bytes.toString('utf8', 0, readSync(open, bytes, 0, FIRST_LINES, 0));
    } finally {
      closeSync(open);
    }
  } catch {
    return '';
  }
}
