import type { Span } from '../language/index.js';
import type { Figure } from './figure.js';
import type { WaitUnit } from './working-days.js';

/** What a piece of the calendar is. */
export type TaskKind = 'answer' | 'remove' | 'job' | 'refit' | 'part' | 'tool' | 'outside' | 'core';

/** One piece of the way to a running car. */
export interface Task {
  readonly id: string;
  readonly title: string;
  readonly kind: TaskKind;
  /** Hours of work; for a wait its days, weeks or months, as written. */
  readonly length: Figure;
  /** The unit of a wait; undefined for work. */
  readonly wait: WaitUnit | undefined;
  /** Indexes of the tasks that it waits for. */
  readonly after: readonly number[];
  /** False for what may go on after the vehicle is ready. */
  readonly counts: boolean;
  /** Whether the vehicle stands in the bay for it. */
  readonly inBay: boolean;
  /** True for a part or outside work that no job uses and several jobs wait for: nobody wrote down which of them needs it. */
  readonly holdsAll: boolean;
  readonly at: Span;
}
