import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { randomEstimate } from '../support/random-estimate.js';
import { PATIENT, runs } from '../support/random-runs.js';
import { asChances, withChances } from '../weigh/decision/states.js';
import { daysTold } from './after.js';
import { chancesOf, costIn, statesOf, type Chance } from './chances.js';
import { planLike } from './compared.js';
import { list } from './prices.js';
import { printed } from './printer.js';
import { readText, type Json, type Written } from './reader.js';
import { told, texts, type Told, type ToldOption } from './told.js';
import { oracle, type Oracle, type OracleOption, type OraclePlan } from './totals.js';

/** The same estimate with one figure wherever there were three, since averages weigh three figures by a curve. */
function flat<T>(value: T): T {
  if (Array.isArray(value)) return value.map(flat) as T;
  if (typeof value !== 'object' || value === null) return value;
  if ('likely' in value) return { ...value, low: (value as unknown as Written).likely, high: (value as unknown as Written).likely };
  return Object.fromEntries(Object.entries(value).map(([key, one]) => [key, flat(one)])) as T;
}

interface Weighed {
  readonly tool: Told;
  readonly own: Oracle;
  readonly options: readonly { readonly option: OracleOption; readonly plan: OraclePlan; readonly one: ToldOption; readonly chances: readonly Chance[] }[];
}

function weighed(text: string): Weighed {
  const flattened = printed(flat(readText(text)));
  const tool = told(texts(flattened));
  const own = oracle(readText(flattened));
  const options = own.options.flatMap((option, i) => {
    const one = tool.options[i] as ToldOption;
    const plan = one.complete ? planLike(option, one) : undefined;
    return plan === undefined ? [] : [{ option, plan, one, chances: chancesOf(own, option, plan) }];
  });
  return { tool, own, options };
}

/** Whether a chance brings work, or something that is waited for. */
function movesTheDay({ prices, work }: Oracle, record: Json): boolean {
  const goods = [...prices.named('part', record['fit']), ...prices.named('sublet', record['send']), ...list(record['part']), ...list(record['sublet'])];
  return work.jobsOf(record).size > 0 || goods.some((thing) => thing['arrives'] !== undefined || thing['backIn'] !== undefined || thing['after'] !== undefined);
}

/** Cost in all of an option in every state of all chances; undefined where one needs a way in that is not open, which is told apart elsewhere. */
function costs({ own }: Weighed, { option, plan, one, chances }: Weighed['options'][number], states: readonly { readonly happened: readonly Chance[] }[]): readonly number[] | undefined {
  // The days here are those of the quote. Where what turns up may make a core too late, each state is weighed in core-in-time.test.ts.
  if (one.cores.some(({ deadline }) => deadline !== null) && chances.some(({ record, comeback }) => !comeback && movesTheDay(own, record))) return undefined;
  const its = new Set(chances.map(({ record }) => record));
  const found = states.map(({ happened }) => costIn(own, option, plan, happened.filter(({ record }) => its.has(record)), daysTold(one.calendar)));
  return found.every((cost): cost is number => cost !== undefined) ? found : undefined;
}

/** The least cost of all options where each state has a weight. */
const leastOver = (found: readonly (readonly number[])[]) => (weights: readonly number[]) => Math.min(...found.map((cost) => cost.reduce((sum, one, i) => sum + one * (weights[i] as number), 0)));

/** Two or three options of which chances decide, and a look that tells some of these apart. */
const closeChances = fc.tuple(withChances(4), fc.array(fc.integer({ min: 90, max: 190 }), { minLength: 1, maxLength: 2 }), fc.array(fc.tuple(fc.nat({ max: 100 }), fc.nat({ max: 100 })), { minLength: 1, maxLength: 3 }))
  .map(([all, percents, finds]) => {
    const quoted = Number(oracle(readText(asChances(all))).options[0]?.best[0]?.total[1] ?? 0n);
    const others = percents.map((percent, i) => `option other-${i} "Other ${i}"\n  fee "All of it" ${((quoted * percent) / 10_000).toFixed(2)}\n`);
    const looks = finds.slice(0, all.chances.length).map(([shows, wrongly], i) => `  finds turn-${i} ${shows}% wrongly ${wrongly}%\n`);
    return `${asChances(all)}${others.join('')}inspect look "Look" 20.00\n${looks.join('')}`;
  });

/**
 * Ways in that only chances open, and goods and a hire that these need and that the option or another chance may have anyway. Some of
 * these ways and jobs have chances of their own, and two jobs may bring each other.
 */
