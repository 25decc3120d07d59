import type { Span } from '../../language/index.js';
import type { Part, Sublet } from '../../estimate/index.js';
import { zero, type Decimal } from '../../vocabulary/index.js';
import { partsIn } from '../cores.js';
import type { Weighed } from '../weigh.js';
import { PriceAgain, type SideName, type Version } from './again.js';
import { Causes, type BothWeighed, type Cause } from './causes.js';
import type { Drafts } from './drafts.js';
import { Ledger } from './ledger.js';
import type { Matched } from './match.js';
import { piecesOf, type Piece, type PieceKind } from './pieces.js';
import { split } from './split.js';
import { titleOf, topOf, type Thing } from './things.js';
import type { Corner } from './split.js';

/** An option in both versions, or in one. */
export interface WeighedPair {
  readonly before: Weighed | undefined;
  readonly after: Weighed | undefined;
}

type Versions = { readonly [side in SideName]: Version };
type Share = readonly [Cause, Decimal];

/** Works out, to the smallest coin, who moved how much in every option. */
export function effectsOf(versions: Versions, matched: Matched, drafts: Drafts, options: readonly WeighedPair[]): Ledger {
  const ledger = new Ledger(options.length, versions.after.comparison.money.currency.digits);
  const causes = new Causes(versions, matched, drafts);
  const again = new PriceAgain(versions, matched);
  options.forEach(({ before, after }, index) => {
    if (before !== undefined && after !== undefined) new OptionBooks({ index, before, after }, versions, matched, drafts, causes, again, ledger).book();
    else bookWhole(index, before, after, versions, drafts, ledger);
  });
  return ledger;
}

/** An option that came or went counts in whole as that one change. */
function bookWhole(index: number, before: Weighed | undefined, after: Weighed | undefined, versions: Versions, drafts: Drafts, ledger: Ledger): void {
  const side = before === undefined ? 'after' : 'before';
  const weighed = (before ?? after) as Weighed;
  const thing = versions[side].things.of(weighed.option.record);
  const cause = (thing === undefined ? undefined : drafts.ofThing(thing)) ?? { sort: 'other' as const, title: weighed.option.title, option: undefined };
  const signed = (value: Decimal) => (side === 'before' ? value.neg() : value);
  const { totals, inAll } = weighed;
  ledger.book(index, 'total', [[cause, signed(totals.total.likely)]]);
  ledger.book(index, 'beside', [[cause, signed(inAll.likely.minus(totals.total.likely))]]);
}

class OptionBooks {
  private readonly pieces: { readonly [side in SideName]: ReturnType<typeof piecesOf> };

  constructor(
    private readonly option: BothWeighed,
    private readonly versions: Versions,
    private readonly matched: Matched,
    private readonly drafts: Drafts,
    private readonly causes: Causes,
    private readonly again: PriceAgain,
    private readonly ledger: Ledger,
  ) {
    this.pieces = { before: piecesOf(option.before, versions.before.things), after: piecesOf(option.after, versions.after.things) };
  }

  book(): void {
    const { before, after } = this.option;
    const booked = { total: zero, beside: zero };
    const put = (column: 'total' | 'beside', shares: readonly Share[]) => {
      for (const [, amount] of shares) booked[column] = booked[column].plus(amount);
      this.ledger.book(this.option.index, column, shares);
    };
    for (const thing of this.thingsIn(this.pieces)) {
      const kinds = new Set([...(this.pieceOf('before', thing)?.keys() ?? []), ...(this.pieceOf('after', thing)?.keys() ?? [])]);
      for (const kind of kinds) put('total', this.sharesOf(this.pieceOf('before', thing)?.get(kind), this.pieceOf('after', thing)?.get(kind)));
    }
    for (const shares of this.taxShares()) put('total', shares);
    for (const shares of this.backShares()) put('beside', shares);
    put('beside', [[{ sort: 'worth', title: 'Worth given up', option: undefined }, likely(after.givenUp).minus(likely(before.givenUp))]]);
    // What no rule above accounts for is told as such, never left out.
    const whole = after.totals.total.likely.minus(before.totals.total.likely);
    const all = after.inAll.likely.minus(before.inAll.likely);
    const other: Cause = { sort: 'other', title: 'Otherwise', option: undefined };
    put('total', [[other, whole.minus(booked.total).toDecimalPlaces(20)]]);
    put('beside', [[other, all.minus(whole).minus(booked.beside).toDecimalPlaces(20)]]);
  }

