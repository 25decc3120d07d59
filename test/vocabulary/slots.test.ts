// What each type of value takes, what it refuses, and where it says so: all types of `values.ts` and `whole-numbers.ts`.
import { describe, expect, test } from 'vitest';
import { jsonOf, messagesOf, said, type Said } from './said.js';

interface Slot {
  /** The line above, up to where the fact stands. */
  readonly above: string;
  readonly key: string;
  /** What may stand there, and what it is as data. */
  readonly takes: readonly (readonly [written: string, json: unknown])[];
  /** What may not, and the one message on it. */
  readonly refuses: readonly (readonly [written: string, ...says: Said])[];
}

const figure = (value: string) => ({ low: value, likely: value, high: value });

const slots: readonly Slot[] = [
  {
    above: 'estimate "E"\n  start ', key: 'start',
    // ISO 8601, the Gregorian calendar: a leap day every fourth year, but not in 2100.
    takes: [['2026-11-30', '2026-11-30'], ['1800-01-01', '1800-01-01'], ['2024-02-29', '2024-02-29'], ['2026-12-31', '2026-12-31'], ['2026-01-01', '2026-01-01'], ['2026-04-30', '2026-04-30']],
    refuses: [
      ['2026-02-30', 'no-such-date', '2026-02-30'], ['2100-02-29', 'no-such-date', '2100-02-29'], ['2026-11-00', 'no-such-date', '2026-11-00'], ['2026-00-11', 'no-such-date', '2026-00-11'],
      ['2026-13-01', 'no-such-date', '2026-13-01'], ['1799-12-31', 'no-such-date', '1799-12-31'], ['2026-11', 'no-such-date', '2026-11'],
      // Another form is one mistake, marked whole.
      ['30/11/2026', 'no-such-date', '30/11/2026'], ['30/11', 'no-such-date', '30/11'], ['30/', 'no-such-date', '30'], ['30.11.2026', 'no-such-date', '30.11.2026'], ['2026/11/30', 'no-such-date', '2026/11/30'],
      ['20261130', 'no-such-date', '20261130'], ['2026-11-30-1', 'no-such-date', '2026-11-30-1'], ['2026-1-1', 'no-such-date', '2026-1-1'], ['12/2026 soon', 'no-such-date', '12/2026'],
      ['2026-11-30/2026-12-01', 'no-such-date', '2026-11-30/2026-12-01'],
      ['soon', 'something-missing', 'soon'], ['"2026-11-30"', 'something-missing', '"2026-11-30"'], [',', 'something-missing', ','], ['', 'something-missing', 'start'],
    ],
  },
  {
    above: 'vehicle "V"\n  built ', key: 'built',
    takes: [['2012-11', '2012-11'], ['2012-12', '2012-12'], ['2012-01', '2012-01'], ['2012-11-30', '2012-11-30']],
    refuses: [['2012-13', 'no-such-date', '2012-13'], ['2012-00', 'no-such-date', '2012-00'], ['2012-11-31', 'no-such-date', '2012-11-31'], ['2012', 'no-such-date', '2012'], ['11/2012', 'no-such-date', '11/2012'], ['', 'something-missing', 'built']],
  },
  {
    above: 'shop "S"\n  closed ', key: 'closed',
    takes: [['sunday', ['sunday']], ['saturday, 2026-12-25', ['saturday', '2026-12-25']], ['2026-12-25,2026-12-26', ['2026-12-25', '2026-12-26']]],
    refuses: [
      ['Saturday', 'not-a-choice', 'Saturday', 'saturday'], ['saterday', 'not-a-choice', 'saterday', 'saturday'], ['holidays', 'not-a-choice', 'holidays'], ['2026-12-32', 'no-such-date', '2026-12-32'],
      // A date in another form is told as one, not as a day of the week.
      ['30/12/2026', 'no-such-date', '30/12/2026'], ['30.12.2026', 'no-such-date', '30.12.2026'], ['2026', 'no-such-date', '2026'], ['2026-1-1', 'no-such-date', '2026-1-1'],
      ['saturday,', 'something-missing', ','], ['saturday sunday', 'unknown-word', 'sunday', 'saturday, sunday'], ['"sunday"', 'not-a-choice', '"sunday"', 'sunday'], ['', 'something-missing', 'closed'],
    ],
  },
  {
    above: 'finding f "F"\n  compression ', key: 'compression',
    takes: [['171 168 173 psi', { values: ['171', '168', '173'], unit: 'psi' }], ['12.5 bar', { values: ['12.5'], unit: 'bar' }]],
    refuses: [
      ['171', 'unit-missing', '171'], ['171 168', 'unit-missing', '171 168'], ['171 168 %', 'wrong-unit', '%'], ['171 h', 'wrong-unit', 'h'], ['171 lbs', 'wrong-unit', 'lbs'], ['171 168 PSI', 'wrong-unit', 'PSI', 'psi'], ['171 kpa', 'wrong-unit', 'kpa', 'kPa'],
      ['171, 168 psi', 'readings-divided', '171, 168', '171 168'], ['171, 168, 170 psi', 'readings-divided', '171, 168, 170', '171 168 170'], ['171 168, 170 psi', 'readings-divided', '171 168, 170', '171 168 170'], ['171, psi', 'readings-divided', '171,', '171'], ['171 / 168 / 170 psi', 'wrong-unit', '/'], ['171,168 psi', 'thousands-comma', '171,168', '171168'], ['171 $168 psi', 'currency-sign', '$168', '168'],
      ['171 168psi', 'glued-unit', '168psi', '168 psi'], ['psi', 'something-missing', 'psi'], ['"171 psi"', 'something-missing', '"171 psi"'], ['', 'something-missing', 'compression'],
    ],
  },
  {
    above: 'finding f "F"\n  leakage ', key: 'leakage',
    takes: [['8 9 %', { values: ['8', '9'], unit: '%' }], ['8 9%', { values: ['8', '9'], unit: '%' }]],
    refuses: [['8 9', 'unit-missing', '8 9'], ['8 psi', 'wrong-unit', 'psi'], ['8% 9%', 'unknown-word', '9']],
  },
  {
    above: 'finding f "F"\n  seen by ', key: 'seenBy',
    takes: [['borescope', 'borescope'], ['"the driver, on the road"', 'the driver, on the road'], ['2-stage', '2-stage']],
    refuses: [['5', 'something-missing', '5'], [',', 'something-missing', ','], ['', 'something-missing', 'by'], ['the driver', 'unknown-word', 'driver']],
  },
  {
    above: 'finding f "F"\n  debris ', key: 'debris',
    takes: [['none', 'none'], ['magnetic', 'magnetic'], ['non-magnetic', 'non-magnetic']],
    refuses: [['magnetc', 'not-a-choice', 'magnetc', 'magnetic'], ['toString', 'not-a-choice', 'toString'], ['5', 'not-a-choice', '5'], ['"magnetic"', 'not-a-choice', '"magnetic"', 'magnetic'], ['', 'something-missing', 'debris'], ['none magnetic', 'unknown-word', 'magnetic']],
  },
  {
    above: 'finding f "F"\n  code ', key: 'codes',
    takes: [['P0304', ['P0304']], ['0301, 0420', ['0301', '0420']], ['U0100', ['U0100']]],
    refuses: [['0301,0420', 'glued-comma', '0301,0420', '0301, 0420'], ['"P0304"', 'something-missing', '"P0304"'], [',', 'something-missing', ','], ['P0304,', 'something-missing', ','], ['', 'something-missing', 'code']],
  },
  {
    above: 'finding f "F"\n  picture ', key: 'pictures',
    takes: [['"a.png"', ['a.png']], ['"a.png", "b.png"', ['a.png', 'b.png']], ['"a.png","b.png"', ['a.png', 'b.png']]],
    refuses: [['a.png', 'something-missing', 'a.png'], ['"a.png" "b.png"', 'unknown-word', '"b.png"', '"a.png", "b.png"'], ['', 'something-missing', 'picture']],
  },
  {
    above: 'estimate "E"\n  technicians ', key: 'technicians',
    takes: [['1', figure('1')], ['50', figure('50')], ['2 / 2 / 2', figure('2')], ['3.0', figure('3')]],
    refuses: [['0', 'not-whole', '0'], ['51', 'not-whole', '51'], ['1.5', 'not-whole', '1.5'], ['1 / 2 / 3', 'not-whole', '1 / 2 / 3'], ['2 h', 'wrong-unit', 'h'], ['two', 'something-missing', 'two'], ['', 'something-missing', 'technicians']],
  },
  {
    above: 'vehicle "V"\n  model year ', key: 'modelYear',
    takes: [['1885', figure('1885')], ['2013', figure('2013')], ['2200', figure('2200')]],
    refuses: [
      ['1884', 'not-whole', '1884'], ['2201', 'not-whole', '2201'], ['2013.5', 'not-whole', '2013.5'], ['13', 'not-whole', '13'], ['', 'something-missing', 'year'],
      // Years without a space between them are no thousands.
      ['2013,2014', 'glued-comma', '2013,2014', '2013, 2014'], ['2013,2014,2015', 'glued-comma', '2013,2014,2015', '2013, 2014, 2015'],
      ['2013,201', 'thousands-comma', '2013,201', '2013.201'], ['22013,2014', 'thousands-comma', '22013,2014', '22013.2014'],
    ],
  },
  {
    above: 'labour l "L" 1 h\n  class ', key: 'class',
    takes: [['bench', 'bench'], ['a-2', 'a-2']],
    refuses: [['5', 'something-missing', '5'], ['"bench"', 'something-missing', '"bench"'], ['m_1', 'something-missing', 'm_1'], ['', 'something-missing', 'class'], ['bench, body', 'unknown-word', ',']],
  },
  {
    above: 'labour l "L" 1 h\n  needs ', key: 'needs',
    takes: [['a', ['a']], ['a, b,c', ['a', 'b', 'c']]],
    refuses: [['a b', 'unknown-word', 'b', 'a, b'], ['a and b', 'unknown-word', 'and', 'a, b'], ['a,', 'something-missing', ','], [',a', 'something-missing', ','], ['a,5', 'something-missing', '5'], ['a, "b"', 'something-missing', '"b"'], ['', 'something-missing', 'needs']],
  },
  {
    above: 'shop "S"\n  phone ', key: 'phone',
    takes: [['"555 0100"', '555 0100'], ['""', '']],
    refuses: [['555', 'something-missing', '555'], ['', 'something-missing', 'phone']],
  },
];

