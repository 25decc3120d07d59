import { describe, expect, it } from 'vitest';
import { decide } from '../../../src/weigh/index.js';
import { decideText, oneFile, weighFresh } from './weighing.js';

// Whether a core is back in time is a matter of the plan in which certain chances happen, and of nothing else. By hand: Monday 30 November, days of
// eight hours; the part is there at once, so that a core that is due after one working day goes back on Tuesday 1 December at the latest: 16 h.
// What is opened or done once takes its time once, and a week counts closed days: common practice.

const text = (option: string, more = '', due = '1 d', start = '  start 2026-11-30\n') => `steelyard 1
shop "S"
  workday 8 h
  rate bench 100.00
estimate "E"
${start}${more}option one "One"
  part "Unit" 1000.00 rebuilt
    core 400.00 due ${due}
${option}`;

const average = (...parts: Parameters<typeof text>) => decideText(text(...parts)).of('one').average;
const chance = (name: string, below: string, percent = 50) => `  chance ${name} "${name}" ${percent}%\n    ${below}\n`;

describe('what moves the day', () => {
  it('outside work that is waited for, and none that is not', () => {
    expect(average(`  labour "W" 12 h\n${chance('c', 'sublet "Skim" 60.00 back in 2 d')}`)).toBeCloseTo(1000 + 1200 + 0.5 * (60 + 400), 9);
    expect(average(`  labour "W" 12 h\n${chance('c', 'sublet "Skim" 60.00')}`)).toBeCloseTo(1000 + 1200 + 0.5 * 60, 9);
  });

  it('outside work that comes after something, though it is back at once', () => {
    // Two technicians do 10 h each at the same time; where others must look at the one before the other is begun, they take 20 h.
    const more = '  technicians 2\nlabour w "W" 10 h\nlabour v "V" 10 h\nsublet look "Look" 60.00\n  after w\n';
    expect(average(`  do w, v\n${chance('c', 'send look')}`, more)).toBeCloseTo(1000 + 2000 + 0.5 * (60 + 400), 9);
    expect(average(`  do w, v\n${chance('c', 'send look')}`, more.replace('  after w\n', ''))).toBeCloseTo(1000 + 2000 + 0.5 * 60, 9);
  });

  it('a part that is waited for beside one that is there', () => {
    expect(average(`  labour "W" 12 h\n${chance('c', 'part "X" 50.00 new arrives 2 d\n    part "Y" 30.00 new')}`)).toBeCloseTo(1000 + 1200 + 0.5 * (80 + 400), 9);
  });

  it('a way in that its work takes', () => {
    const up = (hours: number) => `access up "Up"\n  remove ${hours} h\n  refit 1 h\n`;
    // 13 h, and 1 h with a way in of 2 h or 3 h: 16 h are in time, 17 h are not.
    expect(average(`  labour "W" 12 h\n${chance('c', 'labour "More" 1 h with up')}`, up(2))).toBeCloseTo(1000 + 1200 + 0.5 * 400, 9);
    expect(average(`  labour "W" 12 h\n${chance('c', 'labour "More" 1 h with up')}`, up(3))).toBeCloseTo(1000 + 1200 + 0.5 * (500 + 400), 9);
  });
});

describe('what two chances take', () => {
  it('a way in of both is opened once', () => {
    const both = `${chance('a', 'labour "A" 1 h with up')}${chance('b', 'labour "B" 1 h with up')}`;
    const up = 'access up "Up"\n  remove 2 h\n  refit 2 h\n';
    // Opened once, both together take 6 h beyond the 10 h; twice, 10 h. With 11 h one of them alone is in time still.
    expect(average(`  labour "W" 10 h\n${both}`, up)).toBeCloseTo(1000 + 1000 + 2 * 0.5 * 100 + 0.75 * 400, 9);
    expect(average(`  labour "W" 11 h\n${both}`, up)).toBeCloseTo(1000 + 1100 + 2 * 0.5 * 100 + 0.75 * 400 + 0.25 * 400, 9);
  });

  it('a job of both is done once', () => {
    const both = `${chance('a', 'do more')}${chance('b', 'do more')}`;
    const more = (hours: number) => `labour more "More" ${hours} h\n`;
    expect(average(`  labour "W" 10 h\n${both}`, more(6))).toBeCloseTo(1000 + 1000 + 0.75 * 600, 9);
    expect(average(`  labour "W" 10 h\n${both}`, more(7))).toBeCloseTo(1000 + 1000 + 0.75 * (700 + 400), 9);
  });
});

