import { describe, expect, test } from 'vitest';
import { latest, stateOf } from '../../src/estimate/index.js';
import { resolved } from './estimated.js';

const HEAD = 'steelyard 1\nshop "S"\n  rate r 1.00\nestimate "E"\n  written 2026-11-24\n  valid 14 d\noption used "Used"\noption repair "Repair"\nstage look "Look"\n  do strip\n  put back 1 h\nlabour strip "Strip" 1 h\n';
const state = (today: string, ...lines: readonly string[]) => stateOf(resolved(HEAD + lines.map((line) => `${line}\n`).join('')).estimate, today);

const quoted = 'quoted 940.00 for used on 2026-11-25';
const agreed = 'authorised 940.00 for repair on 2026-11-26';
const started = 'started on 2026-11-30';
const closed = 'closed for used on 2026-12-09';

describe('how far a job has come', () => {
  test('draft, from the day it was written, with its last day', () => {
    expect(state('2026-11-24')).toEqual({ state: 'draft', since: '2026-11-24', option: undefined, validUntil: '2026-12-08' });
    const open = stateOf(resolved('steelyard 1\nestimate "E"\n  written 2026-11-24\n').estimate, '2099-01-01');
    expect(open).toEqual({ state: 'draft', since: '2026-11-24', option: undefined, validUntil: undefined }); // an offer without an end
    expect(stateOf(resolved('steelyard 1\n').estimate, '2026-11-24')).toEqual({ state: 'draft', since: undefined, option: undefined, validUntil: undefined });
  });

  test('quoted, from that day on; the offer runs from there', () => {
    expect(state('2026-11-25', quoted)).toEqual({ state: 'quoted', since: '2026-11-25', option: 'used', validUntil: '2026-12-09' });
    expect(state('2026-11-24', quoted).state).toBe('draft'); // not yet
  });

  test('expired, from the day after its last', () => {
    expect(state('2026-12-08').state).toBe('draft');
    expect(state('2026-12-09')).toEqual({ state: 'expired', since: '2026-12-09', option: undefined, validUntil: '2026-12-08' });
    expect(state('2026-12-09', quoted).state).toBe('quoted');
    expect(state('2026-12-10', quoted)).toEqual({ state: 'expired', since: '2026-12-10', option: 'used', validUntil: '2026-12-09' });
  });

  test('authorised, since the first of all, for the option of the last; it runs out no more', () => {
    expect(state('2027-12-10', quoted, agreed)).toEqual({ state: 'authorised', since: '2026-11-26', option: 'repair', validUntil: undefined });
    expect(state('2027-12-10', agreed, 'authorised 950.00 for used on 2026-11-28')).toMatchObject({ since: '2026-11-26', option: 'used' });
    expect(state('2027-12-10', 'authorised 950.00 for used on 2026-11-28', agreed)).toMatchObject({ since: '2026-11-26', option: 'used' });
    expect(state('2026-11-25', quoted, agreed).state).toBe('quoted'); // not yet
  });

  describe('a stage that is authorised', () => {
    const looked = 'authorised 200.00 for look on 2026-11-26';
    const later = 'quoted 940.00 for used on 2026-12-01';

    test('is the job so far, whatever was quoted before it', () => {
      expect(state('2026-11-26', quoted, looked)).toEqual({ state: 'authorised', since: '2026-11-26', option: 'look', validUntil: undefined });
      expect(state('2099-01-01', looked)).toMatchObject({ state: 'authorised', option: 'look' }); // it does not run out
      expect(state('2026-11-25', 'quoted 200.00 for look on 2026-11-25', looked)).toMatchObject({ state: 'quoted', option: 'look', validUntil: '2026-12-09' });
      expect(state('2026-11-30', looked, started)).toEqual({ state: 'in-work', since: '2026-11-30', option: 'look', validUntil: undefined });
    });

    test('until an option is authorised', () => {
      expect(state('2026-11-28', looked, 'authorised 950.00 for used on 2026-11-28')).toEqual({ state: 'authorised', since: '2026-11-28', option: 'used', validUntil: undefined });
    });

    test('or something else is quoted after it: that offer is open, and runs out', () => {
      expect(state('2026-12-01', looked, later)).toEqual({ state: 'quoted', since: '2026-12-01', option: 'used', validUntil: '2026-12-15' });
      expect(state('2026-12-16', looked, later)).toMatchObject({ state: 'expired', option: 'used' });
      expect(state('2026-12-01', looked, started, later)).toEqual({ state: 'in-work', since: '2026-11-30', option: 'used', validUntil: '2026-12-15', asked: true });
      expect(state('2026-12-01', looked, started, 'quoted 210.00 for look on 2026-12-01')).toEqual({ state: 'in-work', since: '2026-11-30', option: 'look', validUntil: undefined });
    });

    test('on one day the option was quoted after it where work had begun by then', () => {
      const same = 'quoted 940.00 for used on 2026-11-26';
      expect(state('2026-11-27', looked, same)).toMatchObject({ state: 'authorised', option: 'look' });
      expect(state('2026-11-27', looked, same, 'started on 2026-11-26')).toMatchObject({ state: 'in-work', option: 'used', asked: true });
    });
  });

  test('what is authorised for nothing is no authorisation', () => {
    expect(state('2026-11-26', 'authorised 200.00 on 2026-11-26').state).toBe('draft');
  });

  test('in work, and closed with the option that was done', () => {
    expect(state('2026-11-30', quoted, agreed, started)).toEqual({ state: 'in-work', since: '2026-11-30', option: 'repair', validUntil: undefined });
    expect(state('2026-11-29', quoted, agreed, started).state).toBe('authorised');
    expect(state('2026-12-09', quoted, agreed, started, closed)).toEqual({ state: 'closed', since: '2026-12-09', option: 'used', validUntil: undefined });
    expect(state('2026-12-08', quoted, agreed, started, closed).state).toBe('in-work');
    expect(state('2026-12-09', 'closed on 2026-12-09')).toMatchObject({ state: 'closed', option: undefined });
  });

  test('a record without a day has happened', () => {
    expect(state('2026-11-24', 'started').state).toBe('in-work');
    expect(state('2026-11-24', 'closed for used')).toEqual({ state: 'closed', since: undefined, option: 'used', validUntil: undefined });
    expect(state('2026-11-24', 'authorised 940.00 for used')).toMatchObject({ state: 'authorised', since: undefined, option: 'used' });
  });
});

describe('the latest of several', () => {
  test.each([
    [['2026-11-24', '2026-11-26', '2026-11-25'], 1],
    [['2026-11-24', '2026-11-24'], 1], // of one day the lower one
    [['2026-11-24', undefined], 0], // without a day: the oldest
    [[undefined, '2026-11-24'], 1],
    [[undefined, undefined], 1],
  ])('%j', (days, at) => {
    const records = days.map((on) => ({ on }));
    expect(latest(records)).toBe(records[at]);
  });

  test('is none of none', () => expect(latest([])).toBeUndefined());
});
