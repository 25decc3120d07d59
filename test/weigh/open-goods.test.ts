import { describe, expect, test } from 'vitest';
import { read, readSound } from './weighed.js';

// Work that is due, done while all is open: what comes with it, and what can't be priced. 100.00 an hour, 10 % tax on outside work; sums by hand.

const HEAD = 'steelyard 1\nshop "S"\n  rate bench 100.00\n  tax sales "Tax" 10% on sublets\naccess up "Up"\n  remove 2 h\n  refit 1 h\nlabour w "W" 1 h with up\n';
const ONE = 'option one "One"\n  do w\n';
const told = ({ option }: ReturnType<typeof read>) => option('one').open.map(({ job, now, alone, saved }) => [job.title, ...[now, alone, saved].map(({ likely }) => likely.toFixed())].join(' '));

describe('work to consider while it is open', () => {
  test('comes with its outside work and the tax on it, which is paid once where the option sends it anyway', () => {
    const text = `sublet skim "Skim" 20.00\nlabour pump "Pump" 1.5 h with up\n  uses skim\nconsider pump\n${ONE}`;
    expect(told(readSound(HEAD + text))).toEqual(['Pump 172 472 300']);
    expect(told(readSound(`${HEAD}${text}  send skim\n`))).toEqual(['Pump 150 472 322']);
  });

  test('pays none of the option’s own fees when it is done alone later, but the shop’s', () => {
    const shop = HEAD.replace('  tax', '  fee supplies "Supplies" 15.00\n  tax');
    expect(told(readSound(`${shop}labour pump "Pump" 1.5 h with up\nconsider pump\n${ONE}  fee tow "Tow" 80.00\n`))).toEqual(['Pump 150 465 315']);
  });

  test('is not offered where its own time is not known yet, though that of what it needs is', () => {
    const text = `labour drain "Drain" 0.5 h with up\nlabour pump "Pump"\n  needs drain\nconsider pump\n${ONE}`;
    expect(told(read(HEAD + text))).toEqual([]);
    expect(told(read(HEAD + text.replace('"Pump"', '"Pump" 1 h with up')))).toEqual(['Pump 150 450 300']);
  });
});
