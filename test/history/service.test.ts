import { describe, expect, test } from 'vitest';
import type { Completion } from '../../src/service/index.js';
import { accessJob, bookOf, historyOf, labourJob, type Book, type Case, type Job } from '../../src/weigh/index.js';
import { serviceOver, uriOf } from '../support/fixture.js';

const THIS = 'this.yard';
const TEXT = `steelyard 1
shop "S"
  workday 8 h
  rate bench 100.00
  tax sales 7% on parts
estimate "E"
  start 2026-11-30
  valid 14 d
finding seen "Seen on the lift"
access out "Engine out"
  remove 6 h
  refit 8 h
labour swap "Swap engine" 5 h with out
  because seen
labour pump "Coolant pump"
  takes 9 h
  takes 30 min with out
  because seen
option one "Mend it"
  warranty 12 mo
  do swap, pump
option stop "Stop"
`;

const times = (job: Job, ...hours: readonly number[]): Case[] => hours.map((one) => ({ job, hours: one, estimated: 5, on: undefined }));
const swap = labourJob({ name: 'swap', title: 'Swap engine' }, ['out']);
const book: Book = bookOf(historyOf([
  // Ten per cent lies at 1.2667 of nine values, ninety at 8.7333, by definition 8 of Hyndman & Fan: 5.7 + 0.2667 × 0.8 and 9.7 + 0.7333 × 1.
  ...times(swap, 5.7, 6.5, 6.8, 7, 7.1, 7.4, 8, 9.7, 10.7),
  ...times(labourJob({ name: 'pump', title: 'Coolant pump' }, ['out']), 1.4, 1.5, 1.6, 1.7, 1.8),
  ...times(labourJob({ name: 'pump', title: 'Coolant pump' }, []), 8, 10),
  ...times(labourJob({ name: undefined, title: 'Dress it' }, []), 2, 2, 2, 2, 2),
  ...times(accessJob({ name: 'out', title: 'Engine out' }), 14, 15, 16, 17, 18),
]));

function over(text: string, of: Book | undefined = book) {
  const made = serviceOver({ [THIS]: text });
  made.host.book = () => of;
  return made;
}

function offers(marked: string): readonly Completion[] {
  const offset = marked.indexOf('$0');
  return over(marked.replace('$0', '')).service.completions(uriOf(THIS), offset).filter(({ detail }) => detail?.startsWith('your last') === true);
}

function line(marked: string, offer: Completion | undefined): string | undefined {
  if (offer === undefined) return undefined;
  const text = marked.replace('$0', '');
  const made = text.slice(0, offer.edit.range.start) + offer.edit.text + text.slice(offer.edit.range.end);
  return made.slice(made.lastIndexOf('\n', offer.edit.range.start - 1) + 1).split('\n')[0];
}

describe('completion of hours', () => {
  test.each([
    ['labour swap "Swap engine" $0\n', [['5.9 / 7.1 / 10.4 h with out', 'your last 9', 'labour swap "Swap engine" 5.9 / 7.1 / 10.4 h  with out']]],
    ['labour swap "Swap engine" $0 with out\n', [['5.9 / 7.1 / 10.4 h', 'your last 9', 'labour swap "Swap engine" 5.9 / 7.1 / 10.4 h with out']]],
    ['labour swap "Swap engine"\n  takes $0\n', [['5.9 / 7.1 / 10.4 h with out', 'your last 9', '  takes 5.9 / 7.1 / 10.4 h  with out']]],
    ['labour pump "Coolant pump"\n  takes $0\n', [['1.4 / 1.6 / 1.8 h with out', 'your last 5', '  takes 1.4 / 1.6 / 1.8 h  with out'], ['8.0 / 9.0 / 10.0 h', 'your last 2, which are few', '  takes 8.0 / 9.0 / 10.0 h']]],
    ['labour pump "Coolant pump"\n  takes $0 with out\n', [['1.4 / 1.6 / 1.8 h', 'your last 5', '  takes 1.4 / 1.6 / 1.8 h with out']]],
    ['labour swap "Swap engine" 5 h $0\n', []],
    ['labour other "Coolant pump"\n  takes $0\n', []],
    ['part swap "Swap engine" $0\n', []],
  ] as const)('%s', (marked, wanted) => {
    const text = TEXT.replace(/labour swap[\s\S]*?(?=option)/, '').replace('option one', `${marked}option one`).replace('  do swap, pump\n', '');
    const found = offers(text);
    expect(found.map((offer) => [offer.label, offer.detail, line(text, offer)])).toEqual(wanted);
  });

  test('of work inside an option, by its title', () => {
    const text = TEXT.replace('  do swap, pump\n', '  labour "Dress it" $0\n');
    expect(offers(text).map((offer) => line(text, offer))).toEqual(['  labour "Dress it" 2.0 h']);
  });
});

function hover(text: string, marked: string, of: Book | undefined = book): readonly string[] {
  const { service } = over(text, of);
  return (service.hover(uriOf(THIS), text.indexOf(marked))?.paragraphs ?? []).filter((one) => one.startsWith('Your last'));
}

