import path from 'node:path';
import { grouped } from './grouped.js';
import type { Mutant } from './instrument.js';

/** How a mutant ended. `unreached`: no test passes it. `too long`: a test didn't come to its end, which is noticed. */
export interface Outcome {
  readonly mutant: Mutant;
  readonly end: 'killed' | 'too long' | 'survived' | 'unreached';
  readonly by?: string;
  readonly why?: string;
  readonly ms?: number;
  readonly tests?: number;
}

const isNoticed = ({ end }: Outcome): boolean => end === 'killed' || end === 'too long';

/** Survivors line by line, and the share of mutants that are noticed, by folder. Unreached ones count as not noticed. */
export function scoreOf(outcomes: readonly Outcome[]): string {
  const alive = outcomes.filter((one) => !isNoticed(one)).sort((a, b) => (a.mutant.file < b.mutant.file ? -1 : a.mutant.file > b.mutant.file ? 1 : a.mutant.line - b.mutant.line || a.mutant.column - b.mutant.column));
  const lines = alive.map(({ end, mutant: { file, line, column, kind, before, after } }) => `${file}:${line}:${column} ${end === 'unreached' ? 'unreached ' : ''}${kind}: ${short(before)} → ${short(after)}`);
  const folders = grouped(outcomes, ({ mutant }) => path.posix.dirname(mutant.file));
  const rows = [...[...folders].sort(([a], [b]) => (a < b ? -1 : 1)).map(([name, those]) => row(name, those)), row('all', outcomes)];
  return [...lines, '', ['folder', 'mutants', 'killed', 'too long', 'survived', 'unreached', 'score'].join('\t'), ...rows].join('\n');
}

function row(name: string, outcomes: readonly Outcome[]): string {
  const count = (end: Outcome['end']) => outcomes.filter((one) => one.end === end).length;
  const share = outcomes.length === 0 ? 1 : outcomes.filter(isNoticed).length / outcomes.length;
  return [name, outcomes.length, count('killed'), count('too long'), count('survived'), count('unreached'), `${(100 * share).toFixed(1)} %`].join('\t');
}

function short(text: string): string {
  const line = text.replace(/\s+/g, ' ');
  return line.length > 90 ? `${line.slice(0, 89)}…` : line;
}
