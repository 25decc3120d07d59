import { describe, expect, test } from 'vitest';
import { read, readSound } from './weighed.js';

// What is said of an option beside its lines: what it gives up, its cautions, the order by cost, and what is wrong with it.
// 100.00 an hour; sums by hand.

const HEAD = 'steelyard 1\nshop "S"\n  rate bench 100.00\n';
const codes = (text: string) => read(HEAD + text).comparison.problems.map(({ code }) => code);
const told = (text: string, code: string) => read(HEAD + text).diagnostics.filter((one) => one.code === code).map(({ text: words }) => words);

describe('worth', () => {
  const two = (first = '', second = '', vehicle = '') => `${vehicle}option one "One"\n  labour "W" 10 h\n${first}option two "Two"\n  labour "V" 5 h\n${second}`;
  const sums = (text: string) => read(HEAD + text).comparison.options.map(({ net, worthAfter, givenUp, inAll }) => [net, worthAfter, givenUp, inAll].map((figure) => figure?.likely.toFixed() ?? '-').join(' '));
  const ranking = (text: string) => read(HEAD + text).comparison.ranking.map(({ option }) => option.name);

  test('that an option gives up beside the one that leaves the most is part of its cost, and of the order', () => {
    const text = two('  worth 9000.00\n', '  worth 8000.00\n');
    expect(sums(text)).toEqual(['1000 9000 0 1000', '500 8000 1000 1500']);
    expect(ranking(text)).toEqual(['one', 'two']);
    expect(ranking(two('  worth 9000.00\n', '  worth 8900.00\n'))).toEqual(['two', 'one']);
  });

  test('of the vehicle is that of an option which says none', () => {
    expect(sums(two('  worth 9000.00\n', '', 'vehicle "V"\n  worth 8000.00\n'))).toEqual(['1000 9000 0 1000', '500 8000 1000 1500']);
  });

  test('is not compared where an option has none', () => {
    expect(sums(two('  worth 9000.00\n'))).toEqual(['1000 9000 - 1000', '500 - - 500']);
    expect(sums(two())).toEqual(['1000 - - 1000', '500 - - 500']);
  });
});

describe('the access penalty', () => {
  test('is what the option costs more than the same work on a stand, in money and in hours', () => {
    const { penalty } = readSound(`${HEAD}access up "Up"\n  remove 2 h\n  refit 1 h\nlabour w "W"\n  takes 9 h\n  takes 1.5 h with up\noption one "One"\n  do w\n`).option('one');
    expect([penalty.money, penalty.hours].map(({ likely }) => likely.toFixed())).toEqual(['300', '3']);
  });
});

describe('cautions', () => {
  test('are those of the option, of the ways in that it pays for and of its work, each once', () => {
    const text = `access up "Up"\n  remove 1 h\n  caution lifting\naccess off "Off"\n  remove 20 h\n  caution refrigerant\nlabour w "W"\n  takes 30 h\n  takes 1 h with up\n  takes 1 h with off\n  caution fuel, lifting\nlabour v "V" 1 h\n  caution battery\noption one "One"\n  do w\n  caution coolant\n`;
    expect([...readSound(HEAD + text).option('one').cautions].sort()).toEqual(['coolant', 'fuel', 'lifting']);
  });

  // Common practice: an engine comes out on lifting gear, its fuel lines opened and the battery off; new oil and coolant leave old ones.
  test.each([
    ['labour w "Engine out"\n  takes 8 h\noption one "One"\n  do w\n', ['battery', 'fuel', 'lifting']],
    ['access out "Engine lifted out"\n  remove 6 h\n  part "Coolant" 20.00 new\nlabour w "W" 2 h with out\noption one "One"\n  do w\n', ['battery', 'coolant', 'fuel', 'lifting']],
    ['access out "Engine lifted out" counts as nothing\n  remove 6 h\nlabour w "W" 2 h with out\noption one "One"\n  do w\n', []],
    ['access out "Engine lifted out"\n  remove 6 h\nlabour w "W"\n  takes 2 h\n  takes 1 h with out\noption one "One"\n  do w\n', []],
    ['labour w "W" 2 h\n  uses oil\npart oil "Engine oil" 40.00 new\noption one "One"\n  do w\n', ['oil']],
    ['option one "One"\n  labour "W" 2 h\n  part "Oil filter" 9.00 new\n  fee "Refrigerant: recovered" 60.00\n', ['oil', 'refrigerant']],
    ['labour w "W" 2 h counts as oil-pan\noption one "One"\n  do w\n  caution oil, solvents\n', ['oil', 'solvents']],
    ['option one "One"\n  sublet "Oil cooler: flush" 60.00\n', ['oil']],
  ])('follow from what the lines stand for: %s', (text, wanted) => {
    expect([...readSound(HEAD + text).option('one').cautions].sort()).toEqual(wanted);
  });
});

