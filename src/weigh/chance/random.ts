/** Draws whole numbers from 0 to below `bound` (at most 2^16), each as often as the next to within 1 in 65 536. */
export type Draw = (bound: number) => number;

/**
 * A generator that depends on nothing but a key and a seed: two keys give unrelated rows. Whole numbers of 32 bits
 * throughout, so that it gives the same on every machine.
 *
 * Source: xoshiro128** 1.1, D. Blackman & S. Vigna, "Scrambled linear pseudorandom number generators", ACM Trans.
 * Math. Software 47 (2021); its state comes from the key's and the seed's hashes.
 */
export function drawsFor(key: string, seed: number): Draw {
  const first = fnv1a(key);
  const second = fnv1a(key, mixed(seed ^ GOLDEN));
  const next = xoshiro128([mixed(first), mixed(second), mixed(seed), GOLDEN]);
  for (let i = 0; i < WARM_UP; i++) next();
  return (bound) => Math.floor((next() * bound) / TWO_TO_32);
}

/** The fractional part of the golden ratio in 32 bits: a state of it is never all zero. */
const GOLDEN = 0x9e3779b9;
/** So many numbers are thrown away, after which states that differ in few bits differ in many. */
const WARM_UP = 16;
const TWO_TO_32 = 4_294_967_296;

/** The generator itself: numbers from 0 to below 2^32 from a state of four words that are not all zero. */
export function xoshiro128(state: readonly [number, number, number, number]): () => number {
  // In an array of words: variables of a closure would put every word into the heap.
  const words = Int32Array.from(state);
  return () => {
    const a = words[0] as number;
    const b = words[1] as number;
    const c = (words[2] as number) ^ a;
    const d = (words[3] as number) ^ b;
    words[0] = a ^ d;
    words[1] = b ^ c;
    words[2] = c ^ (b << 9);
    words[3] = rotated(d, 11);
    return Math.imul(rotated(Math.imul(b, 5), 7), 9) >>> 0;
  };
}

function rotated(word: number, by: number): number {
  return (word << by) | (word >>> (32 - by));
}

/**
 * The 32-bit hash FNV-1a of a text's octets (RFC 9923): a character below 256 is one octet, any other code unit two.
 */
export function fnv1a(text: string, basis = 0x811c9dc5): number {
  let hash = basis;
  for (let i = 0; i < text.length; i++) {
    const unit = text.charCodeAt(i);
    hash = Math.imul(hash ^ (unit & 0xff), FNV_PRIME);
    if (unit > 0xff) hash = Math.imul(hash ^ (unit >>> 8), FNV_PRIME);
  }
  return hash >>> 0;
}

const FNV_PRIME = 0x01000193;

/** A word with every bit of it spread over all others: the finaliser of MurmurHash3 (A. Appleby, public domain). */
export function mixed(word: number): number {
  let h = word;
  h = Math.imul(h ^ (h >>> 16), 0x85ebca6b);
  h = Math.imul(h ^ (h >>> 13), 0xc2b2ae35);
  return (h ^ (h >>> 16)) >>> 0;
}
