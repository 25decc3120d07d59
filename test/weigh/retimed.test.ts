import { describe, expect, test } from 'vitest';
import type { Weighed } from '../../src/weigh/index.js';
import { serviceOver, uriOf } from '../support/fixture.js';

// The day of an option while its estimate is typed: what waits for what is kept where only hours and titles of a few jobs differ. Hours by hand;
// that a job starts when its way in, tools, parts and outside work are there, and one pair of hands does one thing, is common practice.

const FILE = 'job.yard';
const SHOP = 'steelyard 1\nshop "S"\n  workday 8 h\n  rate bench 100.00\n';

/** Option `one` of texts that one service reads, one after the other. Days are worked out when asked for, so each is asked for its own before the next is typed. */
function typedOn(...texts: readonly string[]): readonly Weighed[] {
  const { host, service } = serviceOver({});
  return texts.map((text) => {
    host.set(FILE, text);
    const one = service.weighing(uriOf(FILE)).comparison.options.find(({ option }) => option.name === 'one') as Weighed;
    expect(one.ready.finish).toBeGreaterThan(0);
    return one;
  });
}

/** A text that is read, and then typed on in one place: option `one` before and after. */
function typed(text: string, from: string, to: string): { readonly before: Weighed; readonly after: Weighed } {
  expect(text.split(from), `“${from}” stands there once`).toHaveLength(2);
  const [before, after] = typedOn(text, text.replace(from, to));
  expect([before?.complete, after?.complete]).toEqual([true, true]);
  return { before: before as Weighed, after: after as Weighed };
}

/** Each piece of the calendar with the hours in which it lies. */
const rows = ({ ready }: Weighed) => ready.tasks.map(({ task: { title }, start, end }) => `${title} ${start}-${end}`);

const PLAIN = `${SHOP}estimate "E"\n  start 2026-11-30\ntool hoist "Hoist"\n  arrives 4 d\npart gasket "Gasket" 20.00 new arrives 2 d\nsublet skim "Skim" 60.00 back in 3 d\naccess up "Up"\n  remove 2 h\n  refit 1 h\naccess off "Off"\n  remove 5 h\n  refit 1 h\n`;

describe('hours and titles typed anew', () => {
  const text = `${PLAIN}labour head "Head" 10 h\n  uses gasket\nlabour seal "Seal" 6 h\noption one "One"\n  do head, seal\n`;

  test('move what they move, by hand', () => {
    // The gasket is there after two days, while the seal is done.
    const { before, after } = typed(text, '10 h', '13.5 h');
    expect([rows(before), before.ready.finish, before.ready.date]).toEqual([['Head 16-26', 'Seal 0-6', 'Gasket arrives 0-16'], 26, '2026-12-03']);
    expect([rows(after), after.ready.finish, after.ready.date]).toEqual([['Head 16-29.5', 'Seal 0-6', 'Gasket arrives 0-16'], 29.5, '2026-12-03']);
  });

  test('make that job anew, and leave the others as the very same', () => {
    const { before, after } = typed(text, '"Head" 10 h', '"Rear head" 13.5 h');
    expect(after.ready.tasks.map(({ task }, i) => task === before.ready.tasks[i]?.task)).toEqual([false, true, true]);
    const [head] = after.ready.tasks;
    expect([head?.task.id, head?.task.title, head?.task.at.block.text.split('\n')[0]]).toEqual(['1 Rear head', 'Rear head', 'labour head "Rear head" 13.5 h']);
    const second = typed(text, '"Seal" 6 h', '"Front seal" 7 h');
    expect(second.after.ready.tasks.map(({ task: { id } }) => id)).toEqual(['1 Head', '2 Front seal', '3 Gasket arrives']);
  });

  test('of more lines than one, each in its place', () => {
    const { after } = typed(text, '"Head" 10 h\n  uses gasket\nlabour seal "Seal" 6 h', '"Head" 12 h\n  uses gasket\nlabour seal "Seal" 9 h');
    expect(rows(after)).toEqual(['Head 16-28', 'Seal 0-9', 'Gasket arrives 0-16']);
  });
});

