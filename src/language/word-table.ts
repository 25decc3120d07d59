/** Places of the table: the words of the language, and the names and figures of a long file. */
const PLACES = 8192;

/** Longer runs are rare and don't come again; shorter ones are copies, so that the table keeps no file alive. */
const LONGEST = 12;

/**
 * Pieces of a text, the same one where it was seen before: an estimate says `takes`, `h` and its names again and again, and
 * a string that is there already needs no room and is found at once where words are looked up. Of two pieces with one place
 * the later one stays.
 */
export class WordTable {
  private readonly words = new Array<string>(PLACES).fill('');

  /** What `text.slice(start, end)` gives. `hash` is made of the characters in between. */
  slice(text: string, start: number, end: number, hash: number): string {
    if (end - start > LONGEST) return text.slice(start, end);
    const place = (hash ^ (hash >>> 13)) & (PLACES - 1);
    const known = this.words[place] as string;
    if (known.length === end - start && text.startsWith(known, start)) return known;
    const word = text.slice(start, end);
    this.words[place] = word;
    return word;
  }
}
