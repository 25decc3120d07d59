import { describe, expect, test } from 'vitest';
import { serviceOver, uriOf } from '../../support/fixture.js';

const TEXT = `steelyard 1
shop "Bench"
  rate bench 100.00
vehicle "Van"
  model year 2013
access out "Out"
  remove 6 h
  chance stud "A stud breaks" 25%
    labour "Drill it out" 1.5 h
part casting "Bare head" 690.00 used arrives 5 d
labour strip "Strip" 3 h with out
  apart after 90 min
  chance cracked "It is cracked" 12%
    fit casting
labour drive "Road test" 0.5 h
  done last
  after strip
option repair "Repair"
  do strip, drive
  chance leaks "It leaks again" 3% comeback
    part "Ring" 4.00 new
option used "Used engine"
  labour "Swap" 9 h with out
inspect dye "Dye test" 20.00
  finds cracked 90% wrongly 5%
coverage plan "Plan" recall
  built from 2012-06
  covers repair
`;
const { service } = serviceOver({ 'e.yard': TEXT });

function over(marked: string): { readonly says: readonly string[]; readonly of: string } {
  const line = marked.replace('$0', '');
  const at = TEXT.indexOf(line);
  if (at < 0) throw new Error(`No such line: ${line}`);
  const hover = service.hover(uriOf('e.yard'), at + marked.indexOf('$0'));
  return { says: hover?.paragraphs ?? [], of: hover === undefined ? '' : TEXT.slice(hover.range.start, hover.range.end) };
}

describe('the words of lines about deciding', () => {
  test.each([
    ['cha$0nce cracked', 'chance', 'chance: Something that may turn up or go wrong'],
    ['ins$0pect dye', 'inspect', 'inspect: A look or a test that could be done before deciding.'],
    ['fin$0ds cracked', 'finds', 'finds: A chance that an inspection tells apart'],
    ['wro$0ngly 5%', 'wrongly', 'wrongly: How often it shows it where it is not there'],
    ['cove$0rage plan', 'coverage', 'coverage: A recall, service campaign, bulletin or extended warranty'],
    ['"Plan" rec$0all', 'recall', 'recall: A recall: usually free of charge'],
    ['built fr$0om', 'built from', 'built from: The first month or day of building'],
    ['3% come$0back', 'comeback', 'comeback: After the vehicle has left'],
    ['ap$0art after', 'apart after', 'apart after: Of its hours, how many until things are apart'],
    ['done la$0st', 'last', 'last: After everything is put back'],
    ['aft$0er strip', 'after', 'after: Work, outside work and parts that it waits for'],
    ['model ye$0ar', 'model year', 'model year: Its model year'],
    ['cracked" 12$0%', '%', '%: per cent.'],
  ])('%s', (marked, of, starts) => {
    const hover = over(marked);
    expect(hover.of).toBe(of);
    expect(hover.says.filter((says) => says.startsWith(starts)), hover.says.join('\n')).toHaveLength(1);
  });
});

describe('the name of a chance', () => {
  test('says who looks for it and in which options it may happen', () => {
    expect(over('chance crac$0ked').says.slice(-2)).toEqual(['Used by 1 finds line.', 'May happen in repair.']);
    expect(over('finds crac$0ked').says).toEqual(['chance cracked "It is cracked" 12%', 'Used by 1 finds line.', 'May happen in repair.']);
  });

  test('of a way in may happen wherever that is paid for; one of an option only there', () => {
    expect(over('chance st$0ud').says.slice(-2)).toEqual(['No line uses this name.', 'May happen in repair, used.']);
    expect(over('chance lea$0ks').says.slice(-2)).toEqual(['No line uses this name.', 'May happen in repair.']);
  });
});

test('what only a chance takes counts in no option, but may be needed', () => {
  expect(over('part cas$0ting').says).toEqual(['Used by 1 chance line.', 'May be needed in repair.']);
});

test('names that no line could use say nothing of uses', () => {
  expect(over('inspect dy$0e').says.filter((says) => says.includes('name'))).toEqual([]);
  expect(over('coverage pl$0an').says).toHaveLength(1);
});
