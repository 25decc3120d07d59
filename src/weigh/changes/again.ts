import type { Access, Estimate, Fee, Part, Rate, Sublet, Tax } from '../../estimate/index.js';
import { zero, type Decimal } from '../../vocabulary/index.js';
import { returnsOf } from '../cores.js';
import { sum } from '../figure.js';
import type { Line } from '../line.js';
import type { PlannedJob } from '../plan.js';
import { bandFor, feeLine, partLine, subletLine } from '../price-goods.js';
import { accessWork, hoursLine, labourLine } from '../price-labour.js';
import { fixedOf, total } from '../totals.js';
import type { Comparison, Weighed } from '../weigh.js';
import type { Matched } from './match.js';
import type { Piece } from './pieces.js';
import type { Thing, Things } from './things.js';

export type SideName = 'before' | 'after';

/** One version, weighed. */
export interface Version {
  readonly comparison: Comparison;
  readonly things: Things;
}

/**
 * Prices a line anew with figures of both versions: its own from one, the shop's from the other. Undefined where that
 * can't be, since one of them has no such rate or no such time.
 */
export class PriceAgain {
  constructor(
    private readonly versions: { readonly [side in SideName]: Version },
    private readonly matched: Matched,
  ) {}

  /** Work: its figures and class from `own`, the rates from `shop`, the way in that its time takes from the plan of `way`. */
  work(jobs: { readonly [side in SideName]: PlannedJob }, own: SideName, shop: SideName, way: SideName): Decimal | undefined {
    const { job } = jobs[own];
    const wanted = this.waysKey(jobs[way], way);
    const mode = job.modes.find((one) => this.waysKey({ mode: one }, own) === wanted);
    const rate = this.rateIn(job.rate, job.record.values['class'] !== undefined, own, shop);
    if (mode === undefined || rate === 'lost') return undefined;
    return labourLine({ ...job, rate }, mode, this.money(own)).amount.likely;
  }

  /** A way in that both versions pay for: its hours and class from `own`, the rates from `shop`. */
  way(record: Thing, plans: { readonly [side in SideName]: Weighed }, own: SideName, shop: SideName): Decimal | undefined {
    const { planned: { chosen }, option: { staged } } = plans[own];
    const way = chosen.paid.find((one) => this.matched.pairOf(record)?.[own].record === one.record) as Access;
    const rate = this.rateIn(way.rate, way.record.values['class'] !== undefined, own, shop);
    if (rate === 'lost') return undefined;
    // Sold as it stands, what a stage opened is left open.
    const stretches = staged?.then === 'left open' && staged.ways.includes(way) ? (['remove'] as const) : undefined;
    return accessWork({ ...way, rate }, this.money(own), stretches).reduce((all, line) => all.plus(line.amount.likely), zero);
  }

  assembly(part: Part, own: SideName, shop: SideName): Decimal | undefined {
    const { core } = part;
    if (core?.assemble === undefined) return undefined;
    const rate = this.rateIn(core.rate, core.record.values['class'] !== undefined, own, shop);
    return rate === 'lost' ? undefined : hoursLine('', core.assemble, rate, core, this.money(own)).amount.likely;
  }

  part(part: Part, own: SideName, shop: SideName): Decimal {
    return partLine(part, 'work', this.estimate(shop).shop, this.money(own)).amount.likely;
  }

  sublet(sublet: Sublet, own: SideName, shop: SideName): Decimal {
    return subletLine(sublet, 'work', this.estimate(shop).shop, this.money(own)).amount.likely;
  }

  /** A fee on the sums of one version; nothing where the other has no such fee. */
  fee(fee: Fee | undefined, on: Weighed, side: SideName): Decimal {
    const of = (kind: Line['kind']) => sum('', 'money', on.totals.lines.filter((line) => line.kind === kind).map((line) => line.amount));
    return fee === undefined ? zero : (feeLine(fee, { labour: of('labour'), parts: of('part'), sublets: of('sublet') }, this.money(side))?.amount.likely ?? zero);
  }

  /** A tax on the lines of one version, with the core policies of one; nothing where the other has no such tax. */
  tax(tax: Tax | undefined, policies: SideName, on: Weighed, side: SideName): Decimal {
    if (tax === undefined) return zero;
    const shop = { ...this.estimate(policies).shop, taxes: [tax], fees: [] };
    return total('', [], [], fixedOf(on.totals.lines), [], shop, this.money(side)).tax.likely;
  }

  /** What comes back for a part's old unit if it goes back in time. */
  refund(part: Part, coreLines: readonly Line[], side: SideName): Decimal {
    return returnsOf({ parts: [part], harvests: [] }, coreLines, { date: undefined, orderedOn: () => undefined }, this.estimate(side), this.money(side)).refunds.likely;
  }

  /** The bands of the markup table that price these goods in either shop, as things. */
  bands(goods: { readonly [side in SideName]: Part | Sublet }, on: 'parts' | 'sublets'): Thing[] {
    const sides: readonly SideName[] = ['before', 'after'];
    return sides.flatMap((own) => sides.flatMap((shop) => {
      const { price, cost } = goods[own];
      const band = price === undefined && cost !== undefined ? bandFor(cost, this.estimate(shop).shop.markup[on]) : undefined;
      return band === undefined ? [] : (this.versions[shop].things.of(band.record) ?? []);
    }));
  }

  /** The rates that price work of this class in either version, as things. */
  rates(pieces: { readonly [side in SideName]: Piece }): Thing[] {
    return (['before', 'after'] as const).flatMap((side) => {
      const rate = rateOf(pieces[side], this.estimate(side));
      return rate === undefined ? [] : (this.versions[side].things.of(rate.record) ?? []);
    });
  }

  /** The set of ways in that a time takes, the same in both versions. */
  waysKey({ mode }: Pick<PlannedJob, 'mode'>, side: SideName): string {
    return mode.with.map(({ record, name }) => {
      const thing = this.versions[side].things.of(record);
      return (thing === undefined ? undefined : this.matched.pairOf(thing))?.before.record.name?.name ?? `${side} ${name}`;
    }).sort().join(' + ');
  }

  private rateIn(rate: Rate | undefined, named: boolean, own: SideName, shop: SideName): Rate | undefined | 'lost' {
    if (!named) return this.estimate(shop).shop.usualRate ?? 'lost';
    const thing = rate === undefined ? undefined : this.versions[own].things.of(rate.record);
    const partner = thing === undefined ? undefined : this.matched.pairOf(thing)?.[shop];
    return [...this.estimate(shop).shop.rates.values()].find(({ record }) => record === partner?.record) ?? 'lost';
  }

  private estimate(side: SideName): Estimate {
    return this.versions[side].comparison.estimate;
  }

  private money(side: SideName) {
    return this.versions[side].comparison.money;
  }
}

/** The rate that a piece of work is priced at. */
function rateOf({ kind, thing }: Piece, { shop }: Estimate): Rate | undefined {
  const record = kind === 'assembly' ? thing.said.find((one) => one.kind.word === 'core') : thing.record;
  const named = record?.values['class'] as { readonly name: string } | undefined;
  return named === undefined ? shop.usualRate : shop.rates.get(named.name);
}
