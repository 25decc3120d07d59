import { resolve } from '../../estimate/index.js';
import { parse, reparse, type Tree } from '../../language/index.js';
import { readBlock } from '../../vocabulary/index.js';
import { weigh } from '../../weigh/index.js';
import { Editing } from './editing.js';
import { at, inMs, row } from './measure.js';

const URI = '/bench/rooms.yard';
const ROOMS = ['language', 'vocabulary', 'estimate', 'weigh'] as const;

type Times = Record<(typeof ROOMS)[number] | 'all', number[]>;

/** The share of each room in the time for a whole file and for a keystroke: a table. What is left is the service's own. */
export function measureRooms(lines: number, rounds: number): string[] {
  const editing = new Editing(lines);
  const whole = timed(rounds, (round) => parse(URI, editing.remarked(round)), (round) => editing.whole(round));
  let tree = parse(URI, editing.text);
  const keystroke = timed(rounds * 4, (round) => (tree = reparse(tree, editing.struck(round))), (round) => editing.keystroke(round));
  const rooms = ROOMS.map((room) => row(`  ${room}`, ...shown(at(0.5, whole[room]), whole), ...shown(at(0.5, keystroke[room]), keystroke)));
  const rest = (times: Times) => Math.max(0, at(0.5, times.all) - ROOMS.reduce((sum, room) => sum + at(0.5, times[room]), 0));
  return ['', row('share of the rooms, medians', 'whole file', '', 'keystroke', ''), ...rooms, row('  service: checks, places', ...shown(rest(whole), whole), ...shown(rest(keystroke), keystroke))];
}

function timed(rounds: number, treeOf: (round: number) => Tree, all: (round: number) => unknown): Times {
  const times: Times = { language: [], vocabulary: [], estimate: [], weigh: [], all: [] };
  for (let round = 0; round < rounds; round++) {
    const time = <T>(what: keyof Times, work: () => T): T => {
      const started = performance.now();
      const made = work();
      if (round >= rounds / 4) times[what].push(performance.now() - started);
      return made;
    };
    const tree = time('language', () => treeOf(round));
    time('vocabulary', () => tree.blocks.forEach(readBlock));
    const { estimate } = time('estimate', () => resolve(URI, { treeOf: () => tree, resolvePath: () => undefined }));
    time('weigh', () => weigh(estimate, new Set()));
    time('all', () => all(round));
  }
  return times;
}

function shown(ms: number, { all }: Times): [string, string] {
  return [inMs(ms), `${((100 * ms) / at(0.5, all)).toFixed(0)} %`];
}