describe('hover', () => {
  test.each([
    ['labour swap', ['Your last 9 with out: 5.9 / 7.1 / 10.4 h; in the middle 1.42 of what was estimated.']],
    ['labour pump', ['Your last 2: 8.0 / 9.0 / 10.0 h. These are few.', 'Your last 5 with out: 1.4 / 1.6 / 1.8 h; in the middle 0.32 of what was estimated.']],
    ['takes 9 h', ['Your last 2: 8.0 / 9.0 / 10.0 h. These are few.']],
    ['takes 30 min', ['Your last 5 with out: 1.4 / 1.6 / 1.8 h; in the middle 0.32 of what was estimated.']],
    ['access out', ['Your last 5, opened and closed: 14.0 / 16.0 / 18.0 h; in the middle 3.20 of what was estimated.']],
    ['option one', []],
  ])('over %s', (marked, wanted) => {
    expect(hover(TEXT, marked)).toEqual(wanted);
  });

  test('says nothing without a book', () => {
    expect(hover(TEXT, 'labour swap', new Map())).toEqual([]);
  });
});

describe('check and fixes', () => {
  const outside = (text: string, of: Book = book) => over(text, of).service.diagnostics(uriOf(THIS)).filter(({ code }) => code === 'outside-the-book').map(({ range, text: says }) => [text.slice(range.start, range.end), says]);

  test('advice where a time lies outside of what the shop has ever had', () => {
    expect(outside(TEXT)).toEqual([
      ['5 h', expect.stringMatching(/^5\.0 h is less than the quickest of your last 9, 5\.7 h\..*Write what your own book has, 5\.9 \/ 7\.1 \/ 10\.4 h/) as string],
      ['30 min', expect.stringMatching(/^0\.50 h is less than the quickest of your last 5, 1\.4 h\./) as string],
    ]);
    expect(outside(TEXT.replace('5 h with', '11 h with').replace('30 min', '1.5 h'))).toEqual([['11 h', expect.stringMatching(/^11\.0 h is more than the slowest of your last 9, 10\.7 h\./) as string]]);
  });

  test('and where a way in is opened and closed in other hours than ever; both together, so nothing is written for them', () => {
    const text = TEXT.replace('5 h with', '6 h with').replace('30 min', '1.5 h').replace('remove 6 h', 'remove 12 h');
    expect(outside(text)).toEqual([['12 h', expect.stringMatching(/^20\.0 h to open and close it is more than the slowest of your last 5, 18\.0 h\..* for remove and refit together/) as string]]);
    const { service } = over(text);
    const at = text.indexOf('12 h');
    expect(service.actions(uriOf(THIS), { start: at, end: at }).map(({ title }) => title)).toEqual(['Allow outside-the-book here, with a reason to fill in']);
  });

  test('silent at the edges, where cases are few, without a book, and once the job is closed', () => {
    expect(outside(TEXT.replace('5 h with', '5.7 h with').replace('30 min', '1.8 h').replace('9 h', '99 h'))).toEqual([]);
    expect(outside(TEXT, new Map())).toEqual([]);
    expect(outside(`${TEXT}closed for one on 2026-12-09\n  clocked swap 6 h\n`)).toEqual([]);
  });

  test('the fix writes the three figures, and then all is well', () => {
    const { service } = over(TEXT);
    const at = TEXT.indexOf('5 h with');
    const actions = service.actions(uriOf(THIS), { start: at, end: at });
    const edits = actions.filter(({ title }) => title.startsWith('Write 5.9')).map(({ edits: all }) => [...all.values()].flat());
    expect(edits).toEqual([[{ range: { start: at, end: at + 3 }, text: '5.9 / 7.1 / 10.4 h' }]]);
    expect(outside(TEXT.replace('5 h with', '5.9 / 7.1 / 10.4 h with').replace('30 min', '1.4 h'))).toEqual([]);
  });

  test('a time within the book can be written as the book has it, and once it is, nothing is offered', () => {
    const written = (text: string, marked: string) => over(text).service.actions(uriOf(THIS), { start: text.indexOf(marked), end: text.indexOf(marked) }).map(({ title, kind }) => `${kind}: ${title}`);
    expect(written(TEXT, '9 h')).toEqual(['refactor: Write 8.0 / 9.0 / 10.0 h, your last 2, which are few']);
    expect(written(TEXT.replace('9 h', '8.0 / 9.0 / 10.0 h'), '8.0')).toEqual([]);
    expect(written(TEXT, 'option one')).toEqual([]);
  });

  test('a book that has changed is looked at anew', () => {
    const { service, host } = over(TEXT, new Map());
    const count = () => service.diagnostics(uriOf(THIS)).filter(({ code }) => code === 'outside-the-book').length;
    expect(count()).toBe(0);
    host.book = () => book;
    expect(count()).toBe(2);
    expect(service.weighing(uriOf(THIS))).toBe(service.weighing(uriOf(THIS)));
  });
});
