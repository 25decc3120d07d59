import { describe, expect, test } from 'vitest';
import { readSound } from './weighed.js';

// The cautions that go with work though nobody wrote them. Common practice: an engine comes out on lifting gear, with its fuel lines opened and the
// battery off; a subframe is lowered with what hangs on it; a head comes off with the coolant drained; what holds oil drips.

const HEAD = 'steelyard 1\nshop "S"\n  rate bench 100.00\n';
const cautions = (text: string) => [...readSound(HEAD + text).option('one').cautions].sort();

describe('cautions follow from what is done', () => {
  test.each([
    ['engine-out', ['battery', 'fuel', 'lifting']],
    ['engine-swap', ['battery', 'fuel', 'lifting']],
    ['subframe-lowered', ['lifting']],
    ['head-off', ['coolant']],
    ['coolant', ['coolant']],
    ['coolant-pump', ['coolant']],
    ['engine-oil', ['oil']],
    ['oil-filter', ['oil']],
    ['oil-pan', ['oil']],
    ['oil-pickup', ['oil']],
    ['oil-cooler', ['oil']],
    ['refrigerant', ['refrigerant']],
    ['head-bolts', []],
  ])('%s', (topic, wanted) => {
    expect(cautions(`option one "One"\n  labour "W" 1 h counts as ${topic}\n`)).toEqual(wanted);
  });

  test('whatever kind of line it is, and whether a way in brings it', () => {
    const way = (more: string, head = '') => `access up "Up"${head}\n  remove 1 h\n${more}labour w "W" 1 h with up\noption one "One"\n  do w\n`;
    expect(cautions('option one "One"\n  part "X" 1.00 new counts as refrigerant\n')).toEqual(['refrigerant']);
    expect(cautions('option one "One"\n  sublet "X" 1.00 counts as refrigerant\n')).toEqual(['refrigerant']);
    expect(cautions('option one "One"\n  fee "X" 1.00 counts as refrigerant\n')).toEqual(['refrigerant']);
    expect(cautions(way('', ' counts as refrigerant'))).toEqual(['refrigerant']);
    expect(cautions(way('  part "X" 1.00 new counts as refrigerant\n'))).toEqual(['refrigerant']);
    expect(cautions(way('  sublet "X" 1.00 counts as refrigerant\n'))).toEqual(['refrigerant']);
    expect(cautions(way('  caution fuel\n  part "X" 1.00 new counts as coolant\n', ' counts as subframe-lowered'))).toEqual(['coolant', 'fuel', 'lifting']);
  });

  test('a way in that is not paid brings none', () => {
    expect(cautions('access up "Up" counts as refrigerant\n  remove 9 h\n  caution fuel\n  part "X" 1.00 new counts as oil-pan\nlabour w "W"\n  takes 2 h\n  takes 1 h with up\noption one "One"\n  do w\n')).toEqual([]);
  });
});
