import { Editing } from './editing.js';
import { at, inMs, measure, row } from './measure.js';

const SIZES = [1_000, 3_000, 10_000, 30_000, 100_000] as const;
/** Lines that all rounds of one size read together, so that no size takes long. */
const LINES_IN_ALL = 400_000;

/** How the time grows with the file: where it grows with it and no quicker, a thousand lines take the same in each row. */
export async function measureGrowth(): Promise<string[]> {
  const lines = ['', row('growth, medians', 'whole file', 'by 1,000', 'keystroke', 'by 1,000')];
  for (const size of SIZES) {
    const editing = new Editing(size);
    const rounds = Math.min(60, Math.max(6, Math.round(LINES_IN_ALL / size)));
    const whole = at(0.5, (await measure('whole', rounds, (round) => editing.whole(round))).ms);
    const keystroke = at(0.5, (await measure('keystroke', rounds * 2, (round) => editing.keystroke(round))).ms);
    const by = (ms: number) => inMs(ms / (size / 1_000));
    lines.push(row(`  ${size.toLocaleString('en')} lines`, inMs(whole), by(whole), inMs(keystroke), by(keystroke)));
  }
  return lines;
}