  private sharesOf(before: Piece | undefined, after: Piece | undefined): readonly Share[] {
    const amount = (after?.amount ?? zero).minus(before?.amount ?? zero);
    const piece = (after ?? before) as Piece;
    if (piece.kind === 'fee') return this.feeShares(before, after);
    if (before === undefined || after === undefined) return amount.isZero() ? [] : [[this.causes.of(piece.thing, before === undefined ? 'after' : 'before', this.option), amount]];
    if (amount.isZero() && this.drafts.ofThing(after.thing) === undefined && !this.shopMoved()) return [];
    const own = this.ownCause(after.thing);
    const pieces = { before, after };
    switch (piece.kind) {
      case 'work': return this.workShares(pieces, own);
      case 'way': return this.twoShares(pieces, own, this.rateCauses(pieces), ([of, shop]) => this.again.way(before.thing, this.option, of as SideName, shop as SideName));
      case 'assembly': return this.twoShares(pieces, own, this.rateCauses(pieces), ([of, shop]) => this.again.assembly(this.goods(pieces, of as SideName) as Part, of as SideName, shop as SideName));
      case 'part': return this.twoShares(pieces, own, this.bandCauses(pieces, 'parts'), ([of, shop]) => this.again.part(this.goods(pieces, of as SideName) as Part, of as SideName, shop as SideName));
      case 'sublet': return this.twoShares(pieces, own, this.bandCauses(pieces, 'sublets'), ([of, shop]) => this.again.sublet(this.goods(pieces, of as SideName) as Sublet, of as SideName, shop as SideName));
      case 'core':
      case 'hire': return [[own, amount]];
    }
  }

  /** Hours and class by the job, the rate by the shop, and the time that is taken by the ways in. */
  private workShares(pieces: Pieces, own: Cause): readonly Share[] {
    const jobs = { before: this.jobOf(pieces.before, 'before'), after: this.jobOf(pieces.after, 'after') };
    const { before, after } = jobs;
    const whole = pieces.after.amount.minus(pieces.before.amount);
    if (before === undefined || after === undefined) return [[own, whole]];
    const found = { before, after };
    const sameTime = this.again.waysKey(before, 'before') === this.again.waysKey(after, 'after');
    const rate = this.rateCauses(pieces);
    const value = (of: SideName, shop: SideName, way: SideName) => this.again.work(found, of, shop, way);
    if (sameTime) return this.twoShares(pieces, own, rate, ([of, shop]) => value(of as SideName, shop as SideName, of as SideName));
    const ways = this.causes.ways(this.option);
    const three = this.fits(pieces, split(3, ([of, shop, way]) => value(of as SideName, shop as SideName, way as SideName)));
    if (three !== undefined) return [[own, three[0] as Decimal], ...shared(rate, three[1] as Decimal), [ways, three[2] as Decimal]];
    // One version doesn't say how long it takes with the other's ways in: then its own words moved it.
    const changed = this.drafts.ofThing(pieces.after.thing) !== undefined;
    return this.twoShares(pieces, changed ? own : ways, rate, ([of, shop]) => value(of as SideName, shop as SideName, of as SideName));
  }

  /** Two factors: what the line says, and what the shop makes of it. */
  private twoShares(pieces: Pieces, own: Cause, shop: readonly Cause[], valueAt: (corner: Corner) => Decimal | undefined): readonly Share[] {
    const parts = this.fits(pieces, split(2, valueAt));
    // Where one version has no such rate, and the line itself says the same, it moved by that.
    if (parts === undefined) return this.drafts.ofThing(pieces.after.thing) === undefined ? shared(shop, pieces.after.amount.minus(pieces.before.amount)) : [[own, pieces.after.amount.minus(pieces.before.amount)]];
    return [[own, parts[0] as Decimal], ...shared(shop, parts[1] as Decimal)];
  }

  /** Shares only count where they add up to what the lines say; otherwise the line wasn't priced by that rule. */
  private fits(pieces: Pieces, parts: readonly Decimal[] | undefined): readonly Decimal[] | undefined {
    const whole = pieces.after.amount.minus(pieces.before.amount);
    const sum = parts?.reduce((all, one) => all.plus(one), zero);
    return sum?.minus(whole).abs().lt('1e-20') === true ? parts : undefined;
  }

