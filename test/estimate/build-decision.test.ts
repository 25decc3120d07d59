import { describe, expect, test } from 'vitest';
import { called, resolved, told, wordsOf } from './estimated.js';

const SHOP = 'steelyard 1\nshop "S"\n  rate bench 100.00 usual\n  rate body 90.00\n';
const JOB = `${SHOP}labour strip "Strip" 1 h\n${'abcdefgh'.split('').map((name) => `  chance ${name} "${name}" 10%\n    labour "Mend ${name}" 1 h\n`).join('')}`;
const inspecting = (head: string, ...finds: readonly string[]) => resolved(`${JOB}inspect look ${head}\n${finds.map((line) => `  finds ${line}\n`).join('')}`);
const looking = (...finds: readonly string[]) => inspecting('"Look" 95.00', ...finds);

describe('an inspection', () => {
  test('has a price, hours and their rate', () => {
    const [one] = inspecting('"Look" 95.00 0.5 h class body', 'a 90%').estimate.inspections;
    expect([one?.name, one?.title, one?.price?.likely.toFixed(), one?.hours?.likely.toFixed(), one?.rate?.name]).toEqual(['look', 'Look', '95', '0.5', 'body']);
    expect(looking('a 90%').estimate.inspections[0]?.rate).toBeUndefined();
    expect(inspecting('"Look" 1 h', 'a 90%').estimate.inspections[0]?.rate?.name).toBe('bench');
  });

  test('says what it would find', () => {
    expect(told(looking())).toEqual([['inspect-finds-nothing', 'inspect look "Look" 95.00']]);
    expect(told(inspecting('"Look" 95,00')).map(([code]) => code)).toEqual(['thousands-comma']);
    expect(told(looking('a'))).toEqual([['percent-missing', 'finds a']]);
    expect(wordsOf(looking('a'), 'percent-missing')).toContain('how often it shows it');
    expect(told(looking('90%'))).toEqual([['percent-missing', 'finds 90%']]);
    expect(wordsOf(looking('90%'), 'percent-missing')).toContain('which chance it looks for');
    expect(told(looking('a 9O%')).map(([code]) => code)).not.toContain('percent-missing');
  });

  test('without a name is told and left out; without a title it goes by its name', () => {
    const nameless = resolved(`${JOB}inspect "Look" 95.00\n  finds a 90%\n`);
    expect([told(nameless), nameless.estimate.inspections]).toEqual([[['name-missing', 'inspect']], []]);
    const untitled = resolved(`${JOB}inspect look 95.00\n  finds a 90%\n`);
    expect([told(untitled), called(untitled.estimate.inspections)]).toEqual([[['title-missing', 'inspect']], ['look']]);
  });

  test('finds each chance once', () => {
    expect(told(looking('a 90%', 'b 80% wrongly 5%', 'a 70%'))).toEqual([['only-once', 'finds a 70%', 'finds a 90%']]);
    expect(wordsOf(looking('a 90%', 'a 70%'), 'only-once')).toContain('for a');
    expect(looking('a 90%', 'b 80% wrongly 5%', 'a 70%').estimate.inspections[0]?.finds.map(({ chance, shows, wrongly }) => [chance.name, shows.likely.toFixed(), wrongly?.likely.toFixed()])).toEqual([['a', '90', undefined], ['b', '80', '5']]);
  });

  test('tells up to six chances apart', () => {
    const lines = 'abcdefgh'.split('').map((name) => `${name} 90%`);
    expect(told(looking(...lines.slice(0, 6)))).toEqual([]);
    const seven = looking(...lines);
    expect(told(seven)).toEqual([['too-many-finds', 'finds g 90%']]);
    expect(wordsOf(seven, 'too-many-finds')).toContain('up to 6');
    expect(seven.estimate.inspections[0]?.finds.map(({ chance }) => chance.name)).toEqual(['a', 'b', 'c', 'd', 'e', 'f']);
  });

  test('shows a thing in at most all cases, and as one figure', () => {
    expect(told(looking('a 100% wrongly 99%'))).toEqual([]);
    expect(told(looking('a 99% wrongly 100%'))).toEqual([['wrongly-as-often', '100%']]);
    expect(told(looking('a 101%'))).toEqual([['over-hundred', '101%']]);
    expect(told(looking('a 90% wrongly 101%'))).toEqual([['over-hundred', '101%']]);
    expect(told(looking('a 90 / 95 / 101%'))).toEqual([['over-hundred', '90 / 95 / 101%']]);
    expect(looking('a 101%').estimate.inspections[0]?.finds).toEqual([]);
    expect(told(looking('a 80 / 90 / 95% wrongly 1 / 2 / 3%'))).toEqual([['chance-in-three', '80 / 90 / 95%'], ['chance-in-three', '1 / 2 / 3%']]);
    expect(wordsOf(looking('a 80 / 90 / 95%'), 'chance-in-three')).toContain('Write 90%.');
  });

  test('for a chance that nothing has finds the others', () => {
    expect(told(looking('zzz 90%', 'a 80%'))).toEqual([['unknown-name', 'zzz']]);
    expect(looking('zzz 90%', 'a 80%').estimate.inspections[0]?.finds.map(({ chance }) => chance.name)).toEqual(['a']);
    expect(told(looking('zzz 90%', 'yyy 80%')).map(([code]) => code)).toEqual(['unknown-name', 'unknown-name']);
  });
});

