import type * as fs from 'node:fs';
import { closeSync, fstatSync, openSync, readSync, statSync } from 'node:fs';
import { wordsOf } from '../report/index.js';

/** The bytes of a file, `missing` where there is none, or why they can't be had, as the end of a sentence that starts with its name. */
export type ReadWhole = { readonly kind: 'read'; readonly bytes: Buffer } | { readonly kind: 'missing' } | { readonly kind: 'no-file' | 'too-large' | 'unreadable'; readonly why: string };

/** What is asked of a disk. Tests put one in its place that fails. */
export type Disk = Readonly<Pick<typeof fs, 'statSync' | 'openSync' | 'fstatSync' | 'readSync' | 'closeSync'>>;

const REAL: Disk = { statSync, openSync, fstatSync, readSync, closeSync };

/** Whoever writes a file while it is read is given so many chances to be done with it. */
const MOST_TRIES = 3;

/**
 * Reads a file of up to so many bytes, whole or not at all; the one place in the terminal that does. A pipe or a device
 * is not opened, since it could keep everybody waiting. A file that changes meanwhile is read again: half of the old
 * text with half of the new one would be an estimate that nobody wrote.
 */
export function readWhole(file: string, largest: number, disk: Disk = REAL): ReadWhole {
  try {
    for (let tries = 0; tries < MOST_TRIES; tries++) {
      const found = readOnce(file, largest, disk);
      if (found !== undefined) return found;
    }
    return { kind: 'unreadable', why: 'changes while it is read. Wait until whoever writes it is done, and try again.' };
  } catch (error) {
    // Below a file there is nothing either.
    return ['ENOENT', 'ENOTDIR'].includes(codeOf(error) ?? '') ? { kind: 'missing' } : { kind: 'unreadable', why: whyUnreadable(error) };
  }
}

/** Undefined where it changed meanwhile. */
function readOnce(file: string, largest: number, disk: Disk): ReadWhole | undefined {
  const stats = disk.statSync(file, { throwIfNoEntry: false });
  if (stats === undefined) return { kind: 'missing' };
  if (!stats.isFile()) return { kind: 'no-file', why: 'is not a file.' };
  if (stats.size > largest) return tooLarge(largest);
  const open = disk.openSync(file, 'r');
  try {
    const before = disk.fstatSync(open);
    const bytes = bytesOf(open, Math.min(before.size, largest) + 1, disk.readSync);
    const after = disk.fstatSync(open);
    if (after.size > largest) return tooLarge(largest);
    return after.size === bytes.length && after.size === before.size && after.mtimeMs === before.mtimeMs ? { kind: 'read', bytes } : undefined;
  } finally {
    disk.closeSync(open);
  }
}

function tooLarge(largest: number): ReadWhole {
  return { kind: 'too-large', why: `is larger than an estimate can be (${largest / 1_000_000} MB).` };
}

/** What is there by a name; undefined where nothing is, as below a file. */
export function statOf(place: string): fs.Stats | undefined {
  try {
    return statSync(place, { throwIfNoEntry: false });
  } catch (error) {
    if (codeOf(error) === 'ENOTDIR') return undefined;
    throw error;
  }
}

/** Takes some bytes from where the last ones ended; none at the end. */
export type Read = (open: number, into: Buffer, offset: number, length: number, position: null) => number;

/** All bytes to the end of what is open, or as many as are wanted at most. */
export function bytesOf(open: number, most: number, read: Read): Buffer {
  const bytes = Buffer.allocUnsafe(most);
  let length = 0;
  while (length < most) {
    const count = read(open, bytes, length, most - length, null);
    if (count === 0) break;
    length += count;
  }
  return bytes.subarray(0, length);
}

/** What a system says, in words that tell what to do about it; the end of a sentence that starts with the name. */
export function whyUnreadable(error: unknown): string {
  switch (codeOf(error)) {
    case 'EACCES': case 'EPERM': return 'may not be read by you. Have its owner let you read it, and try again.';
    case 'EISDIR': return 'is a folder, not a file.';
    case 'ELOOP': return 'is a link that leads round in a circle.';
    case 'EIO': return 'could not be read: the disk, or the way to it, failed (EIO). Try again; if it stays so, take the file from another copy.';
    default: return `could not be read: ${wordsOf(error)}`;
  }
}

export function codeOf(error: unknown): string | undefined {
  return error instanceof Error && 'code' in error ? String(error.code) : undefined;
}
