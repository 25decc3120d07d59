import type { Fee, Part, Sublet } from '../../estimate/index.js';
import type { PlannedJob } from '../plan.js';
import type { SideName, Version } from './again.js';
import type { BothWeighed } from './causes.js';
import type { Matched } from './match.js';
import { piecesOf, type Piece, type PieceKind } from './pieces.js';
import type { Thing } from './things.js';

export type Versions = { readonly [side in SideName]: Version };
export type Pieces = { readonly [side in SideName]: Piece };

/** An option as both versions weigh it, with the ways to find what stands in the one in the other. */
export class OptionSides {
  private readonly pieces: { readonly [side in SideName]: ReturnType<typeof piecesOf> };

  constructor(
    readonly option: BothWeighed,
    readonly versions: Versions,
    private readonly matched: Matched,
  ) {
    this.pieces = { before: piecesOf(option.before, versions.before.things), after: piecesOf(option.after, versions.after.things) };
  }

  /** The lines of each thing, kind by kind; a side is missing where only the other version has them. */
  *allPieces(): Generator<{ readonly [side in SideName]: Piece | undefined }> {
    for (const thing of this.thingsIn(this.pieces)) {
      const [before, after] = [this.pieceOf('before', thing), this.pieceOf('after', thing)];
      for (const kind of new Set([...(before?.keys() ?? []), ...(after?.keys() ?? [])])) yield { before: before?.get(kind), after: after?.get(kind) };
    }
  }

  /** Each thing of both versions once. */
  thingsIn(sides: { readonly [side in SideName]: ReadonlyMap<Thing, unknown> }): Thing[] {
    return [...new Set([...sides.before.keys(), ...sides.after.keys()].map((thing) => this.matched.pairOf(thing)?.after ?? thing))];
  }

  /** The thing as a version has it; a thing of one version only stands for itself there. */
  onSide(thing: Thing, side: SideName): Thing {
    const pair = this.matched.pairOf(thing);
    return pair === undefined ? thing : pair[side];
  }

  partnerOf(record: Thing['record'], side: SideName): Thing | undefined {
    const thing = this.versions[side].things.of(record);
    return thing === undefined ? undefined : this.matched.pairOf(thing)?.[side === 'before' ? 'after' : 'before'];
  }

  goodsOf({ thing: { record: wanted } }: Piece, side: SideName): Part | Sublet {
    const { option, planned } = this.option[side];
    const ways = planned.chosen.paid;
    const all: readonly (Part | Sublet)[] = [...option.parts, ...option.sublets, ...ways.flatMap((way) => [...way.parts, ...way.sublets])];
    return all.find(({ record }) => record === wanted) as Part | Sublet;
  }

  jobOf({ thing }: Piece, side: SideName): PlannedJob | undefined {
    return this.option[side].planned.chosen.jobs.find(({ job }) => job.record === thing.record);
  }

  feeOf(piece: Piece | undefined, side: SideName): Fee | undefined {
    if (piece === undefined) return undefined;
    return [...this.option[side].option.fees, ...this.versions[side].comparison.estimate.shop.fees].find(({ record }) => record === piece.thing.record);
  }

  private pieceOf(side: SideName, thing: Thing): ReadonlyMap<PieceKind, Piece> | undefined {
    return this.pieces[side].get(this.onSide(thing, side));
  }
}
