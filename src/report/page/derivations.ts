import type { Span } from '../../language/index.js';
import type { Figure } from '../../weigh/index.js';
import { figureNames, figureOf, type FigureName } from '../figures.js';
import type { Column } from './last-good.js';
import { lineId, taxId, type Targets } from './targets.js';
import { writtenFigure, type TrialField } from './trial-field.js';

/** A figure unfolded where it stands on the page: how it was made, step by step, down to what was written. */
export interface Derivation {
  readonly column: Column;
  readonly root: Step;
}

export interface Step {
  readonly id: string;
  readonly figure: Figure;
  readonly from: readonly Step[];
  /** Steps below it that are not shown: there are very many. */
  readonly left: number;
  /** Where it is written in the file, and a field to try another value; undefined where it was not written. */
  readonly at: Span | undefined;
  readonly field: TrialField | undefined;
}

/** By the row that is unfolded. */
export type Derivations = ReadonlyMap<string, readonly Derivation[]>;

/** What a page with trials knows of the file: where a span of a tried text is in it, and what is tried there. */
export interface Tried {
  readonly home: (span: Span) => Span;
  readonly valueOf: (at: Span) => string | undefined;
}

/** Shown of one step, and of one option in a row: a sum of thousands of lines is read line by line, not here. */
const MOST_PARTS = 60;
const MOST_STEPS = 1_000;
/** Steps below each other; a generated file could nest without end. */
const DEEPEST = 12;

/** A row of the figures side by side; no option's name begins with a point. */
export const rowId = (name: FigureName): string => `.row.${name}`;

/** The derivations of the rows that are unfolded; rows that there no longer are have none. */
export function derivationsOf(columns: readonly Column[], unfolded: Iterable<string>, tried?: Tried): Derivations {
  const found = new Map<string, readonly Derivation[]>();
  for (const row of unfolded) {
    const name = row.startsWith('.row.') ? row.slice('.row.'.length) : undefined;
    const made = name === undefined ? ofLine(row, columns) : isName(name) ? ofRow(name, columns) : [];
    if (made.length > 0) found.set(row, made.map(({ column, figure, names }) => ({ column, root: unfold(figure, `${row} ${column.key}`, names, tried) })));
  }
  return found;
}

/** Where the steps of derivations lead. */
export function derivationTargets(derivations: Derivations): Targets {
  const targets = new Map<string, readonly Span[]>();
  const visit = ({ id, at, from }: Step): void => {
    if (at !== undefined) targets.set(id, [at]);
    from.forEach(visit);
  };
  for (const list of derivations.values()) for (const { root } of list) visit(root);
  return targets;
}

/** The fields of derivations, each with where its figure is written. */
export function derivationFields(derivations: Derivations): ReadonlyMap<string, { readonly field: TrialField; readonly at: Span }> {
  const fields = new Map<string, { readonly field: TrialField; readonly at: Span }>();
  const visit = ({ at, field, from }: Step): void => {
    if (at !== undefined && field !== undefined) fields.set(field.id, { field, at });
    from.forEach(visit);
  };
  for (const list of derivations.values()) for (const { root } of list) visit(root);
  return fields;
}

interface Found {
  readonly column: Column;
  readonly figure: Figure;
  /** What it is of, for a field below it. */
  readonly names: string;
}

function ofRow(name: FigureName, columns: readonly Column[]): readonly Found[] {
  return columns.flatMap((column) => {
    const figure = column.state === 'not-weighed' ? undefined : figureOf(column.weighed, name);
    return figure === undefined || figure.high.isZero() ? [] : [{ column, figure, names: figureNames[name] }];
  });
}

function ofLine(id: string, columns: readonly Column[]): readonly Found[] {
  for (const column of columns) {
    if (column.state === 'not-weighed' || !id.startsWith(`${column.key}.`)) continue;
    const { lines, taxes } = column.weighed.totals;
    const line = lines.find((_, i) => lineId(column, i) === id);
    if (line !== undefined) return [{ column, figure: line.amount, names: line.title }];
    const tax = taxes.find((_, i) => taxId(column, i) === id);
    if (tax !== undefined) return [{ column, figure: tax.amount, names: tax.tax.title }];
  }
  return [];
}

function isName(name: string): name is FigureName {
  return Object.hasOwn(figureNames, name);
}

/** Parts of each step and steps in all are counted, so that no file makes a page without end. */
function unfold(root: Figure, id: string, names: string, tried: Tried | undefined): Step {
  let steps = 0;
  const stepOf = (figure: Figure, path: string, of: string, depth: number): Step => {
    steps++;
    const below = depth === DEEPEST ? [] : figure.from.slice(0, Math.min(MOST_PARTS, Math.max(0, MOST_STEPS - steps)));
    const at = figure.at === undefined ? undefined : (tried?.home(figure.at) ?? figure.at);
    // A field is named by the nearest line or rule above it.
    const inside = figure.at === undefined || figure.from.length > 0 ? figure.label : of;
    const from = below.map((part, i) => stepOf(part, `${path}.${i + 1}`, inside, depth + 1));
    return { id: path, figure, at, left: figure.from.length - from.length, field: fieldOf(figure, at, path, of, tried), from };
  };
  return stepOf(root, id, names, 0);
}

function fieldOf(figure: Figure, at: Span | undefined, path: string, of: string, tried: Tried | undefined): TrialField | undefined {
  const written = at === undefined || figure.step.kind !== 'given' ? undefined : writtenFigure(at);
  if (at === undefined || written === undefined) return undefined;
  const names = namesOf(figure.label, of);
  return { id: `.try${path.startsWith('.') ? '' : ' '}${path}`, names, today: written.value, value: tried?.valueOf(at) ?? written.value, unit: written.unit };
}

/** “Coolant pump: replace” (time with engine-out); a rate belongs to no one line and names itself. */
function namesOf(label: string, of: string): string {
  const rate = /^(.*), an hour$/.exec(label)?.[1];
  const what = rate !== undefined ? 'an hour' : label.startsWith(of) ? label.slice(of.length).replace(/^[,:]? */, '') : label;
  return what === '' ? `“${of}”` : `“${rate ?? of}” (${what.charAt(0).toLowerCase()}${what.slice(1)})`;
}
