import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Span } from '../../../src/language/index.js';
import type { Amount } from '../../../src/vocabulary/index.js';
import { decide, type Flip } from '../../../src/weigh/index.js';
import { randomEstimate } from '../../support/random-estimate.js';
import { PATIENT, runs } from '../../support/random-runs.js';
import { closeEstimate } from './random-close.js';
import { decideText, oneFile, sampleWithShop, soundText, weighFresh, withNumber, type Files, type Fresh } from './weighing.js';

/** The cheapest option in all; of equals the first in the file. */
function pickOf({ comparison: { options, ranking } }: Fresh): string | undefined {
  let best = options.find((one) => ranking.some(({ option }) => option === one.option));
  for (const one of options) if (best !== undefined && ranking.some(({ option }) => option === one.option) && one.inAll.likely.lt(best.inAll.likely)) best = one;
  return best?.option.name;
}

function pickAt(fresh: Fresh, at: Span, value: number): { readonly pick: string | undefined; readonly sound: boolean; readonly words: string } {
  const words = withNumber(fresh.wordsAt(at), String(value));
  const again = weighFresh(fresh.rewritten(at, words));
  return { pick: pickOf(again), sound: again.sound, words };
}

function quoted(fresh: Fresh): readonly Flip[] {
  return decide(fresh.comparison).flips.filter(({ measure }) => measure === 'quoted');
}

/** Weighs the text on both sides of every flip; how many sides there were. */
function expectBothSides(fresh: Fresh): number {
  const today = pickOf(fresh);
  let sides = 0;
  for (const { at, holds, flips, to, line, figure, way } of quoted(fresh)) {
    const what = `${line}: ${figure.label} ${fresh.wordsAt(at)}, ${way}, in\n${[...fresh.files.values()].join('\n')}`;
    const [before, beyond] = [pickAt(fresh, at, holds), pickAt(fresh, at, flips)];
    expect([before.pick, before.sound], `${what}\n${before.words} holds`).toEqual([today, true]);
    expect([beyond.pick, beyond.sound], `${what}\n${beyond.words} flips`).toEqual([to.name, true]);
    expect(way === 'above' ? flips > holds : flips < holds).toBe(true);
    sides += 2;
  }
  return sides;
}

/** Every amount that is written, in whatever line. */
function amountsOf({ resolved }: Fresh): Amount[] {
  const found: Amount[] = [];
  const visit = ({ values, children }: (typeof resolved.records)[number]) => {
    for (const value of Object.values(values)) if (typeof value === 'object' && value !== null && 'likely' in value) found.push(value as Amount);
    children.forEach(visit);
  };
  resolved.records.forEach(visit);
  return found;
}

/** Weighs the text with every amount at some multiples of itself, nearer than what is reported; how many texts there were. */
function expectNoneNearer(fresh: Fresh, multiples: readonly number[]): number {
  const flips = quoted(fresh);
  const today = pickOf(fresh);
  let texts = 0;
  for (const { at, likely, unit } of amountsOf(fresh)) {
    for (const multiple of multiples) {
      const written = likely.toNumber();
      const value = unit?.word === 'min' ? Math.round(written * multiple) : Math.round(written * multiple * 100) / 100;
      const reported = flips.find((flip) => flip.at === at && flip.way === (multiple > 1 ? 'above' : 'below'));
      if (value === written || (reported !== undefined && Math.abs(reported.flips - written) <= Math.abs(value - written))) continue;
      const { pick, sound, words } = pickAt(fresh, at, value);
      texts++;
      if (sound) expect(pick, `${fresh.wordsAt(at)} at ${words} in\n${[...fresh.files.values()].join('\n')}`).toBe(today);
    }
  }
  return texts;
}

describe('every flip point holds on both sides when the text is weighed with it', () => {
  it.each([['pilgrim-v6.yard', 40], ['heron-pump.yard', 8], ['kestrel-flat.yard', 40], ['tarn-inline.yard', 8]] as const)('sample %s', (file, least) => {
    expect(expectBothSides(weighFresh(sampleWithShop(file)))).toBeGreaterThanOrEqual(least);
  });

  it.each([['random estimates', randomEstimate, 50, 40], ['estimates that lie close', closeEstimate, 15, 170]] as const)('%s', PATIENT, (_, arbitrary, count, least) => {
    let sides = 0;
    fc.assert(fc.property(arbitrary, (text) => {
      const fresh = weighFresh(oneFile(text));
      if (fresh.sound) sides += expectBothSides(fresh);
    }), runs(7301, count));
    expect(sides).toBeGreaterThan(least);
  });
});

