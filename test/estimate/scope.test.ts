import { describe, expect, test } from 'vitest';
import { resolve, type Resolved } from '../../src/estimate/index.js';
import { limits, parse, reparse, type Tree } from '../../src/language/index.js';
import { called, resolved, told, wordsOf } from './estimated.js';

const SHOP = 'steelyard 1\nshop "S"\n  rate bench 100.00\n';
const read = (text: string) => resolved(SHOP + text);

describe('a name that nothing has', () => {
  test('is told, with a near one or what the name is of', () => {
    expect(told(read('labour p "P" 1 h\n  uses seel\npart seal "Seal" 1.00 new\n'))).toEqual([['unknown-name', 'seel']]);
    expect(wordsOf(read('labour p "P" 1 h\n  uses seel\npart seal "Seal" 1.00 new\n'), 'unknown-name')).toContain('seal');
    expect(wordsOf(read('labour p "P" 1 h\n  uses bar\ntool bar "Bar"\n'), 'unknown-name')).toContain('bar is the name of a tool line, but a part or a sublet line is needed here');
    expect(wordsOf(read('labour p "P" 1 h\n  uses xyz\n'), 'unknown-name')).toContain('There is no part or sublet called xyz');
    expect(wordsOf(read('option o "O"\n  way in-cra\n'), 'unknown-name')).toContain('in-car');
  });

  test('of another kind is told where it goes', () => {
    const goods = 'part ring "Ring" 1.00 new\nlabour seal "Seal" 1 h\nsublet plane "Plane" 1.00\nfee tow "Tow" 1.00\noption mend "Mend"\n  do seal\n';
    const says = (text: string) => wordsOf(read(goods + text), 'unknown-name');
    expect(says('option o "O"\n  fit seal\n')).toContain('It goes behind do: do seal');
    expect(says('option o "O"\n  do seal, ring\n')).toContain('It goes behind fit: fit ring');
    expect(says('option o "O"\n  do plane\n')).toContain('It goes behind send: send plane');
    expect(says('option o "O"\n  chance c "C" 5%\n    do tow\n')).toContain('It goes behind charge: charge tow');
    expect(says('labour l "L" 1 h\n  needs ring\n')).toContain('It goes behind uses: uses ring');
    expect(says('consider ring\n')).toContain('Write the name of a labour line');
    expect(says('closed for mend on 2026-12-09\n  paid seal 4.00\n')).toContain('It goes behind clocked: clocked seal');
    expect(says('closed for mend on 2026-12-09\n  clocked mend 4 h\n')).toContain('Write the name of a labour or an access line');
  });

  test('in-car is told to be no way in that work takes', () => {
    expect(wordsOf(read('labour l "L"\n  takes 3 h with in-car\n'), 'unknown-name')).toContain('leave with out');
    expect(told(read('access in-car "In the car"\n  remove 1 h\nlabour l "L"\n  takes 3 h with in-car\n'))).toEqual([['reserved-name', 'in-car']]);
  });

  test('stands where it stands: below, in a list, behind one word', () => {
    expect(new Set(told(read('option o "O"\n  labour "L" 1 h\n    needs a, b\n    class c\n')).map((one) => one.join(' ')))).toEqual(new Set(['unknown-name a', 'unknown-name b', 'unknown-name c']));
  });

  test('is told so often; beyond, what rests on it is only marked', () => {
    const most = 4 * limits.problems;
    const many = read(Array.from({ length: most + 5 }, (_, i) => `labour j${i} "J" 1 h\n  uses q${i}x\n`).join(''));
    expect(many.problems).toHaveLength(most + 1);
    expect(many.spoiled.size).toBeGreaterThanOrEqual(4);
  });
});

describe('two lines with one name', () => {
  test('of one kind are told; the first counts', () => {
    const twice = read('part a "First" 1.00 new\npart a "Second" 2.00 new\npart a "Third" 2.00 new\noption o "O"\n  fit a\n');
    expect(told(twice)).toEqual([['name-taken', 'a', 'a'], ['name-taken', 'a', 'a']]);
    expect(twice.estimate.options[0]?.parts.map(({ title }) => title)).toEqual(['First']);
    expect(twice.estimate.parts.map(({ title }) => title)).toEqual(['First']);
  });

  test('of two kinds may be; where either could be meant it is told', () => {
    expect(told(read('part a "A" 1.00 new\nlabour a "A" 1 h\n  uses a\noption a "A"\n  do a\n  fit a\n'))).toEqual([]);
    expect(told(read('part a "A" 1.00 new\nsublet a "A" 1.00\nlabour l "L" 1 h\n  uses a\n'))).toEqual([['ambiguous-name', 'a']]);
  });

  test('a second shop gives no names', () => {
    const two = resolved(`${SHOP}shop "T"\n  rate body 90.00\nlabour l "L" 1 h class body\n`);
    expect(told(two).map(([code, marked]) => [code, marked])).toEqual([['unknown-name', 'body'], ['only-once', 'shop "T"']]);
  });
});

