import { createLanguageService, resolveWithin, type LanguageService } from '../../service/index.js';

/** A workspace in memory: addresses and texts. */
export interface ManyFiles {
  readonly texts: Map<string, string>;
  readonly estimates: readonly GeneratedEstimate[];
  readonly shops: readonly string[];
  /** Parts and jobs that two estimates of three share. */
  readonly library: string;
  /** A service over the texts that has read none of them yet. */
  readonly opened: () => { readonly service: LanguageService; readonly estimates: readonly GeneratedEstimate[] };
}

export interface GeneratedEstimate {
  readonly uri: string;
  /** The shop file it uses. */
  readonly shop: string;
  /** Whether it uses the library; the others bring their own lines under the same names. */
  readonly shares: boolean;
}

export const MANY_ROOT = '/many';

const BRANCHES = 4;
const LIBRARY_JOBS = 12;

/**
 * The git repository of a shop with four branches, after some years: a shop file and a folder of estimates for each
 * branch, no two alike, and a library of parts and jobs. Invented throughout.
 */
export function manyFiles(count: number): ManyFiles {
  const texts = new Map<string, string>();
  const shops = Array.from({ length: BRANCHES }, (_, i) => `${MANY_ROOT}/shops/branch-${i}.yard`);
  shops.forEach((uri, i) => texts.set(uri, shopText(i)));
  const library = `${MANY_ROOT}/shops/library.yard`;
  texts.set(library, libraryText());
  const estimates = Array.from({ length: count }, (_, i): GeneratedEstimate => {
    const branch = Math.floor((i * BRANCHES) / count);
    const made = { uri: `${MANY_ROOT}/branch-${branch}/e-${i}.yard`, shop: shops[branch] as string, shares: i % 3 !== 0 };
    texts.set(made.uri, estimateText(i, branch, made.shares));
    return made;
  });
  const opened = () => ({ estimates, service: createLanguageService({
    read: (uri) => {
      const text = texts.get(uri);
      return text === undefined ? 'missing' : { text };
    },
    resolvePath: (from, written) => resolveWithin(MANY_ROOT, from, written),
    files: () => [...texts.keys()],
  }) });
  return { texts, estimates, shops, library, opened };
}

function shopText(i: number): string {
  return `steelyard 1

shop "Branch ${i}"
  currency  USD
  workday   8 h
  rate mechanical "Mechanical" ${118 + i * 4}.00 usual
  rate electrical "Electrical" ${131 + i * 4}.00
  markup 80%  to 40.00
  markup 50%  to 250.00
  markup 30%
  tax sales "Sales tax" 7.25%  on parts, fees  by invoice
  fee supplies "Shop supplies" 5% of labour  cap 45.00

fee tow "Tow in" 120.00
`;
}

function libraryText(): string {
  const jobs = Array.from({ length: LIBRARY_JOBS }, (_, i) => `part stock-${i} "Stock part ${i}"  cost ${(4 + i * 3.7).toFixed(2)} new
labour job-${i} "Job ${i} of the library"
  takes ${(0.6 + i * 0.1).toFixed(1)} h
  uses stock-${i}
`);
  return `steelyard 1

${ownLines()}
${jobs.join('\n')}`;
}

function ownLines(): string {
  return `part coolant "Coolant, ready mixed"  11 L at 4.10 new
labour road-test "Fill, bleed, road test"  0.8 h
  uses coolant
`;
}

function estimateText(i: number, branch: number, shares: boolean): string {
  const hours = (4 + (i % 61) * 0.1).toFixed(1);
  const more = (low: string, by: number) => (Number(low) * by).toFixed(2);
  return `steelyard 1
use "../shops/branch-${branch}.yard"
${shares ? 'use "../shops/library.yard"' : ''}

estimate "E-${i}  Coolant pump leaks"
  written  2026-11-25
  start    2026-11-30
  valid    14 d

vehicle "Vehicle ${i}, transverse"
  odometer  ${60_000 + i * 37} mi
  worth     ${3_000 + (i * 131) % 5_000}.00

finding leaks "Coolant at the weep hole"
  seen by "on the lift, engine warm"

access lifted "Right mount undone, engine raised"
  remove  ${(0.8 + (i % 7) * 0.1).toFixed(1)} h
  refit   ${(1 + (i % 5) * 0.1).toFixed(1)} h

access out "Engine and gearbox lowered on the subframe"
  includes lifted
  remove   5.8 / 6.2 / 7.5 h
  refit    6.4 / 7.0 / 9.0 h
  sublet   "Refrigerant: recover and refill"  165.00

labour pump "Coolant pump: replace"
  takes    ${hours} / ${more(hours, 1.2)} / ${more(hours, 1.6)} h
  takes    ${more(hours, 0.6)} h  with lifted
  takes    ${more(hours, 0.3)} h  with out
  because  leaks
  uses     pump, belt, coolant

part pump "Coolant pump with seal"  cost ${(60 + (i * 7919) % 9000 / 100).toFixed(2)} new  arrives 1 d
part belt "Drive belt"              cost ${(12 + i % 30).toFixed(2)} new
${shares ? '' : `\n${ownLines()}`}
option repair "Coolant pump: the cheapest way in"
  do        pump, road-test${shares ? `, job-${i % LIBRARY_JOBS}` : ''}
  charge    tow
  warranty  24 mo

option sell "Sell it as it stands"
  worth     ${900 + (i * 17) % 1_500}.00
`;
}
