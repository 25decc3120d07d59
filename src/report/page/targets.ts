import type { Span } from '../../language/index.js';
import type { Estimate } from '../../estimate/index.js';
import type { Figure } from '../../weigh/index.js';
import { figureNames, figureOf, type FigureName } from '../figures.js';
import { stageFigureNames, type StageFigureName } from '../stage-figures.js';
import type { Column } from './last-good.js';

/** What the figures of a page are called in it, and where each one leads: the best place first. */
export type Targets = ReadonlyMap<string, readonly Span[]>;

/** Names of figures that only a decision has; see `namedFigures`. */
type DecisionFigure = 'monthly' | 'downtime' | 'margin' | 'margin-labour' | 'margin-parts' | 'margin-outside';

export const figureId = (column: Column, name: FigureName | DecisionFigure) => `${column.key}.${name}`;
export const lineId = (column: Column, index: number) => `${column.key}.line.${index + 1}`;
export const taxId = (column: Column, index: number) => `${column.key}.tax.${index + 1}`;
export const planId = (column: Column, index: number) => `${column.key}.way.${index + 1}`;
export const openId = (column: Column, index: number) => `${column.key}.open.${index + 1}`;
export const headId = (column: Column) => `${column.key}.head`;
export const authorisedId = (index: number) => `.authorised.${index + 1}`;
export const findingId = (index: number) => `.finding.${index + 1}`;
export const stageId = (index: number, name: StageFigureName) => `.stage.${index + 1}.${name}`;
export const warrantyId = (column: Column) => `${column.key}.warranty`;
export const aboveId = (column: Column) => `${column.key}.above`;
export const causeId = (column: Column) => `${column.key}.broken`;

/** Figures that were not written themselves lead to the line of their option; last good ones to what broke it. */
export function targetsOf(columns: readonly Column[], { findings, stages, authorised }: Pick<Estimate, 'findings' | 'stages' | 'authorised'>): Targets {
  const targets = new Map<string, readonly Span[]>(findings.map(({ at }, i) => [findingId(i), [at]]));
  stages.forEach(({ at, putBack }, i) => {
    for (const name of Object.keys(stageFigureNames) as StageFigureName[]) targets.set(stageId(i, name), /back/.test(name) && putBack !== undefined ? [putBack.at, at] : [at]);
  });
  authorised.forEach(({ at }, i) => targets.set(authorisedId(i), [at]));
  for (const column of columns) {
    const { option, totals, planned, open } = column.weighed;
    const otherwise = [option.at, ...column.causes.map((cause) => cause.at)];
    const add = (id: string, ...best: readonly (Span | undefined)[]) => {
      if (!targets.has(id)) targets.set(id, [...best.filter((span) => span !== undefined), ...otherwise]);
    };
    for (const name of Object.keys(figureNames) as FigureName[]) {
      const figure = figureOf(column.weighed, name);
      if (figure !== undefined) add(figureId(column, name), writtenAt(figure));
    }
    totals.lines.forEach((line, i) => add(lineId(column, i), line.at));
    totals.taxes.forEach(({ tax }, i) => add(taxId(column, i), tax.at));
    [planned.chosen, ...planned.others].forEach((plan, i) => add(planId(column, i), i === 0 ? option.wayAt : undefined, plan.paid[0]?.at));
    open.forEach(({ job }, i) => add(openId(column, i), job.at));
    add(headId(column), option.at);
    add(warrantyId(column), option.warranty?.at);
    add(aboveId(column));
    const [cause] = column.causes;
    if (cause !== undefined) targets.set(causeId(column), [cause.at, ...otherwise]);
  }
  return targets;
}

/** Where a figure was written. A sum with one part that counts was written where that part was. */
function writtenAt(figure: Figure): Span | undefined {
  if (figure.at !== undefined) return figure.at;
  const [only, ...others] = figure.from.filter((part) => !part.high.isZero());
  return figure.step.kind === 'sum' && only !== undefined && others.length === 0 ? writtenAt(only) : undefined;
}
