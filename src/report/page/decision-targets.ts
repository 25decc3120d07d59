import type { Span } from '../../language/index.js';
import type { DecidedColumn, DecisionView } from './decided.js';
import type { Column } from './last-good.js';
import { figureId, lineId, type Targets } from './targets.js';

// No name begins with a point, so these are never taken for figures of an option.
export const flipId = (index: number) => `.flip.${index + 1}`;
export const inspectionId = (index: number) => `.inspect.${index + 1}`;
export const coverageId = (index: number) => `.coverage.${index + 1}`;
export const sampledId = (column: Column) => `${column.key}.sampled`;
export const movesId = (column: Column, index: number) => `${column.key}.moves.${index + 1}`;
export const taskId = (column: Column, index: number) => `${column.key}.task.${index + 1}`;

/** `perMonth` is the figure that has a name for --explain. */
export function monthlyId(column: Column, part: 'now' | 'resale' | 'lasts' | 'perMonth'): string {
  return part === 'perMonth' ? figureId(column, 'monthly') : `${column.key}.monthly-${part}`;
}

/** Where the figures of the later part of the page lead. */
export function decisionTargets({ decision, columns, flips }: DecisionView): Targets {
  const targets = new Map<string, readonly Span[]>();
  flips.forEach(({ at }, i) => targets.set(flipId(i), [at]));
  [...decision.inspections.map(({ inspection }) => inspection), ...decision.unread].forEach(({ at }, i) => targets.set(inspectionId(i), [at]));
  decision.coverages.forEach(({ coverage }, i) => targets.set(coverageId(i), [coverage.at]));
  for (const of of columns) for (const [id, at] of ofOption(of, decision.comparison.estimate.vehicle?.downtime?.at)) targets.set(id, at === undefined ? [of.column.weighed.option.at] : [at, of.column.weighed.option.at]);
  return targets;
}

function ofOption({ column, decided }: DecidedColumn, downtimeAt: Span | undefined): readonly (readonly [string, Span | undefined])[] {
  const { option, ready, totals } = decided.weighed;
  return [
    [sampledId(column), undefined],
    ...(decided.risk?.contributions ?? []).map(({ at }, i) => [movesId(column, i), at] as const),
    ...ready.tasks.map(({ task }, i) => [taskId(column, i), task.at] as const),
    [monthlyId(column, 'now'), undefined],
    [monthlyId(column, 'lasts'), option.lasts?.at],
    [monthlyId(column, 'resale'), option.resale?.at],
    [monthlyId(column, 'perMonth'), option.lasts?.at],
    [figureId(column, 'downtime'), downtimeAt],
    ...(['margin', 'margin-labour', 'margin-parts', 'margin-outside'] as const).map((name) => [figureId(column, name), undefined] as const),
    ...totals.lines.map((line, i) => [lineId(column, i), line.at] as const),
  ];
}
