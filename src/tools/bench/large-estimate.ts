/** What an option does at most: four of them, each job with its part, stay below what options may bring together. In a longer file the rest is work that no option does. */
const MOST_DONE = 600;

/**
 * A large, believable estimate for the benchmark: named parts with costs and prices, jobs with several ways in,
 * options that do hundreds of them, comments and blank lines. Figures vary line by line, so nothing is measured
 * that a cache of equal texts would flatter. Invented throughout.
 */
export function largeEstimate(lines: number): string {
  const out: string[] = [
    'steelyard 1', '',
    'shop "Bench"', '  currency USD', '  workday 8 h', '  rate mechanical "Mechanical" 132.00 usual', '  rate electrical "Electrical" 148.00',
    '  markup 80% to 40.00', '  markup 50% to 250.00', '  markup 30%', '  markup 15% on sublets',
    '  tax sales "Sales tax" 7.25% on parts, fees by invoice', '  fee supplies "Shop supplies" 5% of labour cap 45.00', '',
    'estimate "Bench estimate"', '  written 2026-11-24', '', 'vehicle "Bench vehicle"', '  worth 9000.00', '',
    'finding seen "Seen on the lift"', '  compression 171 168 173 169 170 172 psi', '',
    'access lifted "Engine raised off its mounts"', '  remove 1.2 h', '  refit 1.4 / 1.4 / 2.0 h', '',
    'access out "Engine and gearbox lowered"', '  includes lifted', '  remove 6.0 / 6.5 / 8.0 h', '  refit 6.5 / 7.5 / 10.0 h', '  sublet "Wheel alignment" 95.00', '',
  ];
  const jobs: string[] = [];
  // One job and its part take eight lines, and one line in an option.
  for (let i = 0; out.length + jobs.length + 60 < lines; i++) {
    const name = `job-${i}`;
    const hours = (1 + (i % 37) * 0.3).toFixed(1);
    out.push(
      `part part-${i} "Part number ${i} of the list"  cost ${(3 + ((i * 7919) % 21000) / 100).toFixed(2)} new  arrives ${1 + (i % 5)} d`,
      `labour ${name} "Job ${i}: take off, clean, refit"    # as timed in the bay`,
      `  takes ${hours} / ${(Number(hours) * 1.2).toFixed(2)} / ${(Number(hours) * 1.6).toFixed(2)} h`,
      `  takes ${(Number(hours) * 0.6).toFixed(2)} h with lifted`,
      `  takes ${(Number(hours) * 0.4).toFixed(2)} h with out`,
      '  because seen', `  uses part-${i}`, '',
    );
    jobs.push(name);
  }
  const perOption = Math.min(MOST_DONE, Math.ceil(jobs.length / 4));
  for (let option = 0; option < 4; option++) {
    out.push(`option way-${option} "Way out number ${option}"`, '  warranty 12 mo');
    for (const name of jobs.slice(option * perOption, (option + 1) * perOption)) out.push(`  do ${name}`);
    out.push(`  part "Engine ${option}" ${1200 + option * 310}.00 used  arrives 3 d`, '    core 150.00 due 30 d', '');
  }
  return `${out.join('\n')}\n`;
}
