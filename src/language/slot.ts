/** Something that later rooms keep things by, for as long as it lives. */
export interface Holder {
  /** Read and written through a `Slot` alone. It says nothing of the text. */
  readonly held: unknown[];
}

let slots = 0;

/**
 * A place of its own in every holder for what was worked out from it once. Like a `WeakMap`, but asked tens of thousands
 * of times with each keystroke, so it is a look into a list and no search for an identity.
 */
export class Slot<V> {
  private readonly place = slots++;

  get({ held }: Holder): V | undefined {
    return this.place < held.length ? (held[this.place] as V | undefined) : undefined;
  }

  set({ held }: Holder, value: V): void {
    while (held.length < this.place) held.push(undefined);
    held[this.place] = value;
  }
}