describe('a chance', () => {
  const chance = (head: string, ...below: readonly string[]) => resolved(`${SHOP}labour drill "Drill" 1 h\npart seal "Seal" 1.00 new\nsublet face "Face" 1.00\nfee tow "Tow" 1.00\nlabour strip "Strip" 1 h\n  chance c "C" ${head}\n${below.map((line) => `    ${line}\n`).join('')}`);
  const first = (one: ReturnType<typeof chance>) => [...one.estimate.chances.values()][0]?.[0];

  test('is from 0 to 100 percent, as one figure', () => {
    expect(told(chance('0%', 'do drill'))).toEqual([]);
    expect(told(chance('99.9%', 'do drill'))).toEqual([]);
    // What happens in every case is read, and is no chance.
    expect(told(chance('100%', 'do drill'))).toEqual([['chance-in-every-case', '100%']]);
    expect(told(chance('100.5%', 'do drill'))).toEqual([['over-hundred', '100.5%']]);
    expect(first(chance('100.5%', 'do drill'))?.percent).toBeUndefined();
    expect(told(chance('50 / 60 / 101%', 'do drill'))).toEqual([['over-hundred', '50 / 60 / 101%']]);
    expect(told(chance('5 / 6 / 7%', 'do drill'))).toEqual([['chance-in-three', '5 / 6 / 7%']]);
    expect(wordsOf(chance('5 / 6 / 7%', 'do drill'), 'chance-in-three')).toContain('Write 6%.');
    expect(first(chance('5 / 6 / 7%', 'do drill'))?.percent?.likely.toFixed()).toBe('6');
    expect(told(chance('', 'do drill'))).toEqual([['percent-missing', 'chance c "C"']]);
    expect(wordsOf(chance('', 'do drill'), 'percent-missing')).toContain('how likely it is');
    expect(told(chance('5', 'do drill')).map(([code]) => code)).toEqual(['unit-missing']);
  });

  test('says what it then takes, in any way', () => {
    for (const below of ['do drill', 'fit seal', 'send face', 'charge tow', 'labour "L" 1 h', 'part "P" 1.00 new', 'sublet "O" 1.00', 'fee "F" 1.00', 'chance "D" 5%\n      do drill']) expect(told(chance('5%', below))).toEqual([]);
    expect(told(chance('5%'))).toEqual([['chance-of-nothing', 'chance c "C" 5%']]);
    expect(told(chance('5%', 'note "Seldom"'))).toEqual([['chance-of-nothing', 'chance c "C" 5%']]);
    expect(told(chance('5%', 'note "Seldom"', 'fit seal'))).toEqual([]);
    expect(told(chance('', 'note "Seldom"'))).toEqual([['percent-missing', 'chance c "C"']]); // one fault, one message
    expect(told(chance('5%', 'do dril'))).toEqual([['unknown-name', 'dril']]);
  });

  test('brings each thing once, of its own and of its work', () => {
    const one = first(chance('5%', 'fit seal, seal', 'send face', 'charge tow, tow', 'labour "L" 1 h uses seal, face', 'part "P" 1.00 new', 'sublet "O" 1.00', 'fee "F" 1.00'));
    expect([one?.labour, one?.parts, one?.sublets, one?.fees].map((list) => called(list ?? []))).toEqual([['L'], ['seal', 'P'], ['face', 'O'], ['tow', 'F']]);
    expect([one?.when, first(chance('5% comeback', 'do drill'))?.when]).toEqual(['open', 'comeback']);
  });

  test('stands below work, a way in or an option', () => {
    const all = resolved(`${SHOP}access out "Out"\n  remove 1 h\n  chance "A" 5%\n    labour "L" 1 h\noption o "O"\n  labour "Own" 1 h\n    chance "B" 5%\n      labour "M" 1 h\n  chance "C" 5%\n    labour "N" 1 h\n      chance "D" 5%\n        labour "P" 1 h\n`);
    expect(told(all)).toEqual([]);
    expect([...all.estimate.chances].map(([record, chances]) => [record.title?.text, called(chances)])).toEqual([['Out', ['A']], ['Own', ['B']], ['N', ['D']]]);
    expect(called(all.estimate.options[0]?.chances ?? [])).toEqual(['C']);
  });
});

