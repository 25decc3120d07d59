import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { weighTest } from '../../../src/weigh/decide/information.js';
import { jointTest, severalStates, type JointStates, type Look, type YesOrNo } from '../../../src/weigh/decide/information-several.js';
import { PATIENT, runs } from '../../support/random-runs.js';

function states(chances: readonly YesOrNo[]): JointStates {
  const answer = severalStates(chances);
  if (answer.kind === 'refused') throw new Error(JSON.stringify(answer.problems));
  return answer;
}

function results(joint: JointStates, looks: readonly (Look | undefined)[]) {
  const answer = jointTest(joint, looks);
  if (answer.kind === 'refused') throw new Error(JSON.stringify(answer.problems));
  return answer.results;
}

/** Thousands of comparisons: only one that fails is worth an expectation. */
function near(a: number, b: number): void {
  if (!(Math.abs(a - b) <= 1e-12)) expect(a).toBe(b);
}

const sum = (values: readonly number[]) => values.reduce((total, value) => total + value, 0);

describe('joint states (computed by hand)', () => {
  it('two independent chances', () => {
    expect(states([{ name: 'head cracked', chance: 0.25 }, { name: 'block cracked', chance: 0.5 }]).states).toEqual([
      { name: 'none', chance: 0.375, happens: [false, false] },
      { name: 'head cracked', chance: 0.125, happens: [true, false] },
      { name: 'block cracked', chance: 0.375, happens: [false, true] },
      { name: 'head cracked + block cracked', chance: 0.125, happens: [true, true] },
    ]);
  });

  it('a chance that hangs on another, which may stand after it', () => {
    expect(states([{ name: 'journal scored', chance: 0.5, under: [1] }, { name: 'bearing spun', chance: 0.25 }]).states).toEqual([
      { name: 'none', chance: 0.75, happens: [false, false] },
      { name: 'bearing spun', chance: 0.125, happens: [false, true] },
      { name: 'journal scored + bearing spun', chance: 0.125, happens: [true, true] },
    ]);
  });

  it('six make 64 states, where each hangs on the one before 7', () => {
    const six = Array.from({ length: 6 }, (_, i) => ({ name: `${i}`, chance: 0.5 }));
    expect(states(six).states).toHaveLength(64);
    expect(states(six.map((one, i) => (i === 0 ? one : { ...one, under: [i - 1] }))).states.map((state) => state.chance)).toEqual([0.5, 0.25, 0.125, 0.0625, 0.03125, 0.015625, 0.015625]);
  });

  it('of some are taken over all that these hang on', () => {
    // Journal scored .5 once the bearing spun (.25) or the pump failed (.5): one of both is .625.
    const joint = severalStates([{ name: 'journal scored', chance: 0.5, under: [1, 2] }, { name: 'bearing spun', chance: 0.25 }, { name: 'pump failed', chance: 0.5 }], 1);
    expect(joint).toMatchObject({ of: [{ name: 'journal scored' }], states: [{ name: 'none', chance: 0.6875, happens: [false] }, { name: 'journal scored', chance: 0.3125, happens: [true] }] });
  });

  const refused: readonly [string, readonly YesOrNo[], readonly object[], number?][] = [
    ['none', [], [{ kind: 'nothing given' }]],
    ['seven', Array.from({ length: 7 }, () => ({ name: 'a', chance: 0.5 })), [{ kind: 'too many', count: 7, most: 6 }]],
    ['a chance above 1', [{ name: 'a', chance: 1.5 }], [{ kind: 'chance out of range', index: 0, chance: 1.5 }]],
    ['one that hangs on what is not there', [{ name: 'a', chance: 0.5, under: [3] }], [{ kind: 'hangs on none of them', index: 0 }]],
    ['more than are listed in all', Array.from({ length: 13 }, () => ({ name: 'a', chance: 0.5 })), [{ kind: 'too many', count: 13, most: 12 }], 2],
  ];
  it.each(refused)('%s: refused', (_, chances, problems, together) => {
    expect(severalStates(chances, together)).toEqual({ kind: 'refused', problems });
  });
});