describe('one name twice in a list', () => {
  test('is told for each, and counted once', () => {
    const one = read('part a "A" 1.00 new\npart b "B" 1.00 new\noption o "O"\n  fit a, b, a, a\n');
    expect(told(one)).toEqual([['said-before', 'a', 'a'], ['said-before', 'a', 'a']]);
    expect(wordsOf(one, 'said-before')).toContain('a stands behind fit twice');
    expect(called(one.estimate.options[0]?.parts ?? [])).toEqual(['a', 'b']);
  });

  test('of outside work, with an example of that', () => {
    const words = wordsOf(read('sublet plane "Plane" 1.00\noption o "O"\n  send plane, plane\n'), 'said-before');
    expect(words).toContain('sublet plane "Plane a head" 2 at 45.00');
    expect(words).not.toContain('1.5 h');
  });
});

test('a name that stands in a list again and again is told so often', () => {
  const many = read(`part a "A" 1.00 new\noption o "O"\n${'  fit a\n'.repeat(limits.problems + 10)}`);
  expect(many.problems.filter(({ code }) => code === 'said-before')).toHaveLength(limits.problems);
});

describe('jobs that need each other', () => {
  test('are told where the circle closes', () => {
    const circle = read('labour a "A" 1 h\n  needs b\nlabour b "B" 1 h\n  needs c\nlabour c "C" 1 h\n  needs a\n');
    expect(told(circle)).toEqual([['circular', 'a']]);
    expect(wordsOf(circle, 'circular')).toContain('a → b → c → a');
    expect(told(read('labour a "A" 1 h\n  needs a\n'))).toEqual([['circular', 'a']]);
    expect(wordsOf(read('access a "A"\n  remove 1 h\n  includes b\naccess b "B"\n  remove 1 h\n  includes a\n'), 'circular')).toContain('includes');
  });

  test('a job that two need is no circle', () => {
    expect(told(read('labour a "A" 1 h\n  needs b, c\nlabour b "B" 1 h\n  needs d\nlabour c "C" 1 h\n  needs d\nlabour d "D" 1 h\n'))).toEqual([]);
  });

  test('forty may stand behind one', () => {
    const chain = (length: number) => read(Array.from({ length }, (_, i) => `labour j${i} "J" 1 h\n${i + 1 < length ? `  needs j${i + 1}\n` : ''}`).join(''));
    const fan = (width: number) => read(`labour top "T" 1 h\n  needs ${Array.from({ length: width }, (_, i) => `j${i}`).join(', ')}\n${Array.from({ length: width }, (_, i) => `labour j${i} "J" 1 h\n`).join('')}`);
    expect(told(chain(41))).toEqual([]);
    expect(told(fan(40))).toEqual([]);
    expect(told(fan(41))).toEqual([['too-much-behind', 'j40']]);
    expect(wordsOf(fan(41), 'too-much-behind')).toContain('more than 40 lines stand behind this one through needs');
    expect(fan(41).estimate.labour[0]?.needs).toHaveLength(40);
    expect(told(chain(43)).map(([code]) => code)).toContain('too-much-behind');
  });
});

/** Resolves texts one after the other as an editor does: what didn't change keeps its identity. */
function typed(...texts: readonly string[]): Resolved[] {
  let tree: Tree | undefined;
  return texts.map((text) => {
    tree = tree === undefined ? parse('e.yard', text) : reparse(tree, text);
    const now = tree;
    return resolve('e.yard', { treeOf: (uri) => (uri === 'e.yard' ? now : 'missing'), resolvePath: (_from, path) => path });
  });
}

/** All that an estimate says, without places and what is kept by them. */
function everything(one: Resolved): unknown {
  const leftOut = new Set(['at', 'record', 'held', 'source', 'wayAt', 'block']);
  return [told(one), JSON.parse(JSON.stringify(one.estimate, (key, value: unknown) => (leftOut.has(key) ? undefined : value instanceof Map ? [...value.values()] : value instanceof Set ? [...value] : value)))];
}

