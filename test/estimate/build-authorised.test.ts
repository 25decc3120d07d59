import { describe, expect, test } from 'vitest';
import { marked, resolved, told, wordsOf } from './estimated.js';

const HEAD = 'steelyard 1\nestimate "E"\n  written 2026-11-24\n';
const one = `${HEAD}option used "Used"\n`;
const two = `${HEAD}option used "Used"\noption repair "Repair"\n`;
const records = (text: string) => {
  const { quoted, authorised, started } = resolved(text).estimate;
  const short = ({ amount, for: about, on }: (typeof quoted)[0]) => [amount?.likely.toFixed(2), about, on];
  return { quoted: quoted.map(short), authorised: authorised.map(short), started: started?.on };
};

describe('what was quoted and authorised', () => {
  test('is for the only option where none is named', () => {
    expect(told(resolved(`${one}quoted 940.00 on 2026-11-24\nauthorised 950.00 on 2026-11-25 by "the owner" phone\n  version "3fa91c2"\n`))).toEqual([]);
    expect(records(`${one}quoted 940.00 on 2026-11-24\nauthorised 950.00 on 2026-11-25\n`)).toEqual({ quoted: [['940.00', 'used', '2026-11-24']], authorised: [['950.00', 'used', '2026-11-25']], started: undefined });
    const [agreed] = resolved(`${one}authorised 950.00 on 2026-11-25 by "the owner" phone\n  version "3fa91c2"\n`).estimate.authorised;
    expect([agreed?.by, agreed?.how, agreed?.version]).toEqual(['the owner', 'phone', '3fa91c2']);
  });

  test('must name one of several options', () => {
    expect(told(resolved(`${two}quoted 940.00 on 2026-11-24\n`))).toEqual([['agreed-unclear', 'quoted 940.00 on 2026-11-24']]);
    expect(wordsOf(resolved(`${two}quoted 940.00 on 2026-11-24\n`), 'agreed-unclear')).toContain('for which option');
    expect(records(`${two}quoted 940.00 on 2026-11-24\nquoted 940.00 for repair on 2026-11-24\n`).quoted).toEqual([['940.00', undefined, '2026-11-24'], ['940.00', 'repair', '2026-11-24']]);
  });

  test('needs no option where there is none', () => {
    expect(told(resolved(`${HEAD}quoted 940.00 on 2026-11-24\n`))).toEqual([]);
    expect(records(`${HEAD}quoted 940.00 on 2026-11-24\n`).quoted).toEqual([['940.00', undefined, '2026-11-24']]);
  });

  test('may be for a stage', () => {
    const text = `${two}stage look "Look"\n  put back 1 h\n  do strip\nlabour strip "Strip" 1 h\nshop "S"\n  rate r 1.00\nauthorised 200.00 for look on 2026-11-25\n`;
    expect(told(resolved(text))).toEqual([]);
    expect(records(text).authorised).toEqual([['200.00', 'look', '2026-11-25']]);
  });

  test('for a name that nothing has is for nothing', () => {
    expect(told(resolved(`${two}authorised 200.00 for repiar on 2026-11-25\n`))).toEqual([['unknown-name', 'repiar']]);
    expect(records(`${two}authorised 200.00 for repiar on 2026-11-25\n`).authorised).toEqual([['200.00', undefined, '2026-11-25']]);
  });

  test('lacks one thing at a time: the amount, the option, the day', () => {
    const says = (line: string) => wordsOf(resolved(`${two}${line}\n`), 'agreed-unclear');
    expect(says('authorised')).toContain('how much');
    expect(says('authorised 940.00')).toContain('for which option');
    expect(says('authorised 940.00 for used')).toContain('on which day');
    expect(told(resolved(`${two}authorised\n`))).toHaveLength(1);
    expect(says('authorised 940.00 for used')).toContain('authorised 940.00 for repair on 2026-11-25');
    expect(says('quoted 940.00 for used')).toContain('quoted 940.00 for repair on 2026-11-25');
  });

  test('on a line that can’t be read is told once', () => {
    expect(told(resolved(`${two}authorised 9,400 for used\n`)).map(([code]) => code)).toEqual(['thousands-comma']);
    expect(told(resolved(`${two}started on 30/11/2026\n`)).map(([code]) => code)).toEqual(['no-such-date']);
  });

  test('is one figure', () => {
    expect(told(resolved(`${one}quoted 900 / 940 / 990 on 2026-11-24\n`))).toEqual([['one-figure', '900 / 940 / 990']]);
    expect(wordsOf(resolved(`${one}quoted 900 / 940 / 990 on 2026-11-24\n`), 'one-figure')).toContain('Write 940.');
    expect(wordsOf(resolved(`${one}shop "S"\n  currency USD\nquoted 900 / 940.5 / 990 USD on 2026-11-24\n`), 'one-figure')).toContain('Write 940.5 USD.');
    expect(told(resolved(`${one}quoted 940 / 940 / 940 on 2026-11-24\n`))).toEqual([]);
  });
});

describe('a day before the estimate was written', () => {
  test.each(['quoted 940.00 on DAY', 'authorised 940.00 on DAY', 'started on DAY'])('%s', (line) => {
    const says = (day: string) => told(resolved(`${one}${line.replace('DAY', day)}\n`));
    expect(says('2026-11-23')).toEqual([['day-before-written', '2026-11-23']]);
    expect(says('2026-11-24')).toEqual([]);
    expect(says('2026-11-25')).toEqual([]);
    expect(wordsOf(resolved(`${one}${line.replace('DAY', '2026-11-23')}\n`), 'day-before-written')).toMatch(/2026-11-23.*2026-11-24/);
  });

  test('can’t be told where nothing says when that was', () => {
    expect(told(resolved('steelyard 1\noption used "Used"\nquoted 940.00 on 1999-01-01\nstarted on 1999-01-01\n'))).toEqual([]);
  });
});

