import { describe, expect, test } from 'vitest';
import { JOB, rows, SHOP } from './rows.js';

// A line comes into an option, or leaves it, by one change: its own where it came, went or stands elsewhere; else the first link on the
// way from the option to it that only one version has. Rules of our own; an hour is 120.00, sums by hand.

/** The rows one way, and the other way round. */
const bothWays = (after: string, before: string) => [rows(after, SHOP, before), rows(before, SHOP, after)];

describe('the line’s own change comes first', () => {
  test('a new part of a job that the option does now too', () => {
    const before = `${JOB}labour look "Look" 1.0 h\n`;
    const after = `${JOB.replace('do pump\n', 'do pump, look\n')}labour look "Look" 1.0 h\n  uses clip\npart clip "Clip" 10.00 new\n`;
    expect(bothWays(after, before)).toEqual([['came Look by Mend it: 120.00', 'came Clip: 10.00'], ['went Look by Mend it: -120.00', 'went Clip: -10.00']]);
  });

  test('a part that stands below a way in now, which is worth it for the first time', () => {
    // Getting in costs 9 h before, 3 h after; the job 8 h or 2 h. The bracket stood in the other option.
    const other = (lines: string) => `option other "Other"\n  labour "Fit it" 1.0 h\n${lines}`;
    const bracket = '  part "Bracket" 20.00 new\n';
    const before = `${JOB.replace('refit 1.0', 'refit 7.0')}${other(bracket)}`;
    const after = `${JOB.replace('refit 1.0 h\n', `refit 1.0 h\n${bracket}`)}${other('')}`;
    expect(rows(after, SHOP, before)).toEqual(['elsewhere Bracket: 20.00 -20.00', 'moved Front off: 0.00 0.00', 'ways Way in: -360.00 0.00']);
  });

  test('a core that a part has now, though the option fits that part itself from now on', () => {
    const unit = (fit: string, core: string) => `${JOB.replace('do pump\n', `do pump\n${fit}`).replace('  takes 8.0 h\n', '  uses unit\n  takes 8.0 h\n')}part unit "Unit" 90.00 rebuilt\n${core}`;
    const [there, back] = bothWays(unit('  fit unit\n', '  core 50.00\n    assemble 1.0 h\n'), unit('', ''));
    // Putting the old unit together is 1 h; the charge of 50.00 comes back.
    expect(there).toEqual(['moved Unit: 170.00 (120.00)', 'came Unit by Mend it: 0.00']);
    expect(back).toEqual(['moved Unit: -170.00 (-120.00)', 'went Unit by Mend it: 0.00']);
  });
});

describe('the first link that only one version has', () => {
  test('a job that the option does now, with a part that the job uses only now', () => {
    const seal = (uses: string) => `labour look "Look" 1.0 h\n${uses}part seal "Seal" 40.00 new\n`;
    const [there, back] = bothWays(`${JOB.replace('do pump\n', 'do pump, look\n')}${seal('  uses seal\n')}`, `${JOB}${seal('')}`);
    expect(there).toEqual(['came Look by Mend it: 160.00', 'came Seal by Look: 0.00']);
    expect(back).toEqual(['went Look by Mend it: -160.00', 'went Seal by Look: 0.00']);
  });

  test('a way in that both versions pay for brings a part along now: that is no other way in', () => {
    const gasket = 'part gasket "Gasket" 20.00 new\n';
    const [there, back] = bothWays(`${JOB.replace('refit 1.0 h\n', 'refit 1.0 h\n  uses gasket\n')}${gasket}`, `${JOB}${gasket}`);
    expect([there, back]).toEqual([['came Gasket by Front off: 20.00'], ['went Gasket by Front off: -20.00']]);
  });

  test('other words of the option, or of a stage, bring nothing in', () => {
    const look = 'labour look "Look" 1.0 h\n';
    expect(rows(`${JOB.replace('do pump\n', 'do pump, look\n  warranty 3 mo\n')}${look}`, SHOP, `${JOB}${look}`)).toEqual(['came Look by Mend it: 120.00', 'moved Mend it: 0.00']);
    const stage = (title: string, jobs: string) => `${JOB}${look}labour strip "Strip it" 1.0 h\nstage tear-down "${title}"\n  do ${jobs}\n`;
    expect(rows(stage('Take the front off', 'look, strip'), SHOP, stage('Take it apart', 'look'))).toEqual(['came Strip it by Take the front off: 120.00', 'renamed Take the front off: 0.00']);
  });

  test('what only a chance took is no part of the quote: the job that needs it now brought it in', () => {
    const chance = `${JOB}  chance "The bolts are seized" 10%\n    do extract\nlabour extract "Extract the bolts" 1.0 h\n`;
    const [there, back] = bothWays(chance.replace('  takes 8.0 h\n', '  needs extract\n  takes 8.0 h\n'), chance);
    expect([there, back]).toEqual([['came Extract the bolts by Pump: renew: 120.00'], ['went Extract the bolts by Pump: renew: -120.00']]);
  });

  test('of two ways in that bring the same part along now, the first by name, wherever they stand in the file', () => {
    const ways = [
      (uses: string) => `access b-pan "Pan off"\n  remove 1.0 h\n${uses}`,
      (uses: string) => `access a-sump "Sump off"\n  remove 1.0 h\n${uses}`,
    ];
    const job = (uses: string, order: typeof ways) => `use "shop.yard"\nestimate "E-1"\n${order.map((way) => way(uses)).join('')}labour pump "Pump: renew" 1.0 h with b-pan, a-sump\npart gasket "Gasket" 20.00 new\noption mend "Mend it"\n  do pump\n`;
    for (const order of [ways, [...ways].reverse()]) {
      expect(rows(job('  uses gasket\n', order), SHOP, job('', ways))).toEqual(['came Gasket by Sump off: 20.00', 'came Gasket by Pan off: 0.00']);
    }
  });

  test('a part that the option fits no more, though it costs more and a job uses it still', () => {
    const seal = (price: string, fit: string) => `${JOB.replace('do pump\n', `do pump\n${fit}`).replace('  takes 8.0 h\n', '  uses seal\n  takes 8.0 h\n')}part seal "Seal" ${price} new\n`;
    expect(rows(seal('45.00', ''), SHOP, seal('40.00', '  fit seal\n'))).toEqual(['moved Seal: 5.00', 'went Seal by Mend it: 0.00']);
  });

  test('is told with the title of the version that has it', () => {
    const look = (title: string, jobs: string) => `${JOB.replace('"Mend it"', `"${title}"`).replace('do pump\n', `do ${jobs}\n`)}labour look "Look" 1.0 h\n`;
    const [there, back] = bothWays(look('Mend it now', 'pump'), look('Mend it', 'pump, look'));
    expect(there).toEqual(['went Look by Mend it: -120.00', 'renamed Mend it now: 0.00']);
    expect(back).toEqual(['came Look by Mend it: 120.00', 'renamed Mend it: 0.00']);
  });
});

describe('other ways in', () => {
  test('pinned in the same edit that says something else: the option moved them', () => {
    // In the car 8 h instead of 3 h and 2 h.
    expect(rows(JOB.replace('do pump\n', 'do pump\n  way in-car\n  warranty 3 mo\n'))).toEqual(['moved Mend it: 360.00']);
  });

  test('of an option that only has another title follow from what they cost', () => {
    expect(rows(JOB.replace('"Mend it"', '"Mend it now"').replace('refit 1.0', 'refit 7.0'))).toEqual(['moved Front off: 0.00', 'renamed Mend it now: 0.00', 'ways Way in: 360.00']);
  });
});
