/**
 * What single things cost, worked out a second time from the records as plain data: whole numbers of the smallest coin and
 * exact fractions. It shares no line of code with the product; a test reads the imports of this folder to hold that.
 */
import { compare, fromDigits, nothing, per, plus, rounded, times, whole, type Rational, type Rounding } from './rational.js';
import type { Json, Written } from './reader.js';

/** Low, likely and high, in the smallest coin. */
export type Coins = readonly [bigint, bigint, bigint];
export type Three = readonly [Rational, Rational, Rational];
export type LineKind = 'labour' | 'part' | 'sublet' | 'fee' | 'core';

export interface Line {
  readonly kind: LineKind;
  /** Whether it belongs to getting in and closing up. */
  readonly access: boolean;
  readonly coins: Coins;
  readonly hours: Three;
  /** What it costs the shop, where that is written. */
  readonly cost: Coins | undefined;
  /** Of a core charge: whether tax stands on it. */
  readonly taxed: boolean;
  /** What it was made from. */
  readonly record: Json;
}

const MINOR_UNITS: Readonly<{ [code: string]: number }> = { JPY: 0, KRW: 0, CLP: 0, KWD: 3, BHD: 3, OMR: 3, TND: 3 };
export const POINTS = [0, 1, 2] as const;
export const NO_COINS: Coins = [0n, 0n, 0n];
const NO_HOURS: Three = [nothing, nothing, nothing];

export const list = (value: unknown): readonly Json[] => (value ?? []) as readonly Json[];
export const names = (value: unknown): readonly string[] => (value ?? []) as readonly string[];
export const amount = (value: unknown) => value as Written | undefined;
export const three = (written: Written): Three => [fromDigits(written.low), fromDigits(written.likely), fromDigits(written.high)];
export const each = <T>(one: (point: 0 | 1 | 2) => T): readonly [T, T, T] => [one(0), one(1), one(2)];
const product = (a: Three, b: Three): Three => each((i) => times(a[i], b[i]));
export const add = (all: readonly Coins[]): Coins => all.reduce<Coins>((a, b) => each((i) => a[i] + b[i]), NO_COINS);
export const less = (a: Coins, b: Coins): Coins => each((i) => a[i] - b[i]);
export const addHours = (all: readonly Three[]): Three => all.reduce((a, b) => each((i) => plus(a[i], b[i])), NO_HOURS);

export class Prices {
  readonly shop: Json;
  readonly digits: number;
  private readonly rounding: Rounding;
  private readonly byName = new Map<string, Json>();

  constructor(readonly all: readonly Json[]) {
    this.shop = all.find((record) => record.kind === 'shop') ?? { kind: 'shop' };
    this.digits = MINOR_UNITS[this.shop['currency'] as string] ?? 2;
    this.rounding = (this.shop['rounding'] ?? 'half-up') as Rounding;
    for (const record of [...all, ...list(this.shop['fee']), ...list(this.shop['tool'])]) {
      const key = `${record.kind} ${record.name ?? ''}`;
      if (record.name !== undefined && !this.byName.has(key)) this.byName.set(key, record);
    }
  }

  find(kind: string, name: string): Json | undefined {
    return this.byName.get(`${kind} ${name}`);
  }

  named(kind: string, wanted: unknown): Json[] {
    return names(wanted).flatMap((name) => this.find(kind, name) ?? []);
  }

  coins(value: Three): Coins {
    return each((i) => this.coin(value[i]));
  }

  /** One amount in coins, rounded once. */
  coin(value: Rational): bigint {
    return rounded(value, this.digits, this.rounding);
  }

  /** A percentage of coins, in coins. */
  share(base: Coins, percent: Written): Coins {
    const rate = three(percent);
    return each((i) => this.coin(per(times(whole(base[i]), rate[i]), 100n * 10n ** BigInt(this.digits))));
  }

  rateOf(name: unknown): Json | undefined {
    const rates = list(this.shop['rate']).filter((rate) => rate['price'] !== undefined);
    return name === undefined ? (rates.find((one) => one['usual'] !== undefined) ?? (rates.length === 1 ? rates[0] : undefined)) : rates.find((one) => one.name === name);
  }

  work(record: Json, time: Written, className: unknown, access: boolean, count?: Written): Line {
    const rate = this.rateOf(className);
    const done = count === undefined ? three(time) : product(three(count), three(time));
    const hours = each((i) => per(done[i], time.unit === 'min' ? 60n : 1n));
    const at = (price: unknown) => (price === undefined ? undefined : this.coins(product(hours, three(price as Written))));
    return { kind: 'labour', access, coins: at(rate?.['price']) ?? NO_COINS, hours, cost: at(rate?.['cost']), taxed: false, record };
  }