describe('two authorisations on one day', () => {
  const twice = (first: string, second: string) => told(resolved(`${two}authorised 1.00 ${first}\nauthorised 2.00 ${second}\n`));

  test('for one option are told at the lower line', () => {
    expect(twice('for used on 2026-11-25', 'for used on 2026-11-25')).toEqual([['authorised-same-day', 'authorised 2.00 for used on 2026-11-25', 'authorised 1.00 for used on 2026-11-25']]);
    const third = resolved(`${two}${'authorised 1.00 for used on 2026-11-25\n'.repeat(3)}`);
    expect(told(third).map(([code]) => code)).toEqual(['authorised-same-day', 'authorised-same-day']);
    expect(third.problems.map(({ related }) => related?.at.block)).toEqual([third.estimate.authorised[0]?.at.block, third.estimate.authorised[0]?.at.block]);
    expect(wordsOf(third, 'authorised-same-day')).toContain('used is authorised twice on 2026-11-25');
  });

  test('for two options, on two days, or where option or day are not said, are two', () => {
    expect(twice('for used on 2026-11-25', 'for repair on 2026-11-25')).toEqual([]);
    expect(twice('for used on 2026-11-25', 'for used on 2026-11-26')).toEqual([]);
    expect(twice('for used', 'for used').map(([code]) => code)).toEqual(['agreed-unclear', 'agreed-unclear']);
    expect(twice('on 2026-11-25', 'on 2026-11-25').map(([code]) => code)).toEqual(['agreed-unclear', 'agreed-unclear']);
  });
});

describe('the day on which work began', () => {
  test('is said, or asked for', () => {
    expect(records(`${one}started on 2026-11-30\n`).started).toBe('2026-11-30');
    expect(told(resolved(`${one}started\n`))).toEqual([['agreed-unclear', 'started']]);
    expect(wordsOf(resolved(`${one}started\n`), 'agreed-unclear')).toMatch(/on which day.*started on 2026-11-30/);
  });
});

// The percentage holds between a least and a most (common practice where the law sets a tolerance).
describe('a shop’s room for overruns', () => {
  const shop = (line: string) => resolved(`steelyard 1\nshop "S"\n  overrun ${line}\n  rate r 1.00\n`);
  const room = (line: string) => {
    const by = shop(line).estimate.shop.overrun?.by;
    if (by === undefined) return undefined;
    return 'fixed' in by ? [by.fixed.likely.toFixed(2)] : [by.percent.likely.toFixed(), by.atLeast?.likely.toFixed(2), by.atMost?.likely.toFixed(2)];
  };

  test('is an amount, or a percentage with or without its limits', () => {
    expect(room('50.00')).toEqual(['50.00']);
    expect(room('10%')).toEqual(['10', undefined, undefined]);
    expect(room('10% at least 10.00')).toEqual(['10', '10.00', undefined]);
    expect(room('10% at most 50.00')).toEqual(['10', undefined, '50.00']);
    expect(room('10% at least 10.00 at most 50.00')).toEqual(['10', '10.00', '50.00']);
    expect(room('100%')).toEqual(['100', undefined, undefined]);
    expect(room('10% at least 50.00 at most 50.00')).toEqual(['10', '50.00', '50.00']);
    for (const line of ['50.00', '10%', '10% at least 10.00', '10% at most 50.00', '100%', '10% at least 50.00 at most 50.00']) expect(told(shop(line))).toEqual([]);
  });

  test.each([
    ['', 'overrun'], ['at least 10.00', 'overrun at least 10.00'], ['50.00 at least 10.00', 'overrun 50.00 at least 10.00'], ['50.00 at most 10.00', 'overrun 50.00 at most 10.00'],
    ['10% 50.00', 'overrun 10% 50.00'], ['101%', '101%'], ['10% at least 50.00 at most 49.99', 'overrun 10% at least 50.00 at most 49.99'],
  ])('overrun %s can’t be worked out', (line, where) => {
    expect(told(shop(line))).toEqual([['overrun-unclear', where]]);
    expect(room(line)).toBeUndefined();
  });

  test('is one figure of each', () => {
    expect(told(shop('10 / 12 / 15%'))).toEqual([['one-figure', '10 / 12 / 15%']]);
    expect(wordsOf(shop('10 / 12 / 15%'), 'one-figure')).toContain('Write 12%.');
    expect(told(shop('10% at least 1 / 2 / 3 at most 4 / 5 / 6'))).toEqual([['one-figure', '1 / 2 / 3'], ['one-figure', '4 / 5 / 6']]);
    expect(told(shop('40 / 50 / 60'))).toEqual([['one-figure', '40 / 50 / 60']]);
  });

  test('that can’t be read is told once', () => {
    expect(told(shop('1,000')).map(([code]) => code)).toEqual(['thousands-comma']);
    expect(room('1,000')).toBeUndefined();
  });

  test('stands once', () => {
    const twice = resolved('steelyard 1\nshop "S"\n  overrun 50.00\n  overrun 60.00\n  rate r 1.00\n');
    expect(told(twice)).toEqual([['only-once', 'overrun 60.00', 'overrun 50.00']]);
    const overrun = twice.estimate.shop.overrun;
    expect(overrun === undefined ? undefined : marked(overrun.at)).toBe('overrun 50.00');
  });
});
