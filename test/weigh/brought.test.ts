import { describe, expect, test } from 'vitest';
import { broughtBy, type Line } from '../../src/weigh/index.js';
import { readSound } from './weighed.js';

// What a chance adds to an option that has something of it already. 100.00 an hour, sums by hand. Common practice: what is open, hired, fitted or
// done for the option is there for what turns up too, and is charged once.

const HEAD = 'steelyard 1\nshop "S"\n  rate bench 100.00\n';
const way = (name: string, hours: number, more = '') => `access ${name} "${name}"\n  remove ${hours} h\n${more}`;
const more = (...modes: readonly string[]) => `labour more "More"\n${modes.map((mode) => `  takes ${mode}\n`).join('')}`;

/** What the one chance of option `one` brings: ways in, then lines with their amounts. */
function brings(text: string): { readonly ways: readonly (string | undefined)[]; readonly jobs: readonly string[]; readonly goods: readonly string[]; readonly opened: readonly string[]; readonly fees: readonly string[] } {
  const { option, comparison: { estimate, money } } = readSound(HEAD + text);
  const weighed = option('one');
  const [chance] = weighed.option.chances;
  if (chance === undefined) throw new Error('no chance');
  const { ways, jobs, goods, opened, fees } = broughtBy(chance, weighed, estimate, money);
  const told = (lines: readonly Line[]) => lines.map(({ title, amount }) => `${title} ${amount.likely.toFixed()}`);
  return { ways: ways.map(({ name }) => name), jobs: told(jobs.map(({ line }) => line)), goods: told(goods), opened: told(opened), fees: told(fees) };
}

const NOTHING = { ways: [], jobs: [], goods: [], opened: [], fees: [] };
const one = (below: string, chance: string) => `option one "One"\n${below}  chance "Worn" 20%\n${chance}`;

describe('work that turns up', () => {
  const UP = `${way('up', 2)}labour w "W" 1 h with up\n`;

  test('is done with the ways in that are open, and with what these give', () => {
    expect(brings(`${UP}${more('5 h', '1.5 h with up')}${one('  do w\n', '    do more\n')}`)).toEqual({ ...NOTHING, jobs: ['More 150'] });
    const out = `${way('up', 2)}${way('out', 6, '  includes up\n')}labour w "W" 1 h with out\n`;
    expect(brings(`${out}${more('5 h', '1.5 h with up')}${one('  do w\n', '    do more\n')}`)).toEqual({ ...NOTHING, jobs: ['More 150'] });
  });

  test('opens nothing where it can be done without', () => {
    expect(brings(`${way('up', 1)}labour w "W" 1 h\n${more('9 h', '1 h with up')}${one('  do w\n', '    do more\n')}`)).toEqual({ ...NOTHING, jobs: ['More 900'] });
  });

  test('takes its own cheapest way where none that is open will do, beside those that are', () => {
    expect(brings(`${UP}${way('off', 3)}${way('side', 2)}${more('1 h with off', '1.5 h with side')}${one('  do w\n', '    do more\n')}`)).toEqual({ ...NOTHING, ways: ['side'], jobs: ['More 150'], opened: ['side: remove 200'] });
    expect(brings(`${UP}${way('off', 3)}${more('1 h with up, off')}${one('  do w\n', '    do more\n')}`)).toEqual({ ...NOTHING, ways: ['off'], jobs: ['More 100'], opened: ['off: remove 300'] });
    const out = `${way('up', 2)}${way('out', 6, '  includes up\n')}labour w "W" 1 h\n`;
    expect(brings(`${out}${more('1 h with up')}${one('  do w\n', '    do more\n')}`)).toMatchObject({ ways: ['up'], jobs: ['More 100'] });
    // The other job of the chance that needs it is done in what the way gives.
    expect(brings(`${out}${more('1 h with out')}labour also "Also"\n  takes 4 h\n  takes 0.5 h with up\n${one('  do w\n', '    do more, also\n')}`)).toEqual({ ...NOTHING, ways: ['out'], jobs: ['More 100', 'Also 50'], opened: ['out: remove 600'] });
  });

  test('is not done again where the option does it', () => {
    expect(brings(`${UP}${more('1 h with up')}${one('  do w, more\n', '    do more\n    labour "Extra" 2 h\n')}`)).toEqual({ ...NOTHING, jobs: ['Extra 200'] });
  });
});

