import { describe, expect, test } from 'vitest';
import { read, readSound, type Read } from './weighed.js';

// Which pieces decide the day, and what is said where the order or a length makes no sense. Days of eight hours from Monday 2026-11-30; sums by hand.

const HEAD = 'steelyard 1\nshop "S"\n  rate bench 100.00\n  workday 8 h\nestimate "E"\n  start 2026-11-30\n';
const option = (...rows: readonly string[]) => `option one "One"\n${rows.map((row) => `  ${row}\n`).join('')}`;
const ready = (text: string) => readSound(HEAD + text).option('one').ready;

describe('the days until it is ready', () => {
  test('are derived from the pieces that decide them, and from the length of a day', () => {
    const text = `labour a "A" 4 h\n  uses seal\nlabour b "B" 2 h\npart seal "Seal" 4.00 new arrives 2 d\n${option('do a, b')}`;
    expect(ready(text).days.from.map(({ label, likely }) => `${label} ${likely.toFixed()}`)).toEqual(['Time 4', 'Seal arrives 2', 'Working day 8']);
  });

  test('go from the earliest to the latest where one piece among several is uncertain', () => {
    const { days, latest } = ready(option('labour "A" 4 / 8 / 17 h', 'labour "B" 1 h'));
    expect([days.low, days.likely, days.high].map((point) => point.toFixed())).toEqual(['1', '2', '3']);
    expect(latest).toBe('2026-12-02');
  });
});

describe('the days in the bay', () => {
  test('begin with the first work that is done, not with the first that is written', () => {
    // B on Monday; A when the seal is there, on Wednesday: 2 h of work before noon, and 14 h without any.
    const { bay, waiting } = ready(`labour a "A" 4 h\n  uses seal\nlabour b "B" 2 h\npart seal "Seal" 4.00 new arrives 2 d\n${option('do a, b')}`);
    expect([bay.likely.toFixed(), waiting.likely.toFixed()]).toEqual(['3', '1.75']);
  });

  test('do not begin with a look before the answer, nor with work of no length', () => {
    const look = 'labour look "Look" 2 h done first\n';
    const note = 'labour note "Note" 0 h\n';
    // Looked at for 2 h on Monday, the answer after 2 days on Wednesday at ten, 4 h of work; and 4 h of work on Wednesday, when the seal is there.
    const seal = 'labour w "W" 4 h\n  uses seal\npart seal "Seal" 4.00 new arrives 2 d\n';
    const told = (text: string) => {
      const { bay, waiting, days } = ready(text);
      return [days, bay, waiting].map(({ likely }) => likely.toFixed()).join(' ');
    };
    expect(told(`${look}${option('do look', 'labour "W" 4 h')}`.replace(/^/, '  answer 2 d\n'))).toBe('3 1 0');
    expect(told(`${note}${seal}${option('do note, w')}`)).toBe('3 1 0');
  });

  test('in which two work at a time have no time in which nobody works', () => {
    const { waiting, bay } = readSound(`${HEAD.replace('  workday', '  technicians 2\n  workday')}${option('labour "A" 6 h', 'labour "B" 4 h')}`).option('one').ready;
    expect([waiting, bay].map(({ likely, from }) => `${likely.toFixed()} of ${from.map(({ label }) => label).join()}`)).toEqual(['0 of Working days until it is ready', '1 of Working days until it is ready']);
  });

  test('say whether they begin after the answer or with a stage', () => {
    const how = (text: string) => {
      const { step } = ready(text).bay;
      return step.kind === 'found' ? step.how : '';
    };
    const stage = 'labour strip "Strip" 2 h\nstage look "Look"\n  do strip\n';
    expect([how(option('labour "W" 1 h')), how(stage + option('labour "W" 1 h'))]).toEqual([
      'From the first work after the customer’s answer to the end; every day on which the bay is blocked.',
      'From the first work on the vehicle to the end; every day on which the bay is blocked.',
    ]);
  });
});

describe('the day on which a part is ordered', () => {
  const text = (answer: string) => `${answer}tool lock "Lock"\n  arrives 3 d\nlabour w "W" 4 h\n  needs lock\n${option('do w', 'part "Pump" 90.00 rebuilt arrives 2 d', '  core 50.00 due 30 d')}`;
  const orderedIn = (found: Read, name: string, of = name) => {
    const [part] = found.option(of).option.parts;
    if (part?.arrives === undefined) throw new Error('no part on its way');
    return found.option(name).ready.orderedOn(part.arrives.at);
  };
  const ordered = (answer: string) => {
    const found = readSound(HEAD + text(answer));
    return [orderedIn(found, 'one'), found.option('one').returns.cores.map(({ deadline }) => deadline)];
  };

  test('is that of the customer’s answer, and the old core is due so long after the part is there', () => {
    // Monday, there on Wednesday the 2nd; and Wednesday, there on Friday the 4th.
    expect([ordered(''), ordered('  answer 2 d\n')]).toEqual([['2026-11-30', ['2027-01-01']], ['2026-12-02', ['2027-01-03']]]);
  });

  test('is not known of a part that the option doesn’t fit, nor without a day to start from', () => {
    const found = readSound(`${HEAD}part other "Other" 5.00 new arrives 2 d\n${text('')}option two "Two"\n  fit other\n`);
    expect([orderedIn(found, 'one', 'two'), orderedIn(found, 'two')]).toEqual([undefined, '2026-11-30']);
    expect(orderedIn(readSound((HEAD + text('')).replace('  start 2026-11-30\n', '')), 'one')).toBeUndefined();
  });
});

describe('where the order or a length makes no sense', () => {
  test('work that waits for itself is planned as if it did not, and told as a circle', () => {
    const found = read(`${HEAD}labour a "A" 6 h\n  after b\nlabour b "B" 4 h\n  after a\nlabour c "C" 1 h\n${option('do a, b, c')}`);
    const { ready: { tasks, days, circle, date } } = found.option('one');
    expect([tasks.map(({ task: { title, after } }) => [title, after]), days.likely.toFixed(), date, [...circle ?? []].sort()]).toEqual([[['A', []], ['B', []], ['C', []]], '2', '2026-12-01', ['A', 'B']]);
  });

  test('a length beyond any calendar: no day is told, and no circle', () => {
    const { tasks, days, circle, proven, finish } = ready(option('labour "W" 99999 at 99999999999 h'));
    expect([tasks, days.likely.toFixed(), circle, proven, finish]).toEqual([[], '0', undefined, true, 0]);
  });
});
