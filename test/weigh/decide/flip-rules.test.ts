import { describe, expect, test } from 'vitest';
import { decideText } from '../decision/weighing.js';

// What a search for flip points counts, how far it goes, and how it tells that it stopped. Rules of our own; amounts worked out by hand.

const two = (a: string, b: string, shop = '') => `steelyard 1\nshop "S"\n  rate bench 100.00\n${shop}option one "One"\n${a}option two "Two"\n${b}`;

/** Flips as `line: way value to option`. */
function flips(text: string): readonly string[] {
  return decideText(text).flips.map(({ line, way, flips: value, to }) => `${line}: ${way} ${Number(value.toFixed(6))} to ${to.name}`);
}

describe('how far a figure is followed', () => {
  test('up to twenty times itself', () => {
    expect(flips(two('  part "P" 5.00 new\n', '  part "Q" 99.99 new\n'))).toContain('P: above 100 to two');
    expect(flips(two('  part "P" 5.00 new\n', '  part "Q" 100.00 new\n'))).toEqual(['Q: below 4.99 to two']);
  });

  test('from nothing up to 10,000; how far off that is no share can say, so it comes last', () => {
    const text = two('  part "P" 0.00 new\n', '  part "Q" 9999.99 new\n');
    expect(flips(two('  part "P" 0.00 new\n  part "R" 1.00 new\n', '  part "Q" 21.00 new\n'))).toEqual(['Q: below 0.99 to two', 'P: above 20.01 to two']);
    expect(flips(text)).toEqual(['P: above 10000 to two']);
    expect(decideText(text).flips.map(({ share }) => share)).toEqual([undefined]);
    expect(flips(two('  part "P" 0.00 new\n', '  part "Q" 10000.00 new\n'))).toEqual([]);
  });

  test('down to nothing', () => {
    expect(flips(two('  part "P" 5.00 new\n  part "R" 4.99 new\n', '  part "Q" 5.00 new\n'))).toContain('P: below 0.01 to one');
    expect(flips(two('  part "P" 5.00 new\n  part "R" 5.00 new\n', '  part "Q" 5.00 new\n'))).toContain('P: below 0 to one');
    expect(flips(two('  part "P" 5.00 new\n  part "R" 5.01 new\n', '  part "Q" 5.00 new\n')).filter((one) => one.startsWith('P'))).toEqual([]);
  });
});

describe('a markup table, by which a dearer part may come to less', () => {
  const bands = '  markup 80% to 500.00\n  markup 10%\n';

  test('the turn before a step of it is told, though the choice turns back at the step', () => {
    // 472.23 and 80 % is 850.01; 500.01 and 10 % is 550.01, and again above 850.00 from 772.73 on.
    expect(flips(two('  part "P" cost 200.00 new\n', '  part "Q" 850.00 new\n', bands))).toContain('P: above 472.23 to two');
  });

  test('a turn right at a step of it, and one below', () => {
    expect(flips(two('  part "P" cost 400.00 new\n', '  part "Q" 560.00 new\n', bands))).toContain('P: above 500.01 to one');
    // 500.00 and 80 % is 900.00.
    expect(flips(two('  part "P" cost 510.00 new\n', '  part "Q" 600.00 new\n', bands))).toContain('P: below 500 to two');
  });
});

describe('what it counts', () => {
  test('what the vehicle is worth afterwards', () => {
    // One gives up 1000.00 of worth: 1500.00 in all against 700.00. Equals go to the first.
    const text = two('  worth 8000.00\n  part "P" 500.00 new\n', '  worth 9000.00\n  part "Q" 700.00 new\n');
    expect(flips(text)).toEqual(['Two: below 8200 to one', 'One: above 8800 to one', 'Q: above 1500 to one']);
  });

  test('another band of the markup, for parts, for outside work, and for what a way in brings along', () => {
    // 90.00 at 50 % is 135.00. Above 100.00 it is 30 %: 160.00 is passed at 123.09 (160.02), not at 106.67.
    const shop = '  markup 50% to 100.00\n  markup 30%\n  markup 50% to 100.00 on sublets\n  markup 30% on sublets\n';
    const found = (lines: string) => flips(two(lines, '  part "Q" 160.00 new\n', shop)).filter((one) => one.includes('above'));
    expect(found('  part "P" cost 90.00 new\n')).toContain('P: above 123.09 to two');
    expect(found('  sublet "P" cost 90.00\n')).toContain('P: above 123.09 to two');
    const way = (goods: string) => `${two('  labour "W" 0.1 h with up\n', '  part "Q" 170.00 new\n', shop)}access up "Up"\n  remove 0 h\n  ${goods}\n`;
    expect(flips(way('part "P" cost 90.00 new'))).toContain('P: above 123.09 to two');
    expect(flips(way('sublet "P" cost 90.00'))).toContain('P: above 123.09 to two');
  });

  test('the way in that is then the best', () => {
    // With the way up 3 h + 1 h, in the car 5 h: 400.00. Above 4 h of removing it is the car, 500.00, and two, 480.00, is passed before: at 3.81 h.
    const text = (q: number) => `${two('  labour "W"\n    takes 5 h\n    takes 1 h with up\n', `  part "Q" ${q}.00 new\n`)}access up "Up"\n  remove 3 h\n`;
    expect(flips(text(480)).filter((one) => one.startsWith('Up'))).toEqual(['Up: above 3.81 to two']);
    expect(flips(text(520)).filter((one) => one.startsWith('Up'))).toEqual([]);
  });
});

