import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { decide, type Ready, type TimedTask } from '../../../src/weigh/index.js';
import { isOpen, dayOf } from '../../../src/weigh/calendar.js';
import { randomEstimate } from '../../support/random-estimate.js';
import { PATIENT, runs } from '../../support/random-runs.js';
import { PUBLISHED, type PublishedNetwork } from '../schedule/published.js';
import { oneFile, soundText, weighFresh } from './weighing.js';

function ready(text: string, name = 'one'): Ready {
  return soundText(text).option(name).ready;
}

const named = (tasks: readonly TimedTask[], words: string) => {
  const found = tasks.find(({ task }) => task.title === words);
  if (found === undefined) throw new Error(`no task ${words} among ${tasks.map(({ task }) => task.title).join('; ')}`);
  return found;
};

/** A network as an estimate: a job an activity, a day of one hour, and hands enough that nobody waits for one. */
function asEstimate({ activities }: PublishedNetwork): string {
  const name = (id: string) => `activity-${id.toLowerCase()}`;
  const mean = ({ low, likely, high }: { readonly low: number; readonly likely: number; readonly high: number }) => ((low + 4 * likely + high) / 6).toFixed(6);
  const hands = Math.min(activities.length, 20);
  return `steelyard 1\nshop "S"\n  rate bench 1.00\n  workday 1 h\n  technicians ${hands}\n${activities.map(({ id, after, duration }) => `labour ${name(id)} "${id}" ${mean(duration)} h\n${after.length === 0 ? '' : `  after ${after.map(name).join(', ')}\n`}`).join('')}option one "One"\n  do ${activities.map(({ id }) => name(id)).join(', ')}\n`;
}

describe.each(PUBLISHED.slice(0, 3).map((network) => [network.source, network] as const))('%s, as jobs of an estimate', (_, network) => {
  const plan = ready(asEstimate(network));

  it('finish as printed, and proven', () => {
    expect(plan.finish).toBeCloseTo(network.finish, 4);
    expect(plan.days.likely.toNumber()).toBe(Math.ceil(network.finish - 1e-4));
    expect(plan.proven).toBe(true);
  });

  it('critical jobs and slack as printed', () => {
    expect(plan.tasks.filter(({ critical }) => critical).map(({ task }) => task.title)).toEqual(network.path.split(' '));
    const slack = Object.fromEntries(plan.tasks.filter((row) => row.slack > 1e-4).map(({ task, slack: its }) => [task.title, Number(its.toFixed(4))]));
    expect(slack).toEqual(network.slack);
  });

  it('three-point lengths give the printed variance: the chance to be done by then is as printed', () => {
    // With the book's three points as lengths: the mean path, and the normal approximation at 50, 80 and 90 %.
    const spread = asEstimate(network).replace(/(labour activity-(\S+) "[^"]*") \S+ h/g, (all, head: string, id: string) => {
      const found = network.activities.find((one) => one.id.toLowerCase() === id);
      if (found === undefined) return all;
      const { low, likely, high } = found.duration;
      return `${head} ${low === high ? likely : `${low} / ${likely} / ${high}`} h`;
    });
    const { byChance } = ready(spread);
    const deviation = Math.sqrt(network.variance);
    // Quantiles of the normal distribution, NIST/SEMATECH e-Handbook 1.3.6.7.1: 0, .841621, 1.281552. Whole days, rounded up.
    expect(byChance.map(({ days }) => days)).toEqual([0, 0.841621, 1.281552].map((z) => Math.ceil(network.finish + z * deviation - 1e-6)));
  });
});

