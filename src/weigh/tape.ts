import type { Span } from '../language/index.js';
import type { MarkupBand, Rounding } from '../estimate/index.js';
import { given, type Figure, type WorkedStep } from './figure.js';
import type { Money } from './money.js';

/**
 * The derivations of figures laid out for quick reworking in binary numbers: set some of the written figures to other
 * values, run, and read what comes out. For sampling and for searching only; no quoted figure ever comes from here.
 * Steps that round to the smallest coin round here too, so at the written figures it gives the quoted ones.
 */
export interface Tape {
  /** The written figures that it rests on, each once, however many derivations use it. */
  readonly leaves: readonly Leaf[];
  /** The index of a figure's node; adds it, and what it was made from, where it is new. */
  readonly node: (figure: Figure) => number;
  /** The leaf that stands for a place in the text. */
  readonly leafAt: (at: Span) => Leaf | undefined;
  readonly set: (leaf: Leaf, value: number) => void;
  readonly valueOf: (node: number) => number;
  /** Works all nodes anew. */
  readonly run: () => void;
  /** Works anew what rests on one leaf. */
  readonly runFrom: (leaf: Leaf) => void;
}

/** A written figure. */
export interface Leaf {
  readonly node: number;
  readonly figure: Figure;
  readonly at: Span;
  readonly low: number;
  readonly likely: number;
  readonly high: number;
}

const enum Op { Constant, Sum, Difference, Remainder, Product, RoundedProduct, Percentage, Raised, Least, Greatest, BesideLeast, Banded }

/** For the places at which costs are written: the markup table that makes their prices. */
export type MarkupTables = ReadonlyMap<Span, readonly MarkupBand[]>;

/**
 * @param tables markup tables in which the band is looked up anew when a cost moves; without them a price keeps the
 * band that it was quoted with, so that low and high are priced alike.
 */
export function createTape(money: Money, rounding: Rounding, tables: MarkupTables = new Map()): Tape {
  return new Laid(10 ** money.currency.digits, rounding, tables);
}

/** Binary products may miss a half by their last bits; this much below counts as the half. */
const NOISE = 1e-7;

class Laid implements Tape {
  readonly leaves: Leaf[] = [];
  private readonly nodes = new Map<Figure, number>();
  private readonly leafBySpan = new Map<Span, Leaf>();
  private readonly ops: Op[] = [];
  private readonly from: (readonly number[])[] = [];
  private readonly per: number[] = [];
  private readonly values: number[] = [];
  private readonly rests = new Map<number, Int32Array>();

  constructor(
    private readonly coins: number,
    private readonly rounding: Rounding,
    private readonly tables: MarkupTables,
  ) {}

  node(figure: Figure): number {
    const known = this.nodes.get(figure);
    if (known !== undefined) return known;
    const made = this.make(figure);
    this.nodes.set(figure, made);
    return made;
  }

  leafAt(at: Span): Leaf | undefined {
    return this.leafBySpan.get(at);
  }

  set(leaf: Leaf, value: number): void {
    this.values[leaf.node] = value;
  }

  valueOf(node: number): number {
    return this.values[node] as number;
  }

  run(): void {
    for (let i = 0; i < this.ops.length; i++) this.work(i);
  }

  runFrom(leaf: Leaf): void {
    for (const node of this.restingOn(leaf.node)) this.work(node);
  }

  private make(figure: Figure): number {
    const { step, at } = figure;
    if (step.kind === 'given' && at !== undefined) return this.leafNode(figure, at);
    if (step.kind === 'given' || step.kind === 'found') return this.add(Op.Constant, [], 1, figure.likely.toNumber());
    const cost = figure.from[0];
    const table = step.kind === 'raised' && cost?.at !== undefined ? this.tables.get(cost.at) : undefined;
    if (cost !== undefined && table !== undefined) return this.banded(cost, table);
    const from = figure.from.map((one) => this.priceFrom(one));
    const made = this.add(opOf(step), from, step.kind === 'product' ? step.per : 1, 0);
    this.work(made);
    return made;
  }

  /** Two derivations may each have made their own figure of what is written once. */
  private leafNode(figure: Figure, at: Span): number {
    const known = this.leafBySpan.get(at);
    if (known !== undefined) return known.node;
    const likely = figure.likely.toNumber();
    const node = this.add(Op.Constant, [], 1, likely);
    const leaf: Leaf = { node, figure, at, low: figure.low.toNumber(), likely, high: figure.high.toNumber() };
    this.leafBySpan.set(at, leaf);
    this.leaves.push(leaf);
    return node;
  }

  /** A cost that no band reaches as it stands is its own price; another cost may be reached. */
  private priceFrom(figure: Figure): number {
    const table = figure.step.kind === 'given' && figure.at !== undefined ? this.tables.get(figure.at) : undefined;
    return table === undefined || table.length === 0 ? this.node(figure) : this.banded(figure, table);
  }

