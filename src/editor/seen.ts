import type { Key } from './places.js';

/**
 * Whether files are there that nobody reads here, such as pictures of findings. Nobody waits for the disk: a file counts as
 * there until it is known not to be, and whoever was told otherwise hears of it.
 */
export class Seen {
  private readonly known = new Map<Key, boolean>();
  private readonly looking = new Map<Key, Promise<void>>();

  /** @param changed a file is there, or is not, other than was said before. */
  constructor(private readonly look: (key: Key) => Promise<boolean>, private readonly changed: (key: Key) => void) {}

  isThere(key: Key): boolean {
    if (!this.known.has(key) && !this.looking.has(key)) void this.again(key);
    return this.known.get(key) ?? true;
  }

  /** Something happened to a file: it is looked at again, and is until then what it was. */
  async again(key: Key): Promise<void> {
    const looking = this.look(key).catch(() => false).then((there) => {
      // Forgotten meanwhile, or looked at once more since then.
      if (this.looking.get(key) !== looking) return;
      this.looking.delete(key);
      const said = this.known.get(key) ?? true;
      this.known.set(key, there);
      if (said !== there) this.changed(key);
    });
    this.looking.set(key, looking);
    await looking;
  }

  /** Does something at the very moment in which all of these are known: a little later some may be forgotten again. */
  async whenKnown(keys: readonly Key[], then: () => void): Promise<void> {
    for (let unknown = this.unknown(keys); unknown.length > 0; unknown = this.unknown(keys)) {
      await Promise.all(unknown.map((key) => this.looking.get(key) ?? this.again(key)));
    }
    then();
  }

  /** Nobody asks for any others now. */
  keepOnly(keys: ReadonlySet<Key>): void {
    for (const held of [this.known, this.looking]) for (const key of held.keys()) if (!keys.has(key)) held.delete(key);
  }

  private unknown(keys: readonly Key[]): readonly Key[] {
    return keys.filter((key) => !this.known.has(key));
  }
}
