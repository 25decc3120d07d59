import { describe, expect, test } from 'vitest';
import { read } from './weighed.js';

// A line that can't be read spoils the options that rest on it, and no others. Each line is broken in its figure, one at a time.

const TEXT = `steelyard 1
shop "S"
  rate bench 100.00
vehicle "V"
  worth 9000.00
tool lock "Lock" 30.00
tool puller "Puller" 40.00
part gasket "Gasket" 5.00 new
part spare "Spare" 6.00 new
sublet skim "Skim" 20.00
access front "Front"
  remove 1 h
access out "Out"
  remove 5 h
  includes front
  uses gasket, skim
  needs puller
access other "Other"
  remove 7 h
labour strip "Strip" 2 h with front
labour w "W" 3 h with front
  needs lock
labour v "V" 4 h
stage look "Look"
  do strip
  opens front
  put back 8 h
option one "One"
  do w
option two "Two"
  do v
  worth 8000.00
`;

/** Which options are whole. */
function whole(text: string) {
  return read(text).comparison.options.filter(({ complete }) => complete).map(({ option }) => option.name).join(' and ') || 'none';
}

const broken = (figure: string) => {
  expect(TEXT.split(figure)).toHaveLength(2);
  return whole(TEXT.replace(figure, figure.replace(/(\d)(?=[^\d]*$)/, '$1..0')));
};

/** The same without the stage. */
const unstaged = TEXT.replace(/stage look[^]*?(?=option)/, '');

describe('an option rests on', () => {
  test('nothing that is broken: all are whole', () => {
    expect([whole(TEXT), whole(unstaged)]).toEqual(['one and two', 'one and two']);
  });

  test('its work and the tools of its work', () => {
    expect([broken('"W" 3 h'), broken('"Lock" 30.00'), broken('"V" 4 h')]).toEqual(['two', 'two', 'one']);
  });

  test('a way in that it pins, though no work of it takes that', () => {
    const pinned = `${TEXT}  way other\n`;
    expect([whole(pinned), whole(pinned.replace('remove 7 h', 'remove 7..0 h'))]).toEqual(['one and two', 'one']);
  });

  test('the worth of the vehicle, where it says none of its own', () => {
    expect(broken('worth 9000.00')).toBe('two');
  });

  test('what was done before the decision, and putting that back', () => {
    expect([broken('put back 8 h'), broken('"Strip" 2 h')]).toEqual(['none', 'none']);
  });

  test('the ways in that its work takes, those that give them, and what these bring along', () => {
    const without = (figure: string) => whole(unstaged.replace(figure, figure.replace(/(\d)(?=[^\d]*$)/, '$1..0')));
    expect(['remove 1 h', 'remove 5 h', '"Gasket" 5.00', '"Skim" 20.00', '"Puller" 40.00'].map(without)).toEqual(['two', 'two', 'two', 'two', 'two']);
    expect(['remove 7 h', '"Spare" 6.00'].map(without)).toEqual(['one and two', 'one and two']);
  });
});
