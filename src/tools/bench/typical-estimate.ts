/** How large an estimate for the decision is. */
export interface Sizes {
  /** Jobs that every option draws from; each has a part and takes eight lines. */
  readonly jobs: number;
  readonly options: number;
  readonly chances: number;
}

/** About 80 lines, 4 options and 6 chances: what a writer compares. */
export const TYPICAL: Sizes = { jobs: 4, options: 4, chances: 6 };

/**
 * A believable estimate with everything that a decision rests on: ways in, ranges, waits, a core with a last day,
 * chances below jobs, ways in and options, an inspection and a coverage. Invented throughout.
 */
export function typicalEstimate({ jobs, options, chances }: Sizes, round: number): string {
  const names = Array.from({ length: jobs }, (_, i) => `job-${i}`);
  // One by one below the jobs and the options in turn, so that every option has some.
  const below = (kind: 'job' | 'option', at: number, count: number) => Array.from({ length: chances }, (_, i) => i)
    .filter((i) => (kind === 'job') === (i % 2 === 0) && Math.floor(i / 2) % count === at)
    .flatMap((i) => [`  chance turn-${i} "Turned up ${i}" ${5 + i * 3}%`, `    labour "More work ${i}" 0.6 / ${(1 + i * 0.2).toFixed(1)} / 3.5 h`, `    part "More parts ${i}" ${40 + i * 35}.00 new arrives 1 d`]);
  return `${[
    'steelyard 1', `estimate "E-${round}"`, '  start 2026-11-30', '  answer 1 d', '  interest 6%',
    'shop "Bench"', '  currency USD', '  workday 8 h', '  technicians 2', '  closed saturday, sunday', '  rate bench "Mechanical" 132.00 usual cost 58.00', '  markup 80% to 40.00', '  markup 50% to 250.00', '  markup 30%', '  tax sales "Sales tax" 7.25% on parts, fees by invoice', '  fee supplies "Shop supplies" 5% of labour cap 45.00',
    'vehicle "Bench vehicle"', '  built 2012-11', '  worth 7900.00', '  unrepaired 1900.00', '  downtime 42.00',
    'access lifted "Engine raised"', '  remove 1.2 h', '  refit 1.4 / 1.4 / 2.0 h',
    'access out "Engine lowered"', '  includes lifted', '  remove 6.0 / 6.5 / 8.0 h', '  refit 6.5 / 7.5 / 10.0 h', '  sublet "Wheel alignment" 95.00',
    'sublet faced "Faces and guides" 12 at cost 42.00 back in 3 d',
    ...names.flatMap((name, i) => [
      `part part-${i} "Part ${i}" ${1 + (i % 3)} at cost ${12 + ((i * 79) % 190)}.50 new arrives ${1 + (i % 4)} d`,
      `labour ${name} "Job ${i}"`, `  takes ${9 + (i % 3)} / ${11 + (i % 3)} / ${15 + (i % 3)} h`, `  takes ${4 + (i % 3)}.5 h with lifted`, `  takes ${1 + (i % 3)}.5 / ${2 + (i % 3)} / ${3 + (i % 3)} h with out`,
      `  uses part-${i}${i === 0 ? ', faced' : ''}`, ...(i === 0 ? ['  apart after 1 h'] : []), ...below('job', i, jobs),
    ]),
    ...Array.from({ length: options }, (_, i) => [
      `option way-${i} "Way ${i}"`, `  do ${names.filter((_job, j) => (j + i) % 4 !== 3 || jobs < 2).join(', ')}`, `  lasts ${24 + i * 12} mo`, `  resale ${1500 + i * 200}.00`,
      `  part "Engine ${i}" ${900 + i * 250} / ${1100 + i * 260} / ${1900 + i * 300} used arrives 3 d`, '    core 150.00 due 30 d', ...below('option', i, options),
    ]).flat(),
    'inspect look "Look first" 18.00 0.5 h', ...(chances > 0 ? ['  finds turn-0 80% wrongly 8%'] : []),
    'coverage valves "Extended warranty" extended-warranty', '  built from 2012-06', '  built to 2013-02',
  ].join('\n')}\n`;
}