describe('whatever else is typed is planned anew', () => {
  const two = (head: string, seal: string) => `${PLAIN}labour head "Head" 10 h\n${head}labour seal "Seal" 6 h\n${seal}option one "One"\n  do head, seal\n`;
  /** Three pairs of hands. */
  const crew = (lines: string, jobs: string) => `${PLAIN.replace('estimate', '  technicians 3\nestimate')}${lines}option one "One"\n  do ${jobs}\n`;
  const ways = crew('labour head "Head" 10 h with up\nlabour seal "Seal" 6 h with off\nlabour look "Look" 1 h with up\n', 'head, seal, look');
  const staged = crew('labour look "Look" 4 h\nlabour head "Head" 10 h\nlabour seal "Seal" 6 h\nstage first "Look first"\n  do look\n  put back 0 h\n', 'look, seal, head').replace('  start', '  answer 1 d\n  start');
  const weekly = two('  uses gasket\n', '').replace('arrives 2 d', 'arrives 1 wk').replace('  rate', '  closed saturday, sunday\n  rate');

  test.each<[string, string, string, string, number, number]>([
    ['a part that a job no longer uses', two('  uses gasket\n', '  uses gasket\n'), '  uses gasket\noption', 'option', 32, 26],
    ['parts that a job uses too', two('  uses gasket\n', '  caution oil\n'), '  caution oil\n', '  uses gasket\n', 26, 32],
    ['outside work that a job uses too', two('  uses skim\n', '  caution oil\n'), '  caution oil\n', '  uses skim\n', 34, 40],
    ['a tool that a job needs too', two('  needs hoist\n', '  caution oil\n'), '  caution oil\n', '  needs hoist\n', 42, 48],
    ['a job that comes after another', two('  uses gasket\n', '  caution oil\n'), '  caution oil\n', '  after head\n', 26, 32],
    ['a job that comes after a third one', crew('labour look "Look" 1 h\nlabour head "Head" 10 h\nlabour seal "Seal" 6 h\n  after head\n', 'look, head, seal'), 'after head', 'after look', 16, 10],
    ['a job that another needs in place of one', crew('labour cover "Cover" 2 h\n  needs old\nlabour old "Old" 10 h\nlabour new "New" 10 h\nlabour seal "Seal" 6 h\n  after new\n', 'cover, seal'), 'needs old', 'needs new', 10, 16],
    ['a job that another needs no longer', crew('labour cover "Cover" 2 h\n  needs old\nlabour old "Old" 10 h\n', 'cover'), '  needs old\n', '', 10, 2],
    ['a job that is done last', two('  uses gasket\n', '  caution oil\n'), '  caution oil\n', '  done last\n', 26, 32],
    ['a job that comes apart', two('  uses gasket\n', ''), '  uses gasket\n', '  uses gasket\n  apart after 4 h\n', 26, 22],
    ['a job that comes apart no longer', two('  uses gasket\n  apart after 4 h\n', ''), '  apart after 4 h\n', '', 22, 26],
    ['a way in that a job takes', ways, '10 h with up', '10 h with off', 13, 16],
    ['when a part arrives that no job uses', two('', '').replace('  do head, seal\n', '  do head, seal\n  fit gasket\n'), 'arrives 2 d', 'arrives 5 d', 32, 56],
    ['when outside work is back that no job sends', two('', '').replace('  do head, seal\n', '  do head, seal\n  send skim\n'), 'back in 3 d', 'back in 5 d', 40, 56],
    ['a way in that no job takes', two('', '').replace('  do head, seal\n', '  do head, seal\n  way up\n'), 'refit 1 h\naccess off', 'refit 3 h\naccess off', 19, 21],
    ['when a part arrives', two('  uses gasket\n', ''), 'arrives 2 d', 'arrives 5 d', 26, 50],
    ['when outside work is back', two('  uses skim\n', ''), 'back in 3 d', 'back in 5 d', 34, 50],
    ['when a tool arrives', two('  needs hoist\n', ''), 'arrives 4 d', 'arrives 6 d', 42, 58],
    ['a way in', ways, 'remove 5 h', 'remove 9 h', 13, 16],
    ['how many work on it', two('', ''), '  start', '  technicians 2\n  start', 16, 10],
    ['the customer’s answer', two('', ''), '  start', '  answer 1 d\n  start', 16, 24],
    ['a longer answer', two('', '').replace('  start', '  answer 1 d\n  start'), 'answer 1 d', 'answer 3 d', 24, 40],
    // The stage, then a day for the answer, then the head.
    ['what a stage does', staged, '  do look\n', '  do look, seal\n', 22, 24],
    ['how long a job of a stage takes', staged, '"Look" 4 h', '"Look" 7 h', 22, 25],
    // A week from Monday 30 November holds five working days, or four; from Monday 21 December on four, with Christmas.
    ['the days on which the shop is closed', weekly, '  closed saturday, sunday\n', '  closed friday, saturday, sunday\n', 50, 42],
    ['the day from which a week is counted', weekly.replace('closed saturday', 'closed 2026-12-25, saturday'), '2026-11-30', '2026-12-21', 50, 42],
    ['the days in a week for the answer', two('', '').replace('  start', '  answer 1 wk\n  start').replace('  rate', '  closed saturday, sunday\n  rate'), '  closed saturday, sunday\n', '  closed friday, saturday, sunday\n', 56, 48],
    ['the working day that the answer takes', two('', '').replace('  start', '  answer 1 d\n  start'), 'workday 8 h', 'workday 10 h', 24, 26],
    ['the working day', two('  uses gasket\n', ''), 'workday 8 h', 'workday 10 h', 26, 30],
  ])('%s', (_, text, from, to, was, is) => {
    const { before, after } = typed(text, from, to);
    expect([before.ready.finish, after.ready.finish]).toEqual([was, is]);
  });

  test('the day it starts, and the days on which the shop is closed', () => {
    const text = two('  uses gasket\n', '');
    const days = (from: string, to: string) => Object.values(typed(text, from, to)).map(({ ready }) => ready.date);
    expect(days('start 2026-11-30', 'start 2026-12-03')).toEqual(['2026-12-03', '2026-12-08']);
    expect(days('  rate bench', '  closed 2026-12-02, saturday, sunday\n  rate bench')).toEqual(['2026-12-03', '2026-12-04']);
  });

  test('jobs that wait for each other are told for as long as they do', () => {
    const text = (head: string, after: string) => two(`  caution oil\n${after}`, '  after head\n').replace('10 h', head);
    const told = typedOn(text('10 h', ''), text('10 h', '  after seal\n'), text('12 h', '  after seal\n'), text('12 h', ''), text('13 h', '')).map(({ ready }) => [ready.circle, ready.finish]);
    expect(told).toEqual([[undefined, 16], [['Head', 'Seal'], 16], [['Head', 'Seal'], 18], [undefined, 18], [undefined, 19]]);
    // What was a circle from the start.
    expect(typedOn(text('10 h', '  after seal\n'), text('12 h', '  after seal\n')).map(({ ready }) => ready.circle)).toEqual([['Head', 'Seal'], ['Head', 'Seal']]);
  });
});
