import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { namedFigures, weighJson, weighReport } from '../../src/report/index.js';
import { decide, type Weighed } from '../../src/weigh/index.js';
import { createTape } from '../../src/weigh/tape.js';
import { randomStaged } from '../support/random-stage.js';
import { PATIENT, runs } from '../support/random-runs.js';
import { oneFile, weighFresh } from '../weigh/decision/weighing.js';
import { read, readSound } from '../weigh/weighed.js';
import { worked } from './worked.js';

const likely = (figures: ReturnType<typeof namedFigures>, id: string) => figures.get(id)?.likely.toFixed(2);
const linesOf = ({ totals }: Weighed) => totals.lines.map((line) => `${line.title} ${line.amount.likely.toFixed(2)}`);

describe('a tear-down with round figures', () => {
  const { comparison, option } = readSound(worked);
  const figures = namedFigures(comparison);

  it('alone: 2 h to get in and 4 h of work at 100.00, and 30.00 of supplies, which are capped', () => {
    expect(likely(figures, 'stage.tear-down.total')).toBe('630.00');
    expect(likely(figures, 'stage.tear-down.hours')).toBe('6.00');
  });

  it('putting back adds 3 h to close, 3.5 h to put together, seal, refill, new bolts and their tax; the capped fee adds nothing', () => {
    // 300 + 350 + 10 + 40 + 40, and 10 % of 50.
    expect(likely(figures, 'stage.tear-down.put-back')).toBe('745.00');
    expect(likely(figures, 'stage.tear-down.stop')).toBe('1375.00');
    expect(likely(figures, 'stage.tear-down.back-hours')).toBe('6.50');
  });

  it('is in every option once; what it opens is paid for there, and the option pays for more where it needs more', () => {
    // Front 500 with seal and refill 550; strip 400, diagnosis 100, head 500; bolts 40; supplies 30; 10 % of 50.
    expect(option('rebuild').totals.total.likely.toFixed(2)).toBe('1625.00');
    // Front 550, engine 1100; strip 400 though it would take 1 h with the engine out, diagnosis 100, swap 700; 30; 10 % of 10.
    expect(option('used').totals.total.likely.toFixed(2)).toBe('2881.00');
    expect(option('used').planned.chosen.paid.map(({ name }) => name).sort()).toEqual(['front-off', 'out']);
  });

  it('sold as it stands it is paid for and nothing is put back', () => {
    expect(linesOf(option('as-it-stands'))).toEqual(['Front off: remove 200.00', 'Strip the front 400.00', 'Diagnosis 100.00', 'Supplies 30.00']);
    expect(option('as-it-stands').ready.tasks.map(({ task }) => task.title)).toEqual(['Diagnosis', 'Front off: remove', 'Strip the front', 'The customer’s answer']);
  });

  it('comes before the answer; parts are ordered and the rest is done after it', () => {
    const of = (title: string) => option('rebuild').ready.tasks.find(({ task }) => task.title === title);
    // 1 h, then 2 h and 4 h: done after 7 h of the first day; the answer takes 2 working days of 8 h.
    expect([of('Strip the front')?.end, of('The customer’s answer')?.start, of('The customer’s answer')?.end]).toEqual([7, 7, 23]);
    expect([of('Bolts arrives')?.start, of('Head')?.start, of('Front off: refit')?.start]).toEqual([23, 47, 52]);
    expect(option('rebuild').ready.bay.likely.toNumber()).toBe(7);
  });

  it('an option that says the stage’s work too is charged no more', () => {
    expect(readSound(worked.replace('do diagnosis, head', 'do diagnosis, head, strip')).option('rebuild').totals.total.likely.toFixed(2)).toBe('1625.00');
  });

  it('work that is due soon is not offered on what is left open, and alone later it pays its own way in', () => {
    const { option: one } = readSound(`${worked}labour belt "Belt" 1 h with front-off\nconsider belt\n`);
    expect(one('as-it-stands').open).toEqual([]);
    // Alone later: front 500, belt 100, seal 10, refill 40, supplies 30, tax 1. Now: the belt.
    expect(one('rebuild').open.map(({ now, alone }) => [now.likely.toFixed(2), alone.likely.toFixed(2)])).toEqual([['100.00', '681.00']]);
  });

  it('the report holds it, in its schema', () => {
    const report = weighJson(decide(comparison), () => undefined);
    expect(weighReport().safeParse(report).error).toBeUndefined();
    expect(report.stages?.map(({ name, total, putBack, stop, destroys, authorised }) => [name, total.likely, putBack.likely, stop.likely, destroys, authorised])).toEqual([['tear-down', '630.00', '745.00', '1375.00', ['Bolts'], null]]);
    expect(report.options.every((one) => one.afterStages === undefined)).toBe(true);
  });
});

