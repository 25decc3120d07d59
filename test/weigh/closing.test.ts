import { describe, expect, test } from 'vitest';
import { closingOf, percentOver, type Closing, type ClosedPart } from '../../src/weigh/index.js';
import { read } from './weighed.js';

const HEAD = `steelyard 1
shop "Invented Bay"
  currency USD
  closed saturday, sunday
  rate bench 100.00
  fee supplies "Supplies" 5% of labour
  fee disposal "Oil disposal" 14.50
access out "Engine out"
  remove 6 h
  refit 2 h
access lifted "Engine raised"
  remove 1 h
labour swap "Swap" 5 h with out
  takes 30 h with lifted
labour paint "Paint" 3 h
part hose "Hose" 20.00 new
`;

interface Job {
  readonly option?: string;
  readonly started?: string;
  readonly closed?: string;
  readonly below?: string;
}

const textOf = ({ option = '', started = '', closed = 'closed for used on 2026-12-09', below = '' }: Job) => `${HEAD}option used "Used engine"\n  do swap\n${option}option stop "Stop"\n  do paint\n${started}${closed}\n${below}`;
const closing = (job: Job): Closing | undefined => closingOf(read(textOf(job)).comparison);

function closed(job: Job): Closing {
  const made = closing(job);
  if (made === undefined) throw new Error('It is not closed.');
  return made;
}

const rows = ({ lines }: ClosedPart) => lines.map(({ title, name, planned, estimated, actual }) => [title, name, planned, estimated?.likely.toFixed(), actual?.likely.toFixed()]);

describe('there is nothing to compare', () => {
  test.each([
    ['where the job is still open', ''],
    ['where nothing says which option was done', 'closed on 2026-12-09'],
    ['where the option that was done is none of the estimate', 'closed for rebuild on 2026-12-09'],
  ])('%s', (_, line) => {
    expect(closing({ closed: line })).toBeUndefined();
  });
});

describe('money that the shop paid', () => {
  test('stands beside the fee it was for, and a fee for which nothing was paid is left out', () => {
    const { paid } = closed({ below: '  paid disposal 9.80\n' });
    expect(rows(paid)).toEqual([['Oil disposal', 'disposal', true, undefined, '9.8']]);
    expect(rows(closed({}).paid)).toEqual([]);
    // A fee is asked of the customer: what it cost the shop was never estimated, so it is beyond, not over.
    expect([paid.actual, paid.beyond, paid.over].map(({ likely }) => likely.toFixed())).toEqual(['0', '9.8', '0']);
  });

  test('is none for what the customer brings', () => {
    expect(rows(closed({ option: '  part "Oil filter" customer-supplied\n  part "Gasket" cost 12.00 new\n' }).paid).map(([title]) => title)).toEqual(['Gasket']);
  });

  test('is of so many pieces as are fitted', () => {
    const { paid } = closed({ option: '  part "Stud" 4 at cost 2.50 new\n', below: '  paid "Stud" 11.00\n' });
    expect(rows(paid)).toEqual([['Stud', undefined, true, '10', '11']]);
    expect(percentOver(paid)?.toFixed()).toBe('10');
  });

  test('for what only may have turned up is beyond the estimate, with the name and title of that line', () => {
    const { paid } = closed({ option: '  chance "The hose is brittle" 30%\n    fit hose\n', below: '  paid hose 18.00\n' });
    expect(rows(paid)).toEqual([['Hose', 'hose', false, undefined, '18']]);
  });

  test('for what is no line of the option is beyond it too, as it was written', () => {
    expect(rows(closed({ below: '  paid hose 18.00\n' }).paid)).toEqual([['hose', undefined, false, undefined, '18']]);
  });
});

describe('hours', () => {
  test('of work that only another option does are beyond the estimate', () => {
    const { hours } = closed({ below: '  clocked paint 2 h\n' });
    expect(rows(hours)).toEqual([['Engine out: remove and refit', 'out', true, '8', undefined], ['Swap', 'swap', true, '5', undefined], ['paint', undefined, false, undefined, '2']]);
    expect([hours.estimated, hours.actual, hours.beyond, hours.open].map(({ likely }) => likely.toFixed())).toEqual(['0', '0', '2', '13']);
    expect(percentOver(hours)).toBeUndefined();
  });

  test('of a way in are clocked as one, and take no way in themselves', () => {
    const [way, swap] = closed({}).hours.lines;
    expect([way?.with, swap?.with]).toEqual([[], ['out']]);
  });
});

describe('ways in', () => {
  const ways = (below: string) => Object.values(closed({ below }).otherWays).map((all) => all.map(({ name }) => name));

  test('are as planned where the planned one was clocked', () => {
    expect(ways('  clocked out 8 h\n')).toEqual([[], []]);
  });

  test('say nothing where none was clocked: nobody recorded them', () => {
    expect(ways('  clocked swap 5 h\n')).toEqual([[], []]);
  });

  test('are told where another was clocked, beside the planned one or instead', () => {
    expect(ways('  clocked lifted 1 h\n')).toEqual([['lifted'], ['out']]);
    expect(ways('  clocked lifted 1 h\n  clocked out 8 h\n')).toEqual([['lifted'], []]);
  });
});

// ISO 8601: 2026-12-09 is a Wednesday.
describe('working days taken', () => {
  const taken = (started: string, line?: string) => closed({ started, ...(line === undefined ? {} : { closed: line }) }).days.actual?.likely.toFixed();

  test.each([['2026-12-09', '1'], ['2026-12-08', '2'], ['2026-12-04', '4'], ['2026-12-05', '3'], ['2026-12-10', undefined]])('from %s to 2026-12-09: %s', (day, days) => {
    expect(taken(`started on ${day}\n`)).toBe(days);
  });

  test('are unknown where a day is missing', () => {
    expect(taken('')).toBeUndefined();
    expect(taken('started on 2026-12-08\n', 'closed for used')).toBeUndefined();
  });
});
