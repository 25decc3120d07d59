import { describe, expect, test } from 'vitest';
import { AS_IT_STANDS } from '../../src/estimate/index.js';
import { called, marked, resolved, told, wordsOf } from './estimated.js';

const SHOP = 'steelyard 1\nshop "S"\n  rate bench 100.00\nlabour look "Look" 1 h done first uses dye send\nlabour look-two "Look again" 1 h done first\nlabour mend "Mend" 5 h\nfee tow "Tow" 80.00\nfee store "Storage" 10.00\npart dye "Dye" 4.00 new\nsublet send "Sent out" 9.00\n'.replace('uses dye send', 'uses dye, send');
const WORTH = 'vehicle "V"\n  worth 7900.00\n  unrepaired 1900.00\n';
const options = (a: string, b: string) => `option a "A"\n${a}option b "B"\n${b}`;
const read = (vehicle: string, rest: string) => resolved(SHOP + vehicle + rest);
const added = (vehicle: string, rest: string) => read(vehicle, rest).estimate.options.find(({ name }) => name === AS_IT_STANDS);
const DO = options('  do look, mend\n', '  do look, mend\n');

describe('selling it as it stands is an option beside the others', () => {
  test('where the vehicle says what it brings unrepaired', () => {
    const one = added(WORTH, DO);
    expect([one?.title, one?.written, one?.worth?.likely.toFixed(), one === undefined ? undefined : marked(one.at)]).toEqual(['Sell it as it stands', false, '1900', '1900.00']);
    expect(read(WORTH, DO).estimate.options.map(({ name }) => name)).toEqual(['a', 'b', AS_IT_STANDS]);
    expect(added('vehicle "V"\n  worth 7900.00\n', DO)).toBeUndefined();
    expect(added('', DO)).toBeUndefined();
    expect(added(WORTH, '')).toBeUndefined();
  });

  test('it brings nothing else', () => {
    expect(added(WORTH, DO)).toMatchObject({ harvests: [], chances: [], because: [], leavesOut: [], notes: [], cautions: [], way: undefined, warranty: undefined, lasts: undefined, resale: undefined });
  });

  test('with the work that every option does before the customer decides, and what that brings', () => {
    const one = added(WORTH, options('  do look, look-two, mend\n', '  do look, mend\n'));
    expect([one?.labour, one?.parts, one?.sublets].map((list) => called(list ?? []))).toEqual([['look'], ['dye'], ['send']]);
    const three = added(WORTH, `${options('  do look, look-two\n', '  do look, look-two\n')}option c "C"\n  do look\n`);
    expect(called(three?.labour ?? [])).toEqual(['look']);
  });

  test('with the fees that every option charges', () => {
    const one = added(WORTH, `${options('  charge tow, store\n', '  charge tow, store\n')}option c "C"\n  charge tow\n`);
    expect(called(one?.fees ?? [])).toEqual(['tow']);
  });

  test('with what stages do, whenever it is done; it stays open', () => {
    const one = added(WORTH, `stage s "S"\n  do mend\n  put back 1 h\n${options('  do look\n', '  do look\n')}`);
    expect([called(one?.labour ?? []), one?.staged?.then]).toEqual([['mend', 'look'], 'left open']);
    expect(added(WORTH, DO)?.staged).toBeUndefined();
  });

  test('only where it is known what the vehicle is worth mended: of itself, or on every option', () => {
    const unrepaired = 'vehicle "V"\n  unrepaired 1900.00\n';
    expect(told(read(unrepaired, DO))).toEqual([['unrepaired-alone', '1900.00']]);
    expect(added(unrepaired, DO)).toBeUndefined();
    expect(told(read(unrepaired, options('  worth 8000.00\n', ''))).map(([code]) => code)).toEqual(['unrepaired-alone']);
    expect(told(read(unrepaired, options('  worth 8000.00\n', '  worth 7000.00\n')))).toEqual([]);
    expect(added(unrepaired, options('  worth 8000.00\n', '  worth 7000.00\n'))).toBeDefined();
    expect(told(read(WORTH, options('', '')))).toEqual([]);
  });

  test('not where a written option has its name', () => {
    const twin = read(WORTH, `${DO}option ${AS_IT_STANDS} "Sell it"\n`);
    expect(told(twin)).toEqual([['unrepaired-name', AS_IT_STANDS]]);
    expect(wordsOf(twin, 'unrepaired-name')).toContain(AS_IT_STANDS);
    expect(twin.estimate.options.map(({ name, written }) => [name, written])).toEqual([['a', true], ['b', true], [AS_IT_STANDS, true]]);
  });
});