describe('no flip point is missed', () => {
  // The long scan: 51 614 texts (14 multiples, 150 random estimates with another seed, the samples) found none; too slow to keep.
  it.each([
    ['a sample at 0.9 and 1.1 times each amount', [sampleWithShop('heron-pump.yard')], [0.9, 1.1], 90],
  ] as const)('%s', PATIENT, (_, all, multiples, least) => {
    const texts = (all as readonly Files[]).reduce((sum, files) => sum + expectNoneNearer(weighFresh(files), multiples), 0);
    expect(texts).toBeGreaterThan(least);
  });

  it('estimates that lie close: every amount at 0, 0.6, 0.85, 0.97, 1.03, 1.2, 2, 6 and 19 times itself', PATIENT, () => {
    let texts = 0;
    fc.assert(fc.property(closeEstimate, (text) => {
      const fresh = soundText(text);
      texts += expectNoneNearer(fresh, [0, 0.6, 0.85, 0.97, 1.03, 1.2, 2, 6, 19]);
    }), runs(7302, 3));
    expect(texts).toBeGreaterThan(350);
  });
});

describe('flip points by hand (computed)', () => {
  const flipOf = (text: string, label: string, way: 'above' | 'below', words?: string) => {
    const fresh = soundText(text);
    const found = quoted(fresh).find((flip) => flip.figure.label === label && flip.way === way && (words === undefined || fresh.wordsAt(flip.at) === words));
    return found === undefined ? undefined : { holds: found.holds, flips: found.flips, to: found.to.name, share: found.share };
  };
  const two = (a: string, b: string, shop = '') => `steelyard 1\nshop "S"\n  rate bench 100.00\n${shop}option one "One"\n${a}option two "Two"\n${b}`;

  it('equals go to the first in the file', () => {
    // One costs 500.00, two 600.00: one is still the pick at 600.00, and no longer at 600.01.
    expect(flipOf(two('  part "P" 500.00 new\n', '  part "Q" 600.00 new\n'), 'Price', 'above', '500.00')).toEqual({ holds: 600, flips: 600.01, to: 'two', share: expect.closeTo(100.01 / 500, 12) as number });
    // And two must come below it: at 499.99.
    expect(flipOf(two('  part "P" 500.00 new\n', '  part "Q" 600.00 new\n'), 'Price', 'below', '600.00')).toEqual({ holds: 500, flips: 499.99, to: 'two', share: expect.closeTo(100.01 / 600, 12) as number });
  });

  it('minutes: 60 min at 100.00 against 150.00 is 90 min, still equal, and 91 is beyond', () => {
    expect(flipOf(two('  labour "W" 60 min\n', '  part "Q" 150.00 new\n'), 'Time', 'above')).toMatchObject({ holds: 90, flips: 91, to: 'two' });
  });

  it('a percentage: parts of 200.00 with a fee of 5 % against 220.00 flip above 10 %', () => {
    // 10.00 % is 20.00, as much as two; 10.01 % is 20.02.
    expect(flipOf(two('  part "P" 200.00 new\n  fee "F" 5% of parts\n', '  part "Q" 220.00 new\n'), 'Percentage', 'above')).toMatchObject({ holds: 10, flips: 10.01, to: 'two' });
  });

  it('an amount of three points is held against its likely one', () => {
    expect(flipOf(two('  part "P" 300 / 500 / 900 new\n', '  part "Q" 600.00 new\n'), 'Price', 'above', '300 / 500 / 900')).toMatchObject({ holds: 600, flips: 600.01, share: expect.closeTo(100.01 / 500, 12) as number });
  });

  it('a rate that all options share moves them together', () => {
    // 3 h and nothing else against 1 h and 260.00: equal at 130.00 an hour.
    expect(flipOf(two('  labour "W" 3 h\n', '  labour "V" 1 h\n  part "Q" 260.00 new\n'), 'bench, an hour', 'above')).toMatchObject({ holds: 130, flips: 130.01, to: 'two' });
    // The same hours in both: no rate decides.
    expect(flipOf(two('  labour "W" 3 h\n', '  labour "V" 3 h\n  part "Q" 260.00 new\n'), 'bench, an hour', 'above')).toBeUndefined();
  });

  it('a shared part that both options fit decides nothing', () => {
    const shared = `steelyard 1\nshop "S"\npart pump "Pump" 90.00 new\noption one "One"\n  fit pump\n  part "P" 10.00 new\noption two "Two"\n  fit pump\n  part "Q" 20.00 new\n`;
    expect(quoted(soundText(shared)).map(({ line }) => line).sort()).toEqual(['P', 'Q']);
  });

  it('a cap that starts to hold, and one that no longer does', () => {
    // Fee 10 % of 300.00, at most 20.00: two is dearer by 25.00. With a cap of 45.00 the fee is 30.00.
    const text = (cap: string) => two(`  part "P" 300.00 new\n  fee "F" 10% of parts cap ${cap}\n`, '  part "Q" 325.00 new\n');
    expect(flipOf(text('20.00'), 'At most', 'above')).toMatchObject({ holds: 25, flips: 25.01, to: 'two' });
    // Where the fee is below its cap, a greater cap changes nothing, and a smaller one makes it the cheaper.
    expect(pickOf(soundText(text('45.00')))).toBe('two');
    expect(flipOf(text('45.00'), 'At most', 'above')).toBeUndefined();
    expect(flipOf(text('45.00'), 'At most', 'below')).toMatchObject({ holds: 25.01, flips: 25, to: 'one' });
  });

  it('the nearest comes first, and what can never decide is not among them', () => {
    const { flips } = decideText(two('  part "P" 500.00 new\n  part "R" 5.00 new\n', '  part "Q" 510.00 new\n'));
    const shares = flips.map(({ share }) => share as number);
    expect(shares).toEqual([...shares].sort((a, b) => a - b));
    expect(flips.map(({ line }) => line)).toEqual(['Q', 'P', 'R']);
    expect(decideText(two('  part "P" 500.00 new\n', '  part "Q" 510.00 new\n  part "S" 1.00 new\n')).flips.some(({ line, way }) => line === 'S' && way === 'below')).toBe(false);
  });

  it('equal distances come as the table first comes to their lines, and below one line as the text has them', () => {
    // Both cost 400.00; one stays the pick as the first. Each part is one cent off, 0.01 of 100.00; the rate as well.
    const text = `steelyard 1\nshop "S"\n  rate bench 100.00\npart lengthy "The one with the long name" 100.00 new\npart z "Z" 100.00 new\noption one "One"\n  labour "W" 1 h\n  sublet "Outside" 100.00\n  part "Written before the rest, far to the right" 100.00 new\n  part "P" 100.00 new\noption two "Two"\n  part "Q" 100.00 new\n  fit z, lengthy\n  part "R" 100.00 new\n`;
    const { flips } = decideText(text);
    const nearest = flips.filter(({ share = 1 }) => share < 0.0002).map(({ line, to, way }) => `${line} ${way} ${to.name}`);
    // The first option with the shop's rate after its own lines, then the second one, where what is fitted by name is added up first.
    expect(nearest).toEqual([
      'Outside above two', 'Written before the rest, far to the right above two', 'P above two', 'bench above two',
      'Z below two', 'The one with the long name below two', 'Q below two', 'R below two',
    ]);
  });

  it('distances that are equal but for their last bits in binary are equal', () => {
    // 1.1 h at 100.00 against 99.00: 0.99 h and 90.00 are each a tenth less; 1.2 h against 102.00: 1.02 h and 85.00, each 15 %.
    const below = (hours: string, other: string) => decideText(two(`  labour "W" ${hours} h\n`, `  part "Q" ${other} new\n`)).flips.filter(({ way }) => way === 'below').map(({ figure, flips }) => [figure.label, flips]);
    expect(below('1.1', '99.00')).toEqual([['Time', 0.99], ['bench, an hour', 90]]);
    expect(below('1.2', '102.00')).toEqual([['Time', 1.02], ['bench, an hour', 85]]);
  });

  it('a chance: the likelihood at which the averages meet', () => {
    // 500.00 and, with chance p, 400.00 more, against 600.00: equal at 25 %.
    const text = (p: number) => two(`  part "P" 500.00 new\n  chance "C" ${p}%\n    part "X" 400.00 new\n`, '  part "Q" 600.00 new\n');
    const [flip] = decideText(text(12)).flips.filter(({ measure }) => measure === 'average');
    expect(flip).toMatchObject({ way: 'above', line: 'C' });
    expect(flip?.flips).toBeCloseTo(25, 9);
    expect(flip?.to.name).toBe('two');
    expect(flip?.share).toBeCloseTo(13 / 12, 9);
    const averages = (p: number) => decideText(text(p)).options.map(({ average }) => average);
    expect(averages(25)[0]).toBeCloseTo(averages(25)[1] as number, 9);
    const [under, over] = [averages(24.9), averages(25.1)];
    expect([(under[0] as number) < (under[1] as number), (over[0] as number) > (over[1] as number)]).toEqual([true, true]);
  });
});
