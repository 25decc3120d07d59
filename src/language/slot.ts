/** Something that later rooms keep things by, for as long as it lives. A copy of it must get a list of its own. */
export interface Holder {
  /** Read and written through a `Slot` alone, and not there until one is. It says nothing of the text. */
  held: unknown[] | undefined;
}

/** Holders of one kind. They know how many slots there are, so that the list of each is no longer than that. */
export class Holders {
  private slots = 0;

  /** The list of a holder that keeps its first thing. */
  list(): unknown[] {
    return new Array<unknown>(this.slots);
  }

  nextPlace(): number {
    return this.slots++;
  }
}

/**
 * A place of its own in every holder of a kind for what was worked out from it once. Like a `WeakMap`, but asked tens of
 * thousands of times with each keystroke, so it is a look into a list and no search for an identity.
 */
export class Slot<V> {
  private readonly place: number;

  constructor(private readonly holders: Holders) {
    this.place = holders.nextPlace();
  }

  get({ held }: Holder): V | undefined {
    return held === undefined ? undefined : (held[this.place] as V | undefined);
  }

  set(holder: Holder, value: V): void {
    (holder.held ??= this.holders.list())[this.place] = value;
  }
}
