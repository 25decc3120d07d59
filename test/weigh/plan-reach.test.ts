import { describe, expect, test } from 'vitest';
import { lineWith, plansToSearch } from '../../src/weigh/plan.js';
import { linesOfWays } from '../../src/weigh/plan-goods.js';
import { MOST_WAYS } from '../../src/weigh/ways.js';
import { read, readSound } from './weighed.js';

// What of a job and its ways in is charged where it is not the plain case: pinned, opened before, shared, brought by the
// customer. 100.00 an hour; sums by hand.

const HEAD = 'steelyard 1\nshop "S"\n  rate bench 100.00\n  tool owned "Owned tool"\n';
const way = (name: string, hours: number, more = '') => `access ${name} "${name}"\n  remove ${hours} h\n${more}`;
const option = (...lines: readonly string[]) => `option one "One"\n${lines.map((line) => `  ${line}\n`).join('')}`;
const lines = (text: string, name = 'one') => readSound(HEAD + text).option(name).totals.lines.map(({ title, amount }) => `${title} ${amount.likely.toFixed()}`);
const paid = (text: string) => {
  const { planned: { chosen, unpinned }, totals } = readSound(HEAD + text).option('one');
  return { paid: chosen.paid.map(({ name }) => name), total: totals.total.likely.toFixed(), unpinned: unpinned?.paid.map(({ name }) => name) };
};

describe('ways in that are paid for', () => {
  test('a pinned one that no job takes is paid for all the same', () => {
    expect(paid(`${way('up', 3)}labour w "W" 1 h\n${option('do w', 'way up')}`)).toMatchObject({ paid: ['up'], total: '400' });
  });

  test('one that no job takes, but that gives what a job takes, is chosen where it is cheaper', () => {
    // 5 h and 1 h, or 3 h and 1 h.
    expect(paid(`${way('up', 5)}${way('side', 1)}${way('out', 3, '  includes side, up\n')}${way('off', 1)}labour w "W" 1 h with up\n${option('do w')}`)).toMatchObject({ paid: ['out'], total: '400' });
  });

  test('those that have nothing to do with the work are not among those to choose from, however many', () => {
    const others = Array.from({ length: MOST_WAYS }, (_, i) => way(`other-${i}`, 1, i === 0 ? '' : `  includes other-${i - 1}\n`)).join('');
    expect(paid(`${others}${way('up', 1)}labour w "W"\n  takes 9 h\n  takes 1 h with up\n${option('do w')}`)).toMatchObject({ paid: ['up'], total: '200' });
  });

  test('a tool that two of them share is hired once, and that may turn the choice', () => {
    // 5.5 h and 1 h; the two others 2 h, 300.00 of hire and 1 h: cheaper, though not if each of them paid for the hire.
    const text = `tool lock "Lock" 300.00\n${way('alone', 5.5)}${way('left', 1, '  needs lock\n')}${way('right', 1, '  needs lock\n')}labour w "W"\n  takes 20 h\n  takes 1 h with alone\n  takes 1 h with left, right\n`;
    expect(paid(text.concat(option('do w')))).toMatchObject({ paid: ['left', 'right'], total: '600' });
    // Beside a pinned plan only the cheapest is looked for, and dearer ones are not followed to their end.
    expect(paid(text.concat(option('do w', 'way in-car')))).toMatchObject({ paid: [], total: '2000', unpinned: ['left', 'right'] });
  });

  test('a tool that the shop owns costs nothing to get in with', () => {
    expect(lines(`${way('up', 1, '  needs owned\n')}${option('labour "W" 1 h with up')}`)).toEqual(['up: remove 100', 'W 100']);
  });

  test('work that has no time yet hides no other work’s way in', () => {
    const { planned: { chosen, unreachable }, complete } = read(`${HEAD}${way('up', 1)}labour w "W"\n  takes 9 h\n  takes 1 h with up\nlabour v "V"\n${option('do w, v')}`).option('one');
    expect([chosen.paid.map(({ name }) => name), chosen.totals.total.likely.toFixed(), unreachable, complete]).toEqual([['up'], '200', [], false]);
  });
});