describe('authorised for a stage', () => {
  const authorised = `${worked}authorised 630.00 for tear-down on 2026-11-24 by "the owner" phone\n`;

  it('changes no total, and says what is left of each', () => {
    const { comparison } = readSound(authorised);
    const before = readSound(worked).comparison;
    expect(comparison.options.map(({ totals }) => totals.total.likely.toFixed())).toEqual(before.options.map(({ totals }) => totals.total.likely.toFixed()));
    const figures = namedFigures(comparison);
    expect(['rebuild', 'used', 'as-it-stands'].map((name) => [likely(figures, `${name}.stages-authorised`), likely(figures, `${name}.left-to-authorise`)])).toEqual([['630.00', '995.00'], ['630.00', '2251.00'], ['630.00', '100.00']]);
    const report = weighJson(decide(comparison), () => undefined);
    expect(weighReport().safeParse(report).error).toBeUndefined();
    expect(report.options[0]?.afterStages?.left.likely).toBe('995.00');
  });

  it('is nothing beside an authorisation of the option itself, which is for the whole', () => {
    const figures = namedFigures(readSound(`${authorised}authorised 1625.00 for rebuild on 2026-12-02 by "the owner" phone\n`).comparison);
    expect(figures.has('rebuild.left-to-authorise')).toBe(false);
    expect(likely(figures, 'used.left-to-authorise')).toBe('2251.00');
  });
});

describe('where a stage can’t be made out', () => {
  it.each([
    ['its name is missing', 'stage tear-down "', 'stage "'],
    ['its work has no hours that can be read', 'takes 4 h with front-off', 'takes 4,000 h with front-off'],
    ['its way in is not known', 'opens front-off', 'opens fronto'],
    ['its work is out of reach', '  opens front-off\n', ''],
  ])('%s: no option is called whole, and there is one message', (_, from, to) => {
    const { comparison, errors } = read(worked.replace(from, to));
    expect(errors).toHaveLength(1);
    expect(comparison.ranking).toEqual([]);
    expect(comparison.stages.every(({ complete }) => !complete)).toBe(true);
  });
});

/** Weighed without the checks of the trade, which nothing here looks at. */
function weighed(text: string) {
  const fresh = weighFresh(oneFile(text));
  expect(fresh.problems.filter(({ severity }) => severity === 'error')).toEqual([]);
  return fresh;
}

describe('random estimates with stages', () => {
  it('charge no line twice, and the work of a stage once in every option (120 cases)', PATIENT, () => {
    fc.assert(fc.property(randomStaged, (text) => {
      const { comparison } = weighed(text);
      for (const { option, totals, planned } of comparison.options) {
        const keys = totals.lines.map((line) => `${line.kind} ${line.at.block.text.slice(0, 40)} ${line.at.start} ${line.record.at.start} ${line.title}`);
        expect(new Set(keys).size, option.name).toBe(keys.length);
        for (const job of option.staged?.labour ?? []) if (job.modes.length > 0) expect(planned.chosen.jobs.filter((one) => one.job === job)).toHaveLength(1);
        for (const way of option.staged?.ways ?? []) {
          const got = totals.lines.filter((line) => line.kind === 'labour' && line.share === 'access' && line.record === way.record);
          const closed = option.staged?.then === 'closed';
          expect(got.map((line) => line.at)).toEqual([way.remove, closed ? way.refit : undefined].flatMap((time) => time?.at ?? []));
        }
      }
      for (const { totals, putBack, stop, backLines } of comparison.stages) {
        for (const point of ['low', 'likely', 'high'] as const) expect(totals.total[point].plus(putBack[point]).toFixed()).toBe(stop[point].toFixed());
        expect(backLines.filter((line) => totals.lines.includes(line))).toEqual([]);
      }
    }), runs(88, 120));
  });

  it('do what stages do before the answer, and everything else after it (120 cases)', PATIENT, () => {
    let compared = 0;
    fc.assert(fc.property(randomStaged, (text) => {
      for (const { option, ready } of weighed(text).comparison.options) {
        if (ready.circle !== undefined) continue;
        const staged = new Set<unknown>([...(option.staged?.labour ?? []).map(({ at }) => at), ...(option.staged?.ways ?? []).map(({ remove }) => remove?.at)]);
        const first = new Set<unknown>(option.labour.filter(({ done }) => done === 'first').map(({ at }) => at));
        const early = ready.tasks.filter(({ task }) => staged.has(task.at));
        const decided = ready.tasks.find(({ task }) => task.kind === 'answer');
        const last = Math.max(0, ...early.map(({ end }) => end));
        if (decided !== undefined) expect(decided.start).toBeGreaterThanOrEqual(last - 1e-9);
        for (const { task, start } of ready.tasks) {
          if (!['job', 'remove', 'refit'].includes(task.kind) || staged.has(task.at) || first.has(task.at)) continue;
          compared++;
          expect(start, task.title).toBeGreaterThanOrEqual((decided?.end ?? last) - 1e-9);
        }
      }
    }), runs(89, 120));
    expect(compared).toBeGreaterThan(300);
  });

  it('give the quoted figures on the tape, and are decided without a fault (25 cases)', PATIENT, () => {
    fc.assert(fc.property(randomStaged, (text) => {
      const { comparison } = weighed(text);
      const { money, estimate, options } = comparison;
      const tape = createTape(money, estimate.shop.rounding);
      const nodes = options.map(({ inAll }) => tape.node(inAll));
      tape.run();
      options.forEach(({ inAll }, i) => expect(tape.valueOf(nodes[i] as number)).toBeCloseTo(inAll.likely.toNumber(), 3));
      expect(decide(comparison).options).toHaveLength(options.length);
    }), runs(90, 25));
  });
});
