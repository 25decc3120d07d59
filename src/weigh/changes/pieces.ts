import { zero, type Decimal } from '../../vocabulary/index.js';
import type { Line } from '../line.js';
import type { Weighed } from '../weigh.js';
import type { Thing, Things } from './things.js';

/** What a line of the quote is, seen from the thing that it was priced from. */
export type PieceKind = 'work' | 'way' | 'assembly' | 'part' | 'core' | 'sublet' | 'hire' | 'fee';

/** All lines of one kind that one thing makes in one option: the two of a way in are one piece. */
export interface Piece {
  readonly kind: PieceKind;
  readonly thing: Thing;
  readonly lines: readonly Line[];
  readonly amount: Decimal;
}

/** The pieces of an option by their thing, as one version has them. */
export function piecesOf({ totals }: Weighed, things: Things): ReadonlyMap<Thing, ReadonlyMap<PieceKind, Piece>> {
  const found = new Map<Thing, Map<PieceKind, Piece>>();
  for (const line of totals.lines) {
    const thing = things.of(line.record);
    if (thing === undefined) continue;
    const kind = kindOf(line, thing);
    const own = found.get(thing) ?? new Map<PieceKind, Piece>();
    const before = own.get(kind);
    own.set(kind, { kind, thing, lines: [...(before?.lines ?? []), line], amount: (before?.amount ?? zero).plus(line.amount.likely) });
    found.set(thing, own);
  }
  return found;
}

function kindOf({ kind }: Line, thing: Thing): PieceKind {
  if (kind === 'labour') return thing.kind === 'access' ? 'way' : thing.kind === 'part' ? 'assembly' : 'work';
  if (kind === 'fee') return thing.kind === 'tool' ? 'hire' : 'fee';
  return kind;
}
