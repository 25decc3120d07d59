import type { Part, Sublet } from '../../estimate/index.js';
import { zero, type Decimal } from '../../vocabulary/index.js';
import type { SideName } from './again.js';
import type { Cause } from './causes.js';
import type { Pieces } from './option-sides.js';
import type { Piece } from './pieces.js';
import { shared, type Share, type Workings } from './share.js';
import { split } from './split.js';
import { titleOf } from './things.js';

/** A line that both versions have, and what its difference is shared out among. */
interface Moved {
  readonly pieces: Pieces;
  /** What the line itself says otherwise. */
  readonly own: Cause;
  readonly whole: Decimal;
}

/** Who moved the lines of one kind that one thing makes; a side is missing where only the other version has them. */
export function lineShares({ before, after }: { readonly [side in SideName]: Piece | undefined }, workings: Workings): readonly Share[] {
  const { causes, moved, drafts, again, sides } = workings;
  const whole = (after?.amount ?? zero).minus(before?.amount ?? zero);
  const piece = (after ?? before) as Piece;
  if (piece.kind === 'fee') return feeShares(before, after, workings);
  if (before === undefined || after === undefined) return whole.isZero() ? [] : [[causes.of(piece.thing, before === undefined ? 'after' : 'before', sides.option), whole]];
  if (whole.isZero() && drafts.ofThing(after.thing) === undefined && !moved.shopMoved()) return [];
  const pieces = { before, after };
  const line: Moved = { pieces, own: moved.own(after.thing), whole };
  const goods = (of: SideName) => sides.goodsOf(pieces[of], of);
  const bands = (on: 'parts' | 'sublets') => moved.bands({ before: goods('before'), after: goods('after') }, on);
  switch (piece.kind) {
    case 'work': return workShares(line, workings);
    case 'way': return twoShares(line, moved.rates(pieces), (of, shop) => again.way(before.thing, sides.option, of, shop), workings);
    case 'assembly': return twoShares(line, moved.rates(pieces), (of, shop) => again.assembly(goods(of) as Part, of, shop), workings);
    case 'part': return twoShares(line, bands('parts'), (of, shop) => again.part(goods(of) as Part, of, shop), workings);
    case 'sublet': return twoShares(line, bands('sublets'), (of, shop) => again.sublet(goods(of) as Sublet, of, shop), workings);
    case 'core':
    case 'hire': return [[line.own, whole]];
  }
}

/** Hours and class by the job, the rate by the shop, and the time that is taken by the ways in. */
function workShares(line: Moved, workings: Workings): readonly Share[] {
  const { causes, moved, again, sides } = workings;
  const { pieces, own, whole } = line;
  const [before, after] = [sides.jobOf(pieces.before, 'before'), sides.jobOf(pieces.after, 'after')];
  if (before === undefined || after === undefined) return [[own, whole]];
  const rate = moved.rates(pieces);
  const value = (of: SideName, shop: SideName, way: SideName) => again.work({ before, after }, of, shop, way);
  const byOwnTime = (of: SideName, shop: SideName) => value(of, shop, of);
  if (again.waysKey(before, 'before') === again.waysKey(after, 'after')) return twoShares(line, rate, byOwnTime, workings);
  const ways = causes.ways(sides.option);
  const three = fitting(whole, split(3, ([of, shop, way]) => value(of as SideName, shop as SideName, way as SideName)));
  if (three !== undefined) return [[own, three[0] as Decimal], ...shared(rate, three[1] as Decimal), [ways, three[2] as Decimal]];
  // One version doesn't say how long it takes with the other's ways in: then its own words moved it.
  return twoShares(line, rate, byOwnTime, workings);
}

/** Two factors: what the line says, and what the shop makes of it. */
function twoShares({ pieces, own, whole }: Moved, shop: readonly Cause[], valueAt: (own: SideName, shop: SideName) => Decimal | undefined, { drafts }: Workings): readonly Share[] {
  const parts = fitting(whole, split(2, ([of, by]) => valueAt(of as SideName, by as SideName)));
  // Where one version has no such rate, and the line itself says the same, it moved by that.
  if (parts === undefined) return drafts.ofThing(pieces.after.thing) === undefined ? shared(shop, whole) : [[own, whole]];
  return [[own, parts[0] as Decimal], ...shared(shop, parts[1] as Decimal)];
}

/** Shares only count where they add up to what the lines say; otherwise the line wasn't priced by that rule. */
function fitting(whole: Decimal, parts: readonly Decimal[] | undefined): readonly Decimal[] | undefined {
  const sum = parts?.reduce((all, one) => all.plus(one), zero);
  return sum?.minus(whole).abs().lt('1e-20') === true ? parts : undefined;
}

/** A fee by its own words, and by what it is charged on. */
function feeShares(before: Piece | undefined, after: Piece | undefined, { causes, moved, again, sides }: Workings): readonly Share[] {
  const { thing } = (after ?? before) as Piece;
  const fees = { before: sides.feeOf(before, 'before'), after: sides.feeOf(after, 'after') };
  const own = before === undefined || after === undefined ? causes.of(thing, before === undefined ? 'after' : 'before', sides.option) : moved.own(thing);
  const base: Cause = { sort: 'fee', title: titleOf(thing), option: undefined };
  const parts = split(2, ([of, on]) => again.fee(fees[of as SideName], sides.option[on as SideName], on as SideName)) as readonly [Decimal, Decimal];
  // A fee that both versions charge, but one of them on nothing, follows what it is charged on.
  return [['sort' in own && own.sort === 'other' ? base : own, parts[0]], [base, parts[1]]];
}