  /** `from` is the cost, then percentage and upper end of each band. */
  private banded(cost: Figure, table: readonly MarkupBand[]): number {
    const from = [this.node(cost)];
    for (const { percent, upTo } of table) {
      from.push(this.node(given('Markup', 'percent', percent)));
      from.push(upTo === undefined ? this.add(Op.Constant, [], 1, Infinity) : this.node(given('Up to', 'money', upTo)));
    }
    const made = this.add(Op.Banded, from, 1, 0);
    this.work(made);
    return made;
  }

  private add(op: Op, from: readonly number[], per: number, value: number): number {
    this.ops.push(op);
    this.from.push(from);
    this.per.push(per);
    this.values.push(value);
    this.rests.clear();
    return this.ops.length - 1;
  }

  /** The nodes that rest on a node, in an order in which they can be worked. Nodes stand behind what they are made from. */
  private restingOn(node: number): Int32Array {
    let found = this.rests.get(node);
    if (found === undefined) {
      const touched = new Uint8Array(this.ops.length);
      touched[node] = 1;
      const list: number[] = [];
      for (let i = node + 1; i < this.ops.length; i++) {
        if (!(this.from[i] as readonly number[]).some((one) => touched[one] === 1)) continue;
        touched[i] = 1;
        list.push(i);
      }
      found = Int32Array.from(list);
      this.rests.set(node, found);
    }
    return found;
  }

  private work(i: number): void {
    const op = this.ops[i] as Op;
    if (op === Op.Constant) return;
    this.values[i] = this.worked(op, this.from[i] as readonly number[], this.per[i] as number);
  }

  private worked(op: Op, from: readonly number[], per: number): number {
    const { values } = this;
    const first = from.length > 0 ? (values[from[0] as number] as number) : 0;
    switch (op) {
      case Op.Sum: {
        let total = first;
        for (let k = 1; k < from.length; k++) total += values[from[k] as number] as number;
        return total;
      }
      case Op.Difference: return this.lessOthers(first, from);
      case Op.Remainder: return Math.max(0, this.lessOthers(first, from));
      case Op.Product: return this.multiplied(first, from) / per;
      case Op.RoundedProduct: return this.round(this.multiplied(first, from) / per);
      case Op.Percentage: return this.round((first * (values[from[1] as number] as number)) / 100);
      case Op.Raised: return (first * (100 + (values[from[1] as number] as number))) / 100;
      case Op.Least: return from.reduce((least, one) => Math.min(least, values[one] as number), first);
      case Op.Greatest: return from.reduce((greatest, one) => Math.max(greatest, values[one] as number), first);
      case Op.Banded: return this.inBand(first, from);
      case Op.BesideLeast: return this.besideLeast(from);
      case Op.Constant: return first;
    }
  }

  private lessOthers(first: number, from: readonly number[]): number {
    let left = first;
    for (let k = 1; k < from.length; k++) left -= this.values[from[k] as number] as number;
    return left;
  }

  private multiplied(first: number, from: readonly number[]): number {
    let value = first;
    for (let k = 1; k < from.length; k++) value *= this.values[from[k] as number] as number;
    return value;
  }

  /** The band with the nearest end that reaches the cost: an end that moves may pass others. */
  private inBand(cost: number, from: readonly number[]): number {
    let nearest = 0;
    for (let k = 1; k < from.length; k += 2) {
      const end = this.values[from[k + 1] as number] as number;
      if (cost <= end && (nearest === 0 || end < (this.values[from[nearest + 1] as number] as number))) nearest = k;
    }
    return nearest === 0 ? cost : (cost * (100 + (this.values[from[nearest] as number] as number))) / 100;
  }

  private besideLeast(from: readonly number[]): number {
    const half = from.length / 2;
    const at = (k: number) => this.values[from[k] as number] as number;
    let best = 0;
    for (let k = 1; k < half; k++) if (at(k) < at(best) || (at(k) === at(best) && at(half + k) < at(half + best))) best = k;
    return at(half + best);
  }

  private round(value: number): number {
    const scaled = value * this.coins;
    const whole = Math.floor(scaled);
    const over = scaled - whole;
    const half = Math.abs(over - 0.5) < NOISE;
    const up = half ? this.rounding === 'half-up' || (this.rounding === 'half-even' && whole % 2 !== 0) : over > 0.5;
    return (up ? whole + 1 : whole) / this.coins;
  }
}

function opOf(step: WorkedStep): Op {
  switch (step.kind) {
    case 'sum': return Op.Sum;
    case 'difference': return Op.Difference;
    case 'remainder': return Op.Remainder;
    case 'product': return step.rounded ? Op.RoundedProduct : Op.Product;
    case 'percentage': return Op.Percentage;
    case 'raised': return Op.Raised;
    case 'least': return Op.Least;
    case 'greatest': return Op.Greatest;
    case 'beside-least': return Op.BesideLeast;
  }
}