describe('after in a circle', () => {
  it('gives one message for the option, names the chain, and the rest is planned without it', () => {
    const text = 'steelyard 1\nshop "S"\n  rate bench 1.00\nlabour a "A" 2 h\n  after c\nlabour b "B" 3 h\n  after a\nlabour c "C" 4 h\n  after b\noption one "One"\n  do a, b, c\n';
    const fresh = weighFresh(oneFile(text));
    expect(fresh.problems.map(({ code }) => code)).toEqual(['order-circle']);
    const { ready: plan } = fresh.option('one');
    expect([...(plan.circle ?? [])].sort().filter((one, i, all) => one !== all[i - 1])).toEqual(['A', 'B', 'C']);
    expect(plan.finish).toBeCloseTo(9, 9);
  });

  it('over outside work that a job sends away itself, and over what is done first and last', () => {
    for (const lines of [
      'labour a "A" 2 h\n  uses away\n  after away\nsublet away "Away" 10.00 back in 2 d\n  after a\noption one "One"\n  do a\n',
      'labour a "A" 2 h\n  done first\n  after b\nlabour b "B" 2 h\n  done last\noption one "One"\n  do a, b\n',
    ]) {
      const fresh = weighFresh(oneFile(`steelyard 1\nshop "S"\n  rate bench 1.00\n${lines}`));
      const circles = fresh.problems.filter(({ code }) => code === 'order-circle');
      expect(circles.length).toBeLessThanOrEqual(1);
      expect(fresh.option('one').ready.finish).toBeGreaterThan(0);
      expect(() => decide(fresh.comparison)).not.toThrow();
    }
  });
});