describe('a coverage', () => {
  const coverage = (...lines: readonly string[]) => resolved(`${SHOP}coverage c "C" recall\n${lines.map((line) => `  ${line}\n`).join('')}`);

  test('says which vehicles it holds for', () => {
    for (const line of ['built from 2012-06', 'built to 2012-06', 'years 2012, 2013', 'up to 150000 mi', 'within 120 mo', 'until 2026-12-31']) expect(told(coverage(line))).toEqual([]);
    expect(told(coverage('covers nothing-yet')).map(([code]) => code)).toEqual(['unknown-name', 'coverage-of-everything']);
    expect(told(coverage())).toEqual([['coverage-of-everything', 'coverage c "C" recall']]);
    expect(told(coverage('up to 150,000 mi')).map(([code]) => code)).toEqual(['thousands-comma']);
    const [one] = coverage('built from 2012-06', 'built to 2013-02-15', 'years 2012, 2013', 'years 2014', 'up to 150000 mi', 'within 120 mo', 'until 2026-12-31').estimate.coverages;
    expect(one).toMatchObject({ name: 'c', title: 'C', sort: 'recall', builtFrom: '2012-06', builtTo: '2013-02-15', years: [2012, 2013, 2014], until: '2026-12-31', covers: [] });
    expect([one?.upTo?.likely.toFixed(), one?.within?.likely.toFixed()]).toEqual(['150000', '120']);
    expect(coverage().estimate.coverages[0]).toMatchObject({ years: [], covers: [] });
  });

  // A month stands for all its days.
  test.each([
    ['2012-06', '2012-06', true], ['2012-06', '2012-05', false], ['2012-06-15', '2012-06', true], ['2012-06-15', '2012-06-14', false], ['2012-06-15', '2012-06-15', true],
    ['2012-06', '2012-06-01', true], ['2012-06', '2012-05-31', false], ['2012-12', '2013-01', true],
  ])('built from %s to %s', (from, to, good) => {
    expect(told(coverage(`built from ${from}`, `built to ${to}`))).toEqual(good ? [] : [['coverage-backwards', to]]);
    if (!good) expect(wordsOf(coverage(`built from ${from}`, `built to ${to}`), 'coverage-backwards')).toContain(`ends (${to}) before it begins (${from})`);
  });
});
