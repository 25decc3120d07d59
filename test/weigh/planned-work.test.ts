import { describe, expect, test } from 'vitest';
import { read, readSound } from './weighed.js';

// Outside work that leaves after what is done last, and what a stage opened and nobody closes. Common practice: what leaves
// with the finished vehicle (a tow, a wash) holds up neither the work nor closing up.

const HEAD = 'steelyard 1\nshop "S"\n  rate bench 100.00\naccess up "Up"\n  remove 1 h\n  refit 2 h\n  uses gasket\npart gasket "Gasket" 5.00 new arrives 1 d\nlabour try "Try" 1 h done last\nlabour w "W" 1 h with up\n';

function waits(text: string, name = 'one'): Readonly<Record<string, string>> {
  const tasks = readSound(HEAD + text).option(name).ready.tasks.map(({ task }) => task);
  return Object.fromEntries(tasks.map(({ title, after }) => [title, after.map((i) => tasks[i]?.title ?? '').sort().join(', ')]));
}

describe('outside work after what is done last', () => {
  const ALL = { 'Up: remove': '', W: 'Up: remove', 'Gasket arrives': '', 'Up: refit': 'Gasket arrives, Up: remove, W', Try: 'Up: refit, W' };

  test('by its own line, also where it waits for other work besides', () => {
    const sublet = (after: string) => `sublet tow "Tow" 20.00 back in 1 d\n  after ${after}\noption one "One"\n  do w, try\n  send tow\n`;
    expect(waits(sublet('try'))).toEqual({ ...ALL, 'Tow: away': 'Try, Up: remove' });
    expect(waits(sublet('w, try'))).toEqual({ ...ALL, 'Tow: away': 'Try, Up: remove, W' });
  });

  test('by that of outside work that it waits for, wherever that is written', () => {
    const text = 'sublet wash "Wash" 20.00 back in 1 d\n  after tow\nsublet tow "Tow" 20.00 back in 1 d\n  after try\nsublet wax "Wax" 20.00 back in 1 d\n  after wash\noption one "One"\n  do w, try\n  send wax, wash, tow\n';
    expect(waits(text)).toEqual({ ...ALL, 'Tow: away': 'Try, Up: remove', 'Wash: away': 'Tow: away, Up: remove', 'Wax: away': 'Up: remove, Wash: away' });
  });

  test('is not that after other work: it is waited for', () => {
    expect(waits('sublet skim "Skim" 20.00 back in 1 d\n  after w\nlabour v "V" 1 h\noption one "One"\n  do w, v, try\n  send skim\n')).toMatchObject({ 'Skim: away': 'Up: remove, W', V: 'Skim: away', Try: 'Up: refit, V, W' });
  });
});

test('where the order goes round in a circle, outside work that would leave last is like any other', () => {
  const tow = 'sublet tow "Tow" 20.00 back in 1 d\n  after try\nlabour a "A" 1 h\n  after b\nlabour b "B" 1 h\n  after a\noption one "One"\n  do w, a, b, try\n  send tow\n';
  const { ready: { tasks, circle } } = read(HEAD + tow).option('one');
  const titles = tasks.map(({ task }) => task.title);
  expect([[...circle ?? []].sort(), ...['W', 'A'].map((title) => tasks.find(({ task }) => task.title === title)?.task.after.map((i) => titles[i]).sort())]).toEqual([['A', 'B'], ['Tow: away', 'Up: remove'], ['Tow: away']]);
});

describe('a way in that a stage opened', () => {
  const stage = 'vehicle "V"\n  worth 900.00\n  unrepaired 300.00\nlabour strip "Strip" 2 h with up\nstage look "Look"\n  do strip\n  opens up\n';

  test('is left open where the vehicle is sold as it stands: nothing is ordered for closing it', () => {
    expect(waits(`${stage}option one "One"\n  do w\n`, 'as-it-stands')).toEqual({ 'Up: remove': '', Strip: 'Up: remove' });
  });

  test('is closed by every option that goes on', () => {
    expect(waits(`${stage}option one "One"\n  do w\n`)).toMatchObject({ 'Gasket arrives': 'Strip, Up: remove', 'Up: refit': 'Gasket arrives, Strip, Up: remove, W' });
  });
});
