import { readFileSync } from 'node:fs';
import { gunzipSync } from 'node:zlib';

/** The files of a gzipped tar archive (POSIX ustar): header blocks of 512 bytes with the name at 0, the size in octal digits at 124. */
export function filesOf(tarball: string): ReadonlyMap<string, string> {
  const tar = gunzipSync(readFileSync(tarball));
  const files = new Map<string, string>();
  for (let at = 0; tar[at] !== 0 && at < tar.length;) {
    const text = (from: number, length: number): string => tar.toString('utf8', at + from, at + from + length).replace(/\0[^]*$/, '');
    const size = parseInt(text(124, 12), 8);
    files.set(text(0, 100), tar.toString('utf8', at + 512, at + 512 + size));
    at += 512 + Math.ceil(size / 512) * 512;
  }
  return files;
}