test('a job done with what happens to be open takes the least of those times, and none where it can’t be reached', () => {
  const { comparison: { estimate: { access, labour }, money } } = readSound(`${HEAD}${way('up', 1)}${way('out', 5)}labour w "W"\n  takes 4 h with up\n  takes 1 h with out\n  takes 0.5 h with up, out\n${option('do w')}`);
  const [job, [up, out]] = [labour.find(({ name }) => name === 'w'), access] as const;
  const done = (...open: readonly (typeof up)[]) => (job === undefined ? 'no job' : lineWith(job, new Set(open.flatMap((one) => one ?? [])), money)?.line.amount.likely.toFixed());
  expect([done(), done(up), done(out), done(up, out)]).toEqual([undefined, '400', '100', '50']);
});

test('ways in by themselves, as what turns up pays for them: getting in, closing, and all that they bring along, each thing once', () => {
  const { comparison: { estimate: { access, shop }, money } } = readSound(`${HEAD}part seal "Seal" 10.00 new\nsublet skim "Skim" 20.00\ntool lock "Lock" 30.00\n${way('up', 1, '  refit 2 h\n  uses seal, skim\n  needs lock\n')}${way('off', 3, '  uses seal\n  needs lock\n')}${option('labour "W" 1 h with up', 'part "Own" 5.00 new')}`);
  expect(linesOfWays(access, shop, money).map(({ title, share, amount }) => `${title} ${share} ${amount.likely.toFixed()}`)).toEqual([
    'up: remove access 100', 'up: refit access 200', 'Seal access 10', 'Skim access 20', 'Lock: hire access 30', 'off: remove access 300',
  ]);
});

describe('a pinned way in among very many', () => {
  const text = (count: number, pin: string) => {
    const names = Array.from({ length: count }, (_, i) => `w${i}`);
    return `${names.map((name) => way(name, 1)).join('')}${way('all', 2, `  includes ${names.slice(-2).join(', ')}\n`)}labour w "W"\n  takes 30 h\n${names.map((name) => `  takes ${name === 'w0' ? 4 : 1} h with ${name}\n`).join('')}${option('do w', `way ${pin}`)}`;
  };

  test.each([MOST_WAYS + 1, 31, 32, 33, 40, 64, 65])('%i ways in: nothing else is charged, and nothing else opens the work', (count) => {
    expect(lines(text(count, 'w0'))).toEqual(['w0: remove 100', 'W 400']);
    expect(lines(text(count, `w${count - 1}`))).toEqual([`w${count - 1}: remove 100`, 'W 100']);
    expect(lines(text(count, 'all'))).toEqual(['all: remove 200', 'W 100']);
    expect(lines(text(count, 'in-car'))).toEqual(['W 3000']);
  });

  test.each([[30, false], [31, true], [38, true]])('one that includes %i others: too many to be told apart is %s', (count, tooMany) => {
    const names = Array.from({ length: count }, (_, i) => `w${i}`);
    const found = read(`${HEAD}${names.map((name) => way(name, 1)).join('')}${way('all', 2, `  includes ${names.join(', ')}\n`)}labour w "W" 30 h\n${names.map((name, i) => `  takes ${count - i} h with ${name}\n`).join('')}${option('do w', 'way all')}`);
    const { planned, complete, totals } = found.option('one');
    expect([planned.tooMany, complete, found.comparison.problems.map(({ code }) => code).filter((code) => code === 'too-many-ways')]).toEqual(tooMany ? [count + 1, false, ['too-many-ways']] : [undefined, true, []]);
    if (!tooMany) expect(totals.lines.map(({ title, amount }) => `${title} ${amount.likely.toFixed()}`)).toEqual(['all: remove 200', 'W 100']);
  });

  test('work that none of the pinned ones opens is left out, and told', () => {
    const found = read(`${HEAD}${text(40, 'w0').replace('  takes 30 h\n', '').replace('  takes 4 h with w0\n', '')}`).option('one');
    expect([found.planned.unreachable.map(({ title }) => title), found.complete]).toEqual([['W'], false]);
  });
});

describe('what a stage did', () => {
  const stage = `${way('front', 1)}${way('out', 2)}labour strip "Strip"\n  takes 5 h\n  takes 3 h with front\n  takes 1 h with out\nstage look "Look"\n  do strip\n  opens front\n`;

  test('was done with what was open then: neither slower, nor as quick as with what is opened later', () => {
    expect(lines(`${stage}labour w "W" 1 h with out\n${option('do w')}`)).toEqual(['front: remove 100', 'out: remove 200', 'Strip 300', 'W 100']);
  });

  test('and could not reach is not done later by a way in that the option opens: nothing is called whole', () => {
    const text = `${stage.replace('  takes 5 h\n  takes 3 h with front\n', '')}labour w "W" 1 h with out\n${option('do w')}`;
    const { planned: { unreachable, chosen }, complete } = read(HEAD + text).option('one');
    expect([unreachable.map(({ title }) => title), chosen.jobs.map(({ job }) => job.title), complete]).toEqual([['Strip'], ['W'], false]);
  });

  test('is paid for where the vehicle is sold as it stands: getting in, not closing up', () => {
    const text = `vehicle "V"\n  worth 900.00\n  unrepaired 300.00\n${stage.replace('  remove 1 h\n', '  remove 1 h\n  refit 4 h\n')}${option('labour "W" 1 h')}`;
    expect(lines(text, 'as-it-stands')).toEqual(['front: remove 100', 'Strip 300']);
  });
});

