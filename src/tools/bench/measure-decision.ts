import { createLanguageService } from '../../service/index.js';
import { at, measure, row, type Measured } from './measure.js';
import { TYPICAL, typicalEstimate, type Sizes } from './typical-estimate.js';

const ROUNDS = 60;
const ROUNDS_OF_GROWTH = 16;
const uri = '/bench/typical.yard';

/** All that an estimate of usual size is decided by, from its text, and how that grows: a table. */
export async function measureDecision(): Promise<string[]> {
  const typical = typicalEstimate(TYPICAL, 0);
  const whole = await measure('weigh and decide', ROUNDS, (round) => decided(TYPICAL, round));
  const weighed = await measure('  of it weigh alone', ROUNDS, (round) => fresh(TYPICAL, round).weighing(uri).comparison.options.length);
  const lines = [
    '', row(`${typical.split('\n').length - 1} lines, ${TYPICAL.options} options, ${TYPICAL.chances} chances; a service of its own each time`, 'median', 'best'),
    shown(whole), shown(weighed), '', row('growth of weigh and decide', 'median', 'best'),
  ];
  const grown: readonly (readonly [string, (by: number) => Sizes, readonly number[]])[] = [
    ['jobs', (jobs) => ({ ...TYPICAL, jobs }), [2, 8, 16, 32]],
    ['options', (options) => ({ ...TYPICAL, options }), [2, 8, 16]],
    ['chances', (chances) => ({ ...TYPICAL, chances }), [0, 12, 18]],
  ];
  for (const [what, sizes, all] of grown) {
    for (const by of all) {
      const count = typicalEstimate(sizes(by), 0).split('\n').length - 1;
      lines.push(shown(await measure(`  ${by} ${what}, ${count} lines`, ROUNDS_OF_GROWTH, (round) => decided(sizes(by), round))));
    }
  }
  return lines;
}

function fresh(sizes: Sizes, round: number) {
  const text = typicalEstimate(sizes, round);
  return createLanguageService({ read: () => ({ text }), resolvePath: () => undefined });
}

function decided(sizes: Sizes, round: number): number {
  const service = fresh(sizes, round);
  return service.decision(uri).options.length + service.weighing(uri).problems.length;
}

function shown({ label, ms }: Measured): string {
  const shownAt = (share: number) => `${at(share, ms).toFixed(1)} ms`;
  return row(label, shownAt(0.5), shownAt(0));
}
