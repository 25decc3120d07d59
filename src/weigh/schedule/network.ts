import { listCriticalPaths } from './critical-paths.js';
import { isDuration, TOLERANCE } from './duration.js';
import { pertMean, type ThreePoint } from './three-point.js';
import { successorsOf, topologicalOrder } from './topological.js';

/** A row of an activity-on-node table. */
export interface Activity {
  readonly id: string;
  /** The ids of its predecessors, anywhere in the table; twice the same is once. */
  readonly after: readonly string[];
  readonly duration: ThreePoint;
}

/** When an activity can and must happen, counted from the start of the project, in the unit of the durations. */
export interface ActivityTimes {
  readonly id: string;
  readonly duration: number;
  readonly earlyStart: number;
  readonly earlyFinish: number;
  readonly lateStart: number;
  readonly lateFinish: number;
  /** How much later it can start without moving the finish; exactly 0 for a critical activity. */
  readonly totalSlack: number;
  /** How much later it can start without moving any other activity. */
  readonly freeSlack: number;
  readonly critical: boolean;
}

export interface NetworkPlan {
  readonly kind: 'planned';
  /** In the order of the table. */
  readonly activities: readonly ActivityTimes[];
  readonly finish: number;
  /** The critical activities, each after its predecessors, then by early start. */
  readonly critical: readonly string[];
  /** The critical paths, at most MOST_PATHS of them; there are more where `pathCount` is greater. */
  readonly paths: readonly (readonly string[])[];
  readonly pathCount: number;
  /** Indexes into the table, predecessors first. */
  readonly order: Int32Array;
  /** For each critical activity the critical predecessors that end where it starts; for the others nothing. */
  readonly criticalLinks: readonly (readonly number[])[];
}

/** Why a table has no plan: the first fault found. */
export type NetworkProblem =
  | { readonly kind: 'twice'; readonly id: string }
  | { readonly kind: 'unknown-predecessor'; readonly id: string; readonly predecessor: string }
  /** Below nothing, above LONGEST, or not a number. */
  | { readonly kind: 'no-duration'; readonly id: string }
  /** Each waits for the one before it, and the first for the last. */
  | { readonly kind: 'circle'; readonly ids: readonly string[] };

/**
 * Early and late times, slack and the critical paths of an activity network (critical path method: Kelley & Walker,
 * Proceedings of the Eastern Joint Computer Conference, 1959). An empty network is finished at 0.
 *
 * @param durationOf what an activity is planned with; the three-point mean unless told.
 */
export function criticalPath(activities: readonly Activity[], durationOf: (duration: ThreePoint) => number = pertMean): NetworkPlan | NetworkProblem {
  const indexOf = new Map<string, number>();
  for (const [i, { id }] of activities.entries()) {
    if (indexOf.has(id)) return { kind: 'twice', id };
    indexOf.set(id, i);
  }
  const after: number[][] = [];
  for (const { id, after: names } of activities) {
    const unknown = names.find((name) => !indexOf.has(name));
    if (unknown !== undefined) return { kind: 'unknown-predecessor', id, predecessor: unknown };
    after.push([...new Set(names.map((name) => indexOf.get(name) as number))].sort((a, b) => a - b));
  }
  const durations = activities.map(({ duration }) => durationOf(duration));
  const wrong = durations.findIndex((duration) => !isDuration(duration));
  if (wrong >= 0) return { kind: 'no-duration', id: (activities[wrong] as Activity).id };
  const ordering = topologicalOrder(after);
  if (ordering.kind === 'circle') return { kind: 'circle', ids: ordering.circle.map((i) => (activities[i] as Activity).id) };
  return plan(activities.map(({ id }) => id), durations, after, ordering.order);
}

function plan(ids: readonly string[], durations: readonly number[], after: readonly (readonly number[])[], order: Int32Array): NetworkPlan {
  const successors = successorsOf(after);
  const earlyStart = new Float64Array(ids.length);
  const earlyFinish = new Float64Array(ids.length);
  const lateFinish = new Float64Array(ids.length);
  const lateStart = new Float64Array(ids.length);
  for (const i of order) {
    let start = 0;
    for (const before of after[i] as readonly number[]) start = Math.max(start, earlyFinish[before] as number);
    earlyStart[i] = start;
    earlyFinish[i] = start + (durations[i] as number);
  }
  const finish = earlyFinish.reduce((latest, end) => Math.max(latest, end), 0);
  for (const i of order.toReversed()) {
    let end = finish;
    for (const next of successors[i] as number[]) end = Math.min(end, lateStart[next] as number);
    lateFinish[i] = end;
    lateStart[i] = end - (durations[i] as number);
  }

  const noise = TOLERANCE * finish;
  const slack = (value: number): number => (value <= noise ? 0 : value);
  const activities = ids.map((id, i): ActivityTimes => {
    const early = { start: earlyStart[i] as number, finish: earlyFinish[i] as number };
    const late = { start: lateStart[i] as number, finish: lateFinish[i] as number };
    const totalSlack = slack(late.finish - early.finish);
    const critical = totalSlack === 0;
    const nextStart = (successors[i] as number[]).reduce((first, next) => Math.min(first, earlyStart[next] as number), finish);
    return {
      id, duration: durations[i] as number, earlyStart: early.start, earlyFinish: early.finish,
      // Late times of a critical activity are its early ones, without the noise of the way back.
      lateStart: critical ? early.start : late.start, lateFinish: critical ? early.finish : late.finish,
      totalSlack, freeSlack: Math.min(totalSlack, slack(nextStart - early.finish)), critical,
    };
  });

  const isCritical = (i: number): boolean => (activities[i] as ActivityTimes).critical;
  const criticalLinks = after.map((before, i) => (isCritical(i) ? before.filter((one) => isCritical(one) && (earlyStart[i] as number) - (earlyFinish[one] as number) <= noise) : []));
  const ends = ids.map((_, i) => i).filter((i) => isCritical(i) && (successors[i] as number[]).length === 0);
  const { paths, count } = listCriticalPaths(criticalLinks, order, ends);
  const name = (i: number): string => ids[i] as string;
  // The sort is stable: those that start together, such as dummies, stay behind their predecessors.
  const critical = [...order].filter(isCritical).sort((a, b) => (earlyStart[a] as number) - (earlyStart[b] as number)).map(name);
  return { kind: 'planned', activities, finish, critical, paths: paths.map((path) => path.map(name)), pathCount: count, order, criticalLinks };
}