describe.each(slots)('$key', ({ above, key, takes, refuses }) => {
  test.each(takes)('takes %s', (written, json) => {
    expect(said(`${above}${written}\n`)).toEqual([]);
    expect(jsonOf(`${above}${written}\n`)).toMatchObject({ [key]: json });
  });

  test.each(refuses)('refuses %s', (written, ...says) => {
    expect(said(`${above}${written}\n`)).toEqual([says]);
  });
});

describe('a strange character on a line has its message already', () => {
  test.each(['estimate "E"\n  interest ‘6%', 'labour l "L" 1 h\n  class ‘bench', 'finding f "F"\n  debris ‘none', 'vehicle "V"\n  worth ‘'])('%j', (text) => {
    expect(said(`${text}\n`).map(([code]) => code)).toEqual(['strange-character']);
  });
});

describe('a message says what may stand there', () => {
  test.each([
    ['finding f "F"\n  debris\n', 'none, magnetic, non-magnetic'],
    ['finding f "F"\n  debris lead\n', 'none, magnetic, non-magnetic'],
    ['finding f "F"\n  compression 171\n', 'psi, bar, kPa'],
    ['finding f "F"\n  compression 171 h\n', 'psi, bar, kPa'],
    ['finding f "F"\n  leakage 8\n', '%'],
    ['estimate "E"\n  technicians 0\n', '2'],
  ])('%j', (text, part) => {
    const [message] = messagesOf(text);
    expect(`${message?.what} ${message?.instead}`).toContain(part);
  });

  test('of which kinds a name is', () => {
    expect(messagesOf('labour l "L" 1 h\n  class\n')[0]?.what).toContain('the name of a rate line');
    expect(messagesOf('labour l "L" 1 h\n  with\n')[0]?.what).toContain('the name of an access line');
    expect(messagesOf('labour l "L" 1 h\n  needs\n')[0]?.what).toContain('the name of a labour or a tool line');
  });
});
