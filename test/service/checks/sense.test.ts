import { describe, expect, test } from 'vitest';
import { createLanguageService } from '../../../src/service/index.js';
import { serviceOver, uriOf } from '../../support/fixture.js';

// Checks of what can be read and is hardly meant. Which facts speak of work, and which of a way out without any, is common practice.

const THIS = 'this.yard';

interface Parts {
  readonly shop?: string;
  readonly header?: string;
  readonly lines?: string;
}

/** What the checks say of an estimate, of the given codes: code and marked words. */
function said(codes: readonly string[], options: string, { shop = '', header = '  start 2026-11-30\n', lines = '' }: Parts = {}): readonly string[] {
  const text = `steelyard 1\nshop "S"\n  workday 8 h\n  rate bench 100.00\n  tax sales 7% on parts\n${shop}estimate "E"\n${header}  valid 14 d\nfinding seen "Seen"\nlabour seal "Front seal" 2 h\n  because seen\n${lines}${options}`;
  const { service } = serviceOver({ [THIS]: text });
  return [...service.allDiagnostics(uriOf(THIS)).values()].flat().filter(({ code, severity }) => codes.includes(code) || severity === 'error').map(({ code, range }) => `${code} ${text.slice(range.start, range.end).split('\n')[0] ?? ''}`);
}

const MEND = 'option mend "Mend it"\n  do seal\n  warranty 12 mo\n';

describe('an option without work', () => {
  const codes = ['option-without-work'];
  const told = ['option-without-work option two "Two"'];

  test.each([
    ['  warranty 3 mo\n', told],
    ['  warranty 3 mo\n  worth 900.00\n', told],
    ['  leaves out "Paint"\n', told],
    ['  lasts 24 mo\n', told],
    ['  because seen\n', told],
    ['  charge tow\n  because seen\n', told],
    ['  chance "The shaft is worn" 20%\n    part "Sleeve" 45.00 new\n', told],
    // Stopping, selling, driving on.
    ['', []],
    ['  because seen\n  worth 900.00\n', []],
    ['  lasts 6 mo\n  worth 900.00\n  chance "It fails on the road" 40%\n    sublet "Tow" 90.00\n', []],
    ['  because seen\n  harvest "Alternator" 85.00\n', []],
    // Something is done.
    ['  warranty 3 mo\n  part "Sleeve" 45.00 new\n', []],
    ['  warranty 3 mo\n  sublet "Skim" 45.00\n', []],
    ['  warranty 3 mo\n  labour "Look" 1 h\n', []],
  ])('%j', (below, wanted) => {
    expect(said(codes, `${MEND}option two "Two"\n${below}`, { lines: 'fee tow "Tow" 60.00\n' })).toEqual(wanted);
  });

  test('is told where it is the only one, and where its do can’t be read only that', () => {
    expect(said(codes, 'option two "Two"\n  warranty 3 mo\n')).toEqual(told);
    expect(said(codes, `${MEND}option two "Two"\n  do saal\n  warranty 3 mo\n`)).toEqual(['unknown-name saal']);
    expect(said(codes, `${MEND}option two "Two"\n  does seal\n  warranty 3 mo\n`)).toEqual(['unknown-fact does']);
  });

  test('is told where a stage does the only work in it', () => {
    const lines = 'labour look "Look" 1 h uses rag\n  because seen\npart rag "Rag" 1.00 new\nstage first "Look first"\n  do look\n  put back 0 h\n';
    expect(said(codes, `${MEND}option two "Two"\n  warranty 3 mo\n`, { lines })).toEqual(told);
    expect(said(codes, `${MEND}option two "Two"\n  part "Sleeve" 45.00 new\n  warranty 3 mo\n`, { lines })).toEqual([]);
  });
});

describe('a chance of work that is done anyway', () => {
  const codes = ['chance-of-what-is-done'];
  const lines = 'part ring "Ring" 9.00 new\nlabour shaft "Shaft" 3 h\n  because seen\n';
  const chance = (below: string, head = '20%') => `${MEND}  fit ring\n  chance "Worn" ${head}\n${below}`;

  test('adds nothing, whichever of its lines say so', () => {
    expect(said(codes, chance('    do seal\n'), { lines })).toEqual(['chance-of-what-is-done seal']);
    expect(said(codes, chance('    fit ring\n'), { lines })).toEqual(['chance-of-what-is-done ring']);
    expect(said(codes, chance('    do seal\n    fit ring\n'), { lines })).toEqual(['chance-of-what-is-done seal']);
  });

  test('adds what the option has not, a comeback, and what may turn up below it', () => {
    expect(said(codes, chance('    do seal, shaft\n'), { lines })).toEqual([]);
    expect(said(codes, chance('    do seal\n    part "Sleeve" 45.00 new\n'), { lines })).toEqual([]);
    expect(said(codes, chance('    do seal\n', '20% comeback'), { lines })).toEqual([]);
    expect(said(codes, chance('    do seal\n    chance "Scored" 10%\n      do shaft\n'), { lines })).toEqual([]);
  });

  test('of a job is told where it adds nothing in any option', () => {
    const job = `labour open "Open it" 1 h\n  because seen\n  chance "Worn" 20%\n    do shaft\n${lines}`;
    expect(said(codes, 'option one "One"\n  do open, shaft\noption two "Two"\n  do open\n', { lines: job })).toEqual([]);
    expect(said(codes, 'option one "One"\n  do open, shaft\noption two "Two"\n  do seal\n', { lines: job })).toEqual(['chance-of-what-is-done shaft']);
  });
});

