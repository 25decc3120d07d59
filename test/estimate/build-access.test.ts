import { describe, expect, test } from 'vitest';
import { called, inShop, resolved, told } from './estimated.js';

const saysOf = (text: string) => told(inShop(text));

describe('a way in', () => {
  const way = (text: string) => inShop(text).estimate.access[0];

  test('has hours, or parts or outside work; one with none of them looks free', () => {
    expect(saysOf('access out "Out"\n')).toEqual([['access-empty', 'access out "Out"']]);
    for (const below of ['remove 1 h', 'refit 1 h', 'part "Bolts" 1.00 new', 'sublet "Crane" 90.00']) expect(saysOf(`access out "Out"\n  ${below}\n`)).toEqual([]);
    expect(saysOf('access out "Out"\n  uses seal\npart seal "Seal" 1.00 new\n')).toEqual([]);
    expect(saysOf('access out "Out"\n  remove 1h\n').map(([code]) => code)).toEqual(['glued-unit']);
  });

  test('has the rate of its class where it has hours', () => {
    expect(way('access out "Out"\n  refit 1 h\n  class body\n')?.rate?.name).toBe('body');
    expect(way('access out "Out"\n  remove 1 h\n')?.rate?.name).toBe('bench');
    expect(way('access out "Out"\n  part "Bolts" 1.00 new\n')?.rate).toBeUndefined();
    expect(told(resolved('steelyard 1\nshop "S"\n  rate a 1.00\n  rate b 2.00\naccess out "Out"\n  refit 3 h\n'))).toEqual([['which-rate', '3 h']]);
  });

  test('includes others with what these include, each once, and brings parts along', () => {
    const one = way('access out "Out"\n  remove 1 h\n  includes front, low\n  uses seal, wash\n  part "Bolts" 1.00 new\n  needs bar\n  caution lifting\naccess front "Front"\n  remove 1 h\n  includes low\naccess low "Low"\n  remove 1 h\n  includes floor\naccess floor "Floor"\n  remove 1 h\npart seal "Seal" 1.00 new\nsublet wash "Wash" 1.00\ntool bar "Bar"\n');
    expect([one?.includes, one?.parts, one?.sublets, one?.tools].map((list) => called(list ?? []))).toEqual([['front', 'low', 'floor'], ['seal', 'Bolts'], ['wash'], ['bar']]);
    expect(one?.cautions).toEqual(['lifting']);
  });
});