describe('the last day', () => {
  it('is none without a day to start from: what is due some time after is in time', () => {
    expect(average(`  labour "W" 12 h\n${chance('c', 'labour "More" 40 h')}`, '', '1 d', '')).toBeCloseTo(1000 + 1200 + 0.5 * 4000, 9);
  });

  it('counts closed days in a wait of weeks', () => {
    // Two weeks from Monday 30 November end on 14 December, long after Friday 4 December and before the 16th: as hours of work they would be none.
    const wait = '  labour "W" 2 h\n  part "Gasket" 20.00 new arrives 2 wk\n';
    expect(average(`${wait}${chance('c', 'labour "More" 1 h')}`, '', '4 d')).toBeCloseTo(1000 + 200 + 20 + 0.5 * 100 + 400, 9);
    expect(average(`${wait}${chance('c', 'labour "More" 1 h')}`, '', '16 d')).toBeCloseTo(1000 + 200 + 20 + 0.5 * 100, 9);
  });

  it('counts them for what nobody works on, too', () => {
    // Nothing but a part that is waited for: two weeks, or three. By hand: 14 and 21 December.
    const wait = '  part "Gasket" 20.00 new arrives 2 wk\n';
    expect(average(`${wait}${chance('c', 'part "Seal" 10.00 new arrives 3 wk')}`, '', '16 d')).toBeCloseTo(1000 + 20 + 0.5 * (10 + 400), 9);
  });

  it('is held by the best plan where nothing turns up, as in the quote', () => {
    // Graham, SIAM Journal on Applied Mathematics 17(2), 1969 (from memory): 3 3 2 2 2 by two, here in pairs of hours. The longest first takes 14 h, the
    // best plan 12: of days of six hours three, or two.
    const jobs = [6, 6, 4, 4, 4].map((hours, i) => `  labour "W${i}" ${hours} h\n`).join('');
    const { average: mean } = decideText(text(`${jobs}${chance('c', 'part "X" 10.00 new')}`, '  technicians 2\n').replace('workday 8 h', 'workday 6 h')).of('one');
    expect(mean).toBeCloseTo(1000 + 2400 + 0.5 * 10, 9);
  });

  it('is each core’s own', () => {
    const two = (first: string, second: string) => average(`  labour "W" 12 h\n  part "Pump" 100.00 rebuilt\n    core 50.00 due ${second}\n${chance('c', 'labour "More" 5 h')}`, '', first);
    expect(two('1 d', '2 d')).toBeCloseTo(1000 + 100 + 1200 + 0.5 * (500 + 400), 9);
    expect(two('2 d', '1 d')).toBeCloseTo(1000 + 100 + 1200 + 0.5 * (500 + 50), 9);
    expect(two('1 d', '1 d')).toBeCloseTo(1000 + 100 + 1200 + 0.5 * (500 + 450), 9);
  });
});

describe('lengths with three figures', () => {
  // The lateness that the thousand drawn cases of the risk show, where what turns up always does.
  const drawn = (option: string, due = '1 d') => {
    const { average: mean, risk } = decideText(text(option, '', due)).of('one');
    return { mean, late: [...(risk?.cases.days ?? [])].filter((days) => days > 2).length / 1000 };
  };

  it.each([1, 2, 3, 4])('with %i things that turn up: as often as in the drawn cases, nearly', (count) => {
    const more = Array.from({ length: count }, (_, i) => chance(`c${i}`, `labour "More ${i}" 0.25 h`, 100)).join('');
    const { mean, late } = drawn(`  labour "W" 8 / 14 / 22 h\n${more}`);
    expect([late > 0.2, late < 0.6]).toEqual([true, true]);
    // (8 + 4 × 14 + 22)/6 hours come to 1,433.33. Of the cases each 4th, 16th or 64th is taken where 1, 2 or more turn up: the share may be off by
    // three deviations of so many plain draws, 3 × √(0.25/n), and is less, since the draws lie evenly.
    const taken = 1000 / ([4, 16, 64, 64][count - 1] as number);
    expect(Math.abs((mean - (1000 + 1433.33 + count * 25)) / 400 - late)).toBeLessThan(3 * Math.sqrt(0.25 / taken) / 2);
  });

  it('that are never late, or always, cost no share of a refund', () => {
    expect(drawn(`  labour "W" 8 / 10 / 12 h\n${chance('c', 'labour "More" 4 h')}`).mean).toBeCloseTo(1000 + 1000 + 0.5 * 400, 9);
    expect(drawn(`  labour "W" 17 / 20 / 23 h\n${chance('c', 'labour "More" 4 h')}`).mean).toBeCloseTo(1000 + 2000 + 0.5 * 400 + 400, 9);
  });

  it('of a wait, in days', () => {
    // 2 h of work behind a part that arrives in one to three days: with one day, 10 h, it is in time; from just above 1.75 days on it is not.
    const { mean, late } = drawn('  labour "W" 2 h\n  part "Gasket" 20.00 new arrives 1 / 1.5 / 3 d\n');
    expect([late > 0.2, late < 0.6]).toEqual([true, true]);
    expect(mean).toBeCloseTo(1000 + 200 + 20 + late * 400, 6);
  });
});

describe('many chances that move the day', () => {
  const chances = (count: number, below: (i: number) => string) => Array.from({ length: count }, (_, i) => chance(`c${i}`, below(i))).join('');
  const beyond = (option: string, core = true) => decide(weighFresh(oneFile(core ? text(option) : text(option).replace(/ {4}core.*\n/, ''))).comparison).beyond;

  it('are told as too many only where a core has a last day and they move it', () => {
    expect(beyond(`  labour "W" 16 h\n${chances(9, (i) => `labour "More ${i}" 1 h`)}`)).toEqual(['sets']);
    expect(beyond(`  labour "W" 16 h\n${chances(9, (i) => `part "More ${i}" 10.00 new`)}`)).toEqual([]);
    expect(beyond(`  labour "W" 16 h\n${chances(9, (i) => `sublet "More ${i}" 10.00`)}`)).toEqual([]);
    expect(beyond(`  labour "W" 16 h\n${chances(9, (i) => `labour "More ${i}" 1 h`)}`, false)).toEqual([]);
    expect(beyond(`  labour "W" 16 h\n${chances(8, (i) => `labour "More ${i}" 1 h`)}${chance('last', 'part "P" 10.00 new')}`)).toEqual([]);
    expect(beyond(`  labour "W" 16 h\n${chances(8, (i) => `labour "More ${i}" 1 h`)}${chance('last', 'sublet "P" 10.00 back in 1 d')}`)).toEqual(['sets']);
  });
});
