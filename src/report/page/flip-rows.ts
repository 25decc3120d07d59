import type { Span } from '../../language/index.js';
import type { Decision, Flip } from '../../weigh/index.js';
import { figureWords, flipSentence } from '../decision-words.js';
import { writtenFigure, type TrialField } from './trial-field.js';

/** A farther flip point is one of very many. */
export const NEAREST = 5;

/** What would change the choice: a figure, and what is to be said of it. */
export interface FlipRow {
  readonly says: string;
  readonly at: Span;
  readonly line: string;
  /** The figure as it stands in the file; undefined where it can't be tried, or an earlier row has the field. */
  readonly field: TrialField | undefined;
}

/** What a page with trials knows of the file as it stands. */
export interface AsWritten {
  readonly decision: Decision;
  /** Where a span of a tried text is in the file. */
  readonly home: (span: Span) => Span;
  /** What is tried in place of a figure. */
  readonly valueOf: (at: Span) => string | undefined;
}

/**
 * The nearest flip points. While figures are tried, those of the file stay where they are, each with what is true of it
 * now, so that a field does not move away from under the hand; what is near only now follows.
 */
export function flipRows(decision: Decision, file?: AsWritten): readonly FlipRow[] {
  const { money } = decision.comparison;
  const home = file?.home ?? ((span: Span) => span);
  const seen = new Map<string, number>();
  const rowOf = (flip: Flip, at: Span, says: string, first: boolean): FlipRow => {
    const written = first ? writtenFigure(at) : undefined;
    if (written === undefined) return { says, at, line: flip.line, field: undefined };
    const names = figureNamed(flip);
    const id = `.try ${names}`;
    const same = seen.get(id) ?? 0;
    seen.set(id, same + 1);
    return { says, at, line: flip.line, field: { id: same === 0 ? id : `${id}~${same + 1}`, names, today: written.value, value: file?.valueOf(at) ?? written.value, unit: written.unit } };
  };
  const rows: FlipRow[] = [];
  const add = (flip: Flip, at: Span, says: string) => rows.push(rowOf(flip, at, says, !rows.some((row) => isSame(row.at, at))));
  const before = (file?.decision ?? decision).flips.slice(0, NEAREST);
  for (const flip of before) {
    const now = decision.flips.filter((one) => isSame(home(one.at), flip.at));
    const found = now.find(({ way }) => way === flip.way) ?? now[0];
    add(flip, flip.at, found === undefined ? `With what you are trying, ${figureNamed(flip)} by itself no longer changes the choice.` : flipSentence(found, money));
  }
  if (file === undefined) return rows;
  const shown = new Set(before.map(({ at }) => at));
  for (const flip of decision.flips.slice(0, NEAREST)) {
    const at = home(flip.at);
    if (![...shown].some((one) => isSame(one, at))) add(flip, at, flipSentence(flip, money));
  }
  return rows;
}

/** “Used engine” (price) */
function figureNamed(flip: Flip): string {
  const what = figureWords(flip);
  return `“${flip.line}”${what === '' ? '' : ` (${what})`}`;
}

function isSame(a: Span, b: Span): boolean {
  return a.block === b.block && a.start === b.start && a.end === b.end;
}