test('an old core that the customer brings along with the part is nothing to charge or to put together', () => {
  const text = (condition: string) => `part unit "Unit" 90.00 ${condition}\n  core 50.00\n    assemble 1 h\n${option('fit unit', 'labour "W" 1 h')}`;
  expect(lines(text('rebuilt'))).toEqual(['W 100', 'Unit 90', 'Unit: core charge 50', 'Unit: put the core together 100']);
  const { totals } = read(HEAD + text('customer-supplied')).option('one');
  expect(totals.lines.map(({ title, amount }) => `${title} ${amount.likely.toFixed()}`)).toEqual(['W 100', 'Unit 0']);
});

describe('plans among which the choice lies when figures move', () => {
  function searched(text: string, most = 16) {
    const { comparison, option: found } = readSound(HEAD + text);
    return plansToSearch({ ...found('one').option, access: comparison.estimate.access }, comparison.estimate.shop, comparison.money, most).map((plan) => `${plan.paid.map(({ name }) => name).join('+') || 'in the car'} ${plan.totals.total.likely.toFixed()}`);
  }
  const WAYS = `${way('up', 1)}${way('out', 5, '  includes up\n')}`;

  test('all that open some time of a job, also where another is quicker today', () => {
    // With up the job takes longer than in the car: nobody does it so today, but a dearer hour in the car would change that.
    const text = `${WAYS}labour w "W"\n  takes 4 h\n  takes 6 h with up\n${option('do w')}`;
    expect(searched(text)).toEqual(['in the car 400', 'up 500', 'out 900']);
    expect(searched(text, 2)).toEqual(['in the car 400', 'up 500']);
  });

  test('only the pinned one, where the ways in are pinned', () => {
    expect(searched(`${WAYS}labour w "W"\n  takes 4 h\n  takes 6 h with up\n${option('do w', 'way up')}`)).toEqual(['up 500']);
  });

  test('a job has the least of its times that are open, whichever that is, with its hours', () => {
    const { comparison, option: found } = readSound(`${HEAD}${WAYS}labour w "W"\n  takes 4 h\n  takes 6 h with up\n${option('do w', 'way up')}`);
    const [plan] = plansToSearch({ ...found('one').option, access: comparison.estimate.access }, comparison.estimate.shop, comparison.money, 1);
    const line = plan?.jobs[0]?.line;
    expect([line?.title, line?.amount.step.kind, line?.amount.from.map(({ likely }) => likely.toFixed()), line?.hours?.likely.toFixed()]).toEqual(['W', 'least', ['400', '600'], '4']);
  });

  test('work that can’t be reached with the pinned ways in is in none of them', () => {
    const { comparison, option: found } = read(`${HEAD}${WAYS}labour w "W" 4 h with up\nlabour v "V" 1 h\n${option('do w, v', 'way in-car')}`);
    const plans = plansToSearch({ ...found('one').option, access: comparison.estimate.access }, comparison.estimate.shop, comparison.money, 16);
    expect(plans.map(({ jobs }) => jobs.map(({ job }) => job.title))).toEqual([['V']]);
  });

  test('as many ways in as are chosen among, and none beyond', () => {
    const text = (count: number) => `${Array.from({ length: count }, (_, i) => way(`w${i}`, i + 1)).join('')}labour w "W"\n  takes 30 h\n${Array.from({ length: count }, (_, i) => `  takes 1 h with w${i}\n`).join('')}${option('do w')}`;
    expect(searched(text(MOST_WAYS), 1)).toEqual(['w0 200']);
    const { comparison, option: found } = read(HEAD + text(MOST_WAYS + 1));
    expect(plansToSearch({ ...found('one').option, access: comparison.estimate.access }, comparison.estimate.shop, comparison.money, 1)).toEqual([]);
  });
});
