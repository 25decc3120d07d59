import { describe, expect, test } from 'vitest';
import { serviceOver, uriOf } from '../../support/fixture.js';

// What is told of lines that nothing names, and of ranges that say nothing, while an estimate is typed: after each text what a fresh look would tell.
// Common practice: a line that no option brings in is left over, and a range of ten times and more is a slip or no estimate.

const THIS = 'this.yard';
const CODES = ['unused-line', 'range-very-wide', 'finding-unanswered', 'check-failed'];

interface Parts {
  readonly seal?: string;
  readonly belt?: string;
  readonly goods?: string;
  readonly more?: string;
}

function text({ seal = '2 h', belt = '1 h', goods = 'part ring "Ring" 9.00 new\npart drum "Drum" 5.00 new\n', more = '' }: Parts): string {
  return `steelyard 1\nuse "shop.yard"\nestimate "E"\n  start 2026-11-30\n  valid 14 d\nfinding seen "Seen"\n${more}labour seal "Front seal" ${seal}\n  because seen\nlabour belt "Belt" ${belt}\n  because seen\n${goods}option mend "Mend it"\n  do seal, belt\n  warranty 12 mo\noption stop "Stop"\n`;
}

/** What one service tells after each of some texts: code and marked words, in its order. Each text is looked at by a service of its own, too. */
function told(...texts: readonly string[]): readonly (readonly string[])[] {
  // What a shared file holds other estimates may need, and it is looked at where it is written.
  const files = { 'shop.yard': 'steelyard 1\nshop "S"\n  workday 8 h\n  rate bench 100.00\n  tax sales 7% on parts\nlabour spare "Of all estimates" 1 / 4 / 20 h\n' };
  const said = ({ service }: ReturnType<typeof serviceOver>, typed: string) => [...service.allDiagnostics(uriOf(THIS)).values()].flat().filter(({ code, severity }) => CODES.includes(code) || severity === 'error').map(({ code, range }) => `${code} ${typed.slice(range.start, range.end)}`);
  const kept = serviceOver(files);
  return texts.map((typed) => {
    kept.host.set(THIS, typed);
    const all = said(kept, typed);
    expect(all).toEqual(said(serviceOver({ ...files, [THIS]: typed }), typed));
    return all;
  });
}

const USES = (...names: readonly string[]) => `1 h\n  uses ${names.join(', ')}`;

