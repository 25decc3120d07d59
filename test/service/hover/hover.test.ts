import { describe, expect, test } from 'vitest';
import { uriOf, serviceOver } from '../../support/fixture.js';
import { allKinds, type Field } from '../../../src/vocabulary/index.js';

const SHOP = 'steelyard 1\nshop "Bench"\n  currency USD\n  rate bench "Bench" 132.00\n';
const TEXT = `steelyard 1
use "shop.yard"
finding low "Cylinder low"
  rules out used
access lifted "Engine lifted"
  remove 1 h
  refit 1.5 h
access out "Engine out"
  includes lifted
  remove 5 / 6 / 8 h
  refit 6 h
labour pump "Coolant pump"
  takes 9 h
  takes 1.6 h with out
  because low
  uses seal
labour head "Head" 4.5 / 5.5 / 8 h with out because low
labour belt "Belt" 1 h with lifted
part seal "Seal" 2 at 5.85 new  arrives 3 d  warranty 30 d
option fix "Fix"
  do pump, head, belt
option used "Used"
  do pump
  way in-car
`;
const { service } = serviceOver({ 'estimate.yard': TEXT, 'shop.yard': SHOP });

/** What is said at the cursor of a line of the text, and what it is said of. */
function over(marked: string): { readonly says: readonly string[]; readonly of: string } {
  const line = marked.replace('$0', '');
  const at = TEXT.indexOf(line);
  if (at < 0) throw new Error(`No such line: ${line}`);
  const hover = service.hover(uriOf('estimate.yard'), at + marked.indexOf('$0'));
  return { says: hover?.paragraphs ?? [], of: hover === undefined ? '' : TEXT.slice(hover.range.start, hover.range.end) };
}

describe('a word', () => {
  test('of a kind says what it means, with its example', () => {
    const { says, of } = over('part se$0al "Seal"'.replace('part se$0', 'pa$0rt se'));
    expect(of).toBe('part');
    expect(says.join('\n')).toContain('part: A part, fluid or consumable.');
    expect(says.join('\n')).toContain('For example:\npart head-bolts');
  });

  test('of a fact, on a line of its own or behind others', () => {
    expect(over('  beca$0use low').says).toContain('because: The findings it rests on.');
    expect(over('arr$0ives 3 d').of).toBe('arrives');
    expect(over('rules o$0ut used').of).toBe('rules out');
    expect(over('ru$0les out used').of).toBe('rules out');
  });

  test('of a choice', () => {
    expect(over('5.85 ne$0w').says.join('\n')).toContain('new: New, from the vehicle’s maker');
    expect(over('way in-c$0ar').says.join('\n')).toContain('in-car: With the engine in its place.');
  });

  test('every kind and every fact of the vocabulary has something to say', () => {
    for (const kind of allKinds) {
      expect(kind.says + kind.example).not.toBe('');
      for (const field of Object.values(kind.fields)) expect((field as Field).says).not.toBe('');
    }
  });
});

describe('a line', () => {
  test('its amount, how it was made, and in which options', () => {
    expect(over('takes 1.$06 h with out').says).toContain('Coolant pump: 211.20 for 1.6 h with out = 1.6 h × 132.00 — in fix');
    expect(over('takes 9$0 h').says).toContain('Coolant pump: 1,188.00 for 9.0 h = 9.0 h × 132.00 — in used');
    expect(over('be$0lt "Belt" 1 h').says).toContain('Belt: 132.00 for 1.0 h with lifted = 1.0 h × 132.00 — in fix');
    expect(over('2 a$0t 5.85').says).toContain('Seal: 11.70 = 2 × 5.85 — in fix, used');
  });
});

test('a time that no option takes is priced all the same', () => {
  const text = `${SHOP}access out "Out"\n  remove 9 h\nlabour pump "Pump"\n  takes 2 h\n  takes 1 h with out\noption fix "Fix"\n  do pump\n`;
  const { service: other } = serviceOver({ 'estimate.yard': text });
  expect(other.hover(uriOf('estimate.yard'), text.indexOf('takes 1') + 1)?.paragraphs[0]).toBe('Pump: 132.00 for 1.0 h with out = 1.0 h × 132.00 — in no option');
});

describe('a name', () => {
  test('where it is used: the line that gives it, its uses, its options', () => {
    const { says, of } = over('uses se$0al');
    expect(of).toBe('seal');
    expect(says).toEqual(['part seal "Seal" 2 at 5.85 new  arrives 3 d  warranty 30 d', 'Used by 1 labour line.', 'Counts in fix, used.']);
  });

  test('where it is given', () => {
    expect(over('labour pu$0mp').says).toEqual(expect.arrayContaining(['Used by 2 option lines.', 'Counts in fix, used.']));
    expect(over('labour pu$0mp').of).toBe('pump');
  });

  test('of a way in: what it costs, and who shares it', () => {
    const { says } = over('with o$0ut\n  because');
    expect(says).toContain('access out "Engine out"');
    expect(says).toContain('Getting in and closing up: 1,584.00 for 12.0 h.');
    expect(says).toContain('In fix: paid once, shared by 3 jobs: pump, head, belt.');
    expect(over('access lif$0ted').says).toContain('In fix: given by out without paying for it, for belt.');
  });

  test('of a finding: what rests on it', () => {
    expect(over('finding lo$0w').says).toEqual(['Used by 2 labour lines.', 'Counts in fix, used.', 'On it rests: labour pump, labour head.', 'It speaks against used.']);
  });
});

describe('a figure of three', () => {
  test('its mean and spread by both formulas, marked as not quoted', () => {
    const { says, of } = over('4.5 / 5.$05 / 8 h');
    expect(of).toBe('4.5 / 5.5 / 8');
    // Triangular: (4.5+5.5+8)/3 = 6; PERT: (4.5+22+8)/6 = 5.75, (3.5/6)² = 0.340, 3.5/6 = 0.583.
    expect(says.slice(-2)).toEqual([
      'Not quoted, triangular: mean (a+m+b)/3 = 6 h, spread (standard deviation) 0.736 h.',
      'Not quoted, beta-PERT: mean (a+4m+b)/6 = 5.75 h, variance ((b−a)/6)² = 0.34, spread 0.583 h. Formulas: Malcolm, Roseboom, Clark & Fazar, Operations Research 7(5), 1959.',
    ]);
  });

  test.each(['$05 / 6 / 8 h', '5 $0/ 6 / 8 h', '5 / 6 / 8$0 h'])('anywhere on it: %s', (marked) => {
    expect(over(marked).of).toBe('5 / 6 / 8');
  });
});

describe('a unit', () => {
  test.each([
    ['arrives 3 d$0', 'd: days.', 'working days'], ['warranty 30 d$0', 'd: days.', 'calendar day'], ['takes 9 h$0', 'h: hours of work.', 'The hours.'],
  ])('%s', (marked, first, part) => {
    const { says, of } = over(marked);
    expect(of).toBe(marked.replace('$0', '').slice(-1));
    expect(says).toContain(first);
    expect(says.join('\n')).toContain(part);
  });
});

test('beside any line nothing is said', () => {
  expect(service.hover(uriOf('estimate.yard'), TEXT.indexOf('\n  remove') + 1)).toBeUndefined();
  expect(service.hover(uriOf('estimate.yard'), TEXT.length)).toBeUndefined();
});
