import { describe, expect, test } from 'vitest';
import { limits } from '../../../src/language/index.js';
import { readClosed } from '../../../src/weigh/history/index.js';
import { BENCH, sources, URI } from '../../history/closed.js';

// What one file adds to the shop's book of times, where all that the option rests on is asked.

const CLOSED = 'closed for repair on 2026-12-09\n';
/** Work in several ways, none of which was clocked: the few lines don't settle it. */
const PUMP = '  clocked pump 9 h\n';
const keys = (text: string) => {
  const { cases, wrong } = readClosed(URI, text, sources);
  return wrong === undefined ? cases.map(({ job, line }) => `${line}: ${job.key}`) : [`${wrong.line}: ${wrong.why}`, ...cases.map(({ job }) => job.key)];
};

test('an estimate that is still open adds nothing, and nothing is wrong with it', () => {
  expect(keys(BENCH)).toEqual([]);
});

test('a file that is too long to be read adds nothing, and says why', () => {
  const filler = 'note "A line"\n'.repeat(limits.blocks);
  for (const clocked of [PUMP, '  clocked head 12 h\n']) expect(keys(`${BENCH}${CLOSED}${clocked}${filler}`)).toEqual([expect.stringMatching(/^1: This file has \d+ lines at its left edge; the longest that is read has \d+\.$/)]);
});

test('a remark too long to be read stops nothing', () => {
  const remark = `# ${'x'.repeat(limits.lineLength)}\n`;
  for (const [clocked, key] of [[PUMP, 'labour pump with out'], ['  clocked head 12 h\n', 'labour head with out']] as const) expect(keys(`${remark}${BENCH}${CLOSED}${clocked}`)).toEqual([`25: ${key}`]);
});

describe('an option that was not done', () => {
  test('may be faulty: the book rests on the one that was', () => {
    expect(keys(`${BENCH.replace('"Put it back" 1 h', '"Put it back" 1 x')}${CLOSED}${PUMP}`)).toEqual(['24: labour pump with out']);
  });

  test('stops nothing where it stands before the one that was done', () => {
    const first = BENCH.replace('option repair', 'option wait "Wait"\n  labour "Look again" 1 x\noption repair');
    expect(keys(`${first}${CLOSED}${PUMP}`)).toEqual(['26: labour pump with out']);
  });

  test('while a fault in the one that was done is told, with its line', () => {
    expect(keys(`${BENCH.replace('"Dress it" 2 h', '"Dress it" 2 x')}${CLOSED}${PUMP}`)).toEqual([expect.stringMatching(/^18: /)]);
  });
});

describe('lines', () => {
  test.each([0, 1, 3])('are counted from the top of the file, %i empty ones with them', (empty) => {
    const above = '\n'.repeat(empty);
    expect(keys(`${above}${BENCH}${CLOSED}  clocked head 12 h\n`)).toEqual([`${24 + empty}: labour head with out`]);
    expect(keys(`${above}${BENCH}${CLOSED}${PUMP}`)).toEqual([`${24 + empty}: labour pump with out`]);
    expect(keys(`${above}${BENCH}${CLOSED}  clocked head\n`)).toEqual([expect.stringMatching(`^${24 + empty}: `)]);
  });

  test('of a fault at the very end of a line are its own, not the next', () => {
    expect(keys(`${BENCH}closed for repair on\n  clocked head 12 h\n`)).toEqual([expect.stringMatching(/^23: /)]);
  });
});
