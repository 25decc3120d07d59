import { afterStages, authorisedIn, type Comparison, type Decision, type Figure, type Weighed } from '../weigh/index.js';
import { stageFigures } from './stage-figures.js';

/** The figures of one option that have names of their own, in the order in which they are shown. */
export const figureNames = {
  access: 'Getting in and closing up',
  labour: 'Labour on the work',
  parts: 'Parts',
  outside: 'Outside work',
  fees: 'Fees',
  cores: 'Core charges',
  tax: 'Tax',
  total: 'Total',
  'cores-back': 'Comes back with the cores',
  'tax-kept': 'Tax on cores that does not come back',
  pieces: 'Worth of pieces kept or taken off',
  'comes-back': 'Comes back, and worth of pieces',
  net: 'Paid in the end',
  'given-up': 'Worth given up',
  'in-all': 'Cost in all',
  penalty: 'Access penalty',
  hours: 'Hours of work',
  'access-hours': 'Hours of getting in',
  'penalty-hours': 'Access penalty in hours',
  days: 'Working days',
  bay: 'Days in the bay',
  waiting: 'Days of waiting',
} as const;

export type FigureName = keyof typeof figureNames;

export function figureOf(weighed: Weighed, name: FigureName): Figure | undefined {
  const { totals, returns, penalty, ready } = weighed;
  switch (name) {
    case 'access': return totals.access;
    case 'labour': return totals.labour;
    case 'parts': return totals.parts;
    case 'outside': return totals.sublets;
    case 'fees': return totals.fees;
    case 'cores': return totals.cores;
    case 'tax': return totals.tax;
    case 'total': return totals.total;
    case 'cores-back': return returns.withCores;
    case 'tax-kept': return returns.taxKept;
    case 'pieces': return returns.salvage;
    case 'comes-back': return returns.all;
    case 'net': return weighed.net;
    case 'given-up': return weighed.givenUp;
    case 'in-all': return weighed.inAll;
    case 'penalty': return penalty.money;
    case 'hours': return totals.hours;
    case 'access-hours': return totals.accessHours;
    case 'penalty-hours': return penalty.hours;
    case 'days': return ready.days;
    case 'bay': return ready.bay;
    case 'waiting': return ready.waiting;
  }
}

/**
 * Every figure that can be asked for by name: `OPTION.total` and the like, `OPTION.line.N` (counted from 1 as shown)
 * or `OPTION.line.NAME` for its lines, `OPTION.task.N` for the lengths of what the calendar plans; `stage.NAME.total` and
 * the like; with a decision also what that found out.
 */
export function namedFigures(comparison: Comparison, decision?: Decision): ReadonlyMap<string, Figure> {
  const found = new Map<string, Figure>();
  for (const weighed of comparison.options) {
    const prefix = weighed.option.name;
    for (const name of Object.keys(figureNames) as FigureName[]) {
      const figure = figureOf(weighed, name);
      if (figure !== undefined) found.set(`${prefix}.${name}`, figure);
    }
    weighed.totals.lines.forEach((line, i) => {
      found.set(lineId(weighed, i), line.amount);
      const named = line.name === undefined ? undefined : `${prefix}.line.${line.name}`;
      if (named !== undefined && !found.has(named)) found.set(named, line.amount);
    });
    weighed.ready.tasks.forEach(({ task }, i) => found.set(taskId(weighed, i), task.length));
  }
  for (const { of, amount, over, room, used, left } of authorisedIn(comparison)) {
    const prefix = comparison.estimate.stages.some((stage) => stage === of) ? `stage.${of.name}` : of.name;
    for (const [name, figure] of Object.entries({ authorised: amount, over, room, 'room-used': used, 'room-left': left })) found.set(`${prefix}.${name}`, figure);
  }
  for (const [{ option: { name } }, { authorised, left }] of afterStages(comparison)) {
    found.set(`${name}.stages-authorised`, authorised);
    found.set(`${name}.left-to-authorise`, left);
  }
  for (const [id, figure] of stageFigures(comparison.stages)) if (!found.has(id)) found.set(id, figure);
  for (const { weighed: { option: { name } }, monthly, downtime, margin } of decision?.options ?? []) {
    if (monthly !== undefined) found.set(`${name}.monthly`, monthly.perMonth);
    if (downtime !== undefined) found.set(`${name}.downtime`, downtime);
    found.set(`${name}.margin`, margin.margin);
    for (const { sort, margin: left } of margin.by) found.set(`${name}.margin-${sort}`, left);
  }
  return found;
}

export function lineId(weighed: Weighed, index: number): string {
  return `${weighed.option.name}.line.${index + 1}`;
}

export function taskId(weighed: Weighed, index: number): string {
  return `${weighed.option.name}.task.${index + 1}`;
}
