import { describe, expect, test } from 'vitest';
import { authorisedIn } from '../../src/weigh/index.js';
import { read } from './weighed.js';

const HEAD = 'steelyard 1\nshop "Invented Bay"\n  currency USD\n  overrun 10%\n  rate bench 100.00\n';
const OPTIONS = 'option repair "Repair"\n  fee "All of it" 800.00\noption used "Used engine"\n  fee "All of it" 900.00\n';

/** For each that something is authorised for: its name, how much, and the option that was authorised later. */
function told(below: string, options = OPTIONS) {
  return authorisedIn(read(`${HEAD}${options}${below}`).comparison).map(({ of, amount, earlier, since, total }) => ({
    of: of.name, amount: amount.likely.toFixed(2), earlier: earlier.map((one) => one.amount?.likely.toFixed(2)), since: since?.name, total: total.likely.toFixed(2),
  }));
}

test('nothing is authorised', () => {
  expect(told('')).toEqual([]);
});

describe('of several authorisations', () => {
  test('for one option the last day holds, and the others are told in the order of the file', () => {
    expect(told('authorised 700.00 for repair on 2026-11-25\nauthorised 760.00 for repair on 2026-11-28\nauthorised 720.00 for repair on 2026-11-26\n')).toEqual([
      { of: 'repair', amount: '760.00', earlier: ['700.00', '720.00'], since: undefined, total: '800.00' },
    ]);
  });

  test('of one day the one written last holds', () => {
    expect(told('authorised 700.00 for repair on 2026-11-25\nauthorised 760.00 for repair on 2026-11-25\n')).toMatchObject([{ amount: '760.00', earlier: ['700.00'] }]);
  });

  test('for several options the job is the one authorised last; the other says since what', () => {
    expect(told('authorised 900.00 for used on 2026-11-28\nauthorised 800.00 for repair on 2026-11-25\n')).toMatchObject([{ of: 'repair', since: 'used' }, { of: 'used', since: undefined }]);
    expect(told('authorised 900.00 for used on 2026-11-24\nauthorised 800.00 for repair on 2026-11-25\n')).toMatchObject([{ of: 'repair', since: undefined }, { of: 'used', since: 'repair' }]);
  });

  test('one in another currency counts for nothing, not even as the last', () => {
    expect(told('authorised 700.00 for repair on 2026-11-25\nauthorised 950.00 CAD for used on 2026-11-28\nauthorised 990.00 CAD for repair on 2026-11-29\n')).toMatchObject([{ of: 'repair', amount: '700.00', earlier: [], since: undefined }]);
    expect(told('authorised 700.00 USD for repair on 2026-11-25\n')).toMatchObject([{ amount: '700.00' }]);
  });

  test('one without an amount counts for nothing', () => {
    expect(told('authorised 700.00 for repair on 2026-11-25\nauthorised for repair on 2026-11-29\n')).toMatchObject([{ amount: '700.00', earlier: [] }]);
  });

  test('one for an option that is not there is no job', () => {
    expect(told('authorised 700.00 for repair on 2026-11-25\nauthorised 950.00 for rebuild on 2026-11-28\n')).toMatchObject([{ of: 'repair', since: undefined }]);
  });
});

describe('a stage that is authorised', () => {
  const withStage = `labour scope "Borescope" 2 h\nstage look "Look inside"\n  do scope\n${OPTIONS}`;

  test('is beside what the stage comes to, and makes no option the job', () => {
    expect(told('authorised 150.00 for look on 2026-11-28\nauthorised 800.00 for repair on 2026-11-25\n', withStage)).toMatchObject([
      { of: 'look', amount: '150.00', since: undefined, total: '200.00' },
      { of: 'repair', amount: '800.00', since: undefined },
    ]);
  });
});