describe('limits', () => {
  const parts = (count: number) => Array.from({ length: count }, (_, i) => `  part "P${i}" 1.00 new\n`).join('');

  test('of 600 figures all are searched, of 601 the last is not, which is said', () => {
    const [whole, more] = [decideText(two(parts(599), '  part "Q" 700.00 new\n')), decideText(two(parts(600), '  part "Q" 700.00 new\n'))];
    expect([whole.beyond, whole.flips.map(({ line }) => line)]).toEqual([[], ['Q']]);
    expect([more.beyond, more.flips.map(({ line }) => line)]).toEqual([['figures'], []]);
  });

  test('all mixes of five ways in are searched; of six it is said that there may be more', () => {
    const text = (count: number) => {
      const names = Array.from({ length: count }, (_, i) => `w${i}`);
      return `${two(names.map((name) => `  labour "J${name}"\n    takes 3 h\n    takes 1 h with ${name}\n`).join(''), '  part "Q" 5000.00 new\n')}${names.map((name) => `access ${name} "${name}"\n  remove 1 h\n`).join('')}`;
    };
    expect([decideText(text(5)).beyond, decideText(text(6)).beyond]).toEqual([[], ['plans']]);
  });

  test('one option alone has no flips', () => {
    const text = 'steelyard 1\nshop "S"\noption one "One"\n  part "P" 5.00 new\n  chance "C" 10%\n    part "X" 4.00 new\n';
    expect([decideText(text).flips, decideText(text).beyond]).toEqual([[], []]);
  });
});

