import { describe, expect, test } from 'vitest';
import { after, BENCH, cursorIn, labels } from './cursor.js';

/** Chances stand below other lines, one of them below another chance. */
const CHANCES = `${BENCH}labour strip "Strip" 3 h with out
  chance cracked "It is cracked" 12%
    fit bolts
    chance guides "Its guides are worn" 40%
      send face
`;

const taken: readonly (readonly [string, string, string])[] = [
  ['inspect dye "Dye" 20.00\n  $0', 'finds', '  finds cracked 90%'],
  ['inspect dye "Dye" 20.00\n  finds $0', 'guides', '  finds guides'],
  ['inspect dye "Dye" 20.00\n  finds cr$0 90%', 'guides', '  finds guides 90%'],
  ['inspect dye "Dye" 20.00\n  finds cracked 90 $0', '%', '  finds cracked 90 %'],
  ['inspect dye "Dye" 20.00\n  finds cracked 90% $0', 'wrongly', '  finds cracked 90% wrongly 5%'],
  ['inspect dye "Dye" 20.00 $0', 'class', 'inspect dye "Dye" 20.00 class bench'],
  ['labour x "X" 3 h\n  after $0', 'strip', '  after strip'],
  ['labour x "X" 3 h\n  after strip, $0', 'face', '  after strip, face'],
  ['labour x "X" 3 h\n  after $0', 'seal', '  after seal'],
  ['sublet y "Y" 3.00 after $0', 'strip', 'sublet y "Y" 3.00 after strip'],
  ['labour x "X" 3 h ap$0', 'apart after', 'labour x "X" 3 h apart after 4.5 h'],
  ['labour x "X" 3 h\n  apart $0', 'apart after', '  apart after 4.5 h'],
  ['labour x "X" 3 h\n  apart after 2 $0', 'min', '  apart after 2 min'],
  ['labour x "X" 3 h\n  done $0', 'last', '  done last'],
  ['labour x "X" 3 h\n  $0', 'chance', '  chance cracked-2 "The head is cracked between the seats"'],
  ['access z "Z"\n  $0', 'chance …', '  chance cracked-2 "The head is cracked between the seats" 12%\n    part "Bare head casting" 690.00 used arrives 5 d'],
  ['labour x "X" 3 h\n  chance y "Y" 5% $0', 'comeback', 'labour x "X" 3 h\n  chance y "Y" 5% comeback'.split('\n')[1] as string],
  ['labour x "X" 3 h\n  chance y "Y" 5%\n    do $0', 'head', '    do head'],
  ['labour x "X" 3 h\n  chance y "Y" 5%\n    fit $0', 'seal', '    fit seal'],
  ['labour x "X" 3 h\n  chance y "Y" 5%\n    send $0', 'face', '    send face'],
  ['labour x "X" 3 h\n  chance y "Y" 5%\n    charge $0', 'tow', '    charge tow'],
  ['labour x "X" 3 h\n  chance y "Y" 5%\n    chance z "Z" 3%\n      f$0', 'fit', '      fit seal'],
  ['coverage c "C" $0', 'extended-warranty', 'coverage c "C" extended-warranty'],
  ['coverage c "C" $0', 'built from', 'coverage c "C" built from 2012-06'],
  ['coverage c "C"\n  built $0', 'built to', '  built to 2013-02'],
  ['coverage c "C"\n  up $0', 'up to', '  up to 150000 mi'],
  ['coverage c "C"\n  covers $0', 'fix', '  covers fix'],
  ['coverage c "C"\n  covers fix, $0', 'head', '  covers fix, head'],
  ['vehicle "V"\n  model $0', 'model year', '  model year 2013'],
  ['vehicle "V"\n  unr$0', 'unrepaired', '  unrepaired 1900.00'],
  ['estimate "E"\n  ans$0', 'answer', '  answer 1 d'],
  ['estimate "E"\n  te$0', 'technicians', '  technicians 2'],
];

describe('lines about deciding', () => {
  test.each(taken)('%j takes %j', (marked, label, line) => {
    expect(after(CHANCES + marked, label)).toBe(line);
  });

  test('behind finds stand the chances of the whole estimate, each with how likely it is', () => {
    const { offers } = cursorIn(`${CHANCES}inspect dye "Dye" 20.00\n  finds $0`);
    expect(offers.filter(({ kind }) => kind === 'name').map(({ label, detail }) => `${label}: ${detail ?? ''}`)).toEqual(['cracked: It is cracked — 12 %', 'guides: Its guides are worn — 40 %']);
  });

  test('an option takes no chance in by name, and behind after stands no option', () => {
    expect(labels(`${CHANCES}option x "X"\n  do $0`)).toEqual(['pump', 'head', 'strip']);
    expect(labels(`${CHANCES}labour x "X" 3 h\n  after $0`)).toEqual(['pump', 'head', 'strip', 'face', 'seal', 'bolts']);
  });
});
