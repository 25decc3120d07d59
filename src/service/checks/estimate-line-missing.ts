import type { Rule, Span } from '../../language/index.js';
import type { Resolved } from '../../estimate/index.js';
import { kinds, type Record } from '../../vocabulary/index.js';
import { found, type Found } from './check.js';
import { example } from './example.js';
import { endOfLines, lineAround } from './lines.js';

export const estimateLineMissing: Rule<{ readonly below: Span }> = {
  code: 'estimate-line-missing', family: 'job', severity: 'warning', title: 'Options, and no line that says it is an estimate',
  message: () => ({
    what: 'This file has options and no estimate line.',
    why: 'It is taken for a file that others share: nobody looks whether something of the trade is forgotten, and no day, quote or validity can be told.',
    instead: 'Write it below the first line, as in: estimate "E-1042 Van, no compression on 3"',
  }),
  fix: ({ below: { block, start } }) => {
    const { end } = lineAround(block.text, start);
    return { title: 'Add an estimate line, to be filled in', at: { block, start: end, end }, text: `${endOfLines(block.text)}estimate "Number, and what is wrong"` };
  },
  example: example({ lines: 'vehicle "Van"\n', one: '  labour "Front seal" 2 h\n    because seen\n' }).replace('steelyard 1', '«steelyard 1»').replace('estimate "E"\n  start 2026-11-30\n  valid 14 d\n', ''),
};

/**
 * Told of a file that is read whole, does some work, and has what only an estimate has: a vehicle, or options to choose
 * between. With one option it is begun; without any it is shared by others.
 */
export function withoutEstimateLine({ estimate: { uri, header, vehicle, options }, records, waitsFor }: Resolved, whole: boolean): readonly Found[] {
  if (!whole || header !== undefined || waitsFor.length > 0) return [];
  const isOwn = ({ block }: Pick<Record, 'block'>) => block.uri === uri;
  const offered = options.filter(({ written, record }) => written && isOwn(record));
  if (!offered.some(({ labour }) => labour.length > 0) || (offered.length === 1 && vehicle === undefined)) return [];
  const own = records.filter(isOwn);
  const [first] = own;
  const below = own.findLast(({ kind }) => kind.word === kinds.use.word) ?? first;
  return first === undefined || below === undefined ? [] : [found(estimateLineMissing, first.at, { below: below.at })];
}
