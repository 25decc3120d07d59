/** The shared file of the generated shop: work that every job has is written there. */
export const CLOSED_SHOP = `steelyard 1
shop "Bench"
  currency USD
  workday 8 h
  technicians 2
  closed saturday, sunday
  rate bench "Mechanical" 132.00 usual cost 58.00
  rate electrical "Electrical" 148.00
  markup 80% to 40.00
  markup 50% to 250.00
  markup 30%
  tax sales "Sales tax" 7.25% on parts, fees by invoice
  fee supplies "Shop supplies" 5% of labour cap 45.00
part coolant "Coolant" 11 L at 4.10 new
labour look "Compression, leakage and borescope" 1.5 h class electrical done first
labour road-test "Fill, bleed, road test" 0.8 h done last
  uses coolant
`;

const JOBS = ['head', 'pump', 'swap', 'chain', 'mounts', 'sump', 'valves', 'seal'] as const;

/**
 * One closed estimate of some 80 lines with two ways in, work in several ways, a chance that may have come true, three
 * options and what was really clocked and paid. The same seed gives the same text. Invented throughout.
 */
export function closedEstimate(seed: number): string {
  let state = (seed * 2654435761 + 1) >>> 0;
  const random = () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 2 ** 32;
  };
  const day = (from: number) => new Date(Date.UTC(2019, 0, 1 + from)).toISOString().slice(0, 10);
  const written = Math.floor(random() * 2800);
  const off = () => 0.75 + random() * 0.7;
  const jobs = JOBS.filter(() => random() < 0.6);
  const out = random() < 0.6;
  const hours = (base: number) => (base * off()).toFixed(1);
  const job = (name: string, i: number) => [
    `part ${name}-set "Set for ${name} ${seed}" ${1 + (i % 3)} at cost ${20 + i * 17}.50 new arrives ${1 + (i % 3)} d`,
    `labour ${name} "Work on ${name}"`,
    `  takes ${8 + i} / ${9 + i} / ${13 + i} h`,
    `  takes ${4 + i}.5 h with lifted`,
    `  takes ${2 + i} / ${2 + i}.5 / ${5 + i} h with out`,
    '  because noise', `  uses ${name}-set`,
    ...(i % 3 === 0 ? [`  chance "A stud of ${name} breaks" ${8 + i}%`, `    labour "Drill out a stud of ${name}" 1.0 / 1.6 / 3.0 h with out`] : []),
  ];
  const clocked = [
    `  clocked look ${hours(1.5)} h`,
    ...(random() < 0.8 ? [`  clocked ${out ? 'out' : 'lifted'} ${hours(out ? 14 : 2.6)} h`] : []),
    ...jobs.flatMap((name) => (random() < 0.85 ? [`  clocked ${name} ${hours((out ? 2.5 : 4.5) + JOBS.indexOf(name))} h`] : [])),
    ...(random() < 0.5 ? [`  clocked "Dress the engine" ${Math.round(70 * off())} min`] : []),
    ...(out && jobs.includes('head') && random() < 0.2 ? [`  clocked "Drill out a stud of head" ${hours(1.6)} h`] : []),
    ...jobs.slice(0, 2).map((name) => `  paid ${name}-set ${(60 * off()).toFixed(2)}`),
  ];
  return `${[
    'steelyard 1', 'use "shop.yard"', `estimate "E-${seed}  runs on fewer cylinders"`, `  written ${day(written)}`, `  start ${day(written + 4)}`, '  valid 14 d', '  answer 1 d',
    'vehicle "Bench vehicle"', '  odometer 131400 mi', '  worth 7900.00',
    'finding noise "Noise from the front"', '  seen by "the driver"',
    'access lifted "Engine raised"', '  remove 1.2 h', '  refit 1.4 / 1.4 / 2.0 h',
    'access out "Engine lowered on the subframe"', '  includes lifted', '  remove 6.0 / 6.5 / 8.0 h', '  refit 6.5 / 7.5 / 10.0 h', '  sublet "Wheel alignment" 95.00', '  caution lifting',
    ...JOBS.flatMap(job),
    'option repair "Repair it"', `  do look, ${[...jobs, 'road-test'].join(', ')}`, '  warranty 12 mo', '  labour "Dress the engine" 1.2 h',
    'option used "Fit a used engine"', '  do look, swap, road-test', '  part "Used engine" 1150 / 1350 / 2100 used arrives 3 d', '    core 150.00 due 30 d',
    'option nothing "Leave it"', '  worth 2000.00',
    `started on ${day(written + 4)}`, `closed for repair on ${day(written + 6 + Math.floor(random() * 9))}`, '  billed 4100.00', ...clocked,
  ].join('\n')}\n`;
}
