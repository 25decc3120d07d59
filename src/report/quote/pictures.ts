import type { Finding } from '../../estimate/index.js';
import type { QuotePicture, WhyAbsent } from './types.js';

/** The bytes of a picture file, or why they weren't read. */
export type PictureFile = { readonly kind: 'read'; readonly bytes: Uint8Array } | { readonly kind: 'missing' | 'outside' | 'too-large' };

/** By the address that the finding leads to. Whoever calls reads the files; nothing is read here. */
export type PictureFiles = ReadonlyMap<string, PictureFile>;

/** A quote is sent by mail: larger pictures, and more of them, are left out and say so. */
export const LARGEST_PICTURE = 2_000_000;
export const MOST_PICTURES = 10;

/** The addresses whose files are wanted, in the order in which they are shown, each once. */
export function picturesWanted(findings: readonly Finding[]): readonly string[] {
  return [...new Set(findings.flatMap(({ pictures }) => pictures.flatMap(({ uri }) => uri ?? [])))].slice(0, MOST_PICTURES);
}

/** The pictures of each finding; those beyond the limit are named and not shown. */
export function picturesOf(findings: readonly Finding[], files: PictureFiles): readonly (readonly QuotePicture[])[] {
  let shown = 0;
  return findings.map(({ pictures }) => pictures.map(({ path, uri }): QuotePicture => {
    const name = path.slice(path.lastIndexOf('/') + 1);
    const absent = (why: WhyAbsent): QuotePicture => ({ kind: 'absent', name, why });
    if (uri === undefined) return absent('outside');
    if (shown >= MOST_PICTURES) return absent('too-many');
    const file = files.get(uri) ?? { kind: 'missing' };
    if (file.kind !== 'read') return absent(file.kind);
    if (file.bytes.length > LARGEST_PICTURE) return absent('too-large');
    const type = typeOf(file.bytes);
    if (type === undefined) return absent('no-picture');
    shown++;
    return { kind: 'shown', name, data: `data:${type};base64,${base64(file.bytes)}` };
  }));
}

/** By the first bytes, whatever the file is called: PNG (ISO/IEC 15948), JPEG (ITU-T T.81) and WebP (RFC 9649). */
function typeOf(bytes: Uint8Array): string | undefined {
  const at = (from: number, text: string) => [...text].every((character, i) => bytes[from + i] === character.charCodeAt(0));
  if (at(0, '\u0089PNG\r\n\u001a\n')) return 'image/png';
  if (at(0, '\u00ff\u00d8\u00ff')) return 'image/jpeg';
  return at(0, 'RIFF') && at(8, 'WEBP') ? 'image/webp' : undefined;
}

const CHUNK = 24_573; // a multiple of three, so that chunks can be joined

function base64(bytes: Uint8Array): string {
  let text = '';
  for (let i = 0; i < bytes.length; i += CHUNK) text += btoa(String.fromCharCode(...bytes.subarray(i, i + CHUNK)));
  return text;
}
