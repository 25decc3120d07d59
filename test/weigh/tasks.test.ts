import { describe, expect, test } from 'vitest';
import { readSound } from './weighed.js';

// An option as tasks that wait for each other. Rules of the shop: nothing is ordered before the customer's answer; work starts when its way
// in is open and its parts are there; closing up comes after all work inside (common practice).

const HEAD = 'steelyard 1\nshop "S"\n  rate bench 100.00\n  tool owned "Owned tool"\n';

/** Each task with the titles of those that it waits for; `+` where the vehicle is not in the bay for it, `-` where it holds up nothing. */
function tasks(text: string, name = 'one'): readonly string[] {
  const { ready } = readSound(HEAD + text).option(name);
  const titles = ready.tasks.map(({ task }) => task.title);
  return ready.tasks.map(({ task: { title, after, inBay, counts } }) => `${title}${inBay ? '' : ' +'}${counts ? '' : ' -'}${after.length === 0 ? '' : ` < ${after.map((i) => titles[i]).sort().join(', ')}`}`);
}

const option = (...lines: readonly string[]) => `option one "One"\n${lines.map((line) => `  ${line}\n`).join('')}`;
const WAY = 'access up "Up"\n  remove 1 h\n  refit 2 h\n';

describe('work', () => {
  test('a job alone waits for nothing', () => {
    expect(tasks(option('labour "W" 1 h'))).toEqual(['W']);
  });

  test('what is done first, the answer, getting in, the work, closing up, what is done last', () => {
    const text = `estimate "E"\n  answer 2 d\n${WAY}${option('labour "Look" 1 h done first', 'labour "W" 1 h with up', 'labour "V" 1 h', 'labour "Try" 1 h done last')}`;
    expect(tasks(text)).toEqual([
      'Look +', 'The customer’s answer + < Look', 'Up: remove < The customer’s answer', 'W < Up: remove', 'V < The customer’s answer',
      'Up: refit < Up: remove, W', 'Try < Look, Up: refit, V, W',
    ]);
  });

  test('a way in that is only closed, or only opened', () => {
    expect(tasks(`access up "Up"\n  refit 2 h\n${option('labour "W" 1 h with up')}`)).toEqual(['W', 'Up: refit < W']);
    expect(tasks(`access up "Up"\n  remove 2 h\n${option('labour "W" 1 h with up', 'labour "Try" 1 h done last')}`)).toEqual(['Up: remove', 'W < Up: remove', 'Try < Up: remove, W']);
  });

  test('a way in that gives another opens the work for that one, and is closed after it', () => {
    expect(tasks(`${WAY}access out "Out"\n  includes up\n  remove 4 h\n  refit 5 h\n${option('way out', 'labour "W" 1 h with up')}`)).toEqual(['Out: remove', 'W < Out: remove', 'Out: refit < Out: remove, W']);
  });
});

describe('parts, tools and outside work', () => {
  test('a job waits for the parts and tools that it takes, another doesn’t', () => {
    const text = `tool lock "Lock"\n  arrives 3 d\npart seal "Seal" 4.00 new arrives 2 d\nlabour w "W" 1 h\n  needs lock, owned\n  uses seal\nlabour v "V" 1 h\n${option('do w, v')}`;
    expect(tasks(text)).toEqual(['Lock arrives +', 'W < Lock arrives, Seal arrives', 'V', 'Seal arrives +']);
  });

  test('getting in waits for its own tools, and closing up for its own parts', () => {
    const text = `tool lock "Lock"\n  arrives 3 d\npart gasket "Gasket" 4.00 new arrives 2 d\n${WAY}  needs lock\n  uses gasket\n${option('labour "W" 1 h with up')}`;
    expect(tasks(text)).toEqual(['Lock arrives +', 'Up: remove < Lock arrives', 'W < Up: remove', 'Gasket arrives +', 'Up: refit < Gasket arrives, Up: remove, W']);
  });

  test('a part that no job uses holds up all of them, and closing a way in that nothing is done with', () => {
    expect(tasks(option('labour "W" 1 h', 'labour "V" 1 h', 'labour "Try" 1 h done last', 'part "Pump" 9.00 new arrives 2 d'))).toEqual(['W < Pump arrives', 'V < Pump arrives', 'Pump arrives +', 'Try < V, W']);
    expect(tasks(`${WAY}${option('way up', 'labour "W" 1 h', 'part "Pump" 9.00 new arrives 2 d')}`)).toEqual(['Up: remove', 'W < Pump arrives', 'Pump arrives +', 'Up: refit < Pump arrives, Up: remove']);
  });

  test('outside work leaves when the way in is open, or when the things of its job are apart', () => {
    const outside = 'sublet skim "Skim" 50.00 back in 3 d\n';
    expect(tasks(`${WAY}${outside}labour w "W" 4 h with up\n  uses skim\n${option('do w')}`)).toEqual(['Up: remove', 'W < Skim: away, Up: remove', 'Skim: away + < Up: remove', 'Up: refit < Up: remove, W']);
    expect(tasks(`${WAY}${outside}part seal "Seal" 4.00 new arrives 2 d\nlabour w "W" 4 h with up\n  uses skim, seal\n  apart after 1 h\n${option('do w')}`)).toEqual([
      'Up: remove', 'W: apart < Up: remove', 'W: the rest < Seal arrives, Skim: away, W: apart', 'Seal arrives +', 'Skim: away + < W: apart', 'Up: refit < Up: remove, W: the rest',
    ]);
  });

  test('outside work that is away for no time is no task, but where it waits for something', () => {
    expect(tasks(option('labour "W" 1 h', 'sublet "Skim" 50.00'))).toEqual(['W']);
    expect(tasks(`labour w "W" 1 h\n${option('do w', 'sublet "Skim" 50.00 after w', 'labour "Try" 1 h done last')}`)).toEqual(['W', 'Skim: away < W', 'Try < W']);
  });

  test('a part that comes at once, and a tool that the shop owns, are no tasks', () => {
    expect(tasks(`labour w "W" 1 h\n  needs owned\n${option('do w', 'part "Seal" 4.00 new')}`)).toEqual(['W']);
  });

  test('an old core is put together beside all that, when the engine is got at', () => {
    expect(tasks(`${WAY}${option('labour "W" 1 h with up', 'part "Pump" 9.00 rebuilt\n    core 5.00\n      assemble 1 h')}`)).toEqual(['Up: remove', 'W < Up: remove', 'Up: refit < Up: remove, W', 'Pump: put the core together + - < Up: remove']);
    expect(tasks(option('labour "W" 1 h', 'part "Pump" 9.00 rebuilt\n    core 5.00'))).toEqual(['W']);
  });
});

