import { Holders, type Block, type Holder, type Problem, type Span, type Statement } from '../language/index.js';
import type { Fields, Kind, ValuesOf } from './kind.js';
import type { Name, Text } from './value.js';

/** What later rooms keep by records. */
export const heldByRecords = new Holders();

/** A line read as its kind: what it says, with the place of every part. */
export interface Record<F extends Fields = Fields> extends Holder {
  readonly kind: Kind<F>;
  readonly statement: Statement;
  readonly block: Block;
  readonly name: Name | undefined;
  readonly title: Text | undefined;
  readonly values: ValuesOf<F>;
  readonly children: readonly Record[];
  /** True where something on the line, or on a fact line below it, could not be read. */
  readonly broken: boolean;
  /** The head line without its comment. */
  readonly at: Span;
}

export type RecordOf<K> = K extends Kind<infer F> ? Record<F> : never;

/** What one block says. */
export interface ReadBlock {
  readonly records: readonly Record[];
  /** Problems of the language and vocabulary rooms. */
  readonly problems: readonly Problem[];
  /** Lines that no record came of, since nobody can tell what they are; what stands below them is lost too. */
  readonly unread: readonly Statement[];
}

export function is<F extends Fields>(record: Record, kind: Kind<F>): record is Record<F> {
  return record.kind.word === kind.word;
}

export function childrenOf<F extends Fields>(record: Record, kind: Kind<F>): readonly Record<F>[] {
  return record.children.filter((child): child is Record<F> => child.kind.word === kind.word);
}