  linesOf(thing: Json, access: boolean): Line[] {
    if (thing.kind === 'tool') {
      const price = amount(thing['price']);
      const owned = list(this.shop['tool']).includes(thing);
      return owned || price === undefined ? [] : [this.line('fee', access, this.coins(three(price)), thing)];
    }
    return thing.kind === 'part' ? this.linesOfPart(thing, access) : [this.goods(thing, access)];
  }

  private line(kind: LineKind, access: boolean, coins: Coins, record: Json): Line {
    return { kind, access, coins, hours: NO_HOURS, cost: undefined, taxed: false, record };
  }

  /** Parts by the piece or the measure, and outside work by the piece. */
  private goods(thing: Json, access: boolean): Line {
    const cost = amount(thing['cost']);
    const brought = thing['condition'] === 'customer-supplied';
    return {
      ...this.line(thing.kind as LineKind, access, brought ? NO_COINS : this.coins(this.many(thing, this.priceOf(thing))), thing),
      cost: cost === undefined ? undefined : this.coins(this.many(thing, three(cost))),
    };
  }

  private linesOfPart(part: Json, access: boolean): Line[] {
    const lines = [this.goods(part, access)];
    const core = list(part['core'])[0];
    const charge = amount(core?.['charge']);
    if (core === undefined || charge === undefined || part['condition'] === 'customer-supplied') return lines;
    const policy = this.coreTax(part['condition']);
    lines.push({ ...this.line('core', false, this.coins(this.many(part, three(charge))), part), taxed: policy !== undefined && policy !== 'none' });
    const assemble = amount(core['assemble']);
    if (assemble !== undefined) lines.push(this.work(core, assemble, core['class'], false));
    return lines;
  }

  /** How the shop taxes the core charge of a part in this condition. */
  coreTax(condition: unknown): unknown {
    if (condition === undefined) return undefined;
    return list(this.shop['core-tax']).find((one) => one['on'] === undefined || names(one['on']).includes(condition as string))?.['policy'];
  }

  /** The price of one: as written, or the cost raised by the band with the nearest end at or above it. */
  private priceOf(thing: Json): Three {
    const price = amount(thing['price']);
    if (price !== undefined) return three(price);
    const cost = three(amount(thing['cost']) as Written);
    let nearest: Json | undefined;
    for (const band of list(this.shop['markup'])) {
      if (`${(band['on'] ?? 'parts') as string}` !== `${thing.kind}s`) continue;
      const end = amount(band['upTo']);
      if (end !== undefined && compare(cost[1], fromDigits(end.likely)) > 0) continue;
      const best = amount(nearest?.['upTo']);
      if (nearest === undefined || (end !== undefined && (best === undefined || compare(fromDigits(end.likely), fromDigits(best.likely)) < 0))) nearest = band;
    }
    if (nearest === undefined) return cost;
    const more = three(amount(nearest['percent']) as Written);
    return each((i) => times(cost[i], per(plus(whole(100n), more[i]), 100n)));
  }

  private many(thing: Json, one: Three): Three {
    const quantity = amount(thing['quantity']);
    return quantity === undefined ? one : product(three(quantity), one);
  }

  /** Fees of an option on these lines; those of the shop where there is work. */
  feeLines(own: ReadonlySet<Json>, lines: readonly Line[]): Line[] {
    return this.feesOn([...own, ...(lines.some((line) => line.kind === 'labour') ? list(this.shop['fee']).filter((fee) => !own.has(fee)) : [])], lines);
  }

  feesOn(fees: readonly Json[], lines: readonly Line[]): Line[] {
    const kinds: Readonly<{ [of: string]: LineKind }> = { labour: 'labour', parts: 'part', sublets: 'sublet' };
    return fees.map((fee) => {
      const percent = amount(fee['percent']);
      const base = () => add(lines.filter((line) => names(fee['of']).some((of) => kinds[of] === line.kind)).map((line) => line.coins));
      const value = percent === undefined ? this.coins(this.many(fee, three(amount(fee['price']) as Written))) : this.share(base(), percent);
      const cap = amount(fee['cap']);
      const most = cap === undefined ? value : this.coins(three(cap));
      return this.line('fee', false, each((i) => (value[i] < most[i] ? value[i] : most[i])), fee);
    });
  }

  taxOf(tax: Json, lines: readonly Line[]): Coins {
    const on = names(tax['on']);
    const as: Readonly<{ [kind in Exclude<LineKind, 'core'>]: string }> = { labour: 'labour', part: 'parts', sublet: 'sublets', fee: 'fees' };
    const taxed = lines.filter((line) => (line.kind === 'core' ? on.includes('parts') && line.taxed : on.includes(as[line.kind])));
    const percent = amount(tax['percent']) as Written;
    return tax['by'] === 'item' ? add(taxed.map((line) => this.share(line.coins, percent))) : this.share(add(taxed.map((line) => line.coins)), percent);
  }

  taxes(lines: readonly Line[]): Coins {
    return add(list(this.shop['tax']).map((one) => this.taxOf(one, lines)));
  }
}