  private feeShares(before: Piece | undefined, after: Piece | undefined): readonly Share[] {
    const piece = (after ?? before) as Piece;
    const [one, other] = [this.feeOf(before, 'before'), this.feeOf(after, 'after')];
    const own = before === undefined || after === undefined ? this.causes.of(piece.thing, before === undefined ? 'after' : 'before', this.option) : this.ownCause(piece.thing);
    const title = titleOf(piece.thing);
    const base: Cause = { sort: 'fee', title, option: undefined };
    const parts = split(2, ([of, on]) => this.again.fee(of === 'before' ? one : other, this.option[on as SideName], on as SideName)) as readonly [Decimal, Decimal];
    // A fee that both versions charge, but one of them on nothing, follows what it is charged on.
    return [['sort' in own && own.sort === 'other' ? base : own, parts[0]], [base, parts[1]]];
  }

  private *taxShares(): Generator<readonly Share[]> {
    const taxes = { before: this.versions.before.comparison.estimate.shop.taxes, after: this.versions.after.comparison.estimate.shop.taxes };
    const pairs = [
      ...taxes.after.map((tax) => ({ after: tax, before: taxes.before.find(({ record }) => record === this.partnerOf(tax.record, 'after')?.record) })),
      ...taxes.before.filter((tax) => !taxes.after.some(({ record }) => record === this.partnerOf(tax.record, 'before')?.record)).map((tax) => ({ before: tax, after: undefined })),
    ];
    const policies = this.policyCauses();
    for (const pair of pairs) {
      const tax = (pair.after ?? pair.before);
      const thing = this.versions[pair.after === undefined ? 'before' : 'after'].things.of(tax.record);
      const own: Cause = (thing === undefined ? undefined : this.drafts.ofThing(thing)) ?? { sort: 'other', title: tax.title, option: undefined };
      const parts = split(3, ([of, policy, on]) => this.again.tax(pair[of as SideName], policy as SideName, this.option[on as SideName], on as SideName)) as readonly [Decimal, Decimal, Decimal];
      yield [[own, parts[0]], ...shared(policies.length > 0 ? policies : [own], parts[1]), [{ sort: 'tax', title: tax.title, option: undefined }, parts[2]]];
    }
  }

  /** What comes back makes an option cheaper in all: refunds by their part, whether they are in time, and their tax. */
  private *backShares(): Generator<readonly Share[]> {
    const { before, after } = this.option;
    const backs = { before: this.backsOf(before, 'before'), after: this.backsOf(after, 'after') };
    for (const thing of this.thingsIn(backs)) {
      const [one, other] = [backs.before.get(this.onSide(thing, 'before') as Thing), backs.after.get(this.onSide(thing, 'after') as Thing)];
      const own = one !== undefined && other !== undefined ? this.ownCause(thing) : this.causes.of(this.onSide(thing, one === undefined ? 'after' : 'before') as Thing, one === undefined ? 'after' : 'before', this.option);
      const value = (of: Back | undefined, late: Back | undefined) => (of === undefined || late?.late === true ? zero : of.refund.neg());
      const sides = { before: one, after: other };
      // A part of one version only has no other way of being late.
      const lateOf = (side: 'before' | 'after') => sides[side] ?? one ?? other;
      const parts = split(2, ([of, late]) => value(sides[of as SideName], lateOf(late as SideName))) as readonly [Decimal, Decimal];
      yield [[own, parts[0]], [{ sort: 'refund', title: 'Core back in time or not', option: undefined }, parts[1]]];
      yield [[own, (one?.salvage ?? zero).minus(other?.salvage ?? zero)]];
    }
    yield [[{ sort: 'tax-back', title: 'Tax back with the cores', option: undefined }, before.returns.taxBack.likely.minus(after.returns.taxBack.likely)]];
  }

  private backsOf({ option, planned, returns, totals }: Weighed, side: SideName): Map<Thing, Back> {
    const found = new Map<Thing, Back>();
    const { things } = this.versions[side];
    const worth = (sources: readonly { readonly at: Span }[]) => returns.salvage.from.reduce((all, { at, likely: value }) => (sources.some((one) => one.at === at) ? all.plus(value) : all), zero);
    for (const part of partsIn(option, planned.chosen)) {
      const thing = things.of(part.record);
      if (thing === undefined || part.core === undefined) continue;
      const cores = returns.cores.filter((core) => core.part === part);
      const refund = this.again.refund(part, totals.lines, side).times(cores.length);
      found.set(thing, { refund, salvage: worth(part.core.keeps), late: cores.some(({ late }) => late) });
    }
    for (const piece of option.harvests) {
      const thing = things.of(piece.record);
      if (thing !== undefined) found.set(thing, { refund: zero, salvage: worth([piece]), late: false });
    }
    return found;
  }

