import type { Statement } from '../../language/index.js';
import type { Line, Weighed } from '../../weigh/index.js';
import type { Weighing } from '../types.js';

/** A line of an option that a line of text makes. */
export interface MadeLine {
  readonly weighed: Weighed;
  /** Its place among the option's lines. */
  readonly index: number;
  readonly line: Line;
}

const kept = new WeakMap<Weighing, ReadonlyMap<Statement, readonly MadeLine[]>>();

/**
 * What each line of text brings into the options: a job, part, sublet or fee line its amount, a way in its removing
 * and refitting, which stand at the lines that say their hours too.
 */
export function madeLines(weighing: Weighing): ReadonlyMap<Statement, readonly MadeLine[]> {
  let found = kept.get(weighing);
  if (found === undefined) {
    found = collect(weighing);
    kept.set(weighing, found);
  }
  return found;
}

function collect({ comparison }: Weighing): ReadonlyMap<Statement, readonly MadeLine[]> {
  const found = new Map<Statement, MadeLine[]>();
  const add = (statement: Statement, made: MadeLine) => {
    const list = found.get(statement);
    if (list === undefined) found.set(statement, [made]);
    else list.push(made);
  };
  for (const weighed of comparison.options) {
    weighed.totals.lines.forEach((line, index) => {
      const made = { weighed, index, line };
      const { statement } = line.record;
      add(statement, made);
      const below = line.share === 'access' && line.kind === 'labour' ? lineBelow(statement, line) : undefined;
      if (below !== undefined) add(below, made);
    });
  }
  return found;
}

/** The line below a head on which a figure stands, or undefined where it stands on the head. */
function lineBelow({ children }: Statement, { at }: Line): Statement | undefined {
  return children.find(({ tokens }) => (tokens[0]?.start ?? Infinity) <= at.start && at.end <= (tokens[tokens.length - 1]?.end ?? 0));
}
