import { chmodSync, lstatSync, realpathSync, renameSync, rmSync, statSync, writeFileSync, type Stats } from 'node:fs';
import path from 'node:path';
import { wordsOf } from '../report/index.js';
import { codeOf } from './read-whole.js';

/**
 * Writes a file whole or not at all: on a disk that is full, what stood there before is still there. The text goes into
 * a file beside it first, which then takes its name. Throws what the system says.
 */
export function writeWhole(file: string, data: string | Uint8Array, mode = 0o666): void {
  const there = statSync(file, { throwIfNoEntry: false });
  // A link to a file that isn’t there yet is written through.
  const isLink = there === undefined && lstatSync(file, { throwIfNoEntry: false }) !== undefined;
  if (isLink || (there !== undefined && !mayBeReplaced(there))) {
    writeFileSync(file, data);
    return;
  }
  const target = there === undefined ? file : realpathSync(file);
  const beside = path.join(path.dirname(target), `.${path.basename(target).slice(0, 80)}.${process.pid}.part`);
  try {
    writeFileSync(beside, data, { mode, flag: 'wx' });
    if (there !== undefined) chmodSync(beside, there.mode);
    renameSync(beside, target);
  } catch (error) {
    rmSync(beside, { force: true });
    // Into such a folder nothing new can be put, but the file itself may be open to this user.
    if (there === undefined || !['EACCES', 'EPERM', 'EEXIST'].includes(codeOf(error) ?? '')) throw error;
    writeFileSync(file, data);
  }
}

/** A pipe or a device is written to as it is; so is a file with other names, or of another owner, which would lose them. */
function mayBeReplaced(there: Stats): boolean {
  return there.isFile() && there.nlink === 1 && (process.getuid === undefined || there.uid === process.getuid());
}

/** Why nothing could be written, as the end of a sentence. */
export function whyUnwritten(error: unknown): string {
  switch (codeOf(error)) {
    case 'ENOSPC': case 'EDQUOT': return 'the disk is full. Make room on it, or write to another one.';
    case 'EACCES': case 'EPERM': case 'EROFS': return 'you may not write there. Choose another folder.';
    case 'ENOENT': case 'ENOTDIR': return 'there is no such folder. Make it first.';
    case 'EISDIR': return 'it is a folder.';
    default: return wordsOf(error);
  }
}
