// What writers put down before they know the form, and what they are told to write instead.
import { describe, expect, test } from 'vitest';
import { messagesOf, said } from './said.js';

const saysInstead = (text: string) => messagesOf(`${text}\n`).map(({ instead }) => instead);

describe('hours', () => {
  const takes = (written: string) => said(`labour l "L"\n  takes ${written}\n`);

  test('with the unit behind each of three figures', () => {
    expect(takes('4 h / 5 h / 7 h')).toEqual([['unit-repeated', '4 h / 5 h / 7 h', '4 / 5 / 7 h']]);
    expect(takes('4 h / 5 / 7 h')).toEqual([['unit-repeated', '4 h / 5 / 7 h', '4 / 5 / 7 h']]);
    expect(takes('4 h / 7 h')).toEqual([['two-figures', '4 h / 7 h']]);
  });

  test('in hours and minutes', () => {
    expect(takes('5 h 30 min')).toEqual([['time-in-two', '5 h 30 min', '5.5 h']]);
    expect(takes('5 h 20 min')).toEqual([['time-in-two', '5 h 20 min', '320 min']]);
    expect(said('access a "A"\n  remove 1 h 15 min\n')).toEqual([['time-in-two', '1 h 15 min', '1.25 h']]);
  });

  test.each(['4-6 h', '4 - 6 h', '4 to 6 h'])('from one to another: %s', (written) => {
    expect(takes(written)).toEqual([['two-figures', written.replace(' h', '')]]);
    expect(saysInstead(`labour l "L"\n  takes ${written}`)).toEqual(['Write low / likely / high, such as 4 / LIKELY / 6, or just the likely one.']);
  });

  test('of an inspection stand before money all the same, and markup goes up to a cost', () => {
    expect(said('inspect i "I" 0.5 h 30\nshop "S"\n  markup 40% to 20.00\n')).toEqual([]);
  });
});

describe('years are counted in months', () => {
  test.each([['warranty 1 year', '1 year', '12 mo'], ['lasts 5 y', '5 y', '60 mo'], ['lasts 1.5 / 2 / 3 years', '1.5 / 2 / 3 years', '18 / 24 / 36 mo']])('%s', (fact, marked, fix) => {
    expect(said(`option o "O"\n  ${fact}\n`)).toEqual([['wrong-unit', marked, fix]]);
  });

  test('but only where time by the calendar stands', () => {
    expect(said('labour l "L"\n  takes 1 year\n')).toEqual([['unit-missing', '1']]);
  });
});

test('units of other languages', () => {
  expect(said('labour l "L"\n  takes 5 Std\n')).toEqual([['wrong-unit', 'Std', 'h']]);
});

test('an x for at', () => {
  expect(said('part p "P" 2 x cost 12.00 new\n')).toEqual([['unknown-word', 'x', 'at']]);
  expect(said('part p "P" x 12.00 new\n').map(([code, marked]) => [code, marked])).toEqual([['unknown-word', 'x']]);
});

test('a space in the thousands', () => {
  expect(saysInstead('part p "P" 1 250.00 new')).toEqual(['Write 1250.00 where it is one number, 1 at 250.00 where it is so many at a price each.']);
  expect(saysInstead('part p "P" 64.30 71.00 new')).toEqual(['Write one figure; a quantity stands before at, once, as in 12 at 5.85, and three figures are divided by /.']);
});

test('no cents', () => {
  expect(said('vehicle "V"\n  worth 9000.-\n')).toEqual([['not-a-number', '9000.-', '9000.00']]);
  expect(said('vehicle "V"\n  worth 9000.–\n')).toEqual([['strange-character', '9000.–', '9000.00']]);
});

test('less than nothing of what is no money', () => {
  expect(saysInstead('part p "P" 5 new arrives -2 d')).toEqual(['Write 2 d, or leave it out.']);
  expect(saysInstead('estimate "E"\n  interest -5%')).toEqual(['Write 5%, or leave it out. For a discount write the lower price itself, such as 114.00 in place of 120.00 less 5 %.']);
  expect(saysInstead('part p "P" -5 new')[0]).toContain('core, keeps or harvest');
});

