import { describe, expect, test } from 'vitest';
import { decide } from '../../../src/weigh/index.js';
import { decideText, oneFile, weighFresh } from '../decision/weighing.js';

// How long the drawn cases take, and which lines are told to go with the spread. Rules of our own; days worked out by hand.

const head = 'steelyard 1\nestimate "E"\n  start 2026-11-30\nshop "S"\n  workday 8 h\n  rate bench 100.00\n';

function riskOf(lines: string) {
  const { risk } = decideText(`${head}${lines}`).of('one');
  if (risk === undefined) throw new Error('nothing varies');
  return risk;
}

describe('days of the drawn cases', () => {
  test('a part that is waited for in days is waited for in all of them', () => {
    const lines = (arrives: string) => `part box "Box" 90.00 new arrives ${arrives}\noption one "One"\n  labour "W" 8 h\n    uses box\n  chance "C" 50%\n    part "X" 10.00 new\n`;
    for (const arrives of ['10 d', '2 wk']) {
      const { weighed } = decideText(`${head}${lines(arrives)}`).of('one');
      const quoted = weighed.ready.days.likely.toNumber();
      expect(quoted).toBeGreaterThanOrEqual(10);
      expect(new Set(riskOf(lines(arrives)).cases.days), arrives).toEqual(new Set([quoted]));
    }
  });

  test('a way in that two chances need is opened once', () => {
    // 1 h; with either 8 h for the way and 1 h, two days; with both 11 h, two days. Opened twice it would be three.
    const risk = riskOf('access out "Out"\n  remove 8 h\noption one "One"\n  labour "W" 1 h\n  chance a "A" 50%\n    labour "X" 1 h with out\n  chance b "B" 50%\n    labour "Y" 1 h with out\n');
    expect(new Set(risk.cases.days)).toEqual(new Set([1, 2]));
  });

  test('what comes back later holds up nothing', () => {
    const risk = riskOf('option one "One"\n  labour "W" 1 h\n  chance a "A" 50%\n    labour "X" 8 h\n  chance b "B" 50% comeback\n    labour "Y" 80 h\n');
    expect(new Set(risk.cases.days)).toEqual(new Set([1, 2]));
  });
});

test('two lines that are written alike vary apart within an option, too', () => {
  // beta-PERT (100, 150, 400): mean 183.33, variance (mean − low)(high − mean)/7 = 2579.37. Two apart have twice that, two alike four times.
  const { cases, inAll } = riskOf(`option one "One"\n${'  part "P" 100 / 150 / 400 new\n'.repeat(2)}`);
  const variance = cases.inAll.reduce((sum, cost) => sum + (cost - inAll.mean) ** 2, 0) / cases.inAll.length;
  expect(Math.abs(variance / 2579.37 - 2)).toBeLessThan(0.3);
});

describe('the lines that go with the spread', () => {
  const titles = (lines: string) => riskOf(lines).contributions.map(({ title }) => title);

  test('are told below a line, too, whose title is still to be written', () => {
    const { comparison, problems } = weighFresh(oneFile('steelyard 1\nshop\n  rate bench 90 / 100 / 120\noption one "One"\n  labour "W" 1 h\n'));
    expect(problems.map(({ code }) => code)).toEqual(['title-missing']);
    expect(decide(comparison).options[0]?.risk?.contributions.map(({ title }) => title)).toEqual(['bench']);
  });

  test('are three at most, of many that are alike', () => {
    const parts = Array.from({ length: 5 }, (_, i) => `  part "P${i}" 100 / 200 / 300 new\n`).join('');
    expect(titles(`option one "One"\n${parts}`)).toHaveLength(3);
  });

  test('have a wait among them where a core may come back too late for it', () => {
    const lines = (due: string) => `part lid "Lid" 9.00 new arrives 1 / 3 / 9 d\noption one "One"\n  part "Box" 90.00 rebuilt\n    core 50.00${due}\n  labour "W" 1 h\n    uses lid\n  part "P" 100 / 101 / 102 new\n`;
    // The refund is 50.00 or nothing; beside it the cents of P are less than a sample can tell.
    expect(titles(lines(' due 4 d'))).toEqual(['Lid']);
    expect(titles(lines(' due 400 d'))).toEqual(['P']);
    expect(titles(lines(''))).toEqual(['P']);
  });

  test('have no wait among them where time moves no money, of however many', () => {
    const waits = Array.from({ length: 60 }, (_, i) => `  part "W${i}" 9.00 new arrives ${1 + i} / ${2 + i} / ${9 + i} d\n`).join('');
    expect(titles(`option one "One"\n  part "P" 100 / 200 / 300 new\n${waits}`)).toEqual(['P']);
  });
});
