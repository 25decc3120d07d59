/** Something that later rooms keep things by, for as long as it lives. A copy of it must get a list of its own. */
export interface Holder {
  /** Read and written through a `Slot` alone. It says nothing of the text. */
  readonly held: unknown[];
}

/** Holders of one kind. They know how many slots there are, so that the list of each is no longer than that. */
export class Holders {
  private slots = 0;

  /** The list of a new holder. */
  none(): unknown[] {
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

  constructor(holders: Holders) {
    this.place = holders.nextPlace();
  }

  get({ held }: Holder): V | undefined {
    return held[this.place] as V | undefined;
  }

  set({ held }: Holder, value: V): void {
    held[this.place] = value;
  }
}
