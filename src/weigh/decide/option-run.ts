import type { Span } from '../../language/index.js';
import { isoOf } from '../calendar.js';
import { contributions, meanOf, noise, quantileOf, spreadOf } from '../chance/index.js';
import type { Figure } from '../figure.js';
import type { Leaf, Tape } from '../tape.js';
import type { ShopTime } from '../timetable.js';
import { workingDaysFrom } from '../working-days.js';
import { CASES } from './cases.js';
import type { OptionModel } from './model.js';
import { lastDayOf, timetableOn } from './state-timetable.js';
import { lineAt } from './written.js';

/** How a figure is spread over the cases. Sampled: shown rounded, and never part of a quoted figure. */
export interface SampledFigure {
  readonly mean: number;
  readonly p10: number;
  readonly p50: number;
  readonly p90: number;
}

/** A line or a chance, and the share of the spread that goes with it. */
export interface Contribution {
  readonly title: string;
  readonly at: Span;
  readonly share: number;
  readonly kind: 'figure' | 'chance';
}

/** What may become of one option. */
export interface OptionRisk {
  readonly name: string;
  /** What the shop is paid for the work, with what turns up; without comebacks. */
  readonly total: SampledFigure;
  /** Cost in all, comebacks included. */
  readonly inAll: SampledFigure;
  /** Working days until it is ready. */
  readonly days: SampledFigure;
  /** YYYY-MM-DD at 10, 50 and 90 %; undefined without a start. */
  readonly ready: { readonly p10: string; readonly p50: string; readonly p90: string } | undefined;
  /** Share of cases in which it is the cheapest in all; undefined where it is no choice, or the only one. */
  readonly cheapest: number | undefined;
  /** Chance of at least one of its chances happening. */
  readonly trouble: number;
  /** The lines that go with most of the spread of the cost in all, at most three, greatest first. */
  readonly contributions: readonly Contribution[];
  /** Every case, in the order of the draws. */
  readonly cases: { readonly inAll: Float64Array; readonly days: Float64Array };
}

const MOST_CONTRIBUTIONS = 3;

/** The cases of one option: what they come to in money and days, taken one after the other as the tape stands. */
export class OptionRun {
  readonly inAll = new Float64Array(CASES);
  private readonly total = new Float64Array(CASES);
  private readonly days = new Float64Array(CASES);
  private readonly nodes: { readonly inAll: number; readonly total: number };
  private readonly masks: Uint16Array;
  private readonly timetables = new Map<number, () => number>();
  /** Places of all figures that its cost rests on. */
  private readonly restsOn = new Set<Span>();
  private readonly gates: readonly Leaf[];
  private readonly switches: readonly { readonly leaf: Leaf; readonly lastDay: number }[];

  constructor(
    readonly model: OptionModel,
    /** In which cases each of its chances happens, in their order. */
    private readonly happened: readonly Uint8Array[],
    tape: Tape,
    private readonly time: ShopTime,
  ) {
    this.nodes = { inAll: tape.node(model.inAll), total: tape.node(model.total) };
    addPlaces(model.inAll, this.restsOn, new Set());
    this.masks = this.masksIn();
    this.gates = model.chances.map(({ gate }) => (tape.node(gate), tape.leafAt(gate.at as Span) as Leaf));
    for (const mask of new Set(this.masks)) this.timetables.set(mask, this.timetableFor(mask, tape));
    this.switches = model.cores.map(({ inTime, deadline }) => {
      tape.node(inTime);
      return { leaf: tape.leafAt(inTime.at as Span) as Leaf, lastDay: lastDayOf(deadline, time) };
    });
  }

  /** For each case the chances that hold up the work, as bits. */
  private masksIn(): Uint16Array {
    const masks = new Uint16Array(CASES);
    this.model.chances.forEach(({ work }, bit) => {
      if (work === undefined) return;
      const column = this.happened[bit] as Uint8Array;
      for (let i = 0; i < CASES; i++) masks[i] = (masks[i] as number) | ((column[i] as number) << bit);
    });
    return masks;
  }

  private timetableFor(mask: number, tape: Tape): () => number {
    const plan = this.model.planIn(mask);
    // Where a core may come back too late, how long things take moves the cost too.
    if (this.model.cores.length > 0) for (const { length } of plan.tasks) addPlaces(length, this.restsOn, new Set());
    return timetableOn(tape, plan, this.time);
  }