describe('a line that nothing names', () => {
  test('is told until something names it, and again when nothing does', () => {
    expect(told(text({}), text({ belt: USES('ring') }), text({ belt: USES('drum') }), text({ belt: USES('ring', 'drum') }), text({ belt: USES('drum') }), text({}))).toEqual([
      ['unused-line ring', 'unused-line drum'], ['unused-line drum'], ['unused-line ring'], [], ['unused-line ring'], ['unused-line ring', 'unused-line drum'],
    ]);
  });

  test('is told in the order of the file, whichever was left over first', () => {
    const one = (belt: string, seal: string) => text({ belt: `1 h\n  uses ${belt}`, seal: `2 h\n  uses ${seal}` });
    expect(told(one('drum', 'ring'), one('ring', 'ring'), text({ seal: '2 h\n  caution oil', belt: '1 h\n  caution oil' })).at(-1)).toEqual(['unused-line ring', 'unused-line drum']);
  });

  test('is none while another line names it still', () => {
    const both = text({ seal: '2 h\n  uses ring, drum', belt: USES('ring') });
    expect(told(both, text({ seal: '2 h\n  uses drum', belt: USES('ring') }), text({ seal: '2 h\n  uses drum', belt: USES('drum') }), both)).toEqual([[], [], ['unused-line ring'], []]);
  });

  test('goes with its name, and with what kind of line it is', () => {
    const goods = 'part ring "Ring" 9.00 new\npart drum "Drum" 5.00 new\n';
    const belt = USES('ring');
    const named = (line: string) => text({ belt, goods: goods.replace('part drum "Drum" 5.00 new', line) });
    expect(told(named('part drum "Drum" 5.00 new'), named('part keg "Drum" 5.00 new'), named('sublet keg "Drum" 5.00'), named('part drum "Drum" 6.00 new'))).toEqual([['unused-line drum'], ['unused-line keg'], ['unused-line keg'], ['unused-line drum']]);
    const renamed = (name: string) => text({ belt: USES('ring', name), goods: goods.replace('part drum', `part ${name}`) });
    expect(told(renamed('drum'), renamed('keg'), text({ belt, goods: goods.replace('part drum', 'part keg') }), renamed('keg'))).toEqual([[], [], ['unused-line keg'], []]);
  });

  test('is told still when it is typed itself, or a line without a name is', () => {
    const both = text({ belt: USES('ring', 'drum') });
    const one = text({ belt: USES('ring') });
    expect(told(both, one, one.replace('"Drum" 5.00', '"Drum" 6.00'), one.replace('"Drum" 5.00', '"Drum" 6.00').replace('14 d', '21 d'), both.replace('14 d', '21 d'))).toEqual([[], ['unused-line drum'], ['unused-line drum'], ['unused-line drum'], []]);
  });

  test('has nothing to do with what its former name is given to', () => {
    const goods = (first: string, second: string) => `${first} 9.00 new\n${second} 5.00 new\n`.replace(/(sublet .*) new/, '$1');
    const typed = (first: string, second: string, ...names: readonly string[]) => text({ goods: goods(first, second), belt: USES(...names) });
    const [ring, drum, keg] = ['part ring "Ring"', 'part drum "Drum"', 'part keg "Drum"'];
    expect(told(typed(ring, drum, 'ring', 'drum'), typed(ring, keg, 'ring', 'keg'), typed('sublet drum "Turn the drum"', keg, 'drum', 'keg'), typed(ring, keg, 'ring', 'keg'))).toEqual([[], [], [], []]);
  });

  test('moves with the lines above it', () => {
    expect(told(text({ belt: USES('ring') }), text({ belt: USES('ring'), more: 'finding heard "Heard"\n  rules out stop\n' }), text({ belt: USES('drum') }))).toEqual([['unused-line drum'], ['unused-line drum'], ['unused-line ring']]);
  });
});

describe('a range that says nothing', () => {
  const goods = '';

  test('is told at its own line or one below it, from ten times on, until it is narrower', () => {
    const way = 'access up "Up"\n  remove 1 h\n';
    const modes = (hours: string) => text({ goods, more: way, belt: `\n  takes 9 h\n  takes ${hours} with up` });
    expect(told(text({ goods, seal: '1 / 2 / 10 h' }), text({ goods, seal: '1 / 2 / 9.9 h' }), text({ goods, seal: '0 / 2 / 10 h' }), text({ goods, seal: '1 / 2 / 11 h' }))).toEqual([['range-very-wide 1 / 2 / 10 h'], [], [], ['range-very-wide 1 / 2 / 11 h']]);
    expect(told(modes('0.2 / 1 / 3 h'), modes('1 / 1 / 3 h'), modes('0.1 / 1 / 1 h'))).toEqual([['range-very-wide 0.2 / 1 / 3 h'], [], ['range-very-wide 0.1 / 1 / 1 h']]);
  });

  test('each of more than one, in the order of the file', () => {
    const wide = (seal: string, belt: string) => text({ goods, seal, belt });
    expect(told(wide('2 h', '1 / 2 / 20 h'), wide('1 / 3 / 30 h', '1 / 2 / 20 h'), wide('3 h', '2 h'))).toEqual([['range-very-wide 1 / 2 / 20 h'], ['range-very-wide 1 / 3 / 30 h', 'range-very-wide 1 / 2 / 20 h'], []]);
    const part = (price: string) => text({ belt: USES('ring', 'drum'), goods: `part ring "Ring" ${price} new\npart drum "Drum" 5.00 new\n` });
    expect(told(part('1.00 / 9.00 / 90.00'), part('9.00'))).toEqual([['range-very-wide 1.00 / 9.00 / 90.00'], []]);
  });
});