describe('likelihoods', () => {
  test('down to where the averages meet', () => {
    // 500.00 and half of 400.00 against 600.00: below 25 % one costs less on average.
    const found = decideText(two('  part "P" 500.00 new\n  chance "C" 50%\n    part "X" 400.00 new\n', '  part "Q" 600.00 new\n')).flips.filter(({ measure }) => measure === 'average');
    expect(found.map(({ line, way, to, share, figure: { unit, likely } }) => [line, way, to.name, share?.toFixed(6), unit, likely.toFixed()])).toEqual([['C', 'below', 'one', '0.500000', 'percent', '50']]);
    expect(found[0]?.flips).toBeCloseTo(25, 9);
  });

  test('of several options the one that is met first, wherever it stands', () => {
    const options = (b: number, c: number) => `${two('  part "P" 500.00 new\n  chance "C" 5%\n    part "X" 400.00 new\n', `  part "Q" ${b}.00 new\n`)}option three "Three"\n  part "R" ${c}.00 new\n`;
    for (const [b, c, to] of [[600, 580, 'three'], [580, 600, 'two']] as const) {
      const [flip] = decideText(options(b, c)).flips.filter(({ measure }) => measure === 'average');
      expect([flip?.to.name, Number(flip?.flips.toFixed(6)), flip?.way]).toEqual([to, 20, 'above']);
    }
  });

  test('a chance of a job that several options do is one, and moves them all', () => {
    const shared = (own: string) => `steelyard 1\nshop "S"\n  rate bench 100.00\nlabour w "W" 1 h\n  chance "C" 10%\n    part "X" 400.00 new\noption one "One"\n  do w\n  part "P" 10.00 new\n${own}option two "Two"\n  do w\n  part "Q" 20.00 new\noption three "Three"\n  part "R" 500.00 new\n`;
    // 110.00 and 400.00 p against 500.00: met at 97.5 %; two is above one at any likelihood.
    const found = decideText(shared('')).flips.filter(({ measure }) => measure === 'average');
    expect(found.map(({ way, to, flips: value }) => [way, to.name, Number(value.toFixed(6))])).toEqual([['above', 'three', 97.5]]);
  });

  test('a chance below another has none of its own', () => {
    const text = two('  part "P" 500.00 new\n  chance "C" 20%\n    part "X" 300.00 new\n    chance "D" 50%\n      part "Y" 300.00 new\n', '  part "Q" 600.00 new\n');
    // 500.00 and p (300.00 + half of 300.00): met at 22.22 %.
    const found = decideText(text).flips.filter(({ measure }) => measure === 'average');
    expect(found.map(({ line, flips: value }) => [line, Number(value.toFixed(4))])).toEqual([['C', 22.2222]]);
  });

  test('one that is written as never, or as always, happening has them too; of no percent no share says how far off', () => {
    const found = (percent: number) => decideText(two(`  part "P" 500.00 new\n  chance "C" ${percent}%\n    part "X" 400.00 new\n`, '  part "Q" 600.00 new\n')).flips.filter(({ measure }) => measure === 'average').map(({ way, flips: value, to, share }) => [way, Number(value.toFixed(6)), to.name, share]);
    expect([found(0), found(100)]).toEqual([[['above', 25, 'two', undefined]], [['below', 25, 'one', 0.75]]]);
    const all = decideText(two('  part "P" 500.00 new\n  chance "C" 0%\n    part "X" 400.00 new\n', '  part "Q" 600.00 new\n')).flips;
    expect(all.map(({ line }) => line)).toEqual(['Q', 'P', 'C']);
  });

  test('quoted figures and likelihoods stand in one list, nearest first', () => {
    // Q at 1/6 off and P at 1/5, C at 1/4: 20 % to 25 %. X is in no quote.
    const found = decideText(two('  part "P" 500.00 new\n  chance "C" 20%\n    part "X" 400.00 new\n', '  part "Q" 600.00 new\n')).flips;
    expect(found.map(({ line, measure }) => `${line} ${measure}`)).toEqual(['Q quoted', 'P quoted', 'C average']);
    const nearer = decideText(two('  part "P" 500.00 new\n  chance "C" 24%\n    part "X" 400.00 new\n', '  part "Q" 600.00 new\n')).flips;
    expect(nearer.map(({ line, measure }) => `${line} ${measure}`)).toEqual(['C average', 'Q quoted', 'P quoted']);
  });
});

describe('what varies', () => {
  const cases = (lines: string) => decideText(two(`  labour "W" 1 h\n${lines}`, '  part "Q" 600.00 new\n')).cases;

  test('nothing: no cases are drawn', () => {
    const found = decideText(two('  part "P" 500.00 new\n', '  part "Q" 600.00 new\n'));
    expect([found.cases, found.options.map(({ risk, average }) => [risk, average])]).toEqual([undefined, [[undefined, 500], [undefined, 600]]]);
    expect(cases('  part "P" 500.00 new arrives 2 d\n')).toBeUndefined();
  });

  test('an amount, a wait alone, or a chance', () => {
    expect([cases('  part "P" 400 / 500 / 900 new\n'), cases('  part "P" 500.00 new arrives 1 / 2 / 4 d\n'), cases('  part "P" 500.00 new\n  chance "C" 10%\n    part "X" 4.00 new\n')]).toEqual([1000, 1000, 1000]);
  });
});

test('a figure is told by the line that it is written on: the title, and of a rate its name', () => {
  const text = `steelyard 1\nshop "S"\n  rate bench 100.00 usual\n  rate fine "Fine work" 100.00\n  fee "Yard" 10.00\naccess up "Up on the lift"\n  remove 1 h\nlabour w "W"\n  takes 2 h with up\nlabour v "V" 1 h class fine\noption one "One"\n  do w, v\n  part "Box" 90.00 rebuilt\n    core 50.00\n      keeps "Lid" less 4.00\noption two "Two"\n  part "Q" 520.00 new\n`;
  expect(new Set(decideText(text).flips.map(({ line }) => line))).toEqual(new Set(['bench', 'Fine work', 'Yard', 'Up on the lift', 'W', 'V', 'Box', 'Lid', 'Q']));
});
