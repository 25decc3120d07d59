import { readFileSync } from 'node:fs';
import { Instrumenter } from '@stryker-mutator/instrumenter';

/** One small change of a source file, and where it stands. Lines and columns count from 1. */
export interface Mutant {
  /** Unique in its file. */
  readonly id: string;
  readonly file: string;
  readonly line: number;
  readonly column: number;
  readonly kind: string;
  readonly before: string;
  readonly after: string;
}

/** A source with all its mutants in it, each behind a switch. */
export interface Instrumented {
  readonly file: string;
  readonly source: string;
  readonly mutants: readonly Mutant[];
}

/** Texts are words for people, or names that the type checker watches. */
const LEFT_OUT = ['StringLiteral'];

const silent = () => undefined;
const logger = { isTraceEnabled: () => false, isDebugEnabled: () => false, isInfoEnabled: () => false, isWarnEnabled: () => false, isErrorEnabled: () => false, isFatalEnabled: () => false, trace: silent, debug: silent, info: silent, warn: silent, error: silent, fatal: silent };

export async function instrument(root: string, file: string): Promise<Instrumented> {
  const content = readFileSync(`${root}/${file}`, 'utf8');
  const made = await new Instrumenter(logger).instrument([{ name: file, mutate: true, content }], { excludedMutations: LEFT_OUT, ignorers: [], plugins: null, noHeader: true });
  const lines = content.split('\n');
  const mutants = made.mutants.filter(({ status }) => status !== 'Ignored').map(({ id, location: { start, end }, mutatorName, replacement }): Mutant => {
    const first = lines[start.line] as string;
    const before = start.line === end.line ? first.slice(start.column, end.column) : `${first.slice(start.column)} …`;
    return { id, file, line: start.line + 1, column: start.column + 1, kind: mutatorName, before, after: replacement };
  });
  return { file, source: withoutCasts(made.files[0]?.content ?? content), mutants };
}

/** The instrumenter loses the brackets of `(count as number)++`, and then nothing that imports the file can be run. */
function withoutCasts(source: string): string {
  return source.replace(/ as number(?=\+\+|--)/g, '');
}
