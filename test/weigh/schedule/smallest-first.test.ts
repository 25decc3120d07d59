import fc from 'fast-check';
import { expect, test } from 'vitest';
import { SmallestFirst } from '../../../src/weigh/schedule/smallest-first.js';

// Against a list that is put in order each time.
test('whatever is put in and taken out in between, the smallest that is left comes first', () => {
  fc.assert(fc.property(fc.array(fc.option(fc.integer({ min: 0, max: 50 })), { maxLength: 60 }), (steps) => {
    const heap = new SmallestFirst(steps.length);
    const list: number[] = [];
    for (const step of steps) {
      if (step === null) {
        if (list.length > 0) expect(heap.take()).toBe(list.shift());
        continue;
      }
      heap.put(step);
      list.push(step);
      list.sort((a, b) => a - b);
    }
    expect(list.map(() => heap.take())).toEqual(list);
  }), { numRuns: 1_000 });
});
