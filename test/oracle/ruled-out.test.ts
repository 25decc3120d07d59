import fc from 'fast-check';
import { expect, it } from 'vitest';
import { PATIENT, runs } from '../support/random-runs.js';
import { closeEstimate } from '../weigh/decision/random-close.js';
import { comesBack, daysTold, givenUp } from './after.js';
import { expectSame, planLike } from './compared.js';
import { compare, minus, per, plus, whole } from './rational.js';
import { readText } from './reader.js';
import { told, texts, type ToldOption } from './told.js';

const against = (text: string, names: readonly string[]) => `${text}${names.map((name, i) => `finding "Seen ${i}"\n  rules out ${name}\n`).join('')}`;
const without = (text: string, names: readonly string[]) => `${text.split(/^(?=\S)/m).filter((block) => !names.some((name) => block.startsWith(`option ${name} `))).join('')}`;
const optionsOf = (text: string) => readText(text).filter(({ kind }) => kind === 'option').map(({ name }) => name as string);

it('a rank is that of the cost in all, worked out here, among the options that nothing speaks against', PATIENT, () => {
  let seen = 0;
  fc.assert(fc.property(closeEstimate, fc.nat({ max: 7 }), (text, set) => {
    const names = optionsOf(text).filter((_, i) => (set & (1 << i)) !== 0);
    const { own, tool } = expectSame(texts(against(text, names)));
    const costs = own.options.flatMap((option, i) => {
      const one = tool.options[i] as ToldOption;
      const plan = planLike(option, one);
      if (plan === undefined || names.includes(option.name)) return [];
      const net = per(whole(plan.total[1] - comesBack(own, option, plan, daysTold(one.calendar))[1]), 10n ** BigInt(own.prices.digits));
      return [{ name: option.name, cost: plus(net, givenUp(own, option)?.[1] ?? whole(0n)) }];
    });
    const order = costs.sort((a, b) => compare(minus(a.cost, b.cost), whole(0n))).map(({ name }) => name);
    expect(tool.options.map(({ name, rank }) => [name, rank])).toEqual(tool.options.map(({ name }) => [name, order.includes(name) ? order.indexOf(name) + 1 : null]));
    expect(tool.pick).toBe(order[0] ?? null);
    seen += names.length;
  }), runs(66_101, 40));
  expect(seen).toBeGreaterThan(40);
});

it('the choice is told as if the options that are ruled out were not written, and their own figures as if they were not ruled out', PATIENT, () => {
  let flips = 0;
  fc.assert(fc.property(closeEstimate, fc.nat({ max: 2 }), (text, place) => {
    const [name] = optionsOf(text).slice(place);
    if (name === undefined) return;
    const ruled = told(texts(against(text, [name])));
    const open = told(texts(text));
    const gone = told(texts(without(text, [name])));
    const figures = ({ options }: typeof open) => options.map((one) => ({ name: one.name, total: one.figures['total'], inAll: one.figures['in-all'], average: one.average, days: one.calendar.days }));
    expect(figures(ruled)).toEqual(figures(open));
    expect(ruled.pick).toBe(gone.pick);
    expect(ruled.flips.map(({ sentence }) => sentence)).toEqual(gone.flips.map(({ sentence }) => sentence));
    expect(ruled.options.filter((one) => one.name !== name).map(({ name: of, rank, risk }) => [of, rank, risk?.cheapest ?? null])).toEqual(gone.options.map(({ name: of, rank, risk }) => [of, rank, risk?.cheapest ?? null]));
    expect(ruled.options.find((one) => one.name === name)).toMatchObject({ rank: null, ruledOut: ['Seen 0'] });
    expect(ruled.options.find((one) => one.name === name)?.risk?.cheapest ?? null).toBeNull();
    flips += ruled.flips.length;
  }), runs(66_102, 40));
  expect(flips).toBeGreaterThan(30);
});
