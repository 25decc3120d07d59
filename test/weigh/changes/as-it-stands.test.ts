import { describe, expect, test } from 'vitest';
import { JOB, rows, SHOP } from './rows.js';

// Selling the vehicle as it stands is weighed beside the written options, though no line says it. Rules of our own; sums by hand.

const van = (job: string, ...says: readonly string[]) => job.replace('estimate "E-1"\n', `estimate "E-1"\nvehicle "Van"\n${says.map((line) => `  ${line}\n`).join('')}`);

describe('selling it as it stands', () => {
  test('takes what every option does first now: the first of the options brought it in', () => {
    const two = (jobs: string) => van(`${JOB.replace('do pump', `do ${jobs}`)}option other "Other"\n  do ${jobs}\nlabour look "Look" 1.0 h done first\n`, 'worth 9000.00', 'unrepaired 1500.00');
    expect(rows(two('pump, look'), SHOP, two('pump'))).toEqual(['came Look by Mend it: 120.00 0.00 120.00', 'came Look by Other: 0.00 120.00 0.00']);
    expect(rows(two('pump'), SHOP, two('pump, look'))).toEqual(['went Look by Mend it: -120.00 0.00 -120.00', 'went Look by Other: 0.00 -120.00 0.00']);
  });

  test('stays itself where another option comes or goes', () => {
    const one = van(JOB, 'worth 9000.00', 'unrepaired 1500.00');
    const two = `${one}option other "Other"\n  part "Used pump" 200.00 used\n`;
    expect(rows(two, SHOP, one)).toEqual(['came Other: 0.00 200.00 0.00']);
    expect(rows(one, SHOP, two)).toEqual(['went Other: 0.00 0.00 -200.00']);
  });

  test('comes in by the line of the vehicle that says what it brings', () => {
    // 9000.00 less 1500.00 of worth is given up.
    expect(rows(van(JOB, 'worth 9000.00', 'unrepaired 1500.00'), SHOP, van(JOB, 'worth 9000.00'))).toEqual(['moved Van: 0.00 0.00 (7500.00)']);
  });

  test('comes in beside the changes where no line of its own moved: an option says now what it leaves', () => {
    const [before, after] = [van(JOB, 'unrepaired 1500.00'), van(JOB.replace('do pump\n', 'do pump\n  worth 8000.00\n'), 'unrepaired 1500.00')];
    expect(rows(after, SHOP, before)).toEqual(['moved Mend it: 0.00 0.00', 'other Sell it as it stands: 0.00 0.00 (6500.00)']);
    expect(rows(before, SHOP, after)).toEqual(['moved Mend it: 0.00 0.00', 'other Sell it as it stands: 0.00 0.00 (-6500.00)']);
  });
});