describe('joint tests (computed by hand)', () => {
  const two = states([{ name: 'a', chance: 0.25 }, { name: 'b', chance: 0.5 }]);

  it('the chances of a result are the products of what it shows and does not show', () => {
    expect(results(two, [{ finds: 0.75, wrongly: 0.25 }, { finds: 0.5, wrongly: 0 }])).toEqual([
      { name: 'none', shows: [false, false], chances: [0.75, 0.25, 0.375, 0.125] },
      { name: 'a', shows: [true, false], chances: [0.25, 0.75, 0.125, 0.375] },
      { name: 'b', shows: [false, true], chances: [0, 0, 0.375, 0.125] },
      { name: 'a + b', shows: [true, true], chances: [0, 0, 0.125, 0.375] },
    ]);
  });

  it('what is not looked for makes no result', () => {
    expect(results(two, [undefined, { finds: 1, wrongly: 0 }])).toEqual([
      { name: 'none', shows: [undefined, false], chances: [1, 1, 0, 0] },
      { name: 'b', shows: [undefined, true], chances: [0, 0, 1, 1] },
    ]);
  });

  it('refuses chances out of range and a wrong number of looks', () => {
    expect(jointTest(two, [{ finds: 2, wrongly: -1 }, undefined])).toEqual({ kind: 'refused', problems: [{ kind: 'chance out of range', index: 0, chance: 2 }, { kind: 'chance out of range', index: 0, chance: -1 }] });
    expect(jointTest(two, [undefined])).toEqual({ kind: 'refused', problems: [{ kind: 'wrong length', length: 1, needed: 2 }] });
  });
});

describe('laws, on random lists', () => {
  const chance = fc.integer({ min: 0, max: 20 }).map((twentieths) => twentieths / 20);
  const list = fc.array(fc.record({ chance, parent: fc.option(fc.nat(4)), finds: chance, wrongly: chance, looks: fc.boolean() }), { minLength: 1, maxLength: 5 });
  const read = (rows: readonly { chance: number; parent: number | null }[]) => rows.map((row, i): YesOrNo => ({ name: `${i}`, chance: row.chance, ...(row.parent === null || row.parent >= i ? {} : { under: [row.parent] }) }));

  it('states add up to 1, each chance comes back as its share, and results add up to 1 in each state', PATIENT, () => {
    fc.assert(fc.property(list, (rows) => {
      const chances = read(rows);
      const joint = states(chances);
      expect(sum(joint.states.map((state) => state.chance))).toBeCloseTo(1, 12);
      // Along what each hangs on the chances multiply.
      const whole = (i: number): number => (chances[i] as YesOrNo).chance * (chances[i]?.under === undefined ? 1 : whole(chances[i].under[0] as number));
      for (const i of chances.keys()) expect(sum(joint.states.filter((state) => state.happens[i]).map((state) => state.chance))).toBeCloseTo(whole(i), 12);
      const shown = results(joint, rows.map((row) => (row.looks ? row : undefined)));
      for (const s of joint.states.keys()) near(sum(shown.map((result) => result.chances[s] as number)), 1);
      for (const [i, row] of rows.entries()) {
        for (const [s, state] of joint.states.entries()) {
          const shows = sum(shown.filter((result) => result.shows[i]).map((result) => result.chances[s] as number));
          near(shows, !row.looks ? 0 : state.happens[i] === true ? row.finds : row.wrongly);
        }
      }
    }), runs(8111, 80));
  });

  it('a test that looks for one more thing is never worth less', PATIENT, () => {
    let more = 0;
    fc.assert(fc.property(list, fc.array(fc.array(fc.integer({ min: 0, max: 9 }), { minLength: 32, maxLength: 32 }), { minLength: 2, maxLength: 3 }), (rows, values) => {
      const joint = states(read(rows));
      const worth = (looks: readonly (Look | undefined)[]) => {
        const answer = weighTest({ goal: 'least', states: joint.states, actions: values.map((row, i) => ({ name: `${i}`, values: row.slice(0, joint.states.length) })), test: { price: 1, results: results(joint, looks) } });
        return answer.kind === 'weighed' ? answer.worth : NaN;
      };
      const [all, fewer] = [worth(rows), worth(rows.map((row, i) => (i === 0 ? undefined : row)))];
      if (all > fewer + 1e-9) more++;
      expect(fewer).toBeLessThanOrEqual(all + 1e-12);
    }), runs(8112, 100));
    expect(more).toBeGreaterThan(20);
  });
});
