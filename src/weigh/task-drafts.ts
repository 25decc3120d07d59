import type { Span } from '../language/index.js';
import type { Amount } from '../vocabulary/index.js';
import { given, type Figure } from './figure.js';
import type { PlannedJob } from './plan.js';
import { onceEach } from './schedule/index.js';
import type { Task, TaskKind } from './task.js';
import { waitUnitOf } from './working-days.js';

interface Draft extends Omit<Task, 'after' | 'holdsAll'> {
  readonly after: number[];
  holdsAll: boolean;
}

/** What a task has beyond what most have: no wait, counted, on the vehicle in the bay. */
type Wanted = Pick<Task, 'title' | 'kind' | 'length' | 'after' | 'at'> & Partial<Pick<Task, 'wait' | 'counts' | 'inBay'>>;

/** A list of tasks that grows: a task is known by its place in it, and waits for others are added while more is known. */
export class TaskDrafts {
  private readonly drafts: Draft[] = [];

  get tasks(): readonly Task[] {
    return this.drafts;
  }

  add({ title, kind, length, after, at, wait, counts = true, inBay = true }: Wanted): number {
    this.drafts.push({ id: `${this.drafts.length + 1} ${title}`, title, kind, length, wait, after: [...onceEach(after)], counts, inBay, holdsAll: false, at });
    return this.drafts.length - 1;
  }

  job({ line: { at } }: PlannedJob, title: string, after: readonly number[], length: Figure, where: 'in bay' | 'outside bay' = 'in bay'): number {
    return this.add({ title, kind: 'job', length, after, inBay: where === 'in bay', at });
  }

  wait(kind: TaskKind, title: string, amount: Amount, after: readonly number[], at: Span): number {
    return this.add({ title, kind, length: given(title, 'days', amount), wait: waitUnitOf(amount), after, inBay: false, at });
  }

  link(task: number, after: readonly number[]): void {
    const draft = this.drafts[task] as Draft;
    for (const one of after) if (one !== task && !draft.after.includes(one)) draft.after.push(one);
  }

  /** A task and all that it waits for. */
  before(task: number): ReadonlySet<number> {
    const seen = new Set<number>([task]);
    const visit = (one: number) => {
      for (const next of (this.drafts[one] as Draft).after) if (!seen.has(next)) {
        seen.add(next);
        visit(next);
      }
    };
    visit(task);
    return seen;
  }

  /** Nobody wrote down who needs it, so several jobs wait for it. */
  holdsAll(task: number): void {
    (this.drafts[task] as Draft).holdsAll = true;
  }

  kindOf(task: number): TaskKind {
    return (this.drafts[task] as Draft).kind;
  }

  /** The first task that was made from a line; -1 where there is none. */
  madeFrom(at: Span): number {
    return this.drafts.findIndex((task) => task.kind === 'job' && task.at === at);
  }
}
