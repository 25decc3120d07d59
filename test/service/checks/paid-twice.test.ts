import { describe, expect, test } from 'vitest';
import type { LanguageService } from '../../../src/service/index.js';
import { serviceOver, uriOf } from '../../support/fixture.js';

// Common practice: what getting in takes is on the quote with the way in, and is easily written once more with the work.

const THIS = 'this.yard';
const HEAD = 'steelyard 1\nshop "S"\n  workday 8 h\n  rate bench 100.00\n  tax sales 7% on parts\nestimate "E"\n  start 2026-11-30\n  valid 14 d\nfinding seen "Seen"\nlabour seal "Front seal" 2 h\n  because seen\n';
const WAY = 'access up "Engine raised"\n  remove 1 h\n  part "Mount bolts" 12.00 new\nlabour belt "Belt" 1 h with up\n  because seen\n';
const one = (below: string, jobs = 'seal') => `option one "Mend it"\n  do ${jobs}\n  warranty 12 mo\n${below}`;

/** What is told of titles that are charged twice: the line it stands on, the first part of the message, and the line that it points to. */
function toldBy(service: LanguageService, text: string): readonly string[] {
  const line = (start: number) => text.slice(0, start).split('\n').length - HEAD.split('\n').length + 1;
  return [...service.allDiagnostics(uriOf(THIS)).values()].flat().filter(({ code }) => code === 'paid-twice').map(({ range, message, related }) => `${line(range.start)} ${message.what} ${related === undefined ? '' : line(related.place.range.start)}`);
}

function told(lines: string): readonly string[] {
  return toldBy(serviceOver({ [THIS]: HEAD + lines }).service, HEAD + lines);
}

describe('a title that is charged twice', () => {
  test('in the work alone is told at the second line', () => {
    expect(told(one('  part "Sealant" 4.00 new\n  part " sealant " 5.00 new\n'))).toEqual(['5 “ sealant ” is charged twice in option one. 4']);
    expect(told(one('  part "Sealant" 4.00 new\n  part "Sealant" 5.00 new\n  part "Sealant" 6.00 new\n'))).toEqual(['5 “Sealant” is charged twice in option one. 4', '6 “Sealant” is charged twice in option one. 4']);
  });

  test('once with the way in is told at the line of the work, and names the way in', () => {
    expect(told(`${WAY}${one('  part "Mount bolts" 12.00 new\n', 'seal, belt')}`)).toEqual(['9 “Mount bolts” is charged twice in option one, once with the way in. 3']);
  });

  test('is told at the work, though that stands first on the quote', () => {
    // The writer charges by hand what the way in charges by itself.
    const line = 'labour up-too "Engine raised: remove" 1.5 h\n  because seen\n';
    expect(told(`${WAY}${line}${one('', 'seal, belt, up-too')}`)).toEqual(['6 “Engine raised: remove” is charged twice in option one, once with the way in. 2']);
  });

  test('is no such where one is of another kind, or costs nothing', () => {
    expect(told(one('  part "Sealant" 4.00 new\n  sublet "Sealant" 5.00\n'))).toEqual([]);
    expect(told(one('  part "Sealant" 0.00 new\n  part "Sealant" 0.00 new\n'))).toEqual([]);
    expect(told(one('  part "Sealant" 0.00 new\n  part "Sealant" 4.00 new\n'))).toEqual([]);
    expect(told(one('  part "Sealant" 0.00 new\n  part "Sealant" 0.00 new\n  part "Sealant" 4.00 new\n  part "Sealant" 5.00 new\n'))).toEqual(['7 “Sealant” is charged twice in option one. 6']);
  });

  test('is told and taken back while it is typed', () => {
    const { host, service } = serviceOver({});
    const typed = (text: string) => {
      host.set(THIS, HEAD + text);
      return toldBy(service, HEAD + text);
    };
    const lines = (title: string, price = '5.00') => `part silicone "Sealant" 4.00 new\npart paste "${title}" ${price} new\n${one('  fit silicone, paste\n')}`;
    const twice = ['2 “Sealant” is charged twice in option one. 1'];
    expect(typed(lines('Paste'))).toEqual([]);
    expect(typed(lines('Sealant'))).toEqual(twice);
    expect(typed(lines('Sealant', '6.00'))).toEqual(twice);
    expect(typed(lines('Sealant', '0.00'))).toEqual([]);
    expect(typed(lines('Sealant', '7.00'))).toEqual(twice);
    expect(typed(lines('Paste', '7.00'))).toEqual([]);
    // Two lines at once, of which one keeps its words.
    expect(typed(lines('Sealant', '7.00').replace('4.00', '6.00'))).toEqual(twice);
    expect(typed(lines('Paste', '7.00'))).toEqual([]);
  });
});
