import fc from 'fast-check';
import { expect, test } from 'vitest';
import { Places } from '../../src/language/index.js';

interface Item {
  readonly holds: boolean;
}

// Against a plain look through the list: whatever was asked before, the places are those of the list that is there.
test('places are those of the list as it is, after any few or many replacements, shorter and longer lists', () => {
  const item = fc.boolean().map((holds): Item => ({ holds }));
  const change = fc.oneof(
    { weight: 6, arbitrary: fc.tuple(fc.constant('replace'), fc.array(fc.tuple(fc.nat(40), item), { minLength: 1, maxLength: 12 })) },
    { weight: 1, arbitrary: fc.tuple(fc.constant('all'), fc.array(fc.tuple(fc.nat(40), item), { maxLength: 40 })) },
    { weight: 1, arbitrary: fc.tuple(fc.constant('back'), fc.constant<[number, Item][]>([])) },
  );
  fc.assert(fc.property(fc.array(item, { maxLength: 40 }), fc.array(change, { maxLength: 15 }), (start, changes) => {
    const places = new Places<Item>(({ holds }) => holds);
    const file = {};
    const lists = [start];
    for (const [what, items] of [['replace', []] as const, ...changes]) {
      const list = lists.at(-1) as Item[];
      if (what === 'replace') lists.push(list.map((one, i) => items.find(([at]) => at === i)?.[1] ?? one));
      else lists.push(what === 'back' ? (lists.at(-2) ?? start) : items.map(([, one]) => one));
      const now = lists.at(-1) as Item[];
      expect(places.in(now, file)).toEqual(now.flatMap(({ holds }, i) => (holds ? [i] : [])));
      expect(places.itemsIn(now, file)).toStrictEqual(now.filter(({ holds }) => holds));
    }
  }), { numRuns: 500 });
});

test('an item is looked at once, however often a list with it is asked for', () => {
  const looked: Item[] = [];
  const places = new Places<Item>((one) => looked.push(one) > 0 && one.holds);
  const list = Array.from({ length: 100 }, (_, i): Item => ({ holds: i % 7 === 0 }));
  const file = {};
  places.in(list, file);
  places.in([...list], file);
  const fresh = { holds: true };
  places.in(list.map((one, i) => (i === 50 ? fresh : one)), file);
  expect(looked.length).toBeLessThanOrEqual(100 + 4);
  expect(looked.filter((one) => one === list[3])).toHaveLength(1);
});

test('two files are told apart', () => {
  const places = new Places<Item>(({ holds }) => holds);
  const [a, b] = [{}, {}];
  expect([places.in([{ holds: true }], a), places.in([{ holds: false }, { holds: true }], b), places.in([{ holds: true }], a), places.in([], undefined)]).toEqual([[0], [1], [0], []]);
});
