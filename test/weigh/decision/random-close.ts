import fc from 'fast-check';

/**
 * Small estimates whose modes, ways in and markup bands lie close together, so that a figure that moves changes which
 * of them is taken: two ways in, three jobs with several modes, costs around the ends of bands, two or three options.
 */
export const closeEstimate: fc.Arbitrary<string> = fc.record({
  rates: fc.tuple(cents(8000, 14_000), cents(8000, 14_000)),
  ways: fc.tuple(cents(50, 400), cents(50, 400), cents(0, 200)),
  includes: fc.boolean(),
  jobs: fc.array(fc.record({ place: cents(300, 900), first: cents(100, 700), second: cents(50, 500), reach: fc.nat({ max: 5 }), count: fc.nat({ max: 4 }), minutes: fc.boolean(), spread: fc.boolean() }), { minLength: 2, maxLength: 3 }),
  costs: fc.array(cents(2000, 30_000), { minLength: 2, maxLength: 2 }),
  bands: fc.tuple(cents(3000, 9000), cents(10_000, 25_000), fc.boolean()),
  tax: fc.nat({ max: 3 }),
  fee: fc.nat({ max: 2 }),
  rounding: fc.constantFrom('half-up', 'half-even', 'half-down'),
  digits: fc.constantFrom('USD', 'USD', 'KWD'),
  options: fc.array(fc.record({ jobs: fc.integer({ min: 1, max: 7 }), goods: fc.nat({ max: 3 }), price: cents(1000, 90_000), worth: cents(400_000, 420_000), ranged: fc.boolean() }), { minLength: 2, maxLength: 3 }),
}).map(textOf);

function cents(from: number, to: number): fc.Arbitrary<string> {
  return fc.integer({ min: from, max: to }).map((count) => (count / 100).toFixed(2));
}

interface Drawn {
  readonly rates: readonly string[];
  readonly ways: readonly string[];
  readonly includes: boolean;
  readonly jobs: readonly { readonly place: string; readonly first: string; readonly second: string; readonly reach: number; readonly count: number; readonly minutes: boolean; readonly spread: boolean }[];
  readonly costs: readonly string[];
  readonly bands: readonly [string, string, boolean];
  readonly tax: number;
  readonly fee: number;
  readonly rounding: string;
  readonly digits: string;
  readonly options: readonly { readonly jobs: number; readonly goods: number; readonly price: string; readonly worth: string; readonly ranged: boolean }[];
}

function textOf(drawn: Drawn): string {
  const { rates, ways, jobs, costs, bands, options } = drawn;
  const time = (hours: string, minutes: boolean) => (minutes ? `${Math.round(Number(hours) * 60)} min` : `${hours} h`);
  const spread = (hours: string) => `${(Number(hours) * 0.8).toFixed(2)} / ${hours} / ${(Number(hours) * 1.5).toFixed(2)} h`;
  const lines = [
    'steelyard 1', 'shop "Close Calls"', `  currency ${drawn.digits}`, `  rounding ${drawn.rounding}`,
    `  rate bench ${rates[0] ?? ''} usual`, `  rate bay ${rates[1] ?? ''}`,
    `  markup 60% to ${bands[0]}`, `  markup 35.5% to ${bands[1]}`, ...(bands[2] ? ['  markup 20%'] : []), '  markup 15% to 80.00 on sublets',
    ...(drawn.tax > 0 ? [`  tax levy 7.25% on parts${drawn.tax > 1 ? ', labour' : ''} by ${drawn.tax > 2 ? 'item' : 'invoice'}`] : []),
    ...(drawn.fee > 0 ? [`  fee supplies "Supplies" 5% of labour${drawn.fee > 1 ? ' cap 45.00' : ''}`] : []),
    'access up "Raised"', `  remove ${ways[0] ?? ''} h`,
    'access out "Out"', ...(drawn.includes ? ['  includes up'] : []), `  remove ${ways[1] ?? ''} h`, `  refit ${ways[2] ?? ''} h`, '  class bay',
    'sublet face "Faced"  2 at cost 61.00',
    ...costs.map((cost, i) => `part piece-${i} "Piece ${i}"  2 at cost ${cost} new`),
    ...jobs.flatMap(({ place, first, second, reach, count, minutes, spread: wide }, i) => [
      `labour job-${i} "Job ${i}"${count > 2 ? `  ${count - 1} at ${time(second, minutes)} with out` : ''}`,
      ...(reach === 0 ? [] : [`  takes ${time(place, minutes)}`]),
      ...(reach < 2 ? [] : [`  takes ${wide ? spread(first) : time(first, false)} with up`]),
      ...(reach < 3 && reach > 0 ? [] : count > 2 ? [] : [`  takes ${time(second, minutes)} with out`]),
      `  uses piece-${i % costs.length}`,
    ]),
    ...options.flatMap(({ jobs: set, goods, price, worth, ranged }, i) => {
      const done = jobs.flatMap((_, j) => ((set & (1 << j)) === 0 ? [] : [`job-${j}`]));
      return [
        `option way-${i} "Way ${i}"`, ...(done.length > 0 ? [`  do ${done.join(', ')}`] : []), `  worth ${worth}`,
        `  part "Own part"  ${ranged ? `${(Number(price) * 0.7).toFixed(2)} / ${price} / ${(Number(price) * 1.8).toFixed(2)}` : price} new`, ...(goods > 1 ? ['  send face'] : []),
      ];
    }),
  ];
  return `${lines.join('\n')}\n`;
}
