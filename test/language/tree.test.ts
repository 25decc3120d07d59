import { describe, expect, test } from 'vitest';
import { parse, spanOfStatement, statementsOf } from '../../src/language/index.js';

const said = (text: string) => [...statementsOf(parse('a.yard', text))].map((statement) => {
  const { block, start, end } = spanOfStatement(statement);
  return block.text.slice(start, end);
});

describe('where a line stands', () => {
  test('from its first word to its last, without indentation, comment or space at its end', () => {
    expect(said('part pump "Pump" 64.30   # from the shelf\n  arrives 2 d \n\n\tnote\n')).toEqual(['part pump "Pump" 64.30', 'arrives 2 d', 'note']);
  });

  test('lines come in the order of the file, those below behind the one above them', () => {
    expect(said('shop "A"\n  rate one 1\n    note "x"\n  rate two 2\nvehicle "V"\n')).toEqual(['shop "A"', 'rate one 1', 'note "x"', 'rate two 2', 'vehicle "V"']);
  });
});
