import { describe, expect, test } from 'vitest';
import { readSound } from './weighed.js';

// What ways in bring along. Something that two of them need is bought once where both are opened, so that the two together may be the cheapest plan;
// a tool without a price costs nothing; a way in that stays open gets none of what closes it. Common practice. 100.00 an hour, sums by hand.

const HEAD = 'steelyard 1\nshop "S"\n  rate bench 100.00\n';
const OTHERS = Array.from({ length: 6 }, (_, i) => `c${i}`);

/** Two ways in with one thing of 1,000.00, and six that reach both jobs from 1,500.00 on. */
function plans(kit: string, need: string, order: 'first' | 'last'): readonly string[] {
  const two = `access a "A"\n  remove 1 h\n${need}access b "B"\n  remove 1 h\n${need}`;
  const others = OTHERS.map((name, i) => `access ${name} "${name}"\n  remove ${15 + i} h\n`).join('');
  const job = (name: string, own: string) => `labour ${name} "${name}"\n  takes 1 h with ${own}\n${OTHERS.map((way) => `  takes 1 h with ${way}\n`).join('')}`;
  const { planned: { chosen, others: rest } } = readSound(`${HEAD}${kit}${order === 'first' ? two + others : others + two}${job('x', 'a')}${job('y', 'b')}option one "One"\n  do x, y\n`).option('one');
  return [chosen, ...rest].map(({ paid, money }) => `${paid.map(({ name }) => name).join(' ')} ${money.toFixed()}`);
}

describe.each(['first', 'last'] as const)('two ways in that share what they need, written %s', (order) => {
  // 1,000.00, 1 h for each way and 1 h for each job; the next takes 15 h and two jobs.
  test.each([
    ['a part', 'part kit "Kit" 1000.00 new\n', '  uses kit\n'],
    ['outside work', 'sublet kit "Kit" 1000.00\n', '  uses kit\n'],
    ['a tool', 'tool kit "Kit" 1000.00\n', '  needs kit\n'],
  ])('are the cheapest together: %s', (_, kit, need) => {
    expect(plans(kit, need, order).slice(0, 2)).toEqual(['a b 1400', 'c0 1700']);
  });

  test('are not where each needs one of its own', () => {
    expect(plans('', '  part "Kit" 1000.00 new\n', order)[0]).toBe('c0 1700');
  });
});

test('a tool of a way in that costs nothing has no line', () => {
  const { option } = readSound(`${HEAD}tool lock "Lock"\ntool table "Table" 40.00\naccess up "Up"\n  remove 1 h\n  needs lock, table\nlabour w "W" 1 h with up\noption one "One"\n  do w\n`);
  expect(option('one').totals.lines.map(({ title, amount, share }) => `${title} ${amount.likely.toFixed()} ${share}`).sort()).toEqual(['Table: hire 40 access', 'Up: remove 100 access', 'W 100 work']);
});

describe('a way in that a stage opened', () => {
  const goods = 'part gasket "Gasket" 5.00 new\nsublet gas "Gas" 60.00\ntool table "Table" 40.00\n';
  const way = 'access up "Up"\n  remove 2 h\n  refit 1 h\n  uses gasket, gas\n  needs table\n';
  const work = 'labour strip "Strip" 1 h with up\nlabour w "W" 3 h with up\nstage look "Look"\n  do strip\n  opens up\n  put back 0 h\n';
  const text = `${HEAD}vehicle "Van"\n  worth 1900.00\n  unrepaired 300.00\n${goods}${way}${work}option one "One"\n  do w\n`;
  const lines = (name: string) => readSound(text).option(name).totals.lines.map(({ title, amount }) => `${title} ${amount.likely.toFixed()}`).sort();

  test('is opened and hired for, and nothing more, where the vehicle is sold as it stands', () => {
    expect(lines('as-it-stands')).toEqual(['Strip 100', 'Table: hire 40', 'Up: remove 200']);
  });

  test('is closed, with what that takes, where the work goes on', () => {
    expect(lines('one')).toEqual(['Gas 60', 'Gasket 5', 'Strip 100', 'Table: hire 40', 'Up: refit 100', 'Up: remove 200', 'W 300']);
  });
});
