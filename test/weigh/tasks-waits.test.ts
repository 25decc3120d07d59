import { describe, expect, test } from 'vitest';
import type { PlannedWork } from '../../src/weigh/planned-work.js';
import type { Task } from '../../src/weigh/task.js';
import { tasksOf } from '../../src/weigh/tasks.js';
import { read, readSound, type Read } from './weighed.js';

// Who waits for whom where it is not the plain case: several ways in, answers and stages, what is done first or last, outside
// work that leaves late, and what turns up. Rules of the shop, common practice: nothing is ordered or taken away before the
// customer's answer, what turns up is found when things are apart, and nothing waits for more than it needs.

const HEAD = 'steelyard 1\nshop "S"\n  rate bench 100.00\n';
const option = (name: string, ...lines: readonly string[]) => `option ${name} "${name}"\n${lines.map((line) => `  ${line}\n`).join('')}`;
const ANSWER = 'estimate "E"\n  answer 2 d\n';

/** Each task with the titles of those that it waits for. */
function rows(tasks: readonly Task[]): Readonly<Record<string, string>> {
  return Object.fromEntries(tasks.map(({ title, after }) => [title, after.map((i) => (tasks[i] as Task).title).sort().join(', ')]));
}

const waits = (text: string) => rows(readSound(HEAD + text).option('one').ready.tasks.map(({ task }) => task));

/** The same where all that option `later` does has turned up on option `one`. */
function turned(text: string): Readonly<Record<string, string>> {
  const found = readSound(HEAD + text);
  return rows(tasksOf(workOf(found, 'one'), [workOf(found, 'later')], found.comparison.estimate, 'after'));
}

function workOf(found: Read, name: string): PlannedWork {
  const { option: { parts, sublets, staged }, planned: { chosen: { jobs, paid } } } = found.option(name);
  return { jobs, ways: paid, parts, sublets, staged };
}

const way = (name: string, more = '') => `access ${name} "${name}"\n  remove 1 h\n  refit 2 h\n${more}`;

describe('several ways in', () => {
  const TWO = `${way('up')}${way('off')}`;

  test('work waits for those that it takes, and each is closed after its own work', () => {
    expect(waits(`${TWO}${option('one', 'labour "W" 1 h with up', 'labour "V" 1 h with off')}`)).toEqual({
      'up: remove': '', 'off: remove': '', W: 'up: remove', V: 'off: remove', 'up: refit': 'W, up: remove', 'off: refit': 'V, off: remove',
    });
  });

  test('work that takes two of them together waits for both', () => {
    expect(waits(`${TWO}${option('one', 'labour "W" 1 h with up, off')}`)).toMatchObject({ W: 'off: remove, up: remove', 'up: refit': 'W, up: remove', 'off: refit': 'W, off: remove' });
  });

  test('outside work of one leaves when that one is open, and is back before it is closed', () => {
    const text = (back: string) => `${ANSWER}sublet skim "Skim" 20.00${back}\n${way('up', '  uses skim\n')}${way('off')}${option('one', 'labour "W" 1 h with up', 'labour "V" 1 h with off')}`;
    expect(waits(text(' back in 2 d'))).toMatchObject({ 'Skim: away': 'up: remove', 'up: refit': 'Skim: away, W, up: remove', 'off: refit': 'V, off: remove' });
    expect(waits(text(''))).toMatchObject({ 'up: refit': 'W, up: remove' });
  });

  test('one in which nothing is done is closed when parts and outside work are there; a tool for other work is not waited for', () => {
    const text = `tool lock "Lock"\n  arrives 3 d\nlabour w "W" 1 h\n  needs lock\n${way('up')}${option('one', 'do w', 'way up', 'sublet "Skim" 20.00 back in 2 d', 'part "Pump" 9.00 new arrives 1 d')}`;
    expect(waits(text)['up: refit']).toBe('Pump arrives, Skim: away, up: remove');
  });
});

describe('outside work that no job sends', () => {
  test('holds up all work, and leaves when the engine is got at', () => {
    expect(waits(`${way('up')}${option('one', 'labour "W" 1 h with up', 'labour "V" 1 h', 'sublet "Skim" 20.00 back in 2 d')}`)).toMatchObject({ W: 'Skim: away, up: remove', V: 'Skim: away', 'Skim: away': 'up: remove' });
  });

  test('leaves after the answer where there is nothing to get at', () => {
    expect(waits(`${ANSWER}${option('one', 'labour "W" 1 h', 'sublet "Skim" 20.00 back in 2 d')}`)['Skim: away']).toBe('The customer’s answer');
  });
});