const chanceWays = fc.record({
  needs: fc.array(fc.nat({ max: 15 }), { minLength: 2, maxLength: 2 }), includes: fc.boolean(), own: fc.nat({ max: 15 }), opens: fc.nat({ max: 2 }), on: fc.nat({ max: 31 }),
  chances: fc.array(fc.record({ percent: fc.integer({ min: 5, max: 95 }), does: fc.nat({ max: 15 }), takes: fc.nat({ max: 3 }), below: fc.boolean() }), { minLength: 1, maxLength: 3 }),
}).map(({ needs, includes, own, opens, on, chances }) => {
  const some = (set: number, list: readonly string[]) => list.filter((_, i) => (set & (1 << i)) !== 0).join(', ');
  const line = (word: string, list: string) => (list === '' ? [] : [`  ${word} ${list}`]);
  const its = (bit: number, title: string, percent: number, below: string) => ((on & (1 << bit)) === 0 ? [] : [`  chance "${title}" ${percent}%`, `    ${below}`]);
  const takes = ['', ' with out', ' with up', ' with out, up'];
  return `${[
    'steelyard 1', 'shop "S"', '  rate bench 97.35', '  tax levy 7.25% on parts, labour, fees by item', '  fee supplies "Supplies" 5% of labour, parts cap 40.00',
    'part coolant "Coolant" 41.15 new', 'part clamp "Clamp" 12.20 rebuilt', '  core 5.00', '    assemble 0.3 h', 'sublet weld "Weld" cost 33.33', 'tool hoist "Hoist" 61.00',
    'labour fill "Fill" 1.1 h', '  uses coolant', ...its(0, 'Plug stripped', 35, 'do join'), 'labour hold "Hold" 0.7 h', '  uses clamp', ...its(1, 'Clamp short', 20, 'part "Spare" 17.77 new'), 'labour join "Join" 0.4 h', '  uses weld', ...its(2, 'Weld cracked', 45, 'do fill'), 'labour lift "Lift" 0.9 h', '  needs hoist',
    ...['out', 'up'].flatMap((way, i) => [`access ${way} "Way ${way}"`, ...(i === 1 && includes ? ['  includes out'] : []), `  remove ${2 + i}.3 h`, '  refit 1.7 h', ...line('uses', some((needs[i] as number) & 7, ['coolant', 'clamp', 'weld'])), ...line('needs', some((needs[i] as number) >> 3, ['hoist'])), ...its(3 + i, `Mount broken ${way}`, 25, i === 0 ? 'part "Mount" 88.80 new' : 'do hold')]),
    'option one "One"', `  labour "Look" 1 h${takes[opens]}`, ...line('do', some(own, ['fill', 'hold', 'join', 'lift'])),
    ...chances.flatMap(({ percent, does, takes: its, below }, i) => [`chance turn-${i} "Turned up ${i}" ${percent}%`, `  labour "More ${i}" 0.${i + 3} h${takes[its]}`, ...line('do', some(does, ['fill', 'hold', 'join', 'lift']))].map((one) => `  ${below && i > 0 ? '  ' : ''}${one}`)),
  ].join('\n')}\n`;
});

/** Told to the smallest coin. */
const near = (own: Oracle, text: string, value: number, what: string) => expect(Math.abs(Number(text) - value), what).toBeLessThanOrEqual(0.5 * 10 ** -own.prices.digits + 1e-6);

describe('averages and inspections by every yes and no of the chances', () => {
  it.each([['random estimates', randomEstimate, 130, 55], ['options that lie close', closeChances, 40, 38], ['ways in that chances open', chanceWays, 120, 100]] as const)('%s: what each option costs on average', PATIENT, (_, arbitrary, count, least) => {
    let seen = 0;
    fc.assert(fc.property(arbitrary, (text) => {
      const all = weighed(text);
      for (const each of all.options) {
        if (each.chances.length === 0) continue;
        const states = statesOf(each.chances);
        const found = costs(all, each, states);
        if (found === undefined) continue;
        seen++;
        near(all.own, each.one.average, found.reduce((sum, cost, i) => sum + cost * (states[i]?.share ?? 0), 0), `${each.option.name} in\n${text}`);
      }
    }), runs(77_310, count));
    expect(seen).toBeGreaterThan(least);
  });

  it.each([['random estimates', randomEstimate, 100, 3, 0], ['options that lie close', closeChances, 80, 70, 10]] as const)('%s: what an inspection saves, and what knowing would', PATIENT, (_, arbitrary, count, least, saving) => {
    const seen = { all: 0, saving: 0 };
    fc.assert(fc.property(arbitrary, (text) => {
      const all = weighed(text);
      const chances = [...new Map(all.options.flatMap((each) => each.chances.map((one) => [one.record, one] as const))).values()];
      const states = statesOf(chances);
      const found = all.options.map((each) => costs(all, each, states));
      if (!found.every((one): one is readonly number[] => one !== undefined)) return;
      for (const inspection of all.tool.inspections) {
        const record = all.own.prices.all.find(({ kind, name }) => kind === 'inspect' && name === inspection.name) as Json;
        const looks = list(record['finds']).flatMap((line) => {
          const chance = chances.find((one) => one.record.name === line['chance']);
          const share = (key: string) => Number((line[key] as Written | undefined)?.likely ?? 0) / 100;
          return chance === undefined ? [] : [{ chance, shows: share('shows'), wrongly: share('wrongly') }];
        });
        const least = leastOver(found);
        // How likely each set of things shown is in each state, and so the cost that is left when the best is done after each.
        let after = 0;
        for (let shown = 0; shown < 1 << looks.length; shown++) {
          after += least(states.map(({ happened, share }) => looks.reduce((product, { chance, shows, wrongly }, i) => {
            const p = happened.includes(chance) ? shows : wrongly;
            return product * ((shown & (1 << i)) === 0 ? 1 - p : p);
          }, share)));
        }
        const before = least(states.map(({ share }) => share));
        // Knowing tells the chances that it looks for, and no others.
        let knowing = 0;
        for (let known = 0; known < 1 << looks.length; known++) {
          knowing += least(states.map(({ happened, share }) => (looks.every(({ chance }, i) => happened.includes(chance) === ((known & (1 << i)) !== 0)) ? share : 0)));
        }
        seen.all++;
        if (before - after > 0.01) seen.saving++;
        near(all.own, inspection.worth, before - after, `${inspection.name} in\n${text}`);
        near(all.own, inspection.perfectWorth, before - knowing, `${inspection.name} in\n${text}`);
      }
    }), runs(77_311, count));
    expect(seen.all).toBeGreaterThan(least);
    expect(seen.saving).toBeGreaterThanOrEqual(saving);
  });
});