describe('what the calendar counts (computed)', () => {
  // Monday 2026-11-30; a day of 8 h; Saturday and Sunday closed.
  const shop = 'steelyard 1\nestimate "E"\n  start 2026-11-30\n%HEADER%shop "S"\n  workday 8 h\n  rate bench 1.00\n%SHOP%access out "Out"\n  remove 4 h\n  refit 4 h\n';
  const text = (option: string, { header = '', more = '', closed = '' } = {}) => `${shop.replace('%HEADER%', header).replace('%SHOP%', closed)}${more}option one "One"\n${option}`;

  it('first jobs, then the answer, then the way in; ordered only then', () => {
    const plan = ready(text('  do look\n  labour "W" 8 h with out\n  part "P" 1.00 new arrives 2 d\n', { header: '  answer 1 d\n', more: 'labour look "Look" 2 h\n  done first\n' }));
    const at = (title: string) => [named(plan.tasks, title).start, named(plan.tasks, title).end];
    expect(at('Look')).toEqual([0, 2]);
    expect(at('The customer’s answer')).toEqual([2, 10]);
    expect(at('Out: remove')).toEqual([10, 14]);
    expect(at('P arrives')).toEqual([10, 26]);
    // No job uses the part: all wait for it.
    expect(at('W')).toEqual([26, 34]);
    expect(at('Out: refit')).toEqual([34, 38]);
    expect([plan.days.likely.toFixed(), plan.date]).toEqual(['5', '2026-12-04']);
    // In the bay from the second day on; nobody works from hour 14 to 26: a day and a half.
    expect([plan.bay.likely.toFixed(), plan.waiting.likely.toFixed()]).toEqual(['4', '1.5']);
  });

  it('done last comes after everything is put back, and waits for what it uses', () => {
    const plan = ready(text('  do test\n  labour "W" 4 h with out\n', { more: 'part fluid "Fluid" 1.00 new arrives 4 d\nlabour test "Test" 1 h\n  done last\n  uses fluid\n' }));
    expect(named(plan.tasks, 'W').end).toBe(8);
    expect(named(plan.tasks, 'Out: refit').end).toBe(12);
    expect([named(plan.tasks, 'Test').start, named(plan.tasks, 'Test').end]).toEqual([32, 33]);
  });

  it('apart after: that much waits for no part, outside work leaves then, and the rest waits for both', () => {
    const plan = ready(text('  do head\n', { more: 'part gasket "Gasket" 1.00 new arrives 3 d\nsublet face "Face" 1.00 back in 2 d\nlabour head "Head"\n  takes 10 h with out\n  apart after 3 h\n  uses gasket, face\n' }));
    const at = (title: string) => [named(plan.tasks, title).start, named(plan.tasks, title).end];
    expect(at('Head: apart')).toEqual([4, 7]);
    expect(at('Face: away')).toEqual([7, 23]);
    expect(at('Gasket arrives')).toEqual([0, 24]);
    expect(at('Head: the rest')).toEqual([24, 31]);
    expect(plan.finish).toBe(35);
  });

  it('without it outside work leaves when the engine is got at, and the whole job waits', () => {
    const plan = ready(text('  do head\n', { more: 'sublet face "Face" 1.00 back in 2 d\nlabour head "Head"\n  takes 10 h with out\n  uses face\n' }));
    expect([named(plan.tasks, 'Face: away').start, named(plan.tasks, 'Face: away').end, named(plan.tasks, 'Head').start]).toEqual([4, 20, 20]);
  });

  it('hours apart beyond the hours of the job are all of them', () => {
    const plan = ready(text('  do head\n', { more: 'labour head "Head"\n  takes 2 h with out\n  apart after 3 h\n' }));
    expect([named(plan.tasks, 'Head: apart').end, named(plan.tasks, 'Head: the rest').end, plan.finish]).toEqual([6, 6, 10]);
  });

  it.each([
    ['3 d', '2026-12-03'], // three working days, then the fourth is worked on
    ['1 wk', '2026-12-07'],
    ['2 wk', '2026-12-14'],
    ['1 mo', '2026-12-30'],
  ])('a part that arrives in %s: the work of one day ends on %s', (arrives, date) => {
    expect(ready(text(`  labour "W" 8 h\n  part "P" 1.00 new arrives ${arrives}\n`)).date).toBe(date);
  });

  it('closed days move working days, and are counted by weeks', () => {
    const closed = '  closed saturday, sunday, 2026-12-01, 2026-12-07\n';
    // Two working days are Monday and Wednesday, so work is on Thursday; a week ends on Monday, which is closed.
    expect(ready(text('  labour "W" 8 h\n  part "P" 1.00 new arrives 2 d\n', { closed })).date).toBe('2026-12-03');
    expect(ready(text('  labour "W" 8 h\n  part "P" 1.00 new arrives 1 wk\n', { closed })).date).toBe('2026-12-08');
  });

  it('a start on a closed day is the next open one', () => {
    expect(ready(text('  labour "W" 8 h\n').replace('start 2026-11-30', 'start 2026-11-28')).date).toBe('2026-11-30');
  });

  it('tools that the shop owns are there; others are waited for', () => {
    const tool = (owned: boolean) => `${owned ? '' : 'tool puller "Puller" 5.00 arrives 2 d\n'}labour w "W" 4 h\n  needs puller\n`;
    expect(ready(text('  do w\n', { more: tool(true), closed: '  tool puller "Puller"\n' })).finish).toBe(4);
    expect(ready(text('  do w\n', { more: tool(false) })).finish).toBe(20);
  });

  it('putting a core together never delays, also where it takes longer than all else', () => {
    const plan = ready(text('  labour "W" 4 h\n  part "Unit" 1.00 rebuilt\n    core 1.00\n      assemble 40 h\n'));
    expect([plan.finish, plan.days.likely.toFixed()]).toEqual([4, '1']);
    expect(named(plan.tasks, 'Unit: put the core together').critical).toBe(false);
  });

  it('two technicians share the work; the estimate goes before the shop', () => {
    const two = '  labour "A" 6 h\n  labour "B" 5 h\n  labour "C" 5 h\n';
    expect(ready(text(two)).finish).toBe(16);
    expect(ready(text(two, { closed: '  technicians 2\n' })).finish).toBe(10);
    expect(ready(text(two, { closed: '  technicians 2\n', header: '  technicians 3\n' })).finish).toBe(6);
  });

  it('after waits for parts and outside work too, and ignores what the option does not have', () => {
    const plan = ready(text('  do a, b\n  fit late\n', { more: 'part late "Late" 1.00 new arrives 1 d\nlabour a "A" 2 h\n  after b, elsewhere\nlabour b "B" 3 h\n  after late\nlabour elsewhere "Elsewhere" 9 h\n', closed: '  technicians 4\n' }));
    expect([named(plan.tasks, 'B').start, named(plan.tasks, 'A').start]).toEqual([8, 11]);
  });
});