describe('what only weighing can find', () => {
  test('nothing, where nothing is wrong', () => {
    expect(codes('option one "One"\n  labour "W" 1 h\n')).toEqual([]);
    expect(codes(`labour a "A" 1 h\nlabour b "B" 1 h\n  after a\nsublet skim "Skim" 20.00 back in 1 d\n  after b\noption one "One"\n  do a, b\n  send skim\n`)).toEqual([]);
  });

  test('work that waits for itself, beside work that doesn’t', () => {
    const text = (after: string) => `labour c "C" 1 h\nlabour a "A" 1 h\n  after b\nlabour b "B" 1 h\n${after}option one "One"\n  do c, a, b\n`;
    expect([codes(text('')), codes(text('  after a\n'))]).toEqual([[], ['order-circle']]);
  });

  test('outside work that waits for itself, told as a chain that comes back to where it began', () => {
    const sublets = 'sublet skim "Skim" 20.00 back in 1 d\n  after bore\nsublet bore "Bore" 30.00 back in 1 d\n  after skim\n';
    const [words, ...others] = told(`${sublets}option one "One"\n  labour "W" 1 h\n  send skim, bore\n  sublet "Wash" 9.00 back in 1 d\n`, 'order-circle');
    expect(others).toEqual([]);
    const [, chain = ''] = /wait for each other: (.*?)\./.exec(words ?? '') ?? [];
    const names = chain.split(' → ');
    expect([names.length, names[0], [...new Set(names)].length]).toEqual([3, names[2], 2]);
  });

  test('also where the way in brings it along, and not where that way in is not paid for', () => {
    const text = (hours: number) => `sublet skim "Skim" 20.00 back in 1 d\n  after bore\nsublet bore "Bore" 30.00 back in 1 d\n  after skim\naccess up "Up"\n  remove ${hours} h\n  uses skim, bore\nlabour w "W"\n  takes 5 h\n  takes 1 h with up\noption one "One"\n  do w\n`;
    expect([codes(text(1)), codes(text(9))]).toEqual([['order-circle'], []]);
  });

  test('chances beyond the twelve that can be worked out together', () => {
    const text = (count: number) => `option one "One"\n  labour "W" 1 h\n${Array.from({ length: count }, (_, i) => `  chance "C${i}" 5%\n    part "P${i}" 4.00 new\n`).join('')}`;
    expect([codes(text(12)), codes(text(13))]).toEqual([[], ['too-many-chances']]);
    expect(told(text(14), 'too-many-chances')).toEqual([expect.stringContaining('has 14 chances') as string]);
    expect(told(text(14), 'too-many-chances')).toEqual([expect.stringContaining('up to 12') as string]);
  });

  test('work out of reach: what it takes, and whether the ways in are pinned', () => {
    const ways = 'access up "Up"\n  remove 1 h\naccess off "Off"\n  remove 1 h\naccess out "Out"\n  remove 4 h\nlabour w "W"\n  takes 4 h with up, off\n  takes 2 h with out\n';
    expect(told(`${ways}option one "One"\n  do w\n  way in-car\n`, 'no-way-in')).toEqual([expect.stringMatching(/with the ways in that it pins\..*takes up and off, or out: add that to the way line/) as string]);
    // What a stage can't reach is said at the stage.
    expect(told(`${ways}stage look "Look"\n  do w\noption one "One"\n  labour "V" 1 h\n`, 'no-way-in')).toEqual([]);
  });
});

test('work to consider is not weighed against a plan that could not be chosen', () => {
  const names = Array.from({ length: 13 }, (_, i) => `w${i}`);
  const text = (count: number) => `${names.map((name, i) => `access ${name} "${name}"\n  remove ${i + 1} h\n`).join('')}labour w "W"\n  takes 30 h\n${names.slice(0, count).map((name) => `  takes 1 h with ${name}\n`).join('')}labour pump "Pump" 1 h with w0\nconsider pump\noption one "One"\n  do w\n`;
  expect([read(HEAD + text(2)), read(HEAD + text(13))].map((found) => found.option('one').open.map(({ job }) => job.title))).toEqual([['Pump'], []]);
  const many = read(HEAD + text(13));
  expect([many.option('one').complete, many.diagnostics.filter(({ code }) => code === 'too-many-ways').map(({ text: words }) => words)]).toEqual([false, [expect.stringMatching(/names 13 ways in; .* for up to 12\./) as string]]);
});
