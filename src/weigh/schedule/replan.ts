import { layOut, type PlanTask } from './plan-task.js';
import { SerialGeneration } from './serial.js';

/**
 * Makes a plan's order into a function for sampling: given other durations (one per task, in the order of `tasks`;
 * nothing is allowed), it works out the plan in that order and gives the finish of the tasks that count. It allocates
 * nothing and equals the finish of `bayPlan` for the plan's own order and durations, to the last bit.
 *
 * With a fixed order a shorter task may, rarely, finish the whole later: a gap closes that another task had used
 * (Graham, SIAM Journal on Applied Mathematics 17(2), 1969).
 *
 * @param order each task once, predecessors first.
 * @throws RangeError where the tasks have no plan or the order is not such an order: a fault of the caller.
 */
export function compileOrder(tasks: readonly PlanTask[], order: ArrayLike<number>, technicians: number): (durations: Float64Array) => number {
  const layout = layOut(tasks, technicians);
  if (layout.kind !== 'laid-out') throw new RangeError(`These tasks have no plan: ${layout.kind}.`);
  const placed = new Set<number>();
  const list = Int32Array.from(order);
  for (const i of list) {
    const task = tasks[i];
    if (task === undefined || placed.has(i) || task.after.some((before) => !placed.has(before))) throw new RangeError(`Task ${i} can't stand there in the order.`);
    placed.add(i);
  }
  if (placed.size !== tasks.length) throw new RangeError('The order leaves out tasks.');
  // What comes after the last task that counts can't change the finish.
  const needed = list.slice(0, list.findLastIndex((i) => layout.isCounted[i] === 1) + 1);
  const generation = new SerialGeneration(layout);
  return (durations) => generation.run(needed, durations);
}
