import { fstatSync, writeSync } from 'node:fs';

/** Takes bytes from an offset on, and says how many it took. Tests put a disk in its place that fills up. */
export type Write = (open: number, bytes: Uint8Array, offset: number, length: number) => number;

/**
 * Writes a text to a file that is open, to the last byte, or throws what the system says. A disk that fills up takes a
 * part without a word and refuses only the next one; Node's own stream never asks again.
 */
export function writeToEnd(open: number, text: string, write: Write = writeSync): void {
  const bytes = new TextEncoder().encode(text);
  for (let at = 0; at < bytes.length;) {
    const count = write(open, bytes, at, bytes.length - at);
    if (count <= 0) throw new Error('nothing more was taken');
    at += count;
  }
}

/** Whether something open is a file on a disk. */
export function isFile(open: number): boolean {
  try {
    return fstatSync(open).isFile();
  } catch {
    return false;
  }
}
