import type { Span } from '../language/index.js';
import type { Figure, Money } from '../weigh/index.js';
import { figureText } from './numbers.js';

/** Where a span is, for people: `pilgrim-v6.yard:62`. */
export type Whereabouts = (span: Span) => string | undefined;

/** A figure unfolded: how it was made, and below it the figures it was made from, down to the lines. */
export interface Explained {
  readonly depth: number;
  readonly text: string;
  readonly how: string;
  readonly where: string | undefined;
}

/** Steps of a derivation that are shown; a generated file could nest without end. */
const DEEPEST = 12;

export function explain(figure: Figure, money: Money, whereIs: Whereabouts): Explained[] {
  const rows: Explained[] = [];
  const visit = (one: Figure, depth: number) => {
    rows.push({ depth, text: `${one.label}: ${figureText(one, money)}`, how: howMade(one), where: one.at === undefined ? undefined : whereIs(one.at) });
    if (depth < DEEPEST) for (const part of one.from) visit(part, depth + 1);
  };
  visit(figure, 0);
  return rows;
}

/** How a figure was made from those below it, in a few words. */
export function howMade(figure: Figure): string {
  const { step } = figure;
  switch (step.kind) {
    case 'given': return figure.at === undefined ? 'assumed' : 'as written';
    case 'found': return step.how;
    case 'product': return `${figure.from.length === 1 ? 'as written' : 'multiplied'}${step.per === 1 ? '' : `, divided by ${step.per}`}${step.rounded ? ', rounded' : ''}`;
    case 'sum': return figure.from.length === 0 ? 'nothing to add' : 'added up';
    case 'difference': return 'the first less the others';
    case 'remainder': return 'the first less the others, not below nothing';
    case 'percentage': return 'the percentage of the first, rounded';
    case 'raised': return 'the first with the percentage added';
    case 'least': return 'the least of these';
    case 'greatest': return 'the greatest of these';
    case 'beside-least': return 'the one that goes with the least amount';
  }
}

/** ` = 1.6 h × 132.00` behind an amount, where it was made by multiplying. */
export function explainShort(figure: Figure, money: Money): string {
  if (figure.step.kind !== 'product' || figure.from.length < 2) return '';
  return ` = ${figure.from.map((part) => figureText(part, money)).join(' × ')}`;
}
