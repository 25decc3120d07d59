import { describe, expect, test } from 'vitest';
import { read, readSound } from './weighed.js';

// A stage alone, and put back. Sums by hand: 100.00 an hour, 150.00 for putting back; 5 % of the work for supplies; 10 % tax on parts.

const TEXT = `steelyard 1
shop "S"
  rate bench 100.00 usual
  rate fine 150.00
  fee supplies "Supplies" 5% of labour
  tax sales "Tax" 10% on parts
access front "Front off"
  remove 1 h
  refit 1.5 h
  uses gasket
access other "Other way"
  remove 2 h
labour strip "Strip it" 2 h with front
  uses seal
part seal "Seal" 10.00 new
part gasket "Gasket" 20.00 new
part bolts "Bolts" 8 at 5.00 new
stage tear-down "Take it apart"
  do strip
  opens front
  put back 3 h
  class fine
  destroys bolts
option one "One"
  part "Pump" 90.00 new
`;

function told(text: string) {
  const [stage] = readSound(text).comparison.stages;
  if (stage === undefined) throw new Error('no stage');
  const { totals, putBack, stop, backHours, backLines, complete } = stage;
  return {
    alone: totals.total.likely.toFixed(2), putBack: putBack.likely.toFixed(2), stop: stop.likely.toFixed(2), backHours: backHours.likely.toFixed(2), complete,
    lines: totals.lines.map(({ title }) => title).sort(), back: backLines.map(({ title }) => title).sort(),
  };
}

describe('a stage', () => {
  test('by itself is getting in and its work; putting back closes, and takes new what it destroyed', () => {
    // 3 h and the seal: 300.00 + 10.00 + 15.00 + 1.00. All: 4.5 h at 100.00, 3 h at 150.00, 70.00 of parts, 45.00 and 7.00.
    expect(told(TEXT)).toEqual({
      alone: '326.00', putBack: '696.00', stop: '1022.00', backHours: '4.50', complete: true,
      lines: ['Front off: remove', 'Seal', 'Strip it', 'Supplies'], back: ['Bolts', 'Front off: refit', 'Gasket', 'Take it apart: put back'],
    });
  });

  test('without putting back and with nothing destroyed only closes what it opened', () => {
    // 1.5 h, the gasket, 7.50 and 2.00.
    expect(told(TEXT.replace('  put back 3 h\n  class fine\n  destroys bolts\n', ''))).toMatchObject({ putBack: '179.50', stop: '505.50', backHours: '1.50', back: ['Front off: refit', 'Gasket'] });
  });

  test('a part that it uses, and destroys, is paid once', () => {
    expect(told(TEXT.replace('destroys bolts', 'destroys bolts, seal'))).toMatchObject({ stop: '1022.00', putBack: '696.00' });
  });

  test('that opens nothing is its work alone', () => {
    const plain = TEXT.replace('"Strip it" 2 h with front', '"Strip it" 2 h').replace('  opens front\n', '');
    // 200.00, the seal, 10.00 and 1.00; putting back 450.00, 40.00, 22.50 and 4.00.
    expect(told(plain)).toMatchObject({ alone: '221.00', putBack: '516.50', backHours: '3.00', complete: true });
  });

  test('a cap on a fee holds for all that is owed', () => {
    // 15.00 alone, and 20.00 in all.
    expect(told(TEXT.replace('5% of labour', '5% of labour cap 20.00'))).toMatchObject({ alone: '326.00', stop: '997.00', putBack: '671.00' });
  });
});

describe('a stage is not whole', () => {
  const complete = (text: string) => read(text).comparison.stages.map((stage) => stage.complete);

  test('where its work can’t be reached with what it opens', () => {
    expect(complete(TEXT.replace('opens front', 'opens other'))).toEqual([false]);
    expect(complete(TEXT)).toEqual([true]);
  });

  test('where a line that it rests on can’t be read; others don’t matter', () => {
    expect(complete(TEXT.replace('remove 1 h', 'remove 1 hh'))).toEqual([false]);
    expect(complete(TEXT.replace('"Bolts" 8 at 5.00', '"Bolts" 8 at 5..00'))).toEqual([false]);
    expect(complete(TEXT.replace('"Pump" 90.00', '"Pump" 90..00'))).toEqual([true]);
    expect(complete(TEXT.replace('remove 2 h', 'remove 2 hh'))).toEqual([true]);
  });
});