  /** Sets which of its chances happen in a case, without working anything out. */
  setChances(i: number, tape: Tape): void {
    this.gates.forEach((leaf, k) => tape.set(leaf, this.happenedIn(i, k)));
  }

  private happenedIn(i: number, k: number): number {
    return (this.happened[k] as Uint8Array)[i] as number;
  }

  takeCase(i: number, tape: Tape): void {
    // An option before it may have a chance of it hang on another, which did not happen.
    this.gates.forEach((leaf, k) => {
      if (tape.valueOf(leaf.node) === this.happenedIn(i, k)) return;
      tape.set(leaf, this.happenedIn(i, k));
      tape.runFrom(leaf);
    });
    const days = (this.timetables.get(this.masks[i] as number) as () => number)();
    this.days[i] = days;
    for (const { leaf, lastDay } of this.switches) {
      const inTime = days <= lastDay ? 1 : 0;
      if (tape.valueOf(leaf.node) === inTime) continue;
      tape.set(leaf, inTime);
      tape.runFrom(leaf);
    }
    this.inAll[i] = tape.valueOf(this.nodes.inAll);
    this.total[i] = tape.valueOf(this.nodes.total);
  }

  result(cheapest: number | undefined, ranged: readonly Leaf[], columns: readonly Float64Array[]): OptionRisk {
    const days = spreadOf(this.days).sorted;
    const dates = this.time.start === undefined ? undefined : workingDaysFrom(this.time.start, this.time.shop);
    // Whole days: the day by which it is ready in so many of the cases.
    const dayAt = (p: number) => days[Math.min(CASES - 1, Math.ceil(p * CASES) - 1)] as number;
    const dateAt = (p: number) => iso(dates as NonNullable<typeof dates>, dayAt(p));
    return {
      name: this.model.weighed.option.name,
      total: sampled(this.total),
      inAll: sampled(this.inAll),
      days: { mean: meanOf(this.days), p10: dayAt(0.1), p50: dayAt(0.5), p90: dayAt(0.9) },
      ready: dates === undefined ? undefined : { p10: dateAt(0.1), p50: dateAt(0.5), p90: dateAt(0.9) },
      cheapest,
      trouble: meanOf(Float64Array.from({ length: CASES }, (_, i) => (this.happened.some((column) => column[i] === 1) ? 1 : 0))),
      contributions: this.greatest(ranged, columns),
      cases: { inAll: this.inAll, days: this.days },
    };
  }

  /** Figures of one line count together. */
  private greatest(ranged: readonly Leaf[], columns: readonly Float64Array[]): readonly Contribution[] {
    const { chances } = this.model;
    const ofFigures = contributions(this.inAll, columns);
    const ofChances = contributions(this.inAll, this.happened);
    const byLine = new Map<unknown, Contribution>();
    ranged.forEach(({ at }, k) => {
      // What an option does not rest on may go with it all the same, in a sample: that says nothing.
      if (!this.restsOn.has(at)) return;
      const line = lineAt(at);
      const share = Math.min(1, (byLine.get(line.statement)?.share ?? 0) + (ofFigures[k] as number));
      byLine.set(line.statement, { title: line.title, at, share, kind: 'figure' });
    });
    chances.forEach(({ chance }, k) => byLine.set(chance, { title: chance.title, at: chance.at, share: ofChances[k] as number, kind: 'chance' }));
    return [...byLine.values()].filter(({ share }) => share > noise(CASES)).sort((a, b) => b.share - a.share).slice(0, MOST_CONTRIBUTIONS);
  }
}

/** Where the figures below a figure are written. */
function addPlaces(figure: Figure, places: Set<Span>, seen: Set<Figure>): void {
  if (seen.has(figure)) return;
  seen.add(figure);
  if (figure.at !== undefined) places.add(figure.at);
  for (const part of figure.from) addPlaces(part, places, seen);
}

function sampled(column: Float64Array): SampledFigure {
  const { mean, sorted } = spreadOf(column);
  return { mean, p10: quantileOf(sorted, 0.1), p50: quantileOf(sorted, 0.5), p90: quantileOf(sorted, 0.9) };
}

function iso(dates: ReturnType<typeof workingDaysFrom>, days: number): string {
  return isoOf(dates.day(Math.max(0, days - 1)));
}
