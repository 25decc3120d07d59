/** The text that some bytes stand for; or why they stand for none, as the end of a sentence that starts with the file's name. */
export type TextOf = { readonly kind: 'text'; readonly text: string } | { readonly kind: 'no-text'; readonly why: string };

/** So much of a text is looked at to tell in what it is written, in bytes. */
const START = 4_096;

/** The text that the bytes of a file stand for in UTF-8, to the last one: a guess could put wrong letters into a name or a figure. */
export function textOf(bytes: Uint8Array): TextOf {
  const how = otherThanText(bytes.subarray(0, START));
  if (how !== undefined) return { kind: 'no-text', why: how };
  try {
    return { kind: 'text', text: new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(bytes) };
  } catch {
    return { kind: 'no-text', why: 'is not text in UTF-8. Save it in UTF-8 and try again.' };
  }
}

/** UTF-16 by its mark (Unicode Standard, 23.8), or because every second byte is none; and what a machine leaves that stopped while it wrote. */
function otherThanText(start: Uint8Array): string | undefined {
  const [first, second] = start;
  const isMarked = (first === 0xff && second === 0xfe) || (first === 0xfe && second === 0xff);
  const nones = [0, 0];
  start.forEach((byte, i) => void (nones[i % 2] = (nones[i % 2] ?? 0) + (byte === 0 ? 1 : 0)));
  const [even = 0, odd = 0] = nones;
  if (start.length > 0 && even + odd === start.length) return 'holds nothing but zeros, as after a machine stopped while it was written. Take it from another copy.';
  const isHalf = start.length >= 8 && Math.max(even, odd) * 4 > start.length && Math.min(even, odd) * 16 < start.length;
  return isMarked || isHalf ? 'is text in UTF-16, not in UTF-8. Save it in UTF-8 and try again.' : undefined;
}
