interface Parts {
  readonly shop?: string;
  readonly header?: string;
  /** Lines at the left edge, before the options. */
  readonly lines?: string;
  /** Facts and lines below the one option that repairs. */
  readonly one?: string;
  /** What stands behind it; an option that only stops, where nothing is said. */
  readonly other?: string;
}

/** A small estimate in which nothing is wrong but what an example puts into it. */
export function example({ shop = '', header = '  start 2026-11-30\n  valid 14 d\n', lines = '', one = '', other = 'option stop "Stop"\n' }: Parts): string {
  return `steelyard 1\nshop "S"\n  workday 8 h\n  rate bench 100.00\n  tax sales 7% on parts\n${shop}estimate "E"\n${header}finding seen "Seen on the lift"\n${lines}option one "Mend it"\n  warranty 12 mo\n${one}${other}`;
}

const without = (list: readonly string[], topic: string) => list.filter((one) => one !== topic).join(', ');

/** A head job with all that goes with it but one thing. */
export function headJob(lacks: string, more: readonly string[] = []): string {
  const set = without(['head-gasket', 'head-bolts', 'engine-oil', 'oil-filter'], lacks);
  const bench = without(['flatness-check', 'crack-check', ...more], lacks);
  return example({
    lines: `«labour head "Head: take off and refit" 8 h»\n  because seen\n  uses set, bench\npart set "What the head takes" 90.00 new counts as ${set}\nsublet bench "What the machine shop does" 150.00 counts as ${bench}\n`,
    one: '  do head\n',
  });
}

/** An engine swap with all that goes with it but one thing, marked at the job. */
export function swapJob(lacks: string): string {
  return swap(lacks, '«labour swap "Swap engine" 6 h»', 'part "Used engine" 900.00 used');
}

/** The same, marked at the engine. */
export function usedEngine(lacks: string): string {
  return swap(lacks, 'labour swap "Swap engine" 6 h', '«part "Used engine" 900.00 used»');
}

function swap(lacks: string, job: string, engine: string): string {
  const goods = without(['coolant', 'engine-oil', 'oil-filter', 'wear-parts'], lacks);
  const check = lacks === 'acceptance-check' ? '' : '  labour "Used engine: borescope before fitting" 1 h\n';
  return example({
    lines: `${job}\n  because seen\n  uses set\npart set "What a swap takes" 120.00 new counts as ${goods}\n`,
    one: `  do swap\n  ${engine}\n${check}`,
  });
}