describe('after', () => {
  test('a job waits for what it names: work, a part, outside work', () => {
    const text = `labour a "A" 1 h\nlabour b "B" 1 h\n  after a\nlabour c "C" 1 h\n  after seal\nlabour d "D" 1 h\n  after skim\npart seal "Seal" 4.00 new arrives 2 d\nsublet skim "Skim" 50.00 back in 3 d\nlabour e "E" 1 h\n  uses seal, skim\n${option('do a, b, c, d, e')}`;
    expect(tasks(text)).toEqual(['A', 'B < A', 'C < Seal arrives', 'D < Skim: away', 'E < Seal arrives, Skim: away', 'Seal arrives +', 'Skim: away +']);
  });

  test('what the option doesn’t do is nothing to wait for', () => {
    expect(tasks(`labour a "A" 1 h\nlabour b "B" 1 h\n  after a\n${option('do b')}option two "Two"\n  do a\n`)).toEqual(['B']);
  });

  test('outside work that a job sends leaves when that job’s things are apart, and after another when all of it is done', () => {
    const text = (after: string) => `labour a "A" 4 h\n  apart after 1 h\nlabour b "B" 4 h\n  apart after 1 h\n  uses skim\nsublet skim "Skim" 50.00 back in 3 d\n  after ${after}\n${option('do a, b')}`;
    expect(tasks(text('b')).find((row) => row.startsWith('Skim'))).toBe('Skim: away + < B: apart');
    expect(tasks(text('a')).find((row) => row.startsWith('Skim'))).toBe('Skim: away + < A: the rest, B: apart');
  });

  test('outside work after what is done last holds up neither the work nor closing up', () => {
    const text = `${WAY}labour try "Try" 1 h done last\nsublet tow "Tow away" 50.00 back in 1 d\n  after try\n${option('do try', 'send tow', 'labour "W" 1 h with up')}`;
    expect(tasks(text)).toEqual(['Up: remove', 'W < Up: remove', 'Tow away: away + < Try, Up: remove', 'Up: refit < Up: remove, W', 'Try < Up: refit, W']);
  });
});

describe('stages', () => {
  const stage = (more = '') => `estimate "E"\n  answer 1 d\n${WAY}labour strip "Strip" 2 h with up\n  uses rag\npart rag "Rag" 1.00 new arrives 1 d\nlabour w "W" 1 h with up\nstage look "Look inside"\n  do strip\n  opens up\n${more}`;

  test('what they open and do comes before the answer, all else after it', () => {
    expect(tasks(`${stage()}${option('do w', 'part "Pump" 9.00 new arrives 2 d')}`)).toEqual([
      'Up: remove', 'Strip < Rag arrives, Up: remove', 'Rag arrives +', 'The customer’s answer + < Strip, Up: remove',
      'W < Pump arrives, The customer’s answer, Up: remove', 'Pump arrives + < The customer’s answer', 'Up: refit < Strip, The customer’s answer, Up: remove, W',
    ]);
  });

  test('an option that goes no further closes up after the answer', () => {
    expect(tasks(`${stage()}${option('part "Rags" 1.00 new')}`).at(-1)).toBe('Up: refit < Strip, The customer’s answer, Up: remove');
  });
});