/** Holds everywhere: order, hands, dates and the critical path; how many tasks were looked at. */
function expectPlanHolds(plan: Ready, text: string, open: (iso: string) => boolean): number {
  const { tasks, technicians, finish } = plan;
  const length = ({ start, end }: TimedTask) => end - start;
  const earliest: number[] = [];
  const order = tasks.map((_, i) => i).sort((a, b) => (tasks[a] as TimedTask).start - (tasks[b] as TimedTask).start || (tasks[a] as TimedTask).end - (tasks[b] as TimedTask).end);
  tasks.forEach((row) => {
    expect(Number.isFinite(row.start) && Number.isFinite(row.end) && row.start >= 0 && row.end >= row.start, text).toBe(true);
    for (const before of row.task.after) expect(row.start, `${row.task.title} in\n${text}`).toBeGreaterThanOrEqual((tasks[before] as TimedTask).end - 1e-6);
    if (row.task.counts) expect(row.end, text).toBeLessThanOrEqual(finish + 1e-6);
    for (const iso of [row.from, row.to]) if (iso !== undefined) expect(open(iso), `${iso} in\n${text}`).toBe(true);
    if (row.critical) expect(row.slack).toBeLessThan(1e-6);
  });
  const work = tasks.filter((row) => row.task.wait === undefined && length(row) > 0);
  for (const one of work) {
    const atOnce = work.filter((other) => other.start <= one.start + 1e-9 && other.end > one.start + 1e-9);
    expect(atOnce.length, `at ${one.start} in\n${text}`).toBeLessThanOrEqual(technicians);
    expect(new Set(atOnce.map(({ technician }) => technician)).size).toBe(atOnce.length);
  }
  // No sooner than the longest chain, waits by the calendar as long as they came out.
  for (const i of order) earliest[i] = Math.max(0, ...(tasks[i] as TimedTask).task.after.map((before) => earliest[before] ?? 0)) + (isCalendar(tasks[i] as TimedTask) ? 0 : length(tasks[i] as TimedTask));
  expect(finish, text).toBeGreaterThanOrEqual(Math.max(0, ...tasks.map(({ task }, i) => (task.counts ? (earliest[i] as number) : 0))) - 1e-6);
  const numbers = [plan.days.low, plan.days.likely, plan.days.high, plan.bay.likely, plan.waiting.likely].map((one) => one.toNumber());
  expect(numbers.every((one) => Number.isFinite(one) && one >= 0), `${numbers.join()} in\n${text}`).toBe(true);
  expect(plan.days.low.lte(plan.days.likely) && plan.days.likely.lte(plan.days.high)).toBe(true);
  expect(plan.bay.likely.lte(plan.days.likely) && plan.waiting.likely.lte(plan.bay.likely), text).toBe(true);
  for (const iso of [plan.date, plan.latest]) if (iso !== undefined) expect(open(iso), text).toBe(true);
  return tasks.length;
}

const isCalendar = ({ task }: TimedTask) => task.wait === 'wk' || task.wait === 'mo';

it('150 random estimates: every task after those before it, no more at once than hands, never before the critical path, on open days', PATIENT, () => {
  let tasks = 0;
  fc.assert(fc.property(randomEstimate, (text) => {
    const { comparison } = weighFresh(oneFile(text));
    for (const { ready: plan } of comparison.options) tasks += expectPlanHolds(plan, text, (iso) => isOpen(dayOf(iso), comparison.estimate.shop));
  }), runs(9301, 150));
  expect(tasks).toBeGreaterThan(500);
});