  private ownCause(thing: Thing): Cause {
    return this.drafts.ofThing(thing) ?? (this.otherMoney() ? { sort: 'rounding', title: 'Rounding', option: undefined } : { sort: 'other', title: titleOf(thing), option: undefined });
  }

  /** The rates that moved; where another one is the usual now, that follows from the shop as a whole. */
  private rateCauses(pieces: Pieces): readonly Cause[] {
    const rates = this.again.rates(pieces);
    const moved = this.moved(rates);
    return moved.length > 0 ? moved : [{ sort: 'rate', title: 'Rate of the work', option: undefined }];
  }

  private bandCauses(pieces: Pieces, on: 'parts' | 'sublets'): readonly Cause[] {
    const goods = { before: this.goods(pieces, 'before'), after: this.goods(pieces, 'after') };
    const moved = this.moved(this.again.bands(goods, on));
    return moved.length > 0 ? moved : [{ sort: 'rounding', title: 'Rounding', option: undefined }];
  }

  private policyCauses(): readonly Cause[] {
    return this.moved((['before', 'after'] as const).flatMap((side) => [...this.versions[side].comparison.estimate.shop.coreTax.values()].flatMap(({ record }) => this.versions[side].things.of(record) ?? [])));
  }

  private moved(things: readonly Thing[]): readonly Cause[] {
    return [...new Set(things.flatMap((thing) => this.drafts.ofThing(thing) ?? []))].sort((a, b) => (a.key < b.key ? -1 : a.key > b.key ? 1 : 0));
  }

  /** Whether a line that says the same may have another price all the same. */
  private shopMoved(): boolean {
    return this.otherMoney() || this.drafts.all.some(({ before, after }) => topOf((after ?? before) as Thing).kind === 'shop');
  }

  private otherMoney(): boolean {
    return this.versions.before.comparison.money !== this.versions.after.comparison.money;
  }

  private goods(pieces: Pieces, side: SideName): Part | Sublet {
    const { option, planned } = this.option[side];
    const ways = planned.chosen.paid;
    const all: readonly (Part | Sublet)[] = [...option.parts, ...option.sublets, ...ways.flatMap((way) => [...way.parts, ...way.sublets])];
    return all.find(({ record }) => record === pieces[side].thing.record) as Part | Sublet;
  }

  private jobOf({ thing }: Piece, side: SideName) {
    return this.option[side].planned.chosen.jobs.find(({ job }) => job.record === thing.record);
  }

  private feeOf(piece: Piece | undefined, side: SideName) {
    if (piece === undefined) return undefined;
    return [...this.option[side].option.fees, ...this.versions[side].comparison.estimate.shop.fees].find(({ record }) => record === piece.thing.record);
  }

  private partnerOf(record: Thing['record'], side: SideName): Thing | undefined {
    const thing = this.versions[side].things.of(record);
    return thing === undefined ? undefined : this.matched.pairOf(thing)?.[side === 'before' ? 'after' : 'before'];
  }

  private pieceOf(side: SideName, thing: Thing): ReadonlyMap<PieceKind, Piece> | undefined {
    const there = this.onSide(thing, side);
    return there === undefined ? undefined : this.pieces[side].get(there);
  }

  /** The thing as a version has it; a thing of one version only stands for itself there. */
  private onSide(thing: Thing, side: SideName): Thing | undefined {
    const pair = this.matched.pairOf(thing);
    return pair === undefined ? thing : pair[side];
  }

  /** Each thing of both versions once. */
  private thingsIn(sides: { readonly [side in SideName]: ReadonlyMap<Thing, unknown> }): Thing[] {
    return [...new Set([...sides.before.keys(), ...sides.after.keys()].map((thing) => this.matched.pairOf(thing)?.after ?? thing))];
  }
}

type Pieces = { readonly [side in SideName]: Piece };

interface Back {
  readonly refund: Decimal;
  readonly salvage: Decimal;
  readonly late: boolean;
}

/** In equal parts: nothing tells them apart. */
function shared(causes: readonly Cause[], amount: Decimal): readonly Share[] {
  return causes.map((cause) => [cause, amount.div(causes.length)]);
}

function likely(figure: { readonly likely: Decimal } | undefined): Decimal {
  return figure?.likely ?? zero;
}
