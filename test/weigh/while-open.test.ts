import { describe, expect, test } from 'vitest';
import { readSound } from './weighed.js';

// Work that is due, done while all is open. 100.00 an hour, 10 % tax on parts; sums by hand.

const HEAD = 'steelyard 1\nshop "S"\n  rate bench 100.00\n  tax sales "Tax" 10% on parts\naccess up "Up"\n  remove 2 h\n  refit 1 h\nlabour w "W" 1 h with up\n';

function open(text: string) {
  return readSound(HEAD + text).option('one').open.map(({ job, now, nowHours, alone, aloneHours, saved }) => [job.title, ...[now, nowHours, alone, aloneHours, saved].map(({ likely }) => likely.toFixed())].join(' '));
}

const ONE = 'option one "One"\n  do w\n';

describe('work to consider while it is open', () => {
  test('costs its own hours now, and getting in again later', () => {
    expect(open(`labour pump "Pump" 1.5 h with up\nconsider pump\n${ONE}`)).toEqual(['Pump 150 1.5 450 4.5 300']);
  });

  test('with its part and the tax on it, and with what it needs', () => {
    expect(open(`labour pump "Pump" 1.5 h with up\n  uses seal\n  needs drain\nlabour drain "Drain" 0.5 h\npart seal "Seal" 20.00 new\nconsider pump\n${ONE}`)).toEqual(['Pump 222 2 522 5 300']);
  });

  test('a part that the option fits anyway is paid only once', () => {
    expect(open(`labour pump "Pump" 1.5 h with up\n  uses seal\npart seal "Seal" 20.00 new\nconsider pump\n${ONE}  fit seal\n`)).toEqual(['Pump 150 1.5 472 4.5 322']);
  });

  test('what the option does anyway, and what it brings no nearer, is left out', () => {
    expect(open(`labour pump "Pump" 1.5 h with up\nconsider pump\n${ONE.replace('do w', 'do w, pump')}`)).toEqual([]);
    expect(open(`labour belt "Belt" 1.5 h\nconsider belt\n${ONE}`)).toEqual([]);
    expect(open(`labour pump "Pump" 1.5 h with up\nconsider pump\noption one "One"\n  part "P" 5.00 new\n`)).toEqual([]);
  });

  test('what the option’s pinned ways in don’t reach', () => {
    expect(open(`access off "Off"\n  remove 1 h\nlabour pump "Pump" 1.5 h with off\nconsider pump\n${ONE}  way up\n`)).toEqual([]);
  });

  test('thirds of an hour, added up in another order, are the same hours', () => {
    expect(open(`labour belt "Belt" 20 min\nlabour v "V" 50 min\nconsider belt\n${ONE.replace('do w', 'do w, v')}`)).toEqual([]);
  });
});
