import { readFileSync } from 'node:fs';
import { inflateRawSync } from 'node:zlib';

export interface Entry {
  readonly name: string;
  /** Bytes in the zip file. */
  readonly packed: number;
  /** Bytes of the file itself. */
  readonly size: number;
  readonly text: () => string;
}

/** The directory at the end of a zip file (PKWARE APPNOTE 4.3.12 and 4.3.16). A vsix has no parts that need more than this. */
export function entriesOf(file: string): readonly Entry[] {
  const zip = readFileSync(file);
  const end = zip.lastIndexOf(Buffer.from('PK\x05\x06', 'latin1'));
  const entries: Entry[] = [];
  for (let i = 0, at = zip.readUInt32LE(end + 16); i < zip.readUInt16LE(end + 10); i++) {
    const [packed, size, nameLength] = [zip.readUInt32LE(at + 20), zip.readUInt32LE(at + 24), zip.readUInt16LE(at + 28)];
    const [method, local] = [zip.readUInt16LE(at + 10), zip.readUInt32LE(at + 42)];
    const name = zip.toString('utf8', at + 46, at + 46 + nameLength);
    const text = (): string => {
      const start = local + 30 + zip.readUInt16LE(local + 26) + zip.readUInt16LE(local + 28);
      const data = zip.subarray(start, start + packed);
      return (method === 0 ? data : inflateRawSync(data)).toString('utf8');
    };
    entries.push({ name, packed, size, text });
    at += 46 + nameLength + zip.readUInt16LE(at + 30) + zip.readUInt16LE(at + 32);
  }
  return entries;
}