describe('an old core is put together', () => {
  const core = (condition: string) => [`part "Pump" 9.00 ${condition}`, '  core 5.00', '    assemble 1 h'];
  const together = 'Pump: put the core together';

  test('after the answer, with nothing to get at', () => {
    expect(waits(`${ANSWER}${option('one', 'labour "W" 1 h', ...core('rebuilt'))}`)[together]).toBe('The customer’s answer');
  });

  test('after the answer, too, where a stage got at the engine before', () => {
    const text = `${ANSWER}${way('up')}labour strip "Strip" 2 h with up\nstage look "Look"\n  do strip\n  opens up\n${option('one', 'labour "W" 1 h with up', ...core('rebuilt'))}`;
    expect(waits(text)[together]).toBe('The customer’s answer, up: remove');
  });

  test('not where the customer brings the part: nothing is charged for it', () => {
    const { ready } = read(HEAD + option('one', 'labour "W" 1 h', ...core('customer-supplied'))).option('one');
    expect(ready.tasks.map(({ task: { title } }) => title)).toEqual(['W']);
  });
});

describe('a tool', () => {
  test('that comes from outside is waited for by all work that takes it', () => {
    expect(waits(`tool lock "Lock"\n  arrives 3 d\nlabour a "A" 1 h\n  needs lock\nlabour b "B" 1 h\n  needs lock\n${option('one', 'do a, b')}`)).toEqual({ 'Lock arrives': '', A: 'Lock arrives', B: 'Lock arrives' });
  });

  test('that the shop owns is there, whatever its line says of days', () => {
    const text = `labour w "W" 1 h\n  needs press\n${option('one', 'do w')}`;
    expect(rows(read(`${HEAD}  tool press "Press" arrives 3 d\n${text}`).option('one').ready.tasks.map(({ task }) => task))).toEqual({ W: '' });
  });
});

test('parts and outside work that are there at once, and work that the option doesn’t do, are nothing to wait for', () => {
  const text = `part seal "Seal" 4.00 new\nsublet skim "Skim" 20.00\nlabour a "A" 1 h\nlabour b "B" 1 h\n  after a\n  uses seal, skim\nlabour c "C" 1 h\n${option('one', 'do b, c')}${option('two', 'do a')}`;
  expect(waits(text)).toEqual({ B: '', C: '' });
});

describe('what is done first', () => {
  test('comes before a stage that names it, out of the bay and with nothing opened', () => {
    const text = `${ANSWER}${way('up')}labour look "Look" 1 h done first\nlabour strip "Strip" 2 h with up\nstage first "First"\n  do look, strip\n  opens up\n${option('one', 'labour "W" 1 h')}`;
    expect(waits(text)).toMatchObject({ Look: '', 'up: remove': 'Look', Strip: 'Look, up: remove', 'The customer’s answer': 'Look, Strip, up: remove' });
  });

  test('is in the order that it says', () => {
    expect(waits(`labour a "A" 1 h done first\nlabour b "B" 1 h done first\n  after a\n${option('one', 'do a, b', 'labour "W" 1 h')}`)).toEqual({ A: '', B: 'A', W: 'A, B' });
  });

  test('waits for no part: one that only it uses is ordered after the answer, like any other, and holds up the rest', () => {
    expect(waits(`${ANSWER}labour look "Look" 1 h done first\n  uses rag\npart rag "Rag" 1.00 new arrives 1 d\n${option('one', 'do look', 'labour "W" 1 h')}`)).toEqual({
      Look: '', 'The customer’s answer': 'Look', W: 'Rag arrives, The customer’s answer', 'Rag arrives': 'The customer’s answer',
    });
  });
});

describe('what is done last', () => {
  test('alone waits for a part that only it uses', () => {
    expect(waits(`labour w "W" 1 h\nlabour try "Try" 1 h done last\n  uses oil\npart oil "Oil" 9.00 new arrives 2 d\n${option('one', 'do w, try')}`)).toEqual({ W: '', 'Oil arrives': '', Try: 'Oil arrives, W' });
  });

  test('comes after the answer, too, where the stages did all else', () => {
    const text = `${ANSWER}labour strip "Strip" 2 h\nlabour try "Try" 1 h done last\nstage look "Look"\n  do strip\n${option('one', 'do try')}`;
    expect(waits(text)).toMatchObject({ Strip: '', 'The customer’s answer': 'Strip', Try: 'Strip, The customer’s answer' });
  });

  test('waits for what it names, besides all work', () => {
    const text = `sublet wash "Wash" 20.00 back in 1 d\n  after w\nlabour w "W" 1 h\nlabour try "Try" 1 h done last\n  after wash\n${option('one', 'do try, w', 'send wash')}`;
    expect(waits(text)).toEqual({ W: '', 'Wash: away': 'W', Try: 'W, Wash: away' });
  });

  test('is named by outside work, each by its own name', () => {
    const text = `labour w "W" 1 h\nlabour try "Try" 1 h done last\nlabour polish "Polish" 1 h done last\nsublet tow "Tow" 20.00 back in 1 d\n  after polish\n${option('one', 'do w, try, polish', 'send tow')}`;
    expect(waits(text)['Tow: away']).toBe('Polish');
  });
});