describe('which way in is the cheapest for what turns up', () => {
  // Off takes 3 h; side takes 2 h, and needs something of 150.00 besides.
  const ways = (need: string) => `${way('off', 3)}${way('side', 2, need)}${more('1 h with off', '1 h with side')}labour w "W" 1 h\n`;
  const taken = (lines: string, need: string, below: string, chance = '') => {
    const { ways: [name], opened } = brings(`${lines}${ways(need)}${one(`  do w\n${below}`, `    do more\n${chance}`)}`);
    return [name, ...opened];
  };
  const PART = 'part bolts "Bolts" 150.00 new\n';
  const SENT = 'sublet gas "Gas" 150.00\n';
  const TOOL = 'tool table "Table" 150.00\nlabour v "V" 1 h\n  needs table\n';
  const BESIDE = (need: string) => `${way('first', 1, need)}labour z "Z" 1 h with first\n`;

  test('hangs on the parts that are fitted anyway', () => {
    expect(taken(PART, '  uses bolts\n', '')).toEqual(['off', 'off: remove 300']);
    for (const [lines, below, chance] of [['', '  fit bolts\n', ''], ['', '', '    fit bolts\n'], [BESIDE('  uses bolts\n'), '  do z\n', '']] as const) expect(taken(PART + lines, '  uses bolts\n', below, chance)).toEqual(['side', 'side: remove 200']);
  });

  test('and on outside work', () => {
    expect(taken(SENT, '  uses gas\n', '')).toEqual(['off', 'off: remove 300']);
    for (const [lines, below, chance] of [['', '  send gas\n', ''], ['', '', '    send gas\n'], [BESIDE('  uses gas\n'), '  do z\n', '']] as const) expect(taken(SENT + lines, '  uses gas\n', below, chance)).toEqual(['side', 'side: remove 200']);
  });

  test('and on tools', () => {
    expect(taken(TOOL, '  needs table\n', '')).toEqual(['off', 'off: remove 300']);
    for (const [lines, below, chance] of [['', '  do v\n', ''], ['', '', '    do v\n'], [BESIDE('  needs table\n'), '  do z\n', '']] as const) expect(taken(TOOL + lines, '  needs table\n', below, chance)).toEqual(['side', 'side: remove 200']);
  });
});

describe('goods and fees that turn up', () => {
  const GOODS = 'part ring "Ring" 9.00 new\nsublet skim "Skim" 60.00\ntool puller "Puller" 40.00\nlabour pull "Pull" 1 h\n  needs puller\nlabour w "W" 1 h\n';

  test('are those that the option does not have', () => {
    expect(brings(`${GOODS}${one('  do w\n', '    do pull\n    fit ring\n    send skim\n')}`)).toEqual({ ...NOTHING, jobs: ['Pull 100'], goods: ['Ring 9', 'Skim 60', 'Puller: hire 40'] });
    expect(brings(`${GOODS}${one('  do w\n  fit ring\n', '    do pull\n    fit ring\n    send skim\n')}`).goods).toEqual(['Skim 60', 'Puller: hire 40']);
    expect(brings(`${GOODS}${one('  do w, pull\n  send skim\n', '    do pull\n    fit ring\n    send skim\n')}`)).toEqual({ ...NOTHING, goods: ['Ring 9'] });
  });

  test('of a way in that is opened for it are charged once, with the chance where that has them too', () => {
    const up = `${GOODS}${way('up', 1, '  uses ring, skim\n')}${more('1 h with up')}`;
    expect(brings(`${up}${one('  do w\n', '    do more\n')}`)).toEqual({ ...NOTHING, ways: ['up'], jobs: ['More 100'], opened: ['up: remove 100', 'Ring 9', 'Skim 60'] });
    expect(brings(`${up}${one('  do w\n  send skim\n', '    do more\n    fit ring\n')}`)).toEqual({ ...NOTHING, ways: ['up'], jobs: ['More 100'], goods: ['Ring 9'], opened: ['up: remove 100'] });
  });

  test('bring no core charge, which comes back in full, but the time to put the old unit together', () => {
    const part = '    part "Unit" 80.00 rebuilt\n      core 50.00\n        assemble 0.5 h\n';
    expect(brings(`${GOODS}${one('  do w\n', part)}`).goods).toEqual(['Unit 80', expect.stringMatching(/^.*50$/)]);
    expect(brings(`${GOODS}${one('  do w\n', part)}`).goods).toHaveLength(2);
  });

  test('percentages are of the work and goods of the chance, not of the option nor of getting in', () => {
    const fees = (chance: string, of: string) => brings(`${GOODS}${way('up', 1, '  uses ring\n')}${more('1.5 h with up')}${one('  do w\n', `${chance}    fee "Supplies" 10% of ${of}\n`)}`).fees;
    const all = '    do more\n    part "Seal" 20.00 new\n    send skim\n';
    expect(['labour', 'parts', 'sublets', 'labour, parts, sublets'].map((of) => fees(all, of))).toEqual([['Supplies 15'], ['Supplies 2'], ['Supplies 6'], ['Supplies 23']]);
    expect(brings(`${GOODS}${one('  do w\n', '    fit ring\n    fee "Freight" 12.00\n    fee "Tow" 2 at 30.00\n')}`).fees).toEqual(['Freight 12', 'Tow 60']);
  });
});