describe('days and figures', () => {
  test('a start on a day that the shop is closed, by the week or by the date', () => {
    const on = (day: string, shop = '') => said(['start-on-closed-day', 'start-before-written'], MEND, { shop, header: `  written 2026-11-20\n  start ${day}\n` });
    expect(on('2026-11-29')).toEqual(['start-on-closed-day 2026-11-29']); // a Sunday
    expect(on('2026-11-30')).toEqual([]);
    expect(on('2026-11-30', '  closed 2026-11-30\n')).toEqual(['start-on-closed-day 2026-11-30']);
    expect(on('2026-11-29', '  closed monday\n')).toEqual([]);
    expect(on('2026-11-15')).toEqual(['start-before-written 2026-11-15']);
  });

  test('a vehicle built in the month of writing may be meant, one of the next can’t', () => {
    const built = (date: string) => said(['built-after-written'], MEND, { header: '  written 2026-11-20\n  start 2026-11-30\n', lines: `vehicle "Van"\n  built ${date}\n` });
    expect([built('2026-11'), built('2026-11-20'), built('2026-12'), built('2026-11-21')]).toEqual([[], [], ['built-after-written 2026-12'], ['built-after-written 2026-11-21']]);
  });

  test('a vehicle brings as much as it is worth repaired, not more', () => {
    const brings = (amount: string) => said(['unrepaired-over-worth'], MEND, { lines: `vehicle "Van"\n  worth 4000.00\n  unrepaired ${amount}\n` });
    expect([brings('4000.00'), brings('4000.01')]).toEqual([[], ['unrepaired-over-worth 4000.01']]);
  });

  test('no time in the car, where it is not all there is', () => {
    const takes = (lines: string) => said(['work-without-time', 'work-for-nothing'], 'option one "One"\n  do seal, other\noption two "Two"\n  do seal, other\n', { lines: `access up "Up"\n  remove 1 h\n${lines}` });
    expect(takes('labour other "Other" 0 h\n')).toEqual(['work-without-time 0 h']);
    expect(takes('labour other "Other"\n  takes 2 h\n  takes 0 h with up\n')).toEqual([]);
    expect(takes('labour other "Other" 0 / 1 / 2 h\n')).toEqual([]);
    expect(said(['work-without-time', 'work-for-nothing'], 'option one "One"\n  labour "Look" 0 h\n')).toEqual(['work-for-nothing option one "One"']);
  });
});

describe('dearer than worth', () => {
  // 200.00 of work, a part of 100.00 with 7.00 tax, and 50.00 for its core: 357.00, of which 50.00 comes back.
  const at = (worth: string) => said(['dearer-than-worth'], 'option one "Mend it"\n  do seal\n  part "Starter" 100.00 rebuilt\n    core 50.00 due 90 d\n', { shop: '  core-tax none\n', lines: `vehicle "Van"\n  worth ${worth}\n` });

  test('is what is paid in the end, without the core deposit that comes back', () => {
    expect([at('307.00'), at('306.99')]).toEqual([[], ['dearer-than-worth option one "Mend it"']]);
  });
});

describe('two options with one title', () => {
  test('are told at the second, whatever their case', () => {
    expect(said(['option-title-twice'], `${MEND}option two "mend It "\n  do seal\noption three "Mend it all"\n  do seal\n`)).toEqual(['option-title-twice "mend It "']);
  });
});

describe('a picture of a finding', () => {
  const lines = 'finding leak "Leak"\n  picture "there.png", "missing.png"\n';

  test('is told where it is not there', () => {
    expect(said(['picture-missing'], MEND, { lines })).toEqual(['picture-missing "missing.png"']);
  });

  test('is not asked for where the host can’t tell at once', () => {
    const text = `steelyard 1\nshop "S"\n  rate bench 100.00\nestimate "E"\n${lines}labour seal "Front seal" 2 h\n${MEND}`;
    const codes = (exists: ((uri: string) => boolean) | undefined) => createLanguageService({ read: () => ({ text }), resolvePath: (_, file) => `/w/${file}`, ...(exists === undefined ? {} : { exists }) }).diagnostics('/w/this.yard').map(({ code }) => code);
    expect(codes(() => false).filter((code) => code === 'picture-missing')).toHaveLength(2);
    expect(codes(undefined)).not.toContain('picture-missing');
  });
});
