import { describe, expect, test } from 'vitest';
import { read, readSound } from './weighed.js';

// Lines of work, tools and fees as they are priced. Sums by hand.

const HEAD = 'steelyard 1\nshop "S"\n  rate bench 99.90 usual\n  rate fine 150.00\n  tool own "Own tool"\n';

function lines(text: string) {
  return readSound(HEAD + text).option('one').totals.lines.map(({ title, kind, share, amount, hours, quantity }) => `${kind} ${share} ${title}: ${amount.likely.toFixed()}${hours === undefined ? '' : ` for ${hours.likely.toFixed(4)} h`}${quantity === undefined ? '' : ` x ${quantity.likely.toFixed()}`}`);
}

const option = (...rows: readonly string[]) => `option one "One"\n${rows.map((row) => `  ${row}\n`).join('')}`;

describe('a line of work', () => {
  test('hours at the usual rate, or at that of its class; minutes are divided last', () => {
    expect(lines(option('labour "A" 1.5 h', 'labour "B" 1.5 h class fine', 'labour "C" 50 min'))).toEqual(['labour work A: 149.85 for 1.5000 h', 'labour work B: 225 for 1.5000 h', 'labour work C: 83.25 for 0.8333 h']);
  });

  test('several times the same, rounded once for all', () => {
    // 3 x 20 min at 99.90, and 3 x 0.35 h: 104.895.
    expect(lines(option('labour "A" 3 at 20 min', 'labour "B" 3 at 0.35 h'))).toEqual(['labour work A: 99.9 for 1.0000 h x 3', 'labour work B: 104.9 for 1.0500 h x 3']);
  });

  test('says which of its times it is, where there are several', () => {
    const time = (text: string) => readSound(HEAD + text).option('one').planned.chosen.jobs.map(({ line }) => line.hours?.label);
    const ways = 'access up "Up"\n  remove 0 h\naccess off "Off"\n  remove 0 h\n';
    expect(time(`${ways}labour w "W"\n  takes 3 h\n  takes 1 h with up\n${option('do w')}`)).toEqual(['Time with up']);
    expect(time(`${ways}labour w "W"\n  takes 1 h\n  takes 3 h with up\n${option('do w')}`)).toEqual(['Time in the car']);
    expect(time(`${ways}labour w "W"\n  takes 3 h\n  takes 1 h with up, off\n${option('do w')}`)).toEqual(['Time with up and off']);
    expect(time(`${ways}labour w "W" 1 h with up\n${option('do w')}`)).toEqual(['Time']);
  });

  test('without a rate has hours and no price, and says why', () => {
    const [line] = read(`steelyard 1\nshop "S"\n${option('labour "A" 2 h')}`).option('one').totals.lines;
    expect([line?.amount.likely.toFixed(), line?.hours?.likely.toFixed(), line?.amount.step.kind, line?.amount.from.length]).toEqual(['0', '2', 'found', 1]);
  });

  test('getting in and closing up are two lines, each where it takes time', () => {
    const way = (facts: string) => `access up "Up"\n${facts}${option('labour "A" 1 h with up')}`;
    expect(lines(way('  remove 1 h\n  refit 30 min\n'))).toEqual(['labour access Up: remove: 99.9 for 1.0000 h', 'labour access Up: refit: 49.95 for 0.5000 h', 'labour work A: 99.9 for 1.0000 h']);
    expect(lines(way('  refit 1 h\n  class fine\n'))).toEqual(['labour access Up: refit: 150 for 1.0000 h', 'labour work A: 99.9 for 1.0000 h']);
    const labels = readSound(`${HEAD}${way('  remove 1 h\n  refit 2 h\n')}`).option('one').totals.lines.map(({ hours }) => hours?.label);
    expect(labels).toEqual(['Time to remove', 'Time to refit', 'Time']);
  });
});

describe('tools', () => {
  test('are hired where they cost something and the shop has none', () => {
    const text = `tool lock "Lock" 30.00\ntool puller "Puller"\nlabour w "W" 1 h\n  needs lock, puller, own\n${option('do w')}`;
    expect(lines(text)).toEqual(['labour work W: 99.9 for 1.0000 h', 'fee work Lock: hire: 30']);
  });

  test('that two jobs need are hired once', () => {
    expect(lines(`tool lock "Lock" 30.00\nlabour w "W" 1 h\n  needs lock\nlabour v "V" 1 h\n  needs lock\n${option('do w, v')}`).filter((line) => line.includes('hire'))).toEqual(['fee work Lock: hire: 30']);
  });
});

describe('parts, outside work and fees', () => {
  test('a price stands; a cost takes the first band that reaches it, its end with it', () => {
    const shop = HEAD.replace('  tool own', '  markup 50% to 100.00\n  markup 30% to 200.00\n  markup 20% on sublets\n  tool own');
    const price = (rows: readonly string[]) => readSound(shop + option(...rows)).option('one').totals.lines.map(({ amount }) => amount.likely.toFixed());
    expect(price(['part "A" 100.00 new', 'part "B" cost 100.00 new', 'part "C" cost 100.01 new', 'part "D" cost 250.00 new', 'sublet "E" cost 50.00'])).toEqual(['100', '150', '130.01', '250', '60']);
  });

  test('what the customer brings along costs nothing, and has no core', () => {
    expect(lines(option('part "A" 2 at 5.00 customer-supplied\n    core 9.00', 'part "B" 2 at 5.00 new\n    core 9.00'))).toEqual(['part work A: 0 x 2', 'part work B: 10 x 2', 'core work B: core charge: 18 x 2']);
  });

  test('a fee for several, of a percentage, up to a cap', () => {
    expect(lines(option('labour "W" 10 h', 'part "P" 40.00 new', 'sublet "S" 50.00', 'fee "A" 3 at 25.00', 'fee "B" 10% of parts, sublets', 'fee "C" 10% of labour cap 45.00', 'fee "D" 1% of labour cap 45.00')).filter((line) => line.startsWith('fee'))).toEqual(['fee work A: 75 x 3', 'fee work B: 9', 'fee work C: 45', 'fee work D: 9.99']);
  });
});
