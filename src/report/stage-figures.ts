import type { Figure, StageWeighed } from '../weigh/index.js';

/** The figures of a stage that have names of their own, in the order in which they are shown. */
export const stageFigureNames = {
  total: 'The stage alone',
  hours: '  hours',
  'put-back': 'Putting it back adds',
  'back-hours': '  hours',
  stop: 'Owed if it ends there, put back',
} as const;

export type StageFigureName = keyof typeof stageFigureNames;

export function stageFigureOf({ totals, putBack, backHours, stop }: StageWeighed, name: StageFigureName): Figure {
  switch (name) {
    case 'total': return totals.total;
    case 'hours': return totals.hours;
    case 'put-back': return putBack;
    case 'back-hours': return backHours;
    case 'stop': return stop;
  }
}

/** `stage.tear-down.total` and the like; its lines as `stage.tear-down.line.1`, those of putting back after its own. */
export function stageFigures(stages: readonly StageWeighed[]): ReadonlyMap<string, Figure> {
  return new Map(stages.flatMap((weighed) => [
    ...(Object.keys(stageFigureNames) as StageFigureName[]).map((name): [string, Figure] => [stageFigureId(weighed, name), stageFigureOf(weighed, name)]),
    ...[...weighed.totals.lines, ...weighed.backLines].map((line, i): [string, Figure] => [stageLineId(weighed, i), line.amount]),
  ]));
}

function stageFigureId({ stage }: StageWeighed, name: StageFigureName): string {
  return `stage.${stage.name}.${name}`;
}

export function stageLineId({ stage }: StageWeighed, index: number): string {
  return `stage.${stage.name}.line.${index + 1}`;
}

/** Why it takes new parts to put it back; nothing where it destroys none. */
export function destroyedWords({ stage: { destroys } }: StageWeighed): string {
  return destroys.length === 0 ? '' : `It destroys: ${destroys.map(({ title }) => title).join(', ')}.`;
}
