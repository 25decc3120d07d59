import { lastDay, type Access, type Core, type Estimate, type Option, type Part } from '../estimate/index.js';
import { zero, type Amount } from '../vocabulary/index.js';
import { dayOf, isoOf, type Day } from './calendar.js';
import { difference, found, given, percentage, product, remainder, sum, type Figure } from './figure.js';
import type { Line } from './line.js';
import type { Money } from './money.js';
import type { Ready } from './ready.js';
import { startOf } from './ready.js';
import { policyFor } from './totals.js';
import { waitEndsOn, waitUnitOf } from './working-days.js';

/** What is expected back for one old unit. */
export interface CoreReturn {
  readonly part: Part;
  readonly core: Core;
  readonly charge: Figure;
  readonly refund: Figure;
  /** Tax that comes back with the refund, by the shop's policy for the part's condition. */
  readonly taxBack: Figure;
  /** Of the tax that is charged on the deposit, what does not come back. */
  readonly taxKept: Figure;
  /** Refund and tax if it goes back in time, whether the plan does or not. */
  readonly inTime: Figure;
  /** The last day on which it can go back; undefined without dates. */
  readonly deadline: string | undefined;
  /** True where the planned finish is after the deadline, so that nothing is expected back. */
  readonly late: boolean;
}

/** What comes back after an option is paid: core refunds, their tax, and the worth of pieces kept or taken off. */
export interface Returns {
  readonly cores: readonly CoreReturn[];
  readonly refunds: Figure;
  readonly taxBack: Figure;
  /** Refunds with their tax. */
  readonly withCores: Figure;
  /** Tax on deposits that does not come back. It is part of the total, and of what is paid in the end. */
  readonly taxKept: Figure;
  readonly salvage: Figure;
  readonly all: Figure;
}

/** The parts that a plan fits, each once: a job and a way in may bring the same one. */
export function partsIn(option: Pick<Option, 'parts'>, plan: { readonly paid: readonly Pick<Access, 'parts'>[] }): readonly Part[] {
  return [...new Set([...option.parts, ...plan.paid.flatMap(({ parts }) => parts)])];
}

export function returnsOf(option: Pick<Option, 'parts' | 'harvests'>, coreLines: readonly Line[], ready: Pick<Ready, 'date' | 'orderedOn'>, estimate: Estimate, money: Money): Returns {
  const withCore = option.parts.filter(({ core }) => core !== undefined);
  const cores = withCore.flatMap((part) => {
    const core = part.core as Core;
    const line = coreLines.find((one) => one.kind === 'core' && one.record === core.record);
    return line === undefined ? [] : [coreReturn(part, core, line, ready, estimate, money)];
  });
  const kept = withCore.flatMap((part) => part.core?.keeps ?? []).flatMap((keep) => (keep.worth === undefined ? [] : [product(keep.title, [given('Worth', 'money', keep.worth)], money, keep.at)]));
  const taken = option.harvests.flatMap((piece) => (piece.value === undefined ? [] : [product(piece.title, [given('Worth', 'money', piece.value)], money, piece.at)]));
  const refunds = sum('Core refunds expected', 'money', cores.map((one) => one.refund));
  const taxBack = sum('Tax back with the cores', 'money', cores.map((one) => one.taxBack));
  const salvage = sum('Worth of pieces kept', 'money', [...kept, ...taken]);
  const withCores = sum('Comes back with the cores', 'money', [refunds, taxBack]);
  const taxKept = sum('Tax on cores that does not come back', 'money', cores.map((one) => one.taxKept));
  return { cores, refunds, taxBack, withCores, taxKept, salvage, all: sum('Comes back', 'money', [refunds, taxBack, salvage]) };
}

/** For what a chance brings: a core goes back in full then, and so adds nothing in the end; putting the old unit together does. */
export function withoutCores(lines: readonly Line[]): readonly Line[] {
  return lines.filter(({ kind }) => kind !== 'core');
}

function coreReturn(part: Part, core: Core, line: Line, ready: Pick<Ready, 'date' | 'orderedOn'>, estimate: Estimate, money: Money): CoreReturn {
  const deadline = deadlineOf(part, core, ready, estimate);
  const late = deadline !== undefined && ready.date !== undefined && ready.date > deadline;
  const less = [...(core.less === undefined ? [] : [given('Damaged or incomplete', 'money', core.less)]), ...core.keeps.flatMap((keep) => (keep.less === undefined ? [] : [given(`${keep.title} kept`, 'money', keep.less)]))];
  const label = `${part.title}: core refund`;
  const rounded = less.map((figure) => product(figure.label, [figure], money, figure.at));
  const whole = remainder(label, 'money', [line.amount, ...rounded]);
  const refund = late
    ? found(label, 'money', zero, `The work is planned to end on ${ready.date ?? ''}, after the last day to return the core, ${deadline}.`, [line.amount])
    : whole;
  const policy = policyFor(line, estimate.shop);
  const charged = policy === 'none' ? [] : estimate.shop.taxes.filter((tax) => tax.on.has('parts'));
  const taxed = (says: string, base: Figure, taxes: typeof charged) => sum(`${part.title}: ${says}`, 'money', taxes.map((tax) => percentage(tax.title, base, given(tax.title, 'percent', tax.percent), money, tax.at)));
  const taxOn = (base: Figure) => taxed('tax back with the core', base, policy === 'refunded' ? charged : []);
  const taxBack = taxOn(refund);
  const taxKept = difference(`${part.title}: tax on the core that does not come back`, 'money', [taxed('tax on the core', line.amount, charged), taxBack]);
  return { part, core, charge: line.amount, refund, taxBack, taxKept, inTime: sum(label, 'money', [whole, late ? taxOn(whole) : taxBack]), deadline, late };
}

/** The core is due so long, by the calendar, after the part arrives. */
function deadlineOf({ arrives }: Part, core: Core, ready: Pick<Ready, 'orderedOn'>, estimate: Estimate): string | undefined {
  const start = startOf(estimate);
  if (core.due === undefined || start === undefined) return undefined;
  const arrived = arrives === undefined ? start : waitEndsOn(orderedOn(arrives, ready) ?? start, arrives.likely.toNumber(), waitUnitOf(arrives), estimate.shop);
  return arrived === undefined ? undefined : lastDay(isoOf(arrived), core.due);
}

/** A part is ordered when the customer has said yes, and what comes before that is done. */
function orderedOn({ at }: Amount, ready: Pick<Ready, 'orderedOn'>): Day | undefined {
  const day = ready.orderedOn(at);
  return day === undefined ? undefined : dayOf(day);
}