// Common practice: the customer is quoted the price after the discount; the language has no line that takes something off.
test('a discount is the lower price itself', () => {
  const lower = 'For a discount write the lower price itself, such as 114.00 in place of 120.00 less 5 %.';
  for (const line of ['part p "P" 120.00 less 5% new', 'part p "P" 120.00 minus 5.00 new', 'labour l "L" 2 h discount 5%', 'discount "For waiting" 5%', 'option o "O"\n  discount 5%', 'option o "O"\n  rebate 20.00']) {
    expect(saysInstead(line)[0], line).toBe(lower);
  }
  expect(saysInstead('option o "O"\n  less 10%')).toEqual([`${lower} As a fact, “less” belongs below core or keeps.`]);
  expect(saysInstead('part p "P" 120.00 -5% new')).toEqual([`Write 5%, or leave it out. ${lower}`]);
  expect(saysInstead('fee f "Discount" -20.00')).toEqual(['Write 20.00. A discount is the lower price itself; money that comes back stands behind core, keeps or harvest.']);
});

test('a share that is to be taken off is not added by a fix', () => {
  expect(said('part p "P" 120.00 -5% new\n')).toEqual([['negative-figure', '-5']]);
  expect(said('part p "P" 120.00 new arrives -2 d\n')).toEqual([['negative-figure', '-2', '2']]);
});

test('lists without a comma', () => {
  const shop = (on: string) => said(`shop "S"\n  tax t "T" 20% on ${on} by invoice\n`);
  expect(shop('parts labour')).toEqual([['unknown-word', 'labour', 'parts, labour']]);
  expect(shop('parts and labour')).toEqual([['unknown-word', 'and', 'parts, labour']]);
  expect(shop('parts, labour')).toEqual([]);
});

test('a line on which reading stops is said to count as far as it was read', () => {
  for (const line of ['part p "P" 2 at 5 nwe', 'part p "P" 5 7 new', 'shop "S"\n  tax t "T" 20% on parts and labour']) {
    expect(messagesOf(`${line}\n`)[0]?.why).toContain('counts only as far as it could be read');
  }
});

test('a month where a month will do', () => {
  expect(saysInstead('coverage c "C" recall\n  built from 03/2014')).toEqual(['Write year-month, or year-month-day where the day is known: 2014-03']);
  expect(saysInstead('coverage c "C" recall\n  built from 3.2014')).toEqual(['Write year-month, or year-month-day where the day is known: 2014-03']);
  expect(saysInstead('coverage c "C" recall\n  built from 30/03/2014')).toEqual(['Write year-month, or year-month-day where the day is known: 2012-11']);
  expect(saysInstead('estimate "E"\n  start 03/2014')).toEqual(['Write year-month-day, such as 2026-11-30.']);
});

test('a fact of a part below an option or a chance', () => {
  expect(saysInstead('option o "O"\n  core 50.00')).toEqual(['It belongs below part.']);
  expect(saysInstead('option o "O"\n  chance c "C" 5%\n    core 50.00')).toEqual(['It belongs below part.']);
  expect(said('option o "O"\n  core 50.00\n')).toEqual([['unknown-fact', 'core']]);
});

test('texts without quotes', () => {
  expect(saysInstead('vehicle Van')).toEqual(['Write it in double quotes behind vehicle.']);
  expect(saysInstead('option o "O"\n  note call customer')).toEqual(['Write it in double quotes behind note.']);
  expect(saysInstead('option mend New seal')).toEqual(['Write it in double quotes behind option and its name.']);
  expect(saysInstead('authorised 600.00 on 2026-11-04 by owner')).toEqual(['Write it as in: "the owner"']);
});

test('the title of a finding for its name', () => {
  expect(saysInstead('labour l "L" 1 h\n  because "Front seal leaks"')).toEqual(['Write it as in: low-four, the short name before a title']);
});

test('in car', () => {
  expect(said('option o "O"\n  way in car\n')).toEqual([['bad-name', 'in car', 'in-car']]);
  expect(said('option o "O"\n  way in-car, lifted\n')).toEqual([]);
});

test('letters of other alphabets in a name', () => {
  expect(saysInstead('part zündung "Z" 5.00 new')[0]).toContain('letters a to z');
  expect(saysInstead('part a☂b "Z" 5.00 new')[0]).toBe('Remove it, or put it inside a "title".');
});
