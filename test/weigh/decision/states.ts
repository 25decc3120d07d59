import fc from 'fast-check';
import { soundText } from './weighing.js';

/** Something that may turn up in an option, and the lines that it then brings. */
export interface Turned {
  readonly percent: number;
  readonly lines: readonly string[];
  /** The chance above it, by its place in the list. */
  readonly parent?: number | undefined;
}

/** An option in which things may turn up, and what stands around it. */
export interface WithChances {
  readonly before: readonly string[];
  readonly option: readonly string[];
  readonly chances: readonly Turned[];
}

/** The text with the chances as chances, which the quote leaves out. */
export function asChances({ before, option, chances }: WithChances): string {
  const below = (parent: number | undefined, depth: string): string[] => chances.flatMap((one, i) => (one.parent !== parent ? [] : [
    `${depth}chance turn-${i} "Turned up ${i}" ${one.percent}%`, ...one.lines.map((line) => `${depth}  ${line}`), ...below(i, `${depth}  `),
  ]));
  return `${[...before, ...option, ...below(undefined, '  ')].join('\n')}\n`;
}

/** The text in which some of them really stand in the option, as any other work. */
function asWork({ before, option, chances }: WithChances, happened: readonly boolean[]): string {
  return `${[...before, ...option, ...chances.flatMap(({ lines }, i) => (happened[i] === true ? lines.map((line) => `  ${line}`) : []))].join('\n')}\n`;
}

/** A state of the chances, how likely it is, and what the option then costs in all and when it is ready. */
export interface WeighedState {
  readonly happened: readonly boolean[];
  readonly share: number;
  readonly inAll: number;
  readonly total: number;
  readonly days: number;
  /** Whether a core comes back too late. */
  readonly late: boolean;
}

/** Every state that can be, each weighed as a text of its own. */
export function everyState(all: WithChances): WeighedState[] {
  const states: WeighedState[] = [];
  for (let set = 0; set < 1 << all.chances.length; set++) {
    const happened = all.chances.map((_, i) => (set & (1 << i)) !== 0);
    const share = all.chances.reduce((product, { percent, parent }, i) => {
      const p = parent === undefined || happened[parent] === true ? percent / 100 : 0;
      return product * (happened[i] === true ? p : 1 - p);
    }, 1);
    if (share === 0) continue;
    const weighed = soundText(asWork(all, happened)).option('one');
    states.push({ happened, share, inAll: weighed.inAll.likely.toNumber(), total: weighed.totals.total.likely.toNumber(), days: weighed.ready.days.likely.toNumber(), late: weighed.returns.cores.some(({ late }) => late) });
  }
  return states;
}

export function averageOf(states: readonly WeighedState[], what: 'inAll' | 'total' | 'days'): number {
  return states.reduce((sum, state) => sum + state.share * state[what], 0);
}

const cents = (most: number) => fc.integer({ min: 100, max: most * 100 }).map((count) => (count / 100).toFixed(2));

const line: fc.Arbitrary<string> = fc.oneof(
  cents(900).map((price) => `part "More" ${price} new`),
  cents(300).map((cost) => `part "More at cost" 2 at cost ${cost} new`),
  fc.integer({ min: 1, max: 90 }).map((tenths) => `labour "More work" ${(tenths / 10).toFixed(1)} h with out`),
  fc.integer({ min: 1, max: 20 }).map((fives) => `labour "More work" 2 at ${fives * 5} min class bay`),
  cents(300).map((price) => `sublet "More outside" 3 at cost ${price}`),
  cents(90).map((price) => `fee "More to pay" ${price}`),
);

/** One option with up to `most` chances, shop fees with a cap, taxes, markup and a worth; no figure has a range. */
export function withChances(most: number): fc.Arbitrary<WithChances> {
  return fc.record({
    chances: fc.array(fc.record({ percent: fc.integer({ min: 0, max: 100 }), lines: fc.array(line, { minLength: 1, maxLength: 2 }), below: fc.nat({ max: 6 }) }), { minLength: 1, maxLength: most }),
    hours: fc.integer({ min: 1, max: 60 }), basis: fc.constantFrom('item', 'invoice'), cap: cents(120), price: cents(2000),
  }).map(({ chances, hours, basis, cap, price }) => ({
    before: [
      'steelyard 1', 'shop "S"', '  workday 8 h', '  rate bench 97.35 usual', '  rate bay 121.15', '  markup 62.5% to 100.00', '  markup 33%', '  markup 12% on sublets',
      `  tax levy 7.25% on parts, labour, fees by ${basis}`, `  fee supplies "Supplies" 5% of labour, parts cap ${cap}`, '  fee flat "Flat" 3.33',
      'estimate "E"', '  start 2026-11-30', 'access out "Out"', '  remove 2.3 h',
    ],
    option: ['option one "One"', `  labour "Work" ${(hours / 10).toFixed(1)} h with out`, `  part "Own" ${price} new`, '  way out'],
    chances: chances.map(({ percent, lines, below }, i) => ({ percent, lines: lines.map((one, k) => one.replace(/"([^"]*)"/, `"$1 ${i}.${k}"`)), parent: below < i ? below : undefined })),
  }));
}

/** The same with a core that goes back by the second day, which the quote meets by up to four hours and what turns up may miss. */
export function withCore(most: number): fc.Arbitrary<WithChances> {
  return fc.record({ all: withChances(most), spare: fc.integer({ min: 0, max: 40 }), charge: cents(900), policy: fc.constantFrom('refunded', 'kept') })
    .map(({ all, spare, charge, policy }) => {
      const tenths = Math.round(Number(/([\d.]+) h/.exec(all.option[1] as string)?.[1]) * 10);
      return {
        ...all,
        before: all.before.flatMap((line) => (line.startsWith('  tax ') ? [line, `  core-tax ${policy}`] : [line])),
        // Two days of 8 h, less 2.3 h of getting in and the work there is.
        option: [...all.option, '  part "Unit" 300.00 rebuilt', `    core ${charge} due 1 d`, `  labour "More of it" ${((137 - tenths - spare) / 10).toFixed(1)} h`],
      };
    });
}