describe('typing', () => {
  const text = `${SHOP}part seal "Seal" 1.00 new\npart gasket "Gasket" 2.00 new\nlabour drain "Drain" 1 h\nlabour pump "Pump" 2 h\n  needs drain\n  uses seal\nlabour wash "Wash" 1 h\noption o "O"\n  do pump\n`;
  const summary = ({ estimate, ...rest }: Resolved) => [told(rest), estimate.labour.map(({ name, needs, parts, modes }) => [name, called(needs), called(parts), modes.map(({ hours }) => hours.likely.toFixed())]), estimate.options.map(({ name, labour, parts }) => [name, called(labour), called(parts)])];

  test.each([
    ['hours', text.replace('drain "Drain" 1 h', 'drain "Drain" 3 h')],
    ['a name', text.replace('labour wash', 'labour wash-it')],
    ['a name that others need', text.replace('labour drain', 'labour drane')],
    ['two names the one for the other', text.replace('labour drain "Drain"', 'labour wash "Drain"').replace('labour wash "Wash"', 'labour drain "Wash"')],
    ['what is used', text.replace('uses seal', 'uses gasket')],
    ['a line less', text.replace('labour wash "Wash" 1 h\n', '')],
    ['a line more', text.replace('option o', 'labour more "More" 1 h\noption o')],
    ['the shop', text.replace('100.00', '110.00')],
    ['another kind', text.replace('part gasket "Gasket" 2.00 new', 'sublet gasket "Gasket" 2.00')],
    ['a chance', text.replace('labour wash "Wash" 1 h\n', 'labour wash "Wash" 1 h\n  chance c "C" 5%\n    do drain\n')],
    ['a title that can’t be read', text.replace('"Drain" 1 h', '"Drain 1 h')],
  ])('%s, there and back, says what reading it anew says', (_, changed) => {
    const [first, then, back] = typed(text, changed, text);
    expect(summary(then as Resolved)).toEqual(summary(resolved(changed)));
    expect(summary(back as Resolved)).toEqual(summary(first as Resolved));
    expect(summary(first as Resolved)).toEqual(summary(resolved(text)));
  });

  test.each<readonly [what: string, from: string, to: string]>([
    ['hours of a way in', 'remove 2 h', 'remove 3 h'], ['hours of a way in that it includes', 'remove 1 h', 'remove 4 h'], ['a chance', '5%', '6%'], ['a finding', '"Seen"', '"Heard"'], ['a tool', '60.00', '70.00'], ['outside work', '9.00', '8.00'],
    ['a part of a stage', '4.00', '5.00'], ['a rate', '100.00', '110.00'], ['a fee', '80.00', '90.00'], ['the title of an option', '"One"', '"Won"'], ['what was authorised', '940.00', '950.00'], ['the day it was written', '2026-11-24', '2026-11-27'], ['what was clocked', 'clocked own', 'clocked main'],
  ])('%s shows in all that rests on it', (_, from, to) => {
    const whole = 'steelyard 1\nshop "S"\n  rate r 100.00\nestimate "E"\n  written 2026-11-24\naccess low "Low"\n  remove 1 h\naccess out "Out"\n  remove 2 h\n  includes low\nfinding seen "Seen"\ntool lock "Lock" 60.00\nsublet face "Face" 9.00\npart set "Set" 4.00 new\nfee tow "Tow" 80.00\nlabour own "Own" 1 h\n  uses set\nlabour main "Main" 5 h with out\n  uses face\n  needs lock\n  because seen\n  chance c "C" 5%\n    do own\nstage look "Look"\n  do own\n  put back 1 h\noption o "One"\n  do main, own\n  charge tow\nauthorised 940.00 for o on 2026-11-26\nclosed for o on 2026-12-09\n  clocked own 2 h\n';
    const changed = whole.replace(from, to);
    expect(changed).not.toBe(whole);
    const [, then] = typed(whole, changed) as [Resolved, Resolved];
    expect(everything(then)).toEqual(everything(resolved(changed)));
  });

  test('what a change doesn’t reach keeps its identity, and what rests on it doesn’t', () => {
    const [before, after] = typed(text, text.replace('drain "Drain" 1 h', 'drain "Drain" 3 h')) as [Resolved, Resolved];
    const kept = (of: 'labour' | 'parts' | 'options') => before.estimate[of].map((one, i) => [one.name, one === after.estimate[of][i]]);
    expect(kept('parts')).toEqual([['seal', true], ['gasket', true]]);
    expect(kept('labour')).toEqual([['drain', false], ['pump', false], ['wash', true]]);
    expect(kept('options')).toEqual([['o', false]]);
    const [first, second] = typed(text, text.replace('gasket "Gasket" 2.00', 'gasket "Gasket" 3.00')) as [Resolved, Resolved];
    expect(first.estimate.options[0]).toBe(second.estimate.options[0]);
    expect(first.estimate.labour).toEqual(second.estimate.labour);
    expect(first.estimate.labour.every((one, i) => one === second.estimate.labour[i])).toBe(true);
  });

  test('a fault is told again after every key, and no more once it is mended', () => {
    const wrong = text.replace('uses seal', 'uses seel');
    const [one, two, three, four] = typed(wrong, `${wrong}\n`, wrong.replace('wash "Wash" 1 h', 'wash "Wash" 2 h'), text) as [Resolved, Resolved, Resolved, Resolved];
    for (const after of [one, two, three]) expect(told(after)).toEqual([['unknown-name', 'seel']]);
    expect(told(four)).toEqual([]);
  });
});