describe('work that says how far things come apart', () => {
  const lengths = (hours: string, apart: string) => readSound(`${HEAD}labour w "W" ${hours}\n  apart after ${apart}\n${option('one', 'do w')}`).option('one').ready.tasks.map(({ task: { title, length } }) => `${title} ${[length.low, length.likely, length.high].map((point) => point.toFixed()).join(' / ')}`);

  test('takes so long as it says until then, and the rest of its hours after that', () => {
    expect(lengths('3 / 4 / 6 h', '1 h')).toEqual(['W: apart 1 / 1 / 1', 'W: the rest 2 / 3 / 5']);
  });

  test('is never longer than its hours in all', () => {
    expect(lengths('2 h', '3 h')).toEqual(['W: apart 2 / 2 / 2', 'W: the rest 0 / 0 / 0']);
  });
});

test('of several parts the one that is named is waited for', () => {
  const text = `part seal "Seal" 4.00 new arrives 1 d\npart bolt "Bolt" 2.00 new arrives 3 d\nlabour a "A" 1 h\n  uses seal, bolt\nlabour b "B" 1 h\n  after bolt\n${option('one', 'do a, b')}`;
  expect(waits(text)).toMatchObject({ A: 'Bolt arrives, Seal arrives', B: 'Bolt arrives' });
});

describe('what turns up', () => {
  const APART = `labour w "W" 5 h with up\n  apart after 2 h\n${way('up')}`;

  test('is found when the engine is got at and things are apart; its parts are ordered then', () => {
    const text = `${ANSWER}${APART}labour fix "Fix" 3 h\n  uses ring\npart ring "Ring" 4.00 new arrives 2 d\n${option('one', 'do w', 'labour "V" 1 h')}${option('later', 'do fix')}`;
    expect(turned(text)).toMatchObject({ 'W: apart': 'up: remove', V: 'The customer’s answer', 'Ring arrives': 'W: apart, up: remove', Fix: 'Ring arrives, The customer’s answer' });
  });

  test('with nothing to get at and nothing apart is found after the answer', () => {
    const text = `${ANSWER}labour fix "Fix" 3 h\n  uses ring\npart ring "Ring" 4.00 new arrives 2 d\n${option('one', 'labour "W" 1 h')}${option('later', 'do fix')}`;
    expect(turned(text)).toMatchObject({ 'Ring arrives': 'The customer’s answer' });
  });

  test('its own way in is opened then, and closed after its work', () => {
    const text = `${APART}${way('off')}labour fix "Fix" 3 h with off\n${option('one', 'do w')}${option('later', 'do fix')}`;
    expect(turned(text)).toMatchObject({ 'off: remove': 'W: apart, up: remove', Fix: 'off: remove', 'off: refit': 'Fix, off: remove' });
  });

  test('and is done last comes once, after all else', () => {
    const text = `${way('up')}labour w "W" 1 h with up\nlabour try "Try" 1 h done last\n${option('one', 'do w')}${option('later', 'do try')}`;
    const found = readSound(HEAD + text);
    const tasks = tasksOf(workOf(found, 'one'), [workOf(found, 'later')], found.comparison.estimate, 'after');
    expect(tasks.map(({ title }) => title)).toEqual(['up: remove', 'W', 'up: refit', 'Try']);
    expect(rows(tasks)).toMatchObject({ Try: 'W, up: refit' });
  });

  test('work that is not done last stands among the work, not at the end', () => {
    const text = `${way('up')}labour w "W" 1 h with up\nlabour fix "Fix" 3 h with up\n${option('one', 'do w')}${option('later', 'do fix')}`;
    expect(turned(text)).toMatchObject({ 'up: refit': 'Fix, W, up: remove' });
  });

  test('outside work that the option sends anyway leaves no later for it', () => {
    const text = `${way('up')}sublet skim "Skim" 20.00 back in 2 d\nlabour w "W" 1 h with up\n  uses skim\nlabour fix "Fix" 3 h with up\n  apart after 1 h\n  uses skim\n${option('one', 'do w')}${option('later', 'do fix')}`;
    expect(turned(text)).toMatchObject({ 'Skim: away': 'up: remove', W: 'Skim: away, up: remove', 'Fix: the rest': 'Fix: apart, Skim: away' });
  });
});
