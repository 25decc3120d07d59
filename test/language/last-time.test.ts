import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { LastTime } from '../../src/language/index.js';

describe('what is kept from the last time', () => {
  /** Sums of lists, with what was asked for on the way. */
  function sums() {
    const asked: string[] = [];
    const sum = new LastTime<number, number>(
      (list) => {
        asked.push(`all ${list.length}`);
        return list.reduce((a, b) => a + b, 0);
      },
      (value, { places, old, now }) => {
        asked.push(`at ${places.join(' ')}`);
        return now.includes(-1) ? undefined : places.reduce((all, i) => all - (old[i] as number) + (now[i] as number), value);
      },
    );
    return { sum, asked };
  }

  test('only what differs is looked at, for what is known again', () => {
    const { sum, asked } = sums();
    const [one, other] = [{}, {}];
    expect([sum.for([1, 2, 3], one), sum.for([1, 7, 3], one), sum.for([1, 7, 3], other), sum.for([1, 7, 4], one)]).toEqual([6, 11, 11, 12]);
    expect(asked).toEqual(['all 3', 'at 1', 'all 3', 'at 2']);
  });

  test('all is looked at where the lists are not as long, too much differs, or it can’t be had from what differs', () => {
    const { sum, asked } = sums();
    const of = {};
    expect([sum.for([1, 2], of), sum.for([1, 2, 3], of), sum.for([1, -1, 3], of)]).toEqual([3, 6, 3]);
    expect(asked).toEqual(['all 2', 'all 3', 'at 1', 'all 3']);
    const long = Array.from({ length: 20 }, (_, i) => i);
    expect([sum.for(long, of), sum.for(long.map((i) => i + 1), of)]).toEqual([190, 210]);
    expect(asked.slice(4)).toEqual(['all 20', 'all 20']);
  });

  test('nothing is kept for what can’t be known again', () => {
    const { sum, asked } = sums();
    expect([sum.for([1, 2], undefined), sum.for([1, 2], undefined)]).toEqual([3, 3]);
    expect(asked).toEqual(['all 2', 'all 2']);
  });

  test('gives what working it out anew gives, however lists follow each other', () => {
    const list = fc.array(fc.integer({ min: -1, max: 3 }), { minLength: 3, maxLength: 4 });
    fc.assert(fc.property(fc.array(list, { maxLength: 8 }), (lists) => {
      const { sum } = sums();
      const of = {};
      for (const one of lists) expect(sum.for(one, of)).toBe(one.reduce((a, b) => a + b, 0));
    }));
  });
});
